package hairline.checks.stock;

/** From where Z came to rest at a level: the last motion of Z before it, rapid moves included. */
public enum ApproachDirection {
  FROM_ABOVE,
  FROM_BELOW,
  UNKNOWN
}

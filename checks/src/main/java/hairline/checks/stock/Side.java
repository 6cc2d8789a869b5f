package hairline.checks.stock;

/** A side of the direction of travel, seen from above. */
public enum Side {
  LEFT,
  RIGHT
}

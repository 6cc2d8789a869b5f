package hairline.checks.setup;

/** Working plane at power-on. */
public enum StartPlane {
  /** X and Y, G17. */
  XY,
  /** Z and X, G18. */
  ZX,
  /** Y and Z, G19. */
  YZ
}

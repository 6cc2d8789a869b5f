package hairline.checks.setup;

/** Units at power-on. */
public enum StartUnits {
  /** Millimetres. */
  MM,
  /** Inches. */
  INCH
}

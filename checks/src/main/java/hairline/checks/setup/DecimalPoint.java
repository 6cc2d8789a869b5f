package hairline.checks.setup;

/** How the control reads a coordinate written without a decimal point. */
public enum DecimalPoint {
  /** A point is required. */
  REQUIRED,
  /** As millimetres or inches. */
  UNITS,
  /** As a number of least input increments. */
  INCREMENTS
}

package hairline.checks.setup;

/** Distance mode at power-on. */
public enum StartDistance {
  /** G90. */
  ABSOLUTE,
  /** G91. */
  INCREMENTAL
}

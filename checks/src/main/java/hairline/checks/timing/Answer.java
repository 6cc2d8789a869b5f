package hairline.checks.timing;

/** An answer that may be out of reach. */
public enum Answer {
  YES,
  NO,
  /** What is known allows both. */
  UNKNOWN
}

package hairline.checks.setup;

/** The level that the sheet gives a rule. */
public enum RuleLevel {
  /** An error. */
  ERROR,
  /** A warning. */
  WARNING,
  /** A note. */
  NOTE
}

package hairline.checks.setup;

/** What the control does with digits finer than its increment. */
public enum Rounding {
  /** Rounds to the nearest increment, ties away from zero. */
  NEAREST,
  /** Drops them. */
  TRUNCATE
}

package hairline.checks.cutting;

/** How far a comparison of two bands holds. */
public enum Certainty {
  /** It holds at every value of both bands. */
  CERTAIN,
  /** It holds for the typical values, not for all. */
  LIKELY,
  /** It does not hold for the typical values. */
  NOT_SHOWN
}

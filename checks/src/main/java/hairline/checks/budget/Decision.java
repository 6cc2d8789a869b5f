package hairline.checks.budget;

/**
 * Whether something conforms, when it is known only within an uncertainty. ISO 14253-1 (from
 * memory): conforming only inside the limits narrowed by the guard band, non-conforming only
 * outside the limits widened by it, else undecided. The guard band is the expanded uncertainty of
 * the gauge.
 *
 * <p>Lengths are compared in whole picometres, so that no binary fraction decides.
 */
public enum Decision {
  /** Proven to conform. */
  HOLDS,
  /** Proven neither way. */
  UNDECIDED,
  /** Proven not to conform. */
  FAILS;

  private static final double PM_PER_UM = 1e6;

  /**
   * Decides about an error that a tolerance allows: holds if P ≤ T − U, fails if P &gt; T + U.
   *
   * @param errorUm the error P to be expected, 0 or more
   * @param toleranceUm half width T of the tolerance, 0 or more
   * @param guardUm guard band U, 0 or more
   * @throws IllegalArgumentException outside these ranges
   */
  public static Decision ofError(double errorUm, double toleranceUm, double guardUm) {
    Uncertainty.requireNotNegative("error", errorUm);
    Uncertainty.requireNotNegative("tolerance", toleranceUm);
    return ofValue(errorUm, Double.NEGATIVE_INFINITY, toleranceUm, guardUm);
  }

  /**
   * Decides about a measured value between limits.
   *
   * @param measuredUm the value measured
   * @param lowerUm lower limit; may be minus infinity
   * @param upperUm upper limit, not below the lower one; may be infinity
   * @param guardUm guard band U, 0 or more
   * @throws IllegalArgumentException outside these ranges
   */
  public static Decision ofValue(
      double measuredUm, double lowerUm, double upperUm, double guardUm) {
    Uncertainty.requireNotNegative("guard band", guardUm);
    if (!(lowerUm <= upperUm) || !Double.isFinite(measuredUm)) {
      throw new IllegalArgumentException(
          "value " + measuredUm + " between limits " + lowerUm + " and " + upperUm);
    }
    // How far inside the nearer limit; below zero outside.
    double insideUm = Math.min(measuredUm - lowerUm, upperUm - measuredUm);
    if (wholePm(insideUm - guardUm) >= 0) {
      return HOLDS;
    }
    return wholePm(insideUm + guardUm) < 0 ? FAILS : UNDECIDED;
  }

  /**
   * The decision where a part of the error is missing: what is known may prove that it fails, never
   * that it holds.
   */
  public Decision withPartMissing() {
    return this == HOLDS ? UNDECIDED : this;
  }

  private static double wholePm(double um) {
    return StrictMath.rint(um * PM_PER_UM);
  }
}

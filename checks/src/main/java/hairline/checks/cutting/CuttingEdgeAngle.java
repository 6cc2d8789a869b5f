package hairline.checks.cutting;

/**
 * The tool cutting edge angle κ (ISO 3002-1) at the top of the cut: 90° on the straight side of a
 * tool, less on the rounding at its end. With the radius r of that rounding, cos κ = 1 − a_p/r
 * (exact).
 *
 * <p>The radius is half the diameter of a ball tool, the corner radius of a bull tool, and the
 * larger of corner radius and edge radius of a flat one: no corner is sharper than its edge.
 */
public final class CuttingEdgeAngle {
  private CuttingEdgeAngle() {}

  /**
   * The angle in radians, above 0 and at most π/2.
   *
   * @param roundingMm radius of the rounding, 0 or more
   * @param depthMm axial depth a_p, above 0
   * @throws IllegalArgumentException outside these ranges
   */
  public static double rad(double roundingMm, double depthMm) {
    return onRounding(roundingMm, depthMm)
        ? StrictMath.acos(1 - depthMm / roundingMm)
        : Math.PI / 2;
  }

  /**
   * The sine of the angle, above 0 and at most 1.
   *
   * @param roundingMm radius of the rounding, 0 or more
   * @param depthMm axial depth a_p, above 0
   * @throws IllegalArgumentException outside these ranges
   */
  public static double sine(double roundingMm, double depthMm) {
    // sin κ = √(1 − (1 − q)²) with q = a_p/r, written so that a small q loses no digits.
    double part = depthMm / roundingMm;
    return onRounding(roundingMm, depthMm) ? StrictMath.sqrt(part * (2 - part)) : 1;
  }

  private static boolean onRounding(double roundingMm, double depthMm) {
    Require.notNegative("radius of the rounding", roundingMm);
    Require.positive("axial depth", depthMm);
    return depthMm < roundingMm;
  }

  static void requireSine(double sinKappa) {
    Require.that(
        sinKappa > 0 && sinKappa <= 1, "sine of the edge angle", sinKappa, "must lie in (0, 1]");
  }
}

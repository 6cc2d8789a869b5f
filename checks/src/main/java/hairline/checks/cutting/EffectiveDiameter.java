package hairline.checks.cutting;

/**
 * The diameter at the top of the cut of a tool that is rounded at its end (exact).
 *
 * <p>With the radius r of the rounding: D_eff = D − 2r + 2√(a_p (2r − a_p)) for a depth up to r,
 * beyond that D. A ball tool is the case r = D/2: D_eff = 2√(a_p (D − a_p)).
 */
public final class EffectiveDiameter {
  private EffectiveDiameter() {}

  /**
   * The effective diameter in mm.
   *
   * @param diameterMm diameter D of the tool, above 0
   * @param cornerRadiusMm radius r of its rounding, 0 to D/2; D/2 is a ball, 0 a flat tool
   * @param depthMm axial depth a_p, above 0
   * @throws IllegalArgumentException outside these ranges
   */
  public static double mm(double diameterMm, double cornerRadiusMm, double depthMm) {
    Require.positive("diameter", diameterMm);
    Require.positive("axial depth", depthMm);
    Require.that(
        cornerRadiusMm >= 0 && cornerRadiusMm <= diameterMm / 2,
        "corner radius",
        cornerRadiusMm,
        "must lie between zero and half the diameter",
        diameterMm);
    if (depthMm >= cornerRadiusMm) {
      return diameterMm;
    }
    return diameterMm
        - 2 * cornerRadiusMm
        + 2 * StrictMath.sqrt(depthMm * (2 * cornerRadiusMm - depthMm));
  }

  /**
   * The effective diameter in mm of a ball tool that cuts on a slope: D sin(β + arccos((D − 2
   * a_p)/D)), and D once the contact reaches the widest circle of the ball.
   *
   * @param diameterMm diameter D of the ball, above 0
   * @param depthMm depth a_p normal to the slope, above 0; from D/2 on the widest circle cuts
   * @param slopeRad inclination β of the surface against the plane across the axis, 0 to π/2
   * @throws IllegalArgumentException outside these ranges
   */
  public static double ballOnSlopeMm(double diameterMm, double depthMm, double slopeRad) {
    Require.positive("diameter", diameterMm);
    Require.positive("axial depth", depthMm);
    Require.that(
        slopeRad >= 0 && slopeRad <= Math.PI / 2, "slope", slopeRad, "must lie in [0, pi/2] rad");
    if (depthMm >= diameterMm / 2) {
      return diameterMm;
    }
    double top = slopeRad + StrictMath.acos((diameterMm - 2 * depthMm) / diameterMm);
    return top >= Math.PI / 2 ? diameterMm : diameterMm * StrictMath.sin(top);
  }
}

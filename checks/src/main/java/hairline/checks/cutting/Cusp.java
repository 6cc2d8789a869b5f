package hairline.checks.cutting;

/**
 * Cusps that passes of a rounded tool leave between them (exact for passes side by side): h = R −
 * √(R² − (s/2)²) and s = 2√(2Rh − h²). On a slope β the stepover counts along the surface: s/cos β.
 */
public final class Cusp {
  private Cusp() {}

  /**
   * Height of the cusps in µm.
   *
   * @param radiusMm radius R of ball or corner, above 0
   * @param stepoverMm distance s of the passes, 0 to 2R; where it is more, the passes leave a strip
   *     between them and no cusp
   * @throws IllegalArgumentException outside these ranges
   */
  public static double heightUm(double radiusMm, double stepoverMm) {
    Require.positive("radius", radiusMm);
    Require.that(
        stepoverMm >= 0 && stepoverMm <= 2 * radiusMm,
        "stepover",
        stepoverMm,
        "must lie between zero and twice the radius",
        radiusMm);
    double half = stepoverMm / 2;
    // (R − √(R² − q²)) = q²/(R + √(R² − q²)), which loses no digits on a fine stepover.
    return 1000 * half * half / (radiusMm + StrictMath.sqrt((radiusMm - half) * (radiusMm + half)));
  }

  /**
   * The stepover in mm that leaves cusps of a height.
   *
   * @param radiusMm radius R of ball or corner, above 0
   * @param heightUm height h, 0 to R
   * @throws IllegalArgumentException outside these ranges
   */
  public static double stepoverMm(double radiusMm, double heightUm) {
    Require.positive("radius", radiusMm);
    double heightMm = heightUm / 1000;
    Require.that(
        heightMm >= 0 && heightMm <= radiusMm,
        "cusp height",
        heightUm,
        "must lie between zero and the radius " + radiusMm + " mm");
    return 2 * StrictMath.sqrt(heightMm * (2 * radiusMm - heightMm));
  }

  /**
   * The distance of passes along a slope, in mm: s/cos β.
   *
   * @param stepoverMm distance s of the passes seen along the axis, 0 or more
   * @param slopeRad inclination β of the surface against the plane across the axis, 0 to less than
   *     π/2
   * @throws IllegalArgumentException outside these ranges
   */
  public static double stepoverOnSlopeMm(double stepoverMm, double slopeRad) {
    Require.notNegative("stepover", stepoverMm);
    Require.that(
        slopeRad >= 0 && slopeRad < Math.PI / 2, "slope", slopeRad, "must lie in [0, pi/2) rad");
    return stepoverMm / StrictMath.cos(slopeRad);
  }
}

package hairline.checks.cutting;

/**
 * The arc over which a tooth is in the material, and the chip it takes on it: h(φ) = f_z sin φ sin
 * κ (exact for a circular tooth path; textbook: Martellotti 1941, Altintas). The angle φ of a tooth
 * is 0 and π where it moves along the feed and π/2 where it moves across it, at the front of the
 * tool.
 *
 * @param inRad where a tooth enters, at least 0
 * @param outRad where it leaves, above {@code inRad} and at most π
 */
public record Engagement(double inRad, double outRad) {

  private static final Engagement SLOT = new Engagement(0, Math.PI);

  /**
   * Checks the arc.
   *
   * @throws IllegalArgumentException unless 0 ≤ in &lt; out ≤ π
   */
  public Engagement {
    if (!(0 <= inRad && inRad < outRad && outRad <= Math.PI)) {
      throw new IllegalArgumentException(
          "engagement from " + inRad + " to " + outRad + " rad is no arc within 0 and pi");
    }
  }

  /** The full width of the tool: the largest engagement there is. */
  public static Engagement slot() {
    return SLOT;
  }

  /**
   * The engagement of a tool that takes a strip beside a wall: φ = arccos(1 − 2 a_e/D). A strip as
   * wide as the tool, or wider, is a slot. Climb and conventional milling have mirrored arcs of the
   * same chips; the arc given begins at 0.
   *
   * @param stepoverMm width a_e of the strip, above 0
   * @param diameterMm the diameter D that cuts: for ball and bull tools the effective one
   * @throws IllegalArgumentException outside these ranges
   */
  public static Engagement besideWall(double stepoverMm, double diameterMm) {
    Require.positive("stepover", stepoverMm);
    Require.positive("diameter", diameterMm);
    if (stepoverMm >= diameterMm) {
      return SLOT;
    }
    // The same angle by its half, because 1 − 2 a_e/D cancels on a fine strip.
    return new Engagement(0, 2 * StrictMath.asin(StrictMath.sqrt(stepoverMm / diameterMm)));
  }

  /** Length of the arc. */
  public double angleRad() {
    return outRad - inRad;
  }

  /** Length of the arc in degrees. */
  public double angleDeg() {
    return StrictMath.toDegrees(angleRad());
  }

  /** Whether the tool cuts over its full width. */
  public boolean isSlot() {
    return inRad == 0 && outRad == Math.PI;
  }

  /** The largest sin φ on the arc: 1 as soon as the arc holds the front of the tool. */
  public double maxSine() {
    double front = Math.PI / 2;
    if (inRad <= front && front <= outRad) {
      return 1;
    }
    return Math.max(StrictMath.sin(inRad), StrictMath.sin(outRad));
  }

  /** The mean of sin φ over the arc: (cos φ_in − cos φ_out) / (φ_out − φ_in). */
  public double meanSine() {
    // The difference of cosines as a product, because it cancels on a short arc.
    double halfAngle = angleRad() / 2;
    return StrictMath.sin((inRad + outRad) / 2) * StrictMath.sin(halfAngle) / halfAngle;
  }

  /**
   * The largest chip thickness in µm, without runout: f_z sin κ times {@link #maxSine()}.
   *
   * @param feedPerToothUm feed per tooth f_z, 0 or more
   * @param sinKappa sine of the cutting edge angle, see {@link CuttingEdgeAngle}
   * @throws IllegalArgumentException outside these ranges
   */
  public double maxChipUm(double feedPerToothUm, double sinKappa) {
    return chipUm(feedPerToothUm, sinKappa, maxSine());
  }

  /**
   * The mean chip thickness in µm, without runout: f_z sin κ times {@link #meanSine()}, which is
   * f_z sin κ (2 a_e/D)/φ beside a wall and f_z sin κ · 2/π in a slot.
   *
   * @param feedPerToothUm feed per tooth f_z, 0 or more
   * @param sinKappa sine of the cutting edge angle, see {@link CuttingEdgeAngle}
   * @throws IllegalArgumentException outside these ranges
   */
  public double meanChipUm(double feedPerToothUm, double sinKappa) {
    return chipUm(feedPerToothUm, sinKappa, meanSine());
  }

  private static double chipUm(double feedPerToothUm, double sinKappa, double sinPhi) {
    Require.notNegative("feed per tooth", feedPerToothUm);
    CuttingEdgeAngle.requireSine(sinKappa);
    return feedPerToothUm * sinPhi * sinKappa;
  }
}

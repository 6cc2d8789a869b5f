package hairline.checks.cutting;

import java.util.Optional;

/**
 * The cutting end of a milling tool, in the words of ISO 13399.
 *
 * @param shape flat, ball or bull
 * @param diameterMm cutting diameter DC, above 0
 * @param cornerRadiusMm corner radius RE, 0 to DC/2; not looked at for a ball
 * @param flutes teeth NOF, 1 or more
 * @param edgeRadiusUm rounding of the cutting edge, above 0, where known
 * @param runoutUm total reading at the rotating edges, 0 or more, where known
 */
public record EndMill(
    Shape shape,
    double diameterMm,
    double cornerRadiusMm,
    int flutes,
    Optional<Band> edgeRadiusUm,
    Optional<Band> runoutUm) {

  /** The shapes of a tool's end. */
  public enum Shape {
    /** A flat end, its corner as sharp as the edge or a little rounded. */
    FLAT,
    /** A half sphere. */
    BALL,
    /** A flat end with a corner radius that counts. */
    BULL
  }

  /**
   * Checks the dimensions.
   *
   * @throws IllegalArgumentException outside the ranges given
   */
  public EndMill {
    Require.positive("diameter", diameterMm);
    Require.that(
        cornerRadiusMm >= 0 && cornerRadiusMm <= diameterMm / 2,
        "corner radius",
        cornerRadiusMm,
        "must lie between zero and half the diameter",
        diameterMm);
    Require.positive("number of flutes", flutes);
    edgeRadiusUm.ifPresent(band -> Require.positive("edge radius", band.low()));
    runoutUm.ifPresent(band -> Require.notNegative("runout", band.low()));
  }

  /**
   * Sine of the cutting edge angle at the top of the cut. On a flat tool the rounding is the larger
   * of corner radius and edge radius, so the answer is a band where the edge radius is one.
   *
   * @param depthMm axial depth, above 0
   * @throws IllegalArgumentException outside this range
   */
  public Band sinKappa(double depthMm) {
    return switch (shape) {
      case BALL -> Band.ofExact(CuttingEdgeAngle.sine(diameterMm / 2, depthMm));
      case BULL -> Band.ofExact(CuttingEdgeAngle.sine(cornerRadiusMm, depthMm));
      case FLAT ->
          edgeRadiusUm
              .orElse(Band.ofExact(0))
              .map(um -> CuttingEdgeAngle.sine(Math.max(cornerRadiusMm, um / 1000), depthMm));
    };
  }

  /**
   * The diameter that cuts at the top of the cut: of ball and bull tools at their depth, of flat
   * tools the whole.
   *
   * @param depthMm axial depth, above 0
   * @throws IllegalArgumentException outside this range
   */
  public double effectiveDiameterMm(double depthMm) {
    return switch (shape) {
      case BALL -> EffectiveDiameter.mm(diameterMm, diameterMm / 2, depthMm);
      case BULL -> EffectiveDiameter.mm(diameterMm, cornerRadiusMm, depthMm);
      case FLAT -> EffectiveDiameter.mm(diameterMm, 0, depthMm);
    };
  }

  /**
   * The engagement beside a wall, over the effective diameter.
   *
   * @param stepoverMm width of the strip taken, above 0
   * @param depthMm axial depth, above 0
   * @throws IllegalArgumentException outside these ranges
   */
  public Engagement besideWall(double stepoverMm, double depthMm) {
    return Engagement.besideWall(stepoverMm, effectiveDiameterMm(depthMm));
  }

  /** Radius of the flat part of the end face, which tilt tips into the floor; 0 for a ball. */
  public double floorRadiusMm() {
    return shape == Shape.BALL ? 0 : diameterMm / 2 - cornerRadiusMm;
  }
}

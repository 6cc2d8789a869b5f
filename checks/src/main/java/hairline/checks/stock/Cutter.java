package hairline.checks.stock;

import hairline.checks.setup.Length;
import hairline.checks.setup.LengthBand;
import hairline.checks.setup.Tool;
import hairline.checks.setup.ToolKeys;
import hairline.checks.setup.ToolShape;
import java.util.Optional;

/**
 * What removing stock needs to know of a tool.
 *
 * @param shape its end
 * @param radiusPm half of DC
 * @param cornerPm RE: 0 for a flat tool, the radius for a ball
 * @param edgeRadiusPm rounding of the cutting edge, typical value; 0 where the sheet gives none, so
 *     that only an exact repeat counts as a spring pass
 */
record Cutter(ToolShape shape, double radiusPm, double cornerPm, long edgeRadiusPm) {

  /**
   * The cutter of a tool; empty where the sheet gives no diameter or no shape. A bull tool without
   * a corner radius counts as flat: its floor is the same, only the foot of its walls differs.
   */
  static Optional<Cutter> of(Tool tool) {
    Optional<Length> diameter = tool.get(ToolKeys.DIAMETER);
    Optional<ToolShape> shape = tool.get(ToolKeys.SHAPE);
    if (diameter.isEmpty() || diameter.get().pm() <= 0 || shape.isEmpty()) {
      return Optional.empty();
    }
    double radius = diameter.get().pm() / 2.0;
    long edge = tool.get(ToolKeys.EDGE_RADIUS).map(LengthBand::typical).orElse(Length.ZERO).pm();
    double corner = tool.get(ToolKeys.CORNER_RADIUS).orElse(Length.ZERO).pm();
    return Optional.of(
        switch (shape.get()) {
          case FLAT -> new Cutter(ToolShape.FLAT, radius, 0, edge);
          case BALL -> new Cutter(ToolShape.BALL, radius, radius, edge);
          case BULL ->
              corner <= 0
                  ? new Cutter(ToolShape.FLAT, radius, 0, edge)
                  : new Cutter(ToolShape.BULL, radius, Math.min(corner, radius), edge);
        });
  }

  boolean flat() {
    return shape == ToolShape.FLAT;
  }

  /** Whether it leaves a floor at its Z; a ball doesn't. */
  boolean leavesFloor() {
    return flatRadiusPm() > 0;
  }

  /** Radius of the flat part of the end. */
  double flatRadiusPm() {
    return radiusPm - cornerPm;
  }

  /** As {@link #profilePm}, of the square of the distance. */
  double profileOfSquarePm(double distance2) {
    if (shape != ToolShape.BALL) {
      return profilePm(Math.sqrt(distance2));
    }
    double rest = cornerPm * cornerPm - distance2;
    return rest > 0 ? cornerPm - Math.sqrt(rest) : cornerPm;
  }

  /** Height of the end above the tip at this distance from the axis, at most the radius. */
  double profilePm(double distancePm) {
    double out = distancePm - flatRadiusPm();
    if (out <= 0) {
      return 0;
    }
    if (out >= cornerPm) {
      return cornerPm;
    }
    return cornerPm - Math.sqrt(cornerPm * cornerPm - out * out);
  }
}

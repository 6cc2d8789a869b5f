package hairline.checks.timing;

import hairline.checks.motion.Arc;
import hairline.checks.motion.Axis;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import java.util.Optional;

/**
 * The way of a move as the axes see it: directions at both ends and curvature.
 *
 * @param start direction at its start
 * @param end direction at its end
 * @param radiusMm radius of curvature, infinity for a straight line
 * @param plane the plane of its circle; empty for a straight line
 */
record Way(Direction start, Direction end, double radiusMm, Optional<Modes.Plane> plane) {
  private static final double MM_PER_PM = 1e-9;

  /** The way of a move whose ends are known and that has a length. */
  static Way of(Move move) {
    if (move.arc().isPresent() && move.modes().plane().value().isPresent()) {
      return arc(move, move.arc().get(), move.modes().plane().value().get());
    }
    Direction along = Direction.of(rise(move, Axis.X), rise(move, Axis.Y), rise(move, Axis.Z));
    return new Way(along, along, Double.POSITIVE_INFINITY, Optional.empty());
  }

  private static double rise(Move move, Axis axis) {
    return (move.to().get(axis) - (double) move.from().get(axis)) * MM_PER_PM;
  }

  private static Way arc(Move move, Arc arc, Modes.Plane plane) {
    double radius = Math.min(arc.startRadiusMm(), arc.endRadiusMm());
    double run = radius * Math.abs(arc.sweepRad());
    double slope = run > 0 ? rise(move, plane.normal()) / run : 0;
    // A helix bends less than its circle.
    return new Way(
        tangent(move.from().get(plane.first()), move.from().get(plane.second()), arc, slope, plane),
        tangent(move.to().get(plane.first()), move.to().get(plane.second()), arc, slope, plane),
        radius * (1 + slope * slope),
        Optional.of(plane));
  }

  private static Direction tangent(
      long firstPm, long secondPm, Arc arc, double slope, Modes.Plane plane) {
    double out1 = firstPm * MM_PER_PM - arc.centreFirstMm();
    double out2 = secondPm * MM_PER_PM - arc.centreSecondMm();
    double turn = Math.signum(arc.sweepRad());
    Direction inPlane = Direction.of(-turn * out2, turn * out1, 0);
    return Direction.of(
        part(Axis.X, inPlane, slope, plane),
        part(Axis.Y, inPlane, slope, plane),
        part(Axis.Z, inPlane, slope, plane));
  }

  private static double part(Axis axis, Direction inPlane, double slope, Modes.Plane plane) {
    if (axis == plane.first()) {
      return inPlane.x();
    }
    return axis == plane.second() ? inPlane.y() : slope;
  }

  /** How much of the motion an axis may take anywhere along the way, 0 to 1. */
  double share(Axis axis) {
    if (plane.isPresent() && (axis == plane.get().first() || axis == plane.get().second())) {
      return 1;
    }
    return Math.abs(
        switch (axis) {
          case X -> start.x();
          case Y -> start.y();
          default -> start.z();
        });
  }
}

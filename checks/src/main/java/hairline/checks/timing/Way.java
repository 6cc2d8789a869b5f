package hairline.checks.timing;

import hairline.checks.motion.Arc;
import hairline.checks.motion.Axis;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import org.jspecify.annotations.Nullable;

/**
 * The way of a move as the axes see it: directions at both ends and curvature. One object takes
 * many moves, one after the other.
 */
final class Way {
  private static final double MM_PER_PM = 1e-9;

  private double startX;
  private double startY;
  private double startZ;
  private double endX;
  private double endY;
  private double endZ;

  /** Of the vectors above. */
  private double lengthMm;

  private double radiusMm;

  /** The plane of its circle; none for a straight line. */
  private Modes.@Nullable Plane plane;

  /** Takes a move whose ends are known and that has a length. */
  void take(Move move) {
    if (move.arc().isPresent() && move.modes().plane().value().isPresent()) {
      arc(move, move.arc().get(), move.modes().plane().value().get());
      return;
    }
    startX = rise(move.from().xPm(), move.to().xPm());
    startY = rise(move.from().yPm(), move.to().yPm());
    startZ = rise(move.from().zPm(), move.to().zPm());
    endX = startX;
    endY = startY;
    endZ = startZ;
    double length = Math.sqrt(startX * startX + startY * startY + startZ * startZ);
    lengthMm = length > 0 ? length : 1;
    radiusMm = Double.POSITIVE_INFINITY;
    plane = null;
  }

  private static double rise(long fromPm, long toPm) {
    return (toPm - (double) fromPm) * MM_PER_PM;
  }

  private void arc(Move move, Arc arc, Modes.Plane of) {
    double radius = Math.min(arc.startRadiusMm(), arc.endRadiusMm());
    double run = radius * Math.abs(arc.sweepRad());
    double rise = rise(move.from().get(of.normal()), move.to().get(of.normal()));
    double slope = run > 0 ? rise / run : 0;
    starts(tangent(move.from().get(of.first()), move.from().get(of.second()), arc, slope, of));
    ends(tangent(move.to().get(of.first()), move.to().get(of.second()), arc, slope, of));
    lengthMm = 1;
    // A helix bends less than its circle.
    radiusMm = radius * (1 + slope * slope);
    plane = of;
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

  private void starts(Direction direction) {
    startX = direction.x();
    startY = direction.y();
    startZ = direction.z();
  }

  private void ends(Direction direction) {
    endX = direction.x();
    endY = direction.y();
    endZ = direction.z();
  }

  /**
   * The square of the sine of half the angle that the legs of the corner to the next way enclose: 1
   * straight on, 0 straight back.
   */
  double squareOfHalfCorner(Way next) {
    double sumX = endX * next.lengthMm + next.startX * lengthMm;
    double sumY = endY * next.lengthMm + next.startY * lengthMm;
    double sumZ = endZ * next.lengthMm + next.startZ * lengthMm;
    double twice = 2 * lengthMm * next.lengthMm;
    return Math.min(1, (sumX * sumX + sumY * sumY + sumZ * sumZ) / (twice * twice));
  }

  /** Direction at its start. */
  Direction start() {
    return Direction.of(startX, startY, startZ);
  }

  /** Direction at its end. */
  Direction end() {
    return Direction.of(endX, endY, endZ);
  }

  /** Radius of curvature, infinity for a straight line. */
  double radiusMm() {
    return radiusMm;
  }

  /** How much of the motion an axis may take anywhere along the way, 0 to 1. */
  double share(Axis axis) {
    if (plane != null && (axis == plane.first() || axis == plane.second())) {
      return 1;
    }
    return Math.abs(
            switch (axis) {
              case X -> startX;
              case Y -> startY;
              default -> startZ;
            })
        / lengthMm;
  }
}

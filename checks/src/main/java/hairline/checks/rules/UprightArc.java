package hairline.checks.rules;

import hairline.checks.motion.Arc;
import hairline.checks.motion.Axis;
import hairline.checks.motion.Modes.Plane;
import hairline.checks.motion.Move;
import hairline.checks.motion.Position;
import java.util.Optional;

/**
 * Arcs in the planes that stand upright, ZX and YZ: how steeply they fall (exact, but for a spiral,
 * which counts as a circle of its starting radius).
 *
 * <p>Around the centre, with θ from the plane's first axis towards its second: Z is the first axis
 * of ZX and the second of YZ; beside it the arc moves along the other axis, and a helix along the
 * normal.
 */
final class UprightArc {
  private static final double FULL_TURN = 2 * StrictMath.PI;

  /** A micron's thousandth: what rounding may add to a height. */
  private static final double EQUAL_WITHIN_MM = 1e-6;

  private UprightArc() {}

  /**
   * A point of an arc.
   *
   * @param angleDeg how steeply the path falls there, 0 to 90
   */
  record Point(double zMm, double angleDeg) {}

  /** Whether the move is such an arc. */
  static boolean is(Move move) {
    return move.arc().isPresent() && move.modes().plane().value().filter(p -> !flat(p)).isPresent();
  }

  private static boolean flat(Plane plane) {
    return plane.normal() == Axis.Z;
  }

  /**
   * Where the arc falls steepest, at this height or below; empty where it does not fall there. The
   * angle grows towards the one point of a turn where the path stands upright, so that it is
   * largest there, at an end of the arc, or where the arc crosses the height.
   *
   * @param topMm height of the material, work coordinates
   */
  static Optional<Point> steepest(Move move, double topMm) {
    Arc arc = move.arc().orElseThrow();
    Plane plane = move.modes().plane().value().orElseThrow();
    boolean zFirst = plane.first() == Axis.Z;
    double radius = arc.startRadiusMm();
    double centreZ = zFirst ? arc.centreFirstMm() : arc.centreSecondMm();
    double start =
        StrictMath.atan2(
            mm(move.from(), plane.second()) - arc.centreSecondMm(),
            mm(move.from(), plane.first()) - arc.centreFirstMm());
    double normalMmPerRad =
        (mm(move.to(), plane.normal()) - mm(move.from(), plane.normal()))
            / Math.abs(arc.sweepRad());
    double turn = arc.sweepRad() < 0 ? -1 : 1;
    // Counted from where Z is highest: Z = centre + radius · cos ψ, falling while sin ψ · turn > 0.
    double fromTop = zFirst ? start : start - FULL_TURN / 4;
    double crossing = StrictMath.acos(Math.max(-1, Math.min(1, (topMm - centreZ) / radius)));
    double[] candidates = {
      fromTop, fromTop + arc.sweepRad(), turn * FULL_TURN / 4, crossing, -crossing
    };
    Optional<Point> steepest = Optional.empty();
    for (double psi : candidates) {
      double zMm = centreZ + radius * StrictMath.cos(psi);
      double fall = radius * StrictMath.sin(psi) * turn;
      if (zMm > topMm + EQUAL_WITHIN_MM || fall <= 0 || !passes(fromTop, arc.sweepRad(), psi)) {
        continue;
      }
      double along = StrictMath.hypot(radius * StrictMath.cos(psi), normalMmPerRad);
      double angleDeg = StrictMath.toDegrees(StrictMath.atan2(fall, along));
      if (steepest.isEmpty() || angleDeg > steepest.get().angleDeg()) {
        steepest = Optional.of(new Point(zMm, angleDeg));
      }
    }
    return steepest;
  }

  private static boolean passes(double start, double sweep, double psi) {
    double way = (psi - start) * Math.signum(sweep);
    way -= FULL_TURN * StrictMath.floor(way / FULL_TURN);
    double all = Math.abs(sweep);
    return way <= all + 1e-9 || FULL_TURN - way <= 1e-9;
  }

  private static double mm(Position at, Axis axis) {
    return at.get(axis) / 1e9;
  }
}

package hairline.checks.compare;

import hairline.checks.motion.Arc;
import hairline.checks.motion.Axis;
import hairline.checks.motion.Modes.Plane;
import hairline.checks.motion.Move;
import hairline.checks.motion.Position;
import java.util.List;
import java.util.Optional;

/**
 * A circle or helix around one centre, its radius and all other axes in proportion to the angle.
 *
 * <p>A piece follows it where it has its centre and its ends lie on it. A point of which each axis
 * is rounded by at most {@code r} lies off the circle by at most {@code r} times the sum of sine
 * and cosine of its direction: the reach of a square along that direction. So do the ends of the
 * whole, which give the radius. Where a radius is written, the centre moves when ends are rounded;
 * then all of the piece is to stay within four times {@code r}, two increments.
 */
final class CircleCourse implements Course {
  private static final double MM_PER_PM = 1e-9;
  private static final double FULL_TURN = 2 * Math.PI;

  /** Circles that differ by less are one: what rounding of doubles makes of two ways to write. */
  static final double SAME_MM = 1e-7;

  /** Half the smallest part in which rotary axes are counted. */
  private static final double HALF_MICRODEG = 0.5;

  private static final double WITH_RADIUS = 4;

  private final Plane plane;
  private final double firstMm;
  private final double secondMm;
  private final boolean radiusForm;
  private final double sweepRad;
  private final Position start;
  private final Position end;

  /**
   * @param circle a move around the centre
   * @param sweepRad the angle of the whole course, signed as that of an arc
   * @throws java.util.NoSuchElementException if the move's plane or circle is not known
   */
  CircleCourse(Move circle, double sweepRad, Position start, Position end) {
    Arc arc = circle.arc().orElseThrow();
    this.plane = plane(circle);
    this.firstMm = arc.centreFirstMm();
    this.secondMm = arc.centreSecondMm();
    this.radiusForm = arc.radiusForm();
    this.sweepRad = sweepRad;
    this.start = start;
    this.end = end;
  }

  /** The plane of an arc. */
  static Plane plane(Move arc) {
    return arc.modes().plane().value().orElseThrow();
  }

  @Override
  public Optional<double[]> shares(List<Move> moves, double roomPm) {
    double[] shares = new double[moves.size()];
    double turned = 0;
    for (int k = 0; k < shares.length; k++) {
      Move move = moves.get(k);
      double angle = angle(move);
      if (angle * sweepRad <= 0 || !centreKept(move, turned, angle, roomPm)) {
        return Optional.empty();
      }
      turned += angle;
      shares[k] = turned / sweepRad;
      boolean last = k == shares.length - 1;
      if (last) {
        shares[k] = 1;
      } else if (shares[k] >= 1 || !pointKept(move.to(), shares[k], roomPm)) {
        return Optional.empty();
      }
    }
    return Optional.of(shares);
  }

  /** The angle that a piece turns around this centre, as many turns as around its own. */
  private double angle(Move move) {
    double own = move.arc().orElseThrow().sweepRad();
    double more = direction(move.to()) - direction(move.from()) - own;
    return own + more - FULL_TURN * Math.rint(more / FULL_TURN);
  }

  private double direction(Position point) {
    return StrictMath.atan2(second(point), first(point));
  }

  private double first(Position point) {
    return point.get(plane.first()) * MM_PER_PM - firstMm;
  }

  private double second(Position point) {
    return point.get(plane.second()) * MM_PER_PM - secondMm;
  }

  private double radiusMm(double share) {
    double from = StrictMath.hypot(first(start), second(start));
    double to = StrictMath.hypot(first(end), second(end));
    return from + (to - from) * share;
  }

  private boolean pointKept(Position point, double share, double roomPm) {
    double far = StrictMath.hypot(first(point), second(point));
    if (!radiusKept(point, far, share, roomPm)) {
      return false;
    }
    for (Axis axis : Axis.values()) {
      if (axis == plane.first() || axis == plane.second() || !point.knows(axis)) {
        continue;
      }
      double whole = (double) (end.get(axis) - start.get(axis));
      double aside = Math.abs(point.get(axis) - start.get(axis) - share * whole);
      // Where the point was rounded along the circle, the axis is off in proportion.
      double along =
          WITH_RADIUS
              * roomPm
              * MM_PER_PM
              / Math.max(SAME_MM, far)
              / Math.abs(sweepRad)
              * Math.abs(whole);
      double room = axis.linear() ? roomPm + SAME_MM / MM_PER_PM : HALF_MICRODEG;
      if (aside > room + along) {
        return false;
      }
    }
    return true;
  }

  private boolean radiusKept(Position point, double far, double share, double roomPm) {
    if (radiusForm) {
      return Math.abs(far - radiusMm(share)) <= WITH_RADIUS * roomPm * MM_PER_PM + SAME_MM;
    }
    double most = Math.min(endMm(start, roomPm, 1), endMm(end, roomPm, 1));
    double least = Math.max(endMm(start, roomPm, -1), endMm(end, roomPm, -1));
    double reach = reach(point, roomPm) + SAME_MM;
    return roomPm == 0
        ? Math.abs(far - radiusMm(share)) <= SAME_MM
        : far <= most + reach && far >= least - reach;
  }

  /** The largest (1) or smallest (-1) radius that, rounded, gives this end of the whole. */
  private double endMm(Position end, double roomPm, int sign) {
    return StrictMath.hypot(first(end), second(end)) + sign * reach(end, roomPm);
  }

  private boolean centreKept(Move move, double turned, double angle, double roomPm) {
    Arc arc = move.arc().orElseThrow();
    double first = arc.centreFirstMm() - firstMm;
    double second = arc.centreSecondMm() - secondMm;
    return StrictMath.hypot(first, second) <= SAME_MM
        || ((radiusForm || arc.radiusForm())
            && bowKept(move, first, second, turned, angle, WITH_RADIUS * roomPm * MM_PER_PM));
  }

  /**
   * Whether a piece keeps to the circle midway and where it could be farthest from it.
   *
   * @param first where the piece's centre lies from this one, in mm
   * @param second the same along the second axis
   * @param turned the angle turned before the piece
   * @param angle the angle of the piece
   */
  private boolean bowKept(
      Move move, double first, double second, double turned, double angle, double roomMm) {
    Arc arc = move.arc().orElseThrow();
    double begin =
        StrictMath.atan2(
            move.from().get(plane.second()) * MM_PER_PM - arc.centreSecondMm(),
            move.from().get(plane.first()) * MM_PER_PM - arc.centreFirstMm());
    double apart = StrictMath.atan2(second, first);
    for (double at : new double[] {begin + arc.sweepRad() / 2, apart, apart + Math.PI}) {
      double by = at - begin;
      // Into the first turn, in the direction of the arc.
      by -=
          FULL_TURN * (arc.sweepRad() > 0 ? Math.floor(by / FULL_TURN) : Math.ceil(by / FULL_TURN));
      double part = by / arc.sweepRad();
      if (part > 1) {
        continue;
      }
      double radius = arc.startRadiusMm() + (arc.endRadiusMm() - arc.startRadiusMm()) * part;
      double far =
          StrictMath.hypot(
              first + radius * StrictMath.cos(begin + by),
              second + radius * StrictMath.sin(begin + by));
      if (Math.abs(far - radiusMm((turned + part * angle) / sweepRad)) > roomMm + SAME_MM) {
        return false;
      }
    }
    return true;
  }

  /** How far a square of this half edge reaches in the direction of a point. */
  private double reach(Position point, double roomPm) {
    double first = first(point);
    double second = second(point);
    double far = StrictMath.hypot(first, second);
    return far == 0 ? 0 : roomPm * MM_PER_PM * (Math.abs(first) + Math.abs(second)) / far;
  }
}

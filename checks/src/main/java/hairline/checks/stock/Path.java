package hairline.checks.stock;

import hairline.checks.motion.Arc;
import hairline.checks.motion.Axis;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.motion.Position;
import java.util.Optional;

/**
 * The path of the tool tip in one move whose X, Y and Z are known, in picometres. Points of a
 * straight line are exact at its ends; points of an arc have the error of {@link Arc}.
 */
final class Path {
  private static final double PM_PER_MM = 1e9;

  final long x0;
  final long y0;
  final long z0;
  final long x1;
  final long y1;
  final long z1;
  private final Optional<Circle> circle;

  /** An arc in its plane; angles in radians, lengths in picometres. */
  private record Circle(
      Modes.Plane plane,
      double first,
      double second,
      double startRadius,
      double endRadius,
      double startAngle,
      double sweep,
      double normal0,
      double normal1) {}

  private Path(Position from, Position to, Optional<Circle> circle) {
    this.x0 = from.xPm();
    this.y0 = from.yPm();
    this.z0 = from.zPm();
    this.x1 = to.xPm();
    this.y1 = to.yPm();
    this.z1 = to.zPm();
    this.circle = circle;
  }

  static Path of(Move move) {
    if (move.arc().isEmpty() || move.modes().plane().value().isEmpty()) {
      return new Path(move.from(), move.to(), Optional.empty());
    }
    Arc arc = move.arc().get();
    Modes.Plane plane = move.modes().plane().value().get();
    double first = arc.centreFirstMm() * PM_PER_MM;
    double second = arc.centreSecondMm() * PM_PER_MM;
    double angle =
        StrictMath.atan2(
            move.from().get(plane.second()) - second, move.from().get(plane.first()) - first);
    return new Path(
        move.from(),
        move.to(),
        Optional.of(
            new Circle(
                plane,
                first,
                second,
                arc.startRadiusMm() * PM_PER_MM,
                arc.endRadiusMm() * PM_PER_MM,
                angle,
                arc.sweepRad(),
                move.from().get(plane.normal()),
                move.to().get(plane.normal()))));
  }

  /** A path that stays at one point. */
  static Path at(Position point) {
    return new Path(point, point, Optional.empty());
  }

  /** A path that stays at one point. */
  static Path at(long xPm, long yPm, long zPm) {
    return at(new Position(xPm, yPm, zPm, 0, 0, 0, 0));
  }

  /** Whether Z stands still all along. */
  boolean level() {
    return z0 == z1 && circle.map(c -> c.plane() == Modes.Plane.XY).orElse(true);
  }

  /** Whether X or Y moves. */
  boolean movesInPlan() {
    return circle.isPresent() || x0 != x1 || y0 != y1;
  }

  boolean straight() {
    return circle.isEmpty();
  }

  /** Whether it is an arc about Z. */
  boolean arcInPlan() {
    return circle.map(c -> c.plane() == Modes.Plane.XY).orElse(false);
  }

  /** Centre of an arc about Z. */
  double centreX() {
    return circle.orElseThrow().first();
  }

  /** Centre of an arc about Z. */
  double centreY() {
    return circle.orElseThrow().second();
  }

  double startRadius() {
    return circle.orElseThrow().startRadius();
  }

  double endRadius() {
    return circle.orElseThrow().endRadius();
  }

  double startAngle() {
    return circle.orElseThrow().startAngle();
  }

  double sweep() {
    return circle.orElseThrow().sweep();
  }

  /** Coordinate of the point at a fraction of the way, 0 to 1; exact at both ends. */
  double at(Axis axis, double fraction) {
    double start = axis == Axis.X ? x0 : axis == Axis.Y ? y0 : z0;
    double end = axis == Axis.X ? x1 : axis == Axis.Y ? y1 : z1;
    if (fraction <= 0) {
      return start;
    }
    if (fraction >= 1) {
      return end;
    }
    if (circle.isEmpty()) {
      return start + (end - start) * fraction;
    }
    Circle c = circle.get();
    if (axis == c.plane().normal()) {
      return c.normal0() + (c.normal1() - c.normal0()) * fraction;
    }
    double radius = c.startRadius() + (c.endRadius() - c.startRadius()) * fraction;
    double angle = c.startAngle() + c.sweep() * fraction;
    return axis == c.plane().first()
        ? c.first() + radius * StrictMath.cos(angle)
        : c.second() + radius * StrictMath.sin(angle);
  }

  /** Z of the lower end. */
  long lowestEnd() {
    return Math.min(z0, z1);
  }

  /** The lowest Z; of an arc about X or Y that of chords within this distance of it. */
  long lowest(double chordErrorPm) {
    long lowest = Math.min(z0, z1);
    if (straight() || arcInPlan()) {
      return lowest;
    }
    int chords = chords(chordErrorPm);
    for (int k = 1; k < chords; k++) {
      lowest = Math.min(lowest, Math.round(at(Axis.Z, (double) k / chords)));
    }
    return lowest;
  }

  /** Length seen from above. */
  double planLength() {
    if (arcInPlan()) {
      return Math.abs(sweep()) * (startRadius() + endRadius()) / 2;
    }
    return straightLength();
  }

  /** Distance of a point from the path, both seen from above; of an arc about X or Y its chord. */
  double planDistance(double x, double y) {
    if (arcInPlan()) {
      double dx = x - centreX();
      double dy = y - centreY();
      double startX = x0 - centreX();
      double startY = y0 - centreY();
      double endX = x1 - centreX();
      double endY = y1 - centreY();
      return Spans.inSector(dx, dy, sweep(), startX, startY, endX, endY)
          ? Math.abs(Math.sqrt(dx * dx + dy * dy) - (startRadius() + endRadius()) / 2)
          : Math.min(
              Math.sqrt((dx - startX) * (dx - startX) + (dy - startY) * (dy - startY)),
              Math.sqrt((dx - endX) * (dx - endX) + (dy - endY) * (dy - endY)));
    }
    double runX = x1 - (double) x0;
    double runY = y1 - (double) y0;
    double length2 = runX * runX + runY * runY;
    double px = x - x0;
    double py = y - y0;
    double f = length2 == 0 ? 0 : Math.max(0, Math.min(1, (px * runX + py * runY) / length2));
    double dx = px - f * runX;
    double dy = py - f * runY;
    return Math.sqrt(dx * dx + dy * dy);
  }

  /**
   * Unit direction of travel seen from above, X in the first element; along the chord for arcs
   * about X or Y, and zero where the path stands still in plan.
   */
  double[] direction(double fraction) {
    if (arcInPlan()) {
      double angle = startAngle() + sweep() * fraction;
      double sign = Math.signum(sweep());
      return new double[] {-sign * StrictMath.sin(angle), sign * StrictMath.cos(angle)};
    }
    double length = straightLength();
    return length == 0
        ? new double[] {0, 0}
        : new double[] {(x1 - x0) / length, (y1 - y0) / length};
  }

  /**
   * How many chords keep within this distance of the path, at most {@link #MOST_CHORDS}.
   *
   * @param errorPm largest distance of a chord from its arc
   */
  int chords(double errorPm) {
    if (circle.isEmpty()) {
      return 1;
    }
    Circle c = circle.get();
    double radius = Math.max(c.startRadius(), c.endRadius());
    if (radius <= errorPm) {
      return Math.max(4, (int) Math.min(MOST_CHORDS, Math.ceil(Math.abs(c.sweep()))));
    }
    double angle = 2 * StrictMath.acos(1 - errorPm / radius);
    return (int) Math.max(1, Math.min(MOST_CHORDS, Math.ceil(Math.abs(c.sweep()) / angle)));
  }

  /** Most chords one arc is cut into. */
  static final int MOST_CHORDS = 8192;

  private double straightLength() {
    double dx = x1 - (double) x0;
    double dy = y1 - (double) y0;
    return Math.sqrt(dx * dx + dy * dy);
  }
}

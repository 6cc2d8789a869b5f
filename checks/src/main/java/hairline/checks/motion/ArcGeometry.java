package hairline.checks.motion;

import java.util.Optional;

/**
 * Circles through the ends of an arc. Differences of coordinates are exact; the rest is double,
 * with StrictMath, so that the figures are the same everywhere: relative errors stay below 10^-14,
 * but for a radius-form arc near a half circle, whose centre is ill-conditioned by itself.
 */
final class ArcGeometry {
  private static final double MM_PER_PM = 1e-9;
  private static final double FULL_TURN = 2 * Math.PI;

  private ArcGeometry() {}

  /**
   * The ends of an arc in its plane, in picometres: the plane's first and second axis, counted so
   * that counter-clockwise turns first towards second.
   */
  record Ends(long startFirst, long startSecond, long endFirst, long endSecond) {
    /** Whether the arc ends where it starts. */
    boolean meet() {
      return startFirst == endFirst && startSecond == endSecond;
    }

    private double chordFirstMm() {
      return Math.subtractExact(endFirst, startFirst) * MM_PER_PM;
    }

    private double chordSecondMm() {
      return Math.subtractExact(endSecond, startSecond) * MM_PER_PM;
    }

    /** The distance between the ends. */
    double chordMm() {
      return StrictMath.hypot(chordFirstMm(), chordSecondMm());
    }
  }

  /**
   * The arc around a centre. Its radius at the start and at the end may differ. Where it ends in
   * the direction in which it starts, it is a full circle.
   *
   * @param centreFirst the centre, in picometres
   * @param centreSecond the centre, in picometres
   * @param turns how many times the end is reached, 1 for a plain arc
   * @throws ArithmeticException if a difference of coordinates is too large
   */
  static Arc aroundCentre(
      Ends ends, long centreFirst, long centreSecond, boolean clockwise, int turns) {
    double x0 = Math.subtractExact(ends.startFirst, centreFirst) * MM_PER_PM;
    double y0 = Math.subtractExact(ends.startSecond, centreSecond) * MM_PER_PM;
    double x1 = Math.subtractExact(ends.endFirst, centreFirst) * MM_PER_PM;
    double y1 = Math.subtractExact(ends.endSecond, centreSecond) * MM_PER_PM;
    // From the exact chord, so that a short arc on a large radius loses no digits.
    double cross = x0 * ends.chordSecondMm() - y0 * ends.chordFirstMm();
    double dot = x0 * x1 + y0 * y1;
    double angle = ends.meet() ? 0 : StrictMath.atan2(cross, dot);
    double sweep = clockwise ? negative(angle) : -negative(-angle);
    double more = FULL_TURN * (turns - 1);
    return new Arc(
        centreFirst * MM_PER_PM,
        centreSecond * MM_PER_PM,
        StrictMath.hypot(x0, y0),
        StrictMath.hypot(x1, y1),
        clockwise ? sweep - more : sweep + more,
        false);
  }

  /** The same direction as an angle from -2π up to, but without, 0. */
  private static double negative(double angle) {
    return angle >= 0 ? angle - FULL_TURN : angle;
  }

  /**
   * The arc with a radius: at most half a circle with a positive one, at least half a circle with a
   * negative one (NISTIR 6556 §3.5.3.1). Where the ends lie further apart than the diameter, but by
   * no more than the tolerance allows the radius to differ, it is the half circle over the chord.
   *
   * @param ends ends that do not meet
   * @param radiusPm the radius with its sign
   * @param tolerancePm by how much half the chord may exceed the radius
   * @return nothing where the ends lie too far apart
   * @throws ArithmeticException if a difference of coordinates is too large
   */
  static Optional<Arc> withRadius(Ends ends, long radiusPm, boolean clockwise, long tolerancePm) {
    double half = ends.chordMm() / 2;
    double radius = Math.abs(radiusPm * MM_PER_PM);
    if (half > radius) {
      if (half - radius > tolerancePm * MM_PER_PM) {
        return Optional.empty();
      }
      radius = half;
    }
    double minor = 2 * StrictMath.asin(half / radius);
    double sweep = radiusPm < 0 ? FULL_TURN - minor : minor;
    // Seen along the chord the centre lies to the left of a short counter-clockwise arc.
    boolean left = clockwise == (radiusPm < 0);
    double away = StrictMath.sqrt((radius - half) * (radius + half)) * (left ? 1 : -1);
    double first = ends.startFirst * MM_PER_PM + ends.chordFirstMm() / 2;
    double second = ends.startSecond * MM_PER_PM + ends.chordSecondMm() / 2;
    return Optional.of(
        new Arc(
            first - away * ends.chordSecondMm() / (2 * half),
            second + away * ends.chordFirstMm() / (2 * half),
            radius,
            radius,
            clockwise ? -sweep : sweep,
            true));
  }

  /**
   * The length of an arc or helix, exact for equal radii, else that of a spiral whose radius
   * changes evenly, to first order.
   *
   * @param riseMm how far it goes along the normal of the plane
   */
  static double lengthMm(Arc arc, double riseMm) {
    double around = Math.abs(arc.sweepRad()) * (arc.startRadiusMm() + arc.endRadiusMm()) / 2;
    return StrictMath.hypot(around, riseMm);
  }
}

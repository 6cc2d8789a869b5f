package hairline.checks.motion;

import java.util.Optional;

/**
 * How far something reaches along an axis, both ends included.
 *
 * @param lowest the smallest coordinate: picometres, or microdegrees of a rotary axis
 * @param highest the largest coordinate
 */
public record Extent(long lowest, long highest) {
  private static final double QUARTER_TURN = StrictMath.PI / 2;
  private static final double PM_PER_MM = 1e9;
  private static final int QUARTERS_PER_TURN = 4;

  /** The smallest that holds both. */
  public Extent cover(Extent other) {
    return new Extent(Math.min(lowest, other.lowest), Math.max(highest, other.highest));
  }

  /**
   * How far a move reaches along an axis in work coordinates, as stored; nothing where neither of
   * its ends is known there. Of an arc the points count where it turns round, to a nanometre.
   */
  public static Optional<Extent> of(Move move, Axis axis) {
    Optional<Extent> ends = end(move.from(), axis);
    Optional<Extent> to = end(move.to(), axis);
    if (ends.isPresent() && to.isPresent()) {
      ends = Optional.of(ends.get().cover(to.get()));
    } else if (ends.isEmpty()) {
      ends = to;
    }
    Optional<Modes.Plane> plane = move.modes().plane().value();
    if (move.arc().isEmpty() || plane.isEmpty() || ends.isEmpty()) {
      return ends;
    }
    if (axis == plane.get().first()) {
      return ends.map(extent -> extent.cover(turns(move, plane.get(), extent, true)));
    }
    if (axis == plane.get().second()) {
      return ends.map(extent -> extent.cover(turns(move, plane.get(), extent, false)));
    }
    return ends;
  }

  private static Optional<Extent> end(Position position, Axis axis) {
    long coordinate = position.get(axis);
    return position.knows(axis)
        ? Optional.of(new Extent(coordinate, coordinate))
        : Optional.empty();
  }

  /** The points of an arc where an axis turns round lie a quarter turn apart. */
  private static Extent turns(Move move, Modes.Plane plane, Extent ends, boolean first) {
    Arc arc = move.arc().orElseThrow();
    boolean placed = move.from().knows(plane.first()) && move.from().knows(plane.second());
    if (!placed || arc.sweepRad() == 0) {
      return ends;
    }
    double start =
        StrictMath.atan2(
            move.from().get(plane.second()) / PM_PER_MM - arc.centreSecondMm(),
            move.from().get(plane.first()) / PM_PER_MM - arc.centreFirstMm());
    double end = start + arc.sweepRad();
    long from = (long) Math.ceil(Math.min(start, end) / QUARTER_TURN);
    long to = (long) Math.floor(Math.max(start, end) / QUARTER_TURN);
    Extent extent = ends;
    // The radius grows or shrinks steadily, so the first turn and the last reach farthest.
    for (long quarter = from; quarter <= to; quarter++) {
      if (quarter == from + QUARTERS_PER_TURN && to - quarter >= QUARTERS_PER_TURN) {
        quarter = to - QUARTERS_PER_TURN + 1;
      }
      boolean ofFirst = Math.floorMod(quarter, 2) == 0;
      if (ofFirst == first) {
        double share = (quarter * QUARTER_TURN - start) / arc.sweepRad();
        double radius = arc.startRadiusMm() + share * (arc.endRadiusMm() - arc.startRadiusMm());
        boolean high = Math.floorMod(quarter, QUARTERS_PER_TURN) < 2;
        double centre = first ? arc.centreFirstMm() : arc.centreSecondMm();
        long reached = Math.round((high ? centre + radius : centre - radius) * PM_PER_MM);
        extent = extent.cover(new Extent(reached, reached));
      }
    }
    return extent;
  }
}

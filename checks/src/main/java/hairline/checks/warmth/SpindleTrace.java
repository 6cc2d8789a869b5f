package hairline.checks.warmth;

import hairline.checks.timing.TimeTaken;
import hairline.checks.warmth.ProgramTimeline.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Keeps what the spindle did as points along time: where it changes, and between as many as tell
 * the curve. Of too many points those stay that a drawing shows: of each of equal parts of the time
 * the first and the last, the slowest and the fastest, the shortest and the longest.
 */
final class SpindleTrace {
  /** Points in one time constant: a straight line between two lies within 0.2 % of growth. */
  private static final int POINTS_IN_TAU = 8;

  /** Growth has come to its end after so many time constants. */
  private static final int TAUS = 8;

  /** So many points of a part of the time may stay. */
  private static final int POINTS_OF_PART = 6;

  private final List<Point> points = new ArrayList<>();
  private boolean reduced;

  private @Nullable SpindleState spindle;
  private Optional<GrowthPoint> atStart = Optional.empty();
  private Optional<GrowthPoint> atEnd = Optional.empty();
  private double fromSeconds;
  private double toSeconds;

  /**
   * The spindle was so for a time.
   *
   * @param from when that began
   * @param before growth then
   * @param after growth at its end
   */
  void pass(
      SpindleState now,
      double from,
      TimeTaken taken,
      Optional<GrowthPoint> before,
      Optional<GrowthPoint> after) {
    if (!now.equals(spindle) || !taken.isKnown()) {
      close();
      spindle = now;
      atStart = before;
      fromSeconds = from;
    }
    atEnd = after;
    toSeconds = from + taken.atLeastSeconds();
    if (!taken.isKnown()) {
      close();
    }
  }

  /** The points so far. */
  List<Point> points() {
    close();
    return points;
  }

  /** Whether some were left out. */
  boolean isReduced() {
    return reduced;
  }

  private void close() {
    if (spindle == null) {
      return;
    }
    add(fromSeconds, spindle, atStart);
    if (atStart.isPresent()) {
      // Growth with the shortest time constant bends most.
      SpindleGrowth growth = atStart.get().growth();
      double step = Double.POSITIVE_INFINITY;
      for (int i = 0; i < growth.count(); i++) {
        step = Math.min(step, growth.tauS(i) / POINTS_IN_TAU);
      }
      for (int k = 1; k <= TAUS * POINTS_IN_TAU && k * step < toSeconds - fromSeconds; k++) {
        add(
            fromSeconds + k * step,
            spindle,
            Optional.of(atStart.get().later(TimeTaken.of(k * step))));
      }
    }
    add(toSeconds, spindle, atEnd);
    spindle = null;
  }

  private void add(double seconds, SpindleState now, Optional<GrowthPoint> growth) {
    Optional<Drift> sinceCold = growth.map(GrowthPoint::sinceCold);
    points.add(
        new Point(
            seconds,
            now.speedRpm(),
            sinceCold.flatMap(Drift::rangeUm),
            sinceCold.map(Drift::isKnown).orElse(false)));
    if (points.size() > ProgramTimeline.MOST_POINTS) {
      reduce();
    }
  }

  private void reduce() {
    reduced = true;
    int parts = ProgramTimeline.MOST_POINTS / 2 / POINTS_OF_PART;
    double first = points.get(0).seconds();
    double width = (points.get(points.size() - 1).seconds() - first) / parts;
    List<Point> kept = new ArrayList<>();
    int from = 0;
    for (int part = 1; part <= parts; part++) {
      int to = from;
      while (to < points.size()
          && (part == parts || points.get(to).seconds() < first + part * width)) {
        to++;
      }
      keep(from, to, kept);
      from = to;
    }
    points.clear();
    points.addAll(kept);
  }

  private void keep(int from, int to, List<Point> kept) {
    if (from == to) {
      return;
    }
    boolean[] stays = new boolean[to - from];
    stays[0] = true;
    stays[to - from - 1] = true;
    int slow = from;
    int fast = from;
    int small = from;
    int tall = from;
    for (int k = from; k < to; k++) {
      slow = rpm(k) < rpm(slow) ? k : slow;
      fast = rpm(k) > rpm(fast) ? k : fast;
      small = um(k) < um(small) ? k : small;
      tall = um(k) > um(tall) ? k : tall;
    }
    stays[slow - from] = true;
    stays[fast - from] = true;
    stays[small - from] = true;
    stays[tall - from] = true;
    for (int k = from; k < to; k++) {
      if (stays[k - from]) {
        kept.add(points.get(k));
      }
    }
  }

  private double rpm(int point) {
    return points.get(point).rpm().orElse(0);
  }

  private double um(int point) {
    return points.get(point).growthUm().map(band -> band.typical()).orElse(0.0);
  }
}

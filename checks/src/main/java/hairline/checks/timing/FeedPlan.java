package hairline.checks.timing;

/**
 * Plans the feed along the blocks that a control sees ahead: as fast as their speeds, the corners
 * between them, acceleration and jerk allow, and at rest at the end of the last block seen. Speeds
 * in mm/s, lengths in mm, times in s.
 *
 * <p>First a way is found whose acceleration is zero wherever a limit is touched (a knot); between
 * two knots the feed rises, stays and falls within one acceleration and jerk, those of the weakest
 * block on the way. Without a jerk limit that is the fastest plan there is. With one, acceleration
 * is then let run on through knots where that gains time ({@link KnotChain#runOn}).
 *
 * <p>What the end of the last block seen does not slow down is final; the rest is planned again
 * with the blocks that follow. A final part ends without acceleration. Work is in proportion to the
 * blocks while braking takes few of those seen.
 */
final class FeedPlan {
  /** Takes the blocks in their order. */
  @FunctionalInterface
  interface Taker {
    void take(PlannedMove planned);
  }

  private static final double PER_MINUTE = 60;

  /** Without progress this part of the blocks seen is taken as planned. */
  private static final int PART = 4;

  /** Knots before the end of a final part that are planned again. */
  private static final int KEPT = 4;

  private final int most;
  private final SeenBlocks seen;
  private final KnotChain chain;

  // By border.
  private final double[] braking;
  private final int[] brakingKnot;

  /**
   * A plan.
   *
   * @param lookAhead how many blocks after the present one are seen, 0 or more
   */
  FeedPlan(int lookAhead) {
    most = lookAhead + 1;
    seen = new SeenBlocks(most);
    chain = new KnotChain(seen);
    braking = new double[most + 1];
    brakingKnot = new int[most + 1];
  }

  boolean isEmpty() {
    return seen.count == 0;
  }

  /**
   * Sees another block.
   *
   * @param length its length, above 0
   * @param cap highest speed along it, above 0
   * @param acceleration highest acceleration along it
   * @param jerk highest jerk along it, infinity for none
   * @param corner highest speed at its start, infinity where the way goes straight on
   * @param taker takes the blocks whose plan became final
   */
  void add(
      double length, double cap, double acceleration, double jerk, double corner, Taker taker) {
    if (seen.count == most) {
      advance(taker);
    }
    seen.add(length, cap, acceleration, jerk, corner);
  }

  /** Comes to rest at the end of the last block. */
  void rest(Taker taker) {
    if (seen.count > 0) {
      plan();
      chain.settle();
      chain.runOn();
      emit(chain.size() - 1, taker);
    }
    seen.count = 0;
    chain.clear();
  }

  /** Makes room for a block. */
  private void advance(Taker taker) {
    plan();
    boolean steady = cut();
    chain.settle();
    chain.runOn();
    int last = chain.size() - 1;
    int done = last;
    if (!steady) {
      // That acceleration is zero at the last knot slows down the few before it.
      done = Math.max(1, last - KEPT);
      while (done < last && chain.border(done) < least()) {
        done++;
      }
    }
    emit(done, taker);
    // The first border's corner is part of the chain now.
    seen.drop(chain.border(done));
    chain.begin(done);
  }

  private int least() {
    return Math.max(1, most / PART);
  }

  // Planning.

  /** Goes on with the chain from its last knot to rest at the end. */
  private void plan() {
    if (chain.size() == 0) {
      chain.add(0, 0);
    }
    seen.measure(chain.speed(0));
    brake(chain.border(chain.size() - 1));
    findKnots();
    chain.dropIdle();
  }

  /** The highest speed at each border from which all that follows can be kept. */
  private void brake(int start) {
    int knot = seen.count;
    braking[seen.count] = 0;
    brakingKnot[seen.count] = seen.count;
    double acceleration = Double.POSITIVE_INFINITY;
    double jerk = Double.POSITIVE_INFINITY;
    for (int j = seen.count - 1; j >= start; j--) {
      acceleration = Math.min(acceleration, seen.accelerations[j]);
      jerk = Math.min(jerk, seen.jerks[j]);
      double way = seen.places[knot] - seen.places[j];
      double limit = j == start ? Double.POSITIVE_INFINITY : seen.limits[j];
      // Each stretch is braked on as its own limits allow.
      boolean touches =
          (j > start && seen.changes(j))
              || braking[knot] > limit
              || SpeedRamp.passes(braking[knot], limit, way, acceleration, jerk);
      if (touches && seen.plain(j)) {
        touches = SpeedRamp.length(braking[knot], limit, acceleration, jerk) <= way;
      }
      if (touches) {
        braking[j] = reached(braking[knot], limit, way, acceleration, jerk);
        knot = j;
        brakingKnot[j] = j;
        acceleration = Double.POSITIVE_INFINITY;
        jerk = Double.POSITIVE_INFINITY;
      } else {
        braking[j] = Math.min(limit, SpeedRamp.passed(braking[knot], way, acceleration, jerk));
        brakingKnot[j] = knot;
      }
    }
  }

  private void findKnots() {
    int at = chain.border(chain.size() - 1);
    double speed = chain.speed(chain.size() - 1);
    while (at < seen.count) {
      int next = next(at, speed);
      speed =
          reached(
              speed,
              braking[next],
              seen.places[next] - seen.places[at],
              SeenBlocks.weakest(seen.accelerations, at, next),
              SeenBlocks.weakest(seen.jerks, at, next));
      chain.add(next, speed);
      at = next;
    }
  }

  /** The next border at which a limit is touched on the way up, or that the way down ends at. */
  private int next(int from, double speed) {
    double acceleration = Double.POSITIVE_INFINITY;
    double jerk = Double.POSITIVE_INFINITY;
    for (int j = from + 1; j <= seen.count; j++) {
      acceleration = Math.min(acceleration, seen.accelerations[j - 1]);
      jerk = Math.min(jerk, seen.jerks[j - 1]);
      double way = seen.places[j] - seen.places[from];
      boolean above =
          speed > braking[j] || SpeedRamp.passes(speed, braking[j], way, acceleration, jerk);
      if (!above && j < seen.count) {
        continue;
      }
      if (brakingKnot[j] != j) {
        return brakingKnot[j];
      }
      if (seen.plain(j) && SpeedRamp.length(speed, seen.limits[j], acceleration, jerk) > way) {
        continue;
      }
      return j;
    }
    return seen.count;
  }

  /** The speed reached on a way, a limit at most; mostly the limit, which takes no root to see. */
  private static double reached(
      double from, double limit, double way, double acceleration, double jerk) {
    return limit <= from || SpeedRamp.length(from, limit, acceleration, jerk) <= way
        ? limit
        : Math.min(limit, SpeedRamp.reached(from, way, acceleration, jerk));
  }

  // What is final.

  /**
   * Ends the chain at a border that the end of what is seen does not slow down.
   *
   * @return whether the feed is steady there
   */
  private boolean cut() {
    int least = least();
    int last = chain.size() - 2;
    int at = chain.border(last);
    SpeedProfile way = chain.way(last);
    double start = seen.places[at];
    int border = at;
    while (border + 1 < seen.count && seen.places[border + 1] - start <= way.peakTo()) {
      border++;
    }
    boolean steady = border > at && seen.places[border] - start >= way.peakFrom();
    if (!steady && at >= least) {
      chain.end(last + 1);
      return false;
    }
    border = Math.max(border, least);
    double speed = Math.min(seen.limits[border], braking[border]);
    if (steady && border > at) {
      speed = Math.min(speed, way.peak());
    }
    speed = Math.min(speed, seen.reachable(at, border, chain.speed(last)));
    speed = Math.min(speed, seen.reachable(border, seen.count, 0));
    if (brakingKnot[border] > border) {
      // Without acceleration here, braking takes longer.
      int knot = brakingKnot[border];
      speed = Math.min(speed, seen.reachable(border, knot, braking[knot]));
    }
    chain.end(last + 1);
    if (border > at) {
      chain.add(border, speed);
    }
    return steady;
  }

  // Giving out.

  /** Gives out the blocks of the chain up to a knot. */
  private void emit(int done, Taker taker) {
    for (int k = 0; k < done; k++) {
      SpeedProfile way = chain.way(k);
      int from = chain.border(k);
      int to = chain.border(k + 1);
      double exit = chain.speed(k);
      double timeBefore = 0;
      for (int j = from; j < to; j++) {
        double start = seen.places[j] - seen.places[from];
        double end = seen.places[j + 1] - seen.places[from];
        boolean last = j + 1 == to;
        double timeAfter = last ? way.seconds() : way.timeAt(end);
        double next = last ? chain.speed(k + 1) : way.speedAt(end);
        taker.take(move(way, start, end, exit, next, timeAfter - timeBefore));
        timeBefore = timeAfter;
        exit = next;
      }
    }
  }

  private static PlannedMove move(
      SpeedProfile way, double start, double end, double entry, double exit, double seconds) {
    double length = end - start;
    double peakFrom = Math.max(start, way.peakFrom());
    double peakTo = Math.min(end, way.peakTo());
    double peak = way.peak();
    if (way.peakFrom() >= end || way.peakTo() <= start || peak < Math.max(entry, exit)) {
      // The peak lies in another block, or is lower than what the feed dips from.
      peak = Math.max(entry, exit);
      peakFrom = entry > exit ? start : end;
      peakTo = peakFrom;
    }
    double lowest = Math.min(entry, exit);
    double lowestAt = entry <= exit ? start : end;
    double dip = way.startDipPlace();
    if (dip > start && dip < end && way.startDip() < lowest) {
      lowest = way.startDip();
      lowestAt = dip;
    }
    dip = way.endDipPlace();
    if (dip > start && dip < end && way.endDip() < lowest) {
      lowest = way.endDip();
      lowestAt = dip;
    }
    return new PlannedMove(
        seconds,
        entry * PER_MINUTE,
        exit * PER_MINUTE,
        lowest * PER_MINUTE,
        peak * PER_MINUTE,
        seconds > 0 ? length / seconds * PER_MINUTE : 0,
        (lowestAt - start) / length,
        (peakFrom - start) / length,
        Math.max(peakFrom - start, peakTo - start) / length);
  }
}

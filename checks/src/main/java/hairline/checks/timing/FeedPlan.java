package hairline.checks.timing;

/**
 * Plans the feed along the blocks that a control sees ahead: as fast as their speeds, the corners
 * between them, acceleration and jerk allow, and at rest at the end of the last block seen. Speeds
 * in mm/s, lengths in mm, times in s.
 *
 * <p>First a way is found whose acceleration is zero wherever a limit is touched (a knot); between
 * two knots the feed rises, stays and falls within one acceleration and jerk, those of the weakest
 * block on the way; without a jerk limit there is one wherever acceleration is limited otherwise
 * behind, so that is the fastest plan there is. With one, acceleration is then let run on through
 * knots where that gains time ({@link KnotChain#runOn}).
 *
 * <p>What the end of the last block seen does not slow down is final; the rest is planned again
 * with the blocks that follow. What was planned behind the final part stands until then, so that
 * there is always a way that keeps all limits: to rest at the end of what was seen before. Work is
 * in proportion to the blocks while braking takes few of those seen.
 */
final class FeedPlan {
  /** Takes the blocks in their order. */
  @FunctionalInterface
  interface Taker {
    void take(DueMove due);
  }

  private static final double ROUNDING = 1e-9;

  /** Without progress this part of the blocks seen is taken as planned. */
  private static final int PART = 4;

  /** Knots before the end of a final part that are planned again. */
  private static final int KEPT = 4;

  private final int most;
  private final SeenBlocks seen;
  private final KnotChain chain;
  private final DueMove due = new DueMove();

  // By border.
  private final double[] braking;
  private final int[] brakingKnot;

  /** The knot of the chain behind which all is planned again with more blocks. */
  private int kept;

  /** Whether the feed is steady there. */
  private boolean isSteady;

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
      if (!plan() && !extend(chain.size() - 1)) {
        stopAtEach();
      }
      emit(chain.runOn(chain.size() - 1), taker);
    }
    seen.count = 0;
    chain.clear();
    kept = 0;
  }

  /** Makes room for a block. */
  private void advance(Taker taker) {
    int last = chain.runOn(plan() ? cut() : cutAsBefore());
    int done = last;
    if (!isSteady) {
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
    kept = last - done;
  }

  private int least() {
    return Math.max(1, most / PART);
  }

  // Planning.

  /**
   * Plans anew behind the knot that is kept, to rest at the end. If that fails, what was planned
   * before still stands: to rest at the end of what was seen then.
   */
  private boolean plan() {
    if (chain.size() == 0) {
      chain.add(0, 0);
    }
    seen.measure(chain.speed(0));
    boolean planned = extend(kept);
    if (!planned && chain.size() == kept + 1) {
      stopAtEach();
      return true;
    }
    return planned;
  }

  /** Goes on with the chain from a knot to rest at the end, if there is a way. */
  private boolean extend(int knot) {
    chain.save();
    chain.end(knot + 1);
    brake(chain.border(knot));
    findKnots();
    chain.dropIdle(knot);
    if (chain.settle(knot)) {
      return true;
    }
    chain.restore();
    return false;
  }

  /** Goes on with the chain from rest at its end, with a stop behind each block. */
  private void stopAtEach() {
    int from = chain.size() - 1;
    for (int j = chain.border(from) + 1; j <= seen.count; j++) {
      chain.add(j, 0);
    }
    chain.settle(from);
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
      if (seen.plain[j] && j > start) {
        continue;
      }
      double way = seen.places[knot] - seen.places[j];
      double limit = j == start ? Double.POSITIVE_INFINITY : seen.limits[j];
      // Each stretch is braked on as its own limits allow.
      boolean touches =
          (j > start && seen.changes(j))
              || braking[knot] > limit
              || SpeedRamp.passes(braking[knot], limit, way, acceleration, jerk);
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
      double before = speed;
      speed =
          reached(
              speed,
              braking[next],
              seen.places[next] - seen.places[at],
              SeenBlocks.weakest(seen.accelerations, at, next),
              SeenBlocks.weakest(seen.jerks, at, next));
      if (speed < before) {
        speed = seen.braked(at, next, before, speed);
      }
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
      if (seen.plain[j]) {
        continue;
      }
      double way = seen.places[j] - seen.places[from];
      boolean above =
          speed > braking[j] || SpeedRamp.passes(speed, braking[j], way, acceleration, jerk);
      // Where acceleration may jump, each stretch is gone up as its own limit allows.
      boolean jumps =
          j < seen.count && seen.changes(j) && Double.isInfinite(Math.min(jerk, seen.jerks[j]));
      if (!above && !jumps && j < seen.count) {
        continue;
      }
      if (brakingKnot[j] != j) {
        return brakingKnot[j];
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
   * The knot up to which the end of what is seen does not slow down; one is made where the feed is
   * steady, or where enough blocks would not become final otherwise.
   */
  private int cut() {
    int least = least();
    int last = chain.size() - 2;
    while (last > 0 && isBraked(last)) {
      last--;
    }
    int at = chain.border(last);
    int to = chain.border(last + 1);
    SpeedProfile way = chain.way(last);
    double start = seen.places[at];
    int border = at;
    while (border + 1 < to && seen.places[border + 1] - start <= way.peakTo()) {
      border++;
    }
    isSteady =
        border > at
            && border >= least
            && seen.places[border] - start >= way.peakFrom()
            && chain.divide(last, border);
    if (isSteady) {
      return last + 1;
    }
    while (at < least && chain.border(last + 1) <= least && last + 2 < chain.size()) {
      last++;
      at = chain.border(last);
    }
    if (at < least && least < chain.border(last + 1) && chain.divide(last, least)) {
      return last + 1;
    }
    return at > 0 ? last : last + 1;
  }

  /** Whether a knot is there only because braking for what follows is limited otherwise behind. */
  private boolean isBraked(int knot) {
    int border = chain.border(knot);
    double speed = chain.speed(knot);
    return speed < seen.limits[border] * (1 - ROUNDING)
        && speed >= braking[border] * (1 - ROUNDING);
  }

  /** The same where nothing could be planned behind the knot that is kept. */
  private int cutAsBefore() {
    isSteady = false;
    if (kept > 0) {
      return kept;
    }
    int next = chain.border(1);
    if (next > 1) {
      chain.divide(0, Math.min(least(), next / 2));
    }
    return 1;
  }

  // Giving out.

  /** Gives out the blocks of the chain up to a knot. */
  private void emit(int done, Taker taker) {
    for (int k = 0; k < done; k++) {
      SpeedProfile way = chain.way(k);
      int from = chain.border(k);
      int to = chain.border(k + 1);
      double start = 0;
      double timeBefore = 0;
      for (int j = from; j < to; j++) {
        double end = seen.places[j + 1] - seen.places[from];
        boolean last = j + 1 == to;
        double timeAfter = last ? way.seconds() : way.timeAt(end);
        due.take(way, start, end, timeAfter - timeBefore);
        if (last) {
          due.endsAt(chain.speed(k + 1));
        }
        taker.take(due);
        timeBefore = timeAfter;
        start = end;
      }
    }
  }
}

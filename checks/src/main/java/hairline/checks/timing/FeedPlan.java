package hairline.checks.timing;

/**
 * Plans the feed along the blocks that a control sees ahead: as fast as their speeds, the corners
 * between them, acceleration and jerk allow, and at rest at the end of the last block seen. Speeds
 * in mm/s, lengths in mm, times in s.
 *
 * <p>Acceleration is zero wherever a limit is touched (a knot); between two knots the feed rises,
 * stays and falls within one acceleration and jerk, those of the weakest block on the way. Without
 * a jerk limit that is the fastest plan there is. With one, a plan that lets acceleration run on
 * through a knot may be faster.
 *
 * <p>What the end of the last block seen does not slow down is final; the rest is planned again
 * with the blocks that follow. Work is in proportion to the blocks while braking takes few of those
 * seen.
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

  private final int most;
  private int blocks;
  private double entry;

  // By block.
  private final double[] lengths;
  private final double[] caps;
  private final double[] accelerations;
  private final double[] jerks;

  // By border: 0 is the start of the first block.
  private final double[] corners;
  private final double[] places;
  private final double[] limits;
  private final double[] braking;
  private final int[] brakingKnot;
  private final int[] knots;
  private final double[] knotSpeeds;
  private int knotCount;

  /**
   * A plan.
   *
   * @param lookAhead how many blocks after the present one are seen, 0 or more
   */
  FeedPlan(int lookAhead) {
    this.most = lookAhead + 1;
    lengths = new double[most];
    caps = new double[most];
    accelerations = new double[most];
    jerks = new double[most];
    corners = new double[most + 1];
    places = new double[most + 1];
    limits = new double[most + 1];
    braking = new double[most + 1];
    brakingKnot = new int[most + 1];
    knots = new int[most + 1];
    knotSpeeds = new double[most + 1];
  }

  boolean isEmpty() {
    return blocks == 0;
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
    if (blocks == most) {
      advance(taker);
    }
    corners[blocks] = blocks == 0 ? Double.POSITIVE_INFINITY : corner;
    lengths[blocks] = length;
    caps[blocks] = cap;
    accelerations[blocks] = acceleration;
    jerks[blocks] = jerk;
    blocks++;
  }

  /** Comes to rest at the end of the last block. */
  void rest(Taker taker) {
    if (blocks > 0) {
      plan();
      emit(blocks, taker);
    }
    blocks = 0;
    entry = 0;
  }

  /** Makes room for a block. */
  private void advance(Taker taker) {
    plan();
    int last = knotCount >= 2 ? knots[knotCount - 2] : 0;
    int done = last;
    if (done < Math.max(1, most / PART)) {
      done = Math.max(1, most / PART);
    }
    entry = emit(done, taker);
    // The first border's corner is part of the entry now.
    shift(lengths, done);
    shift(caps, done);
    shift(accelerations, done);
    shift(jerks, done);
    System.arraycopy(corners, done, corners, 0, blocks - done);
    blocks -= done;
    if (blocks == 0) {
      // All that was seen is done, and it ended at rest.
      entry = 0;
    }
  }

  private void shift(double[] values, int by) {
    System.arraycopy(values, by, values, 0, blocks - by);
  }

  // Planning.

  private void plan() {
    places[0] = 0;
    for (int k = 0; k < blocks; k++) {
      places[k + 1] = places[k] + lengths[k];
    }
    limits[0] = entry;
    for (int j = 1; j < blocks; j++) {
      limits[j] = Math.min(corners[j], Math.min(caps[j - 1], caps[j]));
    }
    limits[blocks] = 0;
    brake();
    findKnots();
    dropIdleKnots();
  }

  /** Whether nothing changes at a border: the way goes straight on at the same speed. */
  private boolean plain(int border) {
    return border > 0
        && border < blocks
        && caps[border - 1] == caps[border]
        && accelerations[border - 1] == accelerations[border]
        && jerks[border - 1] == jerks[border]
        && corners[border] >= caps[border];
  }

  /** The highest speed at each border from which all that follows can be kept. */
  private void brake() {
    int knot = blocks;
    braking[blocks] = 0;
    brakingKnot[blocks] = blocks;
    double acceleration = Double.POSITIVE_INFINITY;
    double jerk = Double.POSITIVE_INFINITY;
    for (int j = blocks - 1; j >= 0; j--) {
      acceleration = Math.min(acceleration, accelerations[j]);
      jerk = Math.min(jerk, jerks[j]);
      double way = places[knot] - places[j];
      double limit = j == 0 ? Double.POSITIVE_INFINITY : limits[j];
      boolean touches =
          braking[knot] > limit || SpeedRamp.passes(braking[knot], limit, way, acceleration, jerk);
      if (touches && plain(j)) {
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
    knotCount = 0;
    addKnot(0, entry);
    int at = 0;
    double speed = entry;
    while (at < blocks) {
      int next = next(at, speed);
      speed =
          reached(
              speed,
              braking[next],
              places[next] - places[at],
              weakest(accelerations, at, next),
              weakest(jerks, at, next));
      addKnot(next, speed);
      at = next;
    }
  }

  /**
   * Drops knots at which no limit is touched and which the way can do without: under a jerk limit a
   * border may seem to be in the way because acceleration was not yet taken back before it.
   */
  private void dropIdleKnots() {
    int kept = 1;
    for (int k = 1; k < knotCount; k++) {
      boolean idle =
          k + 1 < knotCount
              && knotSpeeds[k] < limits[knots[k]] * (1 - 1e-9)
              && clear(knots[kept - 1], knotSpeeds[kept - 1], knots[k + 1], knotSpeeds[k + 1]);
      if (!idle) {
        knots[kept] = knots[k];
        knotSpeeds[kept] = knotSpeeds[k];
        kept++;
      }
    }
    knotCount = kept;
  }

  /** Whether the fastest way between two borders keeps all limits between them. */
  private boolean clear(int from, double fromSpeed, int to, double toSpeed) {
    double way = places[to] - places[from];
    double change =
        SpeedRamp.length(
            fromSpeed, toSpeed, weakest(accelerations, from, to), weakest(jerks, from, to));
    if (change > way) {
      return false;
    }
    SpeedProfile profile = profile(from, fromSpeed, to, toSpeed);
    for (int j = from + 1; j < to; j++) {
      if (profile.speedAt(places[j] - places[from]) > limits[j] * (1 + 1e-9)) {
        return false;
      }
    }
    return true;
  }

  private void addKnot(int border, double speed) {
    knots[knotCount] = border;
    knotSpeeds[knotCount] = speed;
    knotCount++;
  }

  /** The next border at which a limit is touched on the way up, or that the way down ends at. */
  private int next(int from, double speed) {
    double acceleration = Double.POSITIVE_INFINITY;
    double jerk = Double.POSITIVE_INFINITY;
    for (int j = from + 1; j <= blocks; j++) {
      acceleration = Math.min(acceleration, accelerations[j - 1]);
      jerk = Math.min(jerk, jerks[j - 1]);
      double way = places[j] - places[from];
      boolean above =
          speed > braking[j] || SpeedRamp.passes(speed, braking[j], way, acceleration, jerk);
      if (!above && j < blocks) {
        continue;
      }
      if (brakingKnot[j] != j) {
        return brakingKnot[j];
      }
      if (plain(j) && SpeedRamp.length(speed, limits[j], acceleration, jerk) > way) {
        continue;
      }
      return j;
    }
    return blocks;
  }

  /** The speed reached on a way, a limit at most; mostly the limit, which takes no root to see. */
  private static double reached(
      double from, double limit, double way, double acceleration, double jerk) {
    return limit <= from || SpeedRamp.length(from, limit, acceleration, jerk) <= way
        ? limit
        : Math.min(limit, SpeedRamp.reached(from, way, acceleration, jerk));
  }

  private double reachable(int from, int to, double speed) {
    return SpeedRamp.reached(
        speed,
        places[to] - places[from],
        weakest(accelerations, from, to),
        weakest(jerks, from, to));
  }

  private static double weakest(double[] values, int from, int to) {
    double weakest = Double.POSITIVE_INFINITY;
    for (int k = from; k < to; k++) {
      weakest = Math.min(weakest, values[k]);
    }
    return weakest;
  }

  // Giving out.

  /** Gives out so many blocks; the answer is the speed at their end. */
  private double emit(int done, Taker taker) {
    double exit = entry;
    for (int k = 0; k + 1 < knotCount && knots[k] < done; k++) {
      exit = between(knots[k], knotSpeeds[k], knots[k + 1], knotSpeeds[k + 1], done, taker);
    }
    return exit;
  }

  /** The blocks between two knots, up to a border at which giving out ends. */
  private double between(
      int from, double fromSpeed, int to, double toSpeed, int done, Taker taker) {
    SpeedProfile profile = profile(from, fromSpeed, to, toSpeed);
    for (int j = from + 1; j < to; j++) {
      double allowed = limits[j];
      if (profile.speedAt(places[j] - places[from]) > allowed * (1 + 1e-9)) {
        // Another limit stands in the way: touch it.
        double speed =
            Math.min(allowed, Math.min(reachable(from, j, fromSpeed), reachable(j, to, toSpeed)));
        double exit = between(from, fromSpeed, j, speed, done, taker);
        return done > j ? between(j, speed, to, toSpeed, done, taker) : exit;
      }
    }
    double exit = fromSpeed;
    double timeBefore = 0;
    for (int j = from; j < Math.min(to, done); j++) {
      double start = places[j] - places[from];
      double end = places[j + 1] - places[from];
      double timeAfter = j + 1 == to ? profile.seconds() : profile.timeAt(end);
      double next = j + 1 == to ? toSpeed : profile.speedAt(end);
      taker.take(move(profile, start, end, exit, next, timeAfter - timeBefore));
      timeBefore = timeAfter;
      exit = next;
    }
    return exit;
  }

  private SpeedProfile profile(int from, double fromSpeed, int to, double toSpeed) {
    double cap = 0;
    for (int k = from; k < to; k++) {
      cap = Math.max(cap, caps[k]);
    }
    for (int k = from; k < to; k++) {
      // A slower block on the way holds where the peak would fall into it.
      if (caps[k] < cap) {
        SpeedProfile tried = make(from, fromSpeed, to, toSpeed, cap);
        double start = places[k] - places[from];
        if (tried.peakTo() > start && tried.peakFrom() < start + lengths[k]) {
          cap = Math.max(caps[k], Math.max(fromSpeed, toSpeed));
        }
      }
    }
    return make(from, fromSpeed, to, toSpeed, cap);
  }

  private SpeedProfile make(int from, double fromSpeed, int to, double toSpeed, double cap) {
    return new SpeedProfile(
        fromSpeed,
        toSpeed,
        places[to] - places[from],
        cap,
        weakest(accelerations, from, to),
        weakest(jerks, from, to));
  }

  private static PlannedMove move(
      SpeedProfile profile, double start, double end, double entry, double exit, double seconds) {
    double length = end - start;
    double peakFrom = Math.max(start, Math.min(end, profile.peakFrom()));
    double peakTo = Math.max(peakFrom, Math.min(end, profile.peakTo()));
    double peak =
        profile.peakFrom() >= end ? exit : profile.peakTo() <= start ? entry : profile.peak();
    return new PlannedMove(
        seconds,
        entry * PER_MINUTE,
        exit * PER_MINUTE,
        peak * PER_MINUTE,
        seconds > 0 ? length / seconds * PER_MINUTE : 0,
        profile.peakTo() <= start ? 0 : (peakFrom - start) / length,
        profile.peakFrom() >= end ? 1 : (peakTo - start) / length);
  }
}

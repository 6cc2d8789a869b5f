package hairline.checks.timing;

import java.util.Arrays;

/**
 * Knots are the borders at which a plan touches a limit, each with a speed and an acceleration;
 * between two of them the fastest way is taken. A chain begins and ends without acceleration.
 *
 * <p>A chain whose knots have no acceleration is quickly found but may be slow where limits follow
 * each other more closely than acceleration can be built up. {@link #runOn} lets acceleration run
 * on through them: in rounds, each knot is left out where the way can do without, put where the way
 * without it goes beyond a limit farthest, or given more or less acceleration or speed, as long as
 * that gains time; a knot more is made where such a way meets another limit. All limits are kept
 * after each step, so the chain is a plan at any time.
 */
final class KnotChain {
  private static final int MOST_ROUNDS = 6;

  /** Gains below this part of the time are left. */
  private static final double WORTH = 5e-4;

  /** Gains by acceleration alone, known beforehand, are left below this part of what changes. */
  private static final double EASED_WORTH = 0.35 * WORTH;

  private static final int EASES = 4;

  /** Longest step of an acceleration, as a part of its scale. */
  private static final double LONGEST_STEP = 0.5;

  private static final double FIRST_STEP = 0.25;
  private static final double SHORTER = 0.4;
  private static final double SHORTEST = 0.03;
  private static final double ROUNDING = 1e-9;
  private static final int REPAIRS_OF_EACH = 2;

  private final SeenBlocks seen;
  private SpeedProfile profile = new SpeedProfile();
  private SpeedProfile profileBefore = new SpeedProfile();

  private int count;
  private int[] borders = new int[0];
  private double[] speeds = new double[0];
  private double[] accelerations = new double[0];
  private double[] steps = new double[0];
  private double[] scales = new double[0];
  private boolean[] hopeful = new boolean[0];

  // As remembered.
  private int savedCount;
  private int[] savedBorders = new int[0];
  private double[] savedSpeeds = new double[0];
  private double[] savedAccelerations = new double[0];

  // Of the way from a knot to the next one.
  private double[] seconds = new double[0];
  private double[] peaks = new double[0];

  // The same way once it was settled, so that it need not be solved again to be given out; each
  // place has a profile of its own, and keeps one for another day where the way is not settled.
  private SpeedProfile[] settled = new SpeedProfile[0];
  private boolean[] isSettled = new boolean[0];

  // The way last looked at.
  private int wayFrom;
  private int wayTo;
  private double waySpeed;
  private double wayRate;
  private double wayEndSpeed;
  private double wayEndRate;
  private double waySlowest;
  private double wayLowest;
  private double wayAcceleration;
  private double wayJerk;
  private int exceeded;

  // Of the last try.
  private double spent;
  private int viaBorder;
  private double viaSpeed;
  private double viaAcceleration;
  private double viaSeconds;
  private boolean viaPlanned;

  KnotChain(SeenBlocks seen) {
    this.seen = seen;
    room(16);
  }

  int size() {
    return count;
  }

  int border(int knot) {
    return borders[knot];
  }

  double speed(int knot) {
    return speeds[knot];
  }

  void clear() {
    count = 0;
  }

  /** Forgets all knots before one, and counts borders from its own. */
  void begin(int knot) {
    for (int k = 0; k < knot; k++) {
      isSettled[k] = false;
    }
    SpeedProfile[] spare = Arrays.copyOf(settled, knot);
    move(knot, 0, count - knot);
    System.arraycopy(spare, 0, settled, count - knot, knot);
    Arrays.fill(isSettled, count - knot, count, false);
    count -= knot;
    int first = borders[0];
    for (int k = 0; k < count; k++) {
      borders[k] -= first;
    }
  }

  /** Forgets all knots from one on. */
  void end(int knot) {
    for (int k = Math.max(0, knot - 1); k < count; k++) {
      isSettled[k] = false;
    }
    count = knot;
  }

  /** Adds a knot without acceleration. */
  void add(int border, double speed) {
    insert(count, border, speed, 0);
  }

  /**
   * Makes a knot of a border within the way from one knot to the next, as that way passes it; the
   * answer is whether both parts are found again.
   */
  boolean divide(int knot, int border) {
    SpeedProfile way = way(knot);
    double place = seen.places[border] - seen.places[borders[knot]];
    double speed = way.speedAt(place);
    double jerk = SeenBlocks.weakest(seen.jerks, borders[knot], borders[knot + 1]);
    double acceleration = Double.isInfinite(jerk) ? 0 : way.accelerationAt(place);
    insert(knot + 1, border, speed, acceleration);
    if (found(knot) && found(knot + 1)) {
      return true;
    }
    remove(knot + 1);
    found(knot);
    return false;
  }

  /** Remembers the knots, all of whose ways are found, so that they can be had back. */
  void save() {
    if (savedBorders.length < count) {
      savedBorders = new int[borders.length];
      savedSpeeds = new double[borders.length];
      savedAccelerations = new double[borders.length];
    }
    savedCount = count;
    System.arraycopy(borders, 0, savedBorders, 0, count);
    System.arraycopy(speeds, 0, savedSpeeds, 0, count);
    System.arraycopy(accelerations, 0, savedAccelerations, 0, count);
  }

  /** Takes back all that was done since the knots were remembered. */
  void restore() {
    end(0);
    for (int k = 0; k < savedCount; k++) {
      insert(k, savedBorders[k], savedSpeeds[k], savedAccelerations[k]);
    }
    for (int k = 0; k + 1 < count; k++) {
      found(k);
    }
  }

  private void insert(int knot, int border, double speed, double acceleration) {
    if (count == borders.length) {
      room(2 * count);
    }
    SpeedProfile spare = settled[count];
    move(knot, knot + 1, count - knot);
    settled[knot] = spare;
    unsettle(knot - 1);
    unsettle(knot);
    borders[knot] = border;
    speeds[knot] = speed;
    accelerations[knot] = acceleration;
    count++;
  }

  private void remove(int knot) {
    SpeedProfile spare = settled[knot];
    move(knot + 1, knot, count - knot - 1);
    count--;
    settled[count] = spare;
    isSettled[count] = false;
    unsettle(knot - 1);
  }

  private void unsettle(int knot) {
    if (knot >= 0) {
      isSettled[knot] = false;
    }
  }

  private void move(int from, int to, int length) {
    System.arraycopy(borders, from, borders, to, length);
    System.arraycopy(speeds, from, speeds, to, length);
    System.arraycopy(accelerations, from, accelerations, to, length);
    System.arraycopy(steps, from, steps, to, length);
    System.arraycopy(scales, from, scales, to, length);
    System.arraycopy(hopeful, from, hopeful, to, length);
    System.arraycopy(seconds, from, seconds, to, length);
    System.arraycopy(peaks, from, peaks, to, length);
    System.arraycopy(settled, from, settled, to, length);
    System.arraycopy(isSettled, from, isSettled, to, length);
  }

  private void room(int length) {
    borders = Arrays.copyOf(borders, length);
    speeds = Arrays.copyOf(speeds, length);
    accelerations = Arrays.copyOf(accelerations, length);
    steps = Arrays.copyOf(steps, length);
    scales = Arrays.copyOf(scales, length);
    hopeful = Arrays.copyOf(hopeful, length);
    seconds = Arrays.copyOf(seconds, length);
    peaks = Arrays.copyOf(peaks, length);
    isSettled = Arrays.copyOf(isSettled, length);
    int before = settled.length;
    settled = Arrays.copyOf(settled, length);
    for (int k = before; k < length; k++) {
      settled[k] = new SpeedProfile();
    }
  }

  // Without acceleration.

  /**
   * Drops knots at which no limit is touched and which the way can do without: under a jerk limit a
   * border may seem to be in the way because acceleration was not yet taken back before it.
   *
   * @param fixed the last knot that cannot be dropped
   */
  void dropIdle(int fixed) {
    for (int k = count - 2; k > fixed; k--) {
      if (speeds[k] < seen.limits[borders[k]] * (1 - ROUNDING)
          && fits(k - 1, k + 1)
          && exceeded == 0
          && (!seen.changes(borders[k]) || gains(k))) {
        remove(k);
      }
    }
  }

  /** Whether the way last planned is no slower than that over the knot it leaves out. */
  private boolean gains(int k) {
    double direct = profile.seconds();
    if (!fits(k - 1, k)) {
      return true;
    }
    double before = profile.seconds();
    return !fits(k, k + 1) || direct <= before + profile.seconds();
  }

  /**
   * Makes a knot of each border behind one at which a way between knots exceeds the limit, and
   * slows knots down that are too fast for their neighbours; the answer is whether all ways are
   * found then, and keep all limits.
   *
   * @param fixed the last knot that cannot be changed
   */
  boolean settle(int fixed) {
    int left = REPAIRS_OF_EACH * (count + 1);
    for (int k = fixed; k + 1 < count; k++) {
      if (isSettled[k]) {
        continue;
      }
      boolean found = fits(k, k + 1);
      while (found && exceeded > 0) {
        double speed =
            Math.min(
                seen.limits[exceeded],
                Math.min(
                    seen.reachable(borders[k], exceeded, speeds[k]),
                    seen.reachable(exceeded, borders[k + 1], speeds[k + 1])));
        insert(k + 1, exceeded, seen.braked(borders[k], exceeded, speeds[k], speed), 0);
        found = fits(k, k + 1);
      }
      if (found) {
        keep(k);
      } else if (left-- > 0 && slowsDown(k, fixed)) {
        // What leads to the knot that was slowed down is to be found again, too.
        k = Math.max(fixed, k - 1) - 1;
      } else {
        return false;
      }
    }
    return true;
  }

  /** Slows down the faster end of a way that is too short for its change of speed. */
  private boolean slowsDown(int k, int fixed) {
    int faster = speeds[k] > speeds[k + 1] ? k : k + 1;
    int slower = 2 * k + 1 - faster;
    double speed = seen.reachable(borders[k], borders[k + 1], speeds[slower]);
    if (faster <= fixed || faster + 1 == count || speed >= speeds[faster]) {
      return false;
    }
    speeds[faster] = speed;
    unsettle(faster - 1);
    unsettle(faster);
    return true;
  }

  /** Keeps the way last planned as that from a knot to the next one. */
  private void keep(int k) {
    profile = keep(k, profile);
  }

  /** Keeps a way as that from a knot to the next one; the answer is a spare one. */
  private SpeedProfile keep(int k, SpeedProfile way) {
    seconds[k] = way.seconds();
    peaks[k] = way.peak();
    SpeedProfile spare = settled[k];
    settled[k] = way;
    isSettled[k] = true;
    return spare;
  }

  /** Finds the way from a knot to the next one as it is; whether there is one. */
  private boolean found(int k) {
    return isSettled[k] || find(k);
  }

  private boolean find(int k) {
    if (keeps(k, k + 1)) {
      keep(k);
    }
    return isSettled[k];
  }

  // With acceleration.

  /**
   * Lets acceleration run on through knots where that gains time.
   *
   * @param last the knot before which this ends
   * @return where that knot stands then
   */
  int runOn(int last) {
    int behind = count - last;
    divideAtChanges(behind);
    boolean any = false;
    for (int k = 1; k < count - behind; k++) {
      any |= look(k);
    }
    for (int round = 0; round < MOST_ROUNDS && any; round++) {
      any = false;
      for (int k = 1; k < count - behind; k++) {
        if (hopeful[k]) {
          hopeful[k] = false;
          any = true;
          if (better(k)) {
            k--;
          }
        }
      }
    }
    for (int k = 0; k < count - behind; k++) {
      found(k);
    }
    return count - behind;
  }

  /**
   * Makes knots where acceleration or jerk are limited otherwise behind than before, if that gains
   * time: on either side its own limits hold then, instead of the weaker ones.
   */
  private void divideAtChanges(int behind) {
    for (int k = 0; k < count - behind; k++) {
      boolean divided = false;
      for (int j = borders[k] + 1; j < borders[k + 1] && !divided; j++) {
        if (seen.changes(j)) {
          double before = seconds[k];
          divided = divide(k, j);
          if (divided && seconds[k] + seconds[k + 1] > before * (1 - WORTH)) {
            remove(k + 1);
            found(k);
            divided = false;
          }
        }
      }
    }
  }

  /** Takes a first look at a knot without acceleration: may running on gain anything? */
  private boolean look(int knot) {
    double jerk = seen.jerks[borders[knot]];
    hopeful[knot] = false;
    scales[knot] = 0;
    if (Double.isInfinite(jerk)) {
      return false;
    }
    double speed = speeds[knot];
    double up = Math.max(peaks[knot] - speed, speed - speeds[knot - 1]);
    double down = Math.max(peaks[knot - 1] - speed, speed - speeds[knot + 1]);
    double scale = Math.sqrt(jerk * Math.max(up, down));
    scales[knot] = scale;
    steps[knot] = up >= down ? FIRST_STEP * scale : -FIRST_STEP * scale;
    hopeful[knot] = accelerations[knot] != 0 || promises(knot) || isBelowLimit(knot);
    return hopeful[knot];
  }

  /** Tries to gain time at a knot; the answer is whether it was dropped. */
  private boolean better(int k) {
    if (isAlone(k)) {
      eased(k, seconds[k - 1] + seconds[k]);
      return false;
    }
    return betterOrDropped(k);
  }

  private boolean betterOrDropped(int k) {
    double before = seconds[k - 1] + seconds[k];
    double start = before;
    if (fits(k - 1, k + 1)) {
      int worst = exceeded > 0 ? worst(borders[k - 1], borders[k + 1]) : 0;
      double there =
          worst > 0 ? profile.accelerationAt(seen.places[worst] - seen.places[borders[k - 1]]) : 0;
      double direct = worst == 0 || slows() ? profile.seconds() : Double.POSITIVE_INFINITY;
      if (worst > 0 && (worst != borders[k] || accelerations[k] == 0)) {
        double limit = seen.limits[worst];
        double less = Math.min(before, direct);
        if (moves(k, worst, limit, there, less) || moves(k, worst, limit, there / 2, less)) {
          hope(k, before - spent, start);
          return false;
        }
      }
      if (direct <= before) {
        seconds[k - 1] = direct;
        remove(k);
        hope(k - 1);
        hope(k);
        return true;
      }
    }
    double speed = speeds[k];
    double acceleration = accelerations[k];
    int border = borders[k];
    double step = steps[k];
    double limit = seen.limits[border];
    if (!isBelowLimit(k)) {
      if (eased(k, before)) {
        return false;
      }
    } else {
      for (double part = 1; part > 0.05; part /= 3) {
        double faster = speed + (limit - speed) * part;
        if (moves(k, border, faster, acceleration, before)
            || moves(k, border, faster, acceleration + step, before)
            || moves(k, border, faster, acceleration - step, before)) {
          hope(k, before - spent, start);
          return false;
        }
      }
    }
    if (moves(k, border, speed, acceleration + step, before)) {
      hope(k, before - spent, start);
    } else if (moves(k, border, speed, acceleration - step, before)) {
      steps[k] = -steps[k];
      hope(k, before - spent, start);
    } else {
      steps[k] *= SHORTER;
      hopeful[k] = Math.abs(steps[k]) > SHORTEST * scales[k];
    }
    return false;
  }

  /**
   * Gives a knot the acceleration with which both its ways take least time, by the slopes of their
   * times; whether that gains any.
   */
  private boolean eased(int k, double start) {
    hopeful[k] = false;
    if (!found(k - 1) || !found(k)) {
      return false;
    }
    double slope = slope(k);
    double step = step(k, slope);
    return isWorth(k, slope, step) && eased(k, start, slope, step);
  }

  /** Whether a step of the acceleration gains enough, by the slope of the time there. */
  private boolean isWorth(int k, double slope, double step) {
    return -slope * step / 2 > EASED_WORTH * changing(k);
  }

  /** The same from a step that promises enough. */
  private boolean eased(int k, double start, double firstSlope, double firstStep) {
    double before = start;
    double changing = changing(k);
    double most = mostAcceleration(k);
    double longest = LONGEST_STEP * scales[k];
    double slope = firstSlope;
    double step = firstStep;
    int knots = count;
    int failed = 0;
    for (int tries = 0; tries < EASES && failed < EASES - 1; tries++) {
      step = Math.max(-longest, Math.min(longest, step));
      double next = Math.max(-most, Math.min(most, accelerations[k] + step));
      step = next - accelerations[k];
      if (!(-slope * step / 2 > EASED_WORTH * changing)) {
        break;
      }
      if (moves(k, borders[k], speeds[k], next, before)) {
        before = spent;
        if (count != knots || !isSettled[k - 1] || !isSettled[k]) {
          break;
        }
        double turned = slope(k);
        double bend = (turned - slope) / step;
        slope = turned;
        step = bend > 0 ? -slope / bend : -slope / bend(k);
      } else {
        longest = Math.abs(step) / 4;
        failed++;
      }
    }
    if (start - before > WORTH * changing) {
      for (int j = k - 1; j <= k + 1 + count - knots; j++) {
        if (j != k || count > knots) {
          hope(j);
        }
      }
    }
    return before < start;
  }

  /** How the time changes with the acceleration at a knot both of whose ways are found. */
  private double slope(int k) {
    return settled[k - 1].endSlope() + settled[k].startSlope();
  }

  /** How that slope changes with the acceleration, about. */
  private double bend(int k) {
    return settled[k - 1].endBend() + settled[k].startBend();
  }

  /** The time for which the feed changes towards a knot and away from it. */
  private double changing(int k) {
    return settled[k - 1].endChanging() + settled[k].startChanging();
  }

  /**
   * The change of acceleration that gains most, about. Where the feed was steady at the speed of
   * the knot, it has to fall below that to gather way for the acceleration there: that costs 0.6869
   * |a|³/(J² v) (exact, from the ramp down to a/√2 and up again).
   */
  private double step(int k, double slope) {
    double bend = bend(k);
    SpeedProfile falling = slope < 0 ? settled[k - 1] : settled[k];
    if (accelerations[k] != 0 || falling.peak() > speeds[k] * (1 + ROUNDING)) {
      return -slope / bend;
    }
    double jerk = falling.jerk();
    double cubic = 3 * 0.6869 / (jerk * jerk * speeds[k]);
    double step = (Math.sqrt(bend * bend + 4 * cubic * Math.abs(slope)) - bend) / (2 * cubic);
    return slope < 0 ? step : -step;
  }

  /** Up to v the acceleration a takes a²/2J of speed, which a knot may not lack. */
  private double mostAcceleration(int k) {
    double jerk = Math.min(settled[k - 1].jerk(), settled[k].jerk());
    return Math.min(seen.acceleration(borders[k]), Math.sqrt(2 * jerk * speeds[k]));
  }

  /** Whether acceleration at a knot without any would gain enough. */
  private boolean promises(int k) {
    if (!found(k - 1) || !found(k)) {
      return true;
    }
    double slope = slope(k);
    double step = Math.min(LONGEST_STEP * scales[k], Math.abs(step(k, slope)));
    return isWorth(k, -Math.abs(slope), step);
  }

  /**
   * Whether nothing but its own limit holds the ways before and behind a knot: then no way without
   * it is looked for, because one that is as fast would go beyond that limit.
   */
  private boolean isAlone(int k) {
    if (isBelowLimit(k)
        || !found(k - 1)
        || !found(k)
        || !settled[k - 1].isHump()
        || !settled[k].isHump()) {
      return false;
    }
    for (int j = borders[k - 1] + 1; j < borders[k + 1]; j++) {
      if (!seen.plain[j] && j != borders[k]) {
        return false;
      }
    }
    return true;
  }

  private boolean isBelowLimit(int k) {
    return speeds[k] < seen.limits[borders[k]] * (1 - ROUNDING);
  }

  /** A knot was bettered: it and its neighbours are worth another look if that gained much. */
  private void hope(int knot, double gained, double of) {
    if (gained > WORTH * of) {
      hope(knot - 1);
      hope(knot);
      hope(knot + 1);
    } else {
      steps[knot] *= SHORTER;
      hopeful[knot] = Math.abs(steps[knot]) > SHORTEST * scales[knot];
    }
  }

  private void hope(int knot) {
    if (knot > 0 && knot + 1 < count && scales[knot] > 0) {
      hopeful[knot] = true;
    }
  }

  /** Moves a knot if that gains time. */
  private boolean moves(int k, int border, double speed, double acceleration, double before) {
    if (Math.abs(acceleration) > seen.acceleration(border)) {
      return false;
    }
    int oldBorder = borders[k];
    double oldSpeed = speeds[k];
    double oldAcceleration = accelerations[k];
    borders[k] = border;
    speeds[k] = speed;
    accelerations[k] = acceleration;
    double first = via(k - 1, k);
    if (first < before) {
      int firstBorder = viaBorder;
      double firstSpeed = viaSpeed;
      double firstAcceleration = viaAcceleration;
      double firstPart = viaSeconds;
      boolean firstPlanned = viaPlanned;
      SpeedProfile spare = profileBefore;
      profileBefore = profile;
      profile = spare;
      double second = via(k, k + 1);
      if (first + second < before) {
        spent = first + second;
        unsettle(k - 1);
        unsettle(k);
        if (firstPlanned) {
          profileBefore = keep(k - 1, profileBefore);
        }
        if (viaPlanned) {
          profile = keep(k, profile);
        }
        seconds[k - 1] = first;
        seconds[k] = second;
        if (viaBorder > 0) {
          split(k, viaBorder, viaSpeed, viaAcceleration, viaSeconds);
        }
        if (firstBorder > 0) {
          split(k - 1, firstBorder, firstSpeed, firstAcceleration, firstPart);
        }
        return true;
      }
    }
    borders[k] = oldBorder;
    speeds[k] = oldSpeed;
    accelerations[k] = oldAcceleration;
    return false;
  }

  /** The time from one knot to another, over a knot more if that is faster. */
  private double via(int k, int m) {
    viaBorder = 0;
    viaPlanned = fits(k, m) && exceeded == 0;
    if (viaPlanned) {
      return profile.seconds();
    }
    return exceeded == 0 ? Double.POSITIVE_INFINITY : viaWorst(k, m);
  }

  /** The same over the border at which the way last planned exceeds the limit most. */
  private double viaWorst(int k, int m) {
    int from = borders[k];
    int to = borders[m];
    int border = worst(from, to);
    double there = profile.accelerationAt(seen.places[border] - seen.places[from]);
    double limit = seen.limits[border];
    double direct = slows() ? profile.seconds() : Double.POSITIVE_INFINITY;
    if (Math.abs(there) > seen.acceleration(border)
        || !keeps(from, speeds[k], accelerations[k], border, limit, there)) {
      return direct;
    }
    double first = profile.seconds();
    if (!keeps(border, limit, there, to, speeds[m], accelerations[m])
        || first + profile.seconds() >= direct) {
      return direct;
    }
    viaSeconds = first;
    viaBorder = border;
    viaSpeed = limit;
    viaAcceleration = there;
    return viaSeconds + profile.seconds();
  }

  /** Makes a knot between one and the next. */
  private void split(int k, int border, double speed, double acceleration, double before) {
    double scale = scales[k] > 0 ? scales[k] : scales[k + 1];
    double whole = seconds[k];
    insert(k + 1, border, speed, acceleration);
    seconds[k] = before;
    seconds[k + 1] = whole - before;
    scales[k + 1] = scale;
    steps[k + 1] = Math.max(Math.abs(acceleration), scale) * FIRST_STEP;
    hopeful[k + 1] = true;
  }

  // Ways.

  private boolean fits(int k, int m) {
    return fits(borders[k], speeds[k], accelerations[k], borders[m], speeds[m], accelerations[m]);
  }

  private boolean keeps(int k, int m) {
    return fits(k, m) && (exceeded == 0 || slows());
  }

  private boolean keeps(
      int from, double speed, double acceleration, int to, double toSpeed, double toAcceleration) {
    return fits(from, speed, acceleration, to, toSpeed, toAcceleration)
        && (exceeded == 0 || slows());
  }

  /**
   * Plans the way between two borders, as fast as its fastest block; whether there is one. In
   * {@link #exceeded} the first border between them at which it exceeds the limit, 0 for none.
   */
  private boolean fits(
      int from,
      double fromSpeed,
      double fromAcceleration,
      int to,
      double toSpeed,
      double toAcceleration) {
    wayFrom = from;
    wayTo = to;
    waySpeed = fromSpeed;
    wayRate = fromAcceleration;
    wayEndSpeed = toSpeed;
    wayEndRate = toAcceleration;
    exceeded = 0;
    double acceleration = seen.accelerations[from];
    double jerk = seen.jerks[from];
    double cap = seen.caps[from];
    double slowest = cap;
    double lowest = Double.POSITIVE_INFINITY;
    for (int k = from + 1; k < to; k++) {
      cap = Math.max(cap, seen.caps[k]);
      slowest = Math.min(slowest, seen.caps[k]);
      acceleration = Math.min(acceleration, seen.accelerations[k]);
      jerk = Math.min(jerk, seen.jerks[k]);
      lowest = seen.plain[k] ? lowest : Math.min(lowest, seen.limits[k]);
    }
    waySlowest = slowest;
    wayLowest = lowest;
    wayAcceleration = acceleration;
    wayJerk = jerk;
    if (Math.abs(fromAcceleration) > acceleration
        || Math.abs(toAcceleration) > acceleration
        || !planned(cap)) {
      return false;
    }
    exceeded = lowest < profile.highest() ? exceeded() : 0;
    return exceeded > 0 || !(slowest < profile.peak()) || fitsSlower(from, to);
  }

  /** Plans the way last looked at again if its peak falls into a slower block. */
  private boolean fitsSlower(int from, int to) {
    double start = seen.places[from];
    for (int k = from; k < to && exceeded == 0 && waySlowest < profile.peak(); k++) {
      // A slower block on the way holds where the peak would fall into it.
      if (seen.caps[k] < profile.peak()
          && profile.peakTo() > seen.places[k] - start
          && profile.peakFrom() < seen.places[k + 1] - start) {
        if (!planned(seen.caps[k])) {
          return false;
        }
        exceeded = exceeded();
      }
    }
    return true;
  }

  /** Plans the way last looked at as fast as its slowest block; whether all limits are kept. */
  private boolean slows() {
    return waySlowest < profile.peak() && planned(waySlowest) && exceeded() == 0;
  }

  private boolean planned(double cap) {
    return profile.plan(
        waySpeed,
        wayRate,
        wayEndSpeed,
        wayEndRate,
        seen.places[wayTo] - seen.places[wayFrom],
        cap,
        wayAcceleration,
        wayJerk);
  }

  /** The first border at which the way last planned exceeds the limit, 0 for none. */
  private int exceeded() {
    double start = seen.places[wayFrom];
    for (int j = wayFrom + 1; j < wayTo && wayLowest < profile.highest(); j++) {
      if (!seen.plain[j] && exceeds(j, start)) {
        return j;
      }
    }
    return 0;
  }

  private boolean exceeds(int border, double start) {
    double limit = seen.limits[border];
    return limit < profile.highest()
        && profile.speedAt(seen.places[border] - start) > limit * (1 + ROUNDING);
  }

  /** The border at which the way last planned exceeds the limit most. */
  private int worst(int from, int to) {
    int worst = exceeded;
    double most = 0;
    for (int j = exceeded; j < to; j++) {
      if (!seen.plain[j] && seen.limits[j] < profile.highest()) {
        double part = profile.speedAt(seen.places[j] - seen.places[from]) / seen.limits[j];
        if (part > most) {
          most = part;
          worst = j;
        }
      }
    }
    return worst;
  }

  /** The way from a knot to the next one. */
  SpeedProfile way(int knot) {
    found(knot);
    return settled[knot];
  }
}

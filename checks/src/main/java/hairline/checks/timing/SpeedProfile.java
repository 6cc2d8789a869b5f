package hairline.checks.timing;

/**
 * The fastest way between two places of a path, from one speed and acceleration to another, within
 * a speed, an acceleration and a jerk (exact mechanics). Speeds in mm/s, lengths in mm, times in s.
 *
 * <p>Along the fastest way jerk is that allowed, to either side, or none. Three shapes are known. A
 * hump rises to a peak, stays and falls. A rise ends while the speed still grows: acceleration is
 * built up, taken back in part, and built up again. A fall is a rise run backwards. Where a way
 * starts with falling or ends with rising speed and has to turn, there is a dip below the speed at
 * that end. No way is known that has to brake first because it is too short; a plan with such a way
 * in it is not the fastest.
 *
 * <p>One object plans many ways, one after the other.
 */
final class SpeedProfile {
  private static final int MOST_STEPS = 60;
  private static final int MOST_PHASES = 8;

  /** Rounding of sums that ought to be equal. */
  private static final double ROUNDING = 1e-9;

  private static final double THIRD = 1.0 / 3;

  private enum Shape {
    HUMP,
    RISE,
    FALL
  }

  private double from;
  private double fromAcceleration;
  private double to;
  private double toAcceleration;
  private double length;
  private double acceleration;
  private double jerk;

  /** 1 over the jerk; 0 where none is limited. */
  private double perJerk;

  private Shape shape = Shape.HUMP;
  private double seconds;
  private double steady;
  private double peak;
  private double peakFrom;
  private double peakTo;
  private double pull;
  private double perPeak;

  // How its time changes with the acceleration at its ends.
  private double startSlope;
  private double endSlope;

  // Of the ramp last looked at.
  private double rampSeconds;
  private double rampLength;
  private double rampAcceleration;
  private double rampHold;

  // Of the one down from the peak, looked at before that up to it.
  private double downLength;
  private double downSeconds;
  private double downAcceleration;
  private double upSeconds;
  private double upAcceleration;

  /** Down to this acceleration a rise takes back the one built up. */
  private double dent;

  // Phases of one jerk each, by their starts; made when a place is first asked for.
  private int phases;
  private final double[] times = new double[MOST_PHASES];
  private final double[] places = new double[MOST_PHASES];
  private final double[] speeds = new double[MOST_PHASES];
  private final double[] accelerations = new double[MOST_PHASES];
  private final double[] jerks = new double[MOST_PHASES];
  private final double[] durations = new double[MOST_PHASES];
  private double endPlace;
  private double endSpeed;

  // At the place last asked for.
  private double foundPlace;
  private double foundTime;
  private double foundSpeed;
  private double foundAcceleration;
  private int foundPhase;

  /**
   * Plans a way.
   *
   * @param from speed at its start
   * @param fromAcceleration acceleration there, no more than allowed; without a jerk limit it does
   *     not count
   * @param to speed at its end
   * @param toAcceleration acceleration there, no more than allowed
   * @param length its length, above 0
   * @param cap highest speed; counts as no lower than the speeds at ends without acceleration
   * @param acceleration highest acceleration
   * @param jerk highest jerk, infinity for none
   * @return whether there is one; if not, and acceleration is zero at both ends, what is planned
   *     takes more length than there is
   */
  boolean plan(
      double from,
      double fromAcceleration,
      double to,
      double toAcceleration,
      double length,
      double cap,
      double acceleration,
      double jerk) {
    this.from = from;
    // Without a jerk limit acceleration may jump at the ends.
    this.fromAcceleration = Double.isInfinite(jerk) ? 0 : fromAcceleration;
    this.to = to;
    this.toAcceleration = Double.isInfinite(jerk) ? 0 : toAcceleration;
    this.length = length;
    this.acceleration = acceleration;
    this.jerk = jerk;
    perJerk = 1 / jerk;
    phases = 0;
    foundPlace = -1;
    shape = Shape.HUMP;
    // The speed stays above zero where it falls at the start, or rises at the end.
    boolean startsAboveRest = fromAcceleration >= 0 || ended(from, fromAcceleration) > 0;
    boolean endsAboveRest = toAcceleration <= 0 || ended(to, -toAcceleration) > 0;
    if (startsAboveRest && endsAboveRest && hump(cap)) {
      return true;
    }
    return !Double.isInfinite(jerk) && oneWay(startsAboveRest, endsAboveRest);
  }

  /** Up all the way, or down. */
  private boolean oneWay(boolean startsAboveRest, boolean endsAboveRest) {
    boolean up = ended(to, -toAcceleration) >= ended(from, fromAcceleration);
    // Where acceleration is above zero at both ends it need not come down to zero between them.
    if (toAcceleration > 0 && (up || fromAcceleration >= 0)) {
      shape = Shape.RISE;
      peak = to;
      peakFrom = length;
      peakTo = length;
      if (!startsAboveRest || !rise(from, fromAcceleration, to, toAcceleration)) {
        return false;
      }
      startSlope = dentedSlope(from, fromAcceleration, to, toAcceleration, true);
      endSlope = dentedSlope(from, fromAcceleration, to, toAcceleration, false);
    } else if (fromAcceleration < 0 && (!up || toAcceleration <= 0)) {
      shape = Shape.FALL;
      peak = from;
      peakFrom = 0;
      peakTo = 0;
      if (!endsAboveRest || !rise(to, -toAcceleration, from, -fromAcceleration)) {
        return false;
      }
      startSlope = -dentedSlope(to, -toAcceleration, from, -fromAcceleration, false);
      endSlope = -dentedSlope(to, -toAcceleration, from, -fromAcceleration, true);
    } else {
      return false;
    }
    perPeak = 1 / peak;
    upSeconds = seconds;
    downSeconds = seconds;
    upAcceleration = atFoot(from, fromAcceleration);
    downAcceleration = atFoot(to, -toAcceleration);
    return true;
  }

  /** The highest acceleration between a speed and the peak. */
  private double atFoot(double speed, double rate) {
    return highestRate(jerk * (peak - speed) + rate * rate / 2, Math.abs(rate));
  }

  // Up, steady, down.

  private boolean hump(double cap) {
    double lowest = Math.max(ended(from, fromAcceleration), ended(to, -toAcceleration));
    double highest = cap;
    highest = fromAcceleration == 0 ? Math.max(highest, from) : highest;
    highest = toAcceleration == 0 ? Math.max(highest, to) : highest;
    if (lowest > highest) {
      if (lowest > highest * (1 + ROUNDING)) {
        return false;
      }
      highest = lowest;
    }
    double needed = both(highest);
    if (needed <= length) {
      humpOf(highest, 1 / highest);
      return true;
    }
    double least = both(lowest);
    if (least >= length) {
      humpOf(lowest, lowest > 0 ? 1 / lowest : 0);
      return least <= length * (1 + ROUNDING);
    }
    if (perJerk == 0) {
      double top = unjerkedPeak(lowest, highest);
      both(top);
      humpOf(top, 1 / top);
    } else {
      double top = peakBetween(lowest, highest, needed);
      humpOf(top, pull);
    }
    return true;
  }

  /** The speed at which an acceleration has been taken back. */
  private double ended(double speed, double rate) {
    return speed + rate * Math.abs(rate) * perJerk / 2;
  }

  /** The length that both ramps to a peak take. */
  private double both(double top) {
    ramp(to, -toAcceleration, top);
    downLength = rampLength;
    downSeconds = rampSeconds;
    downAcceleration = rampAcceleration;
    ramp(from, fromAcceleration, top);
    return rampLength + downLength;
  }

  /** Looks at the ramp from a speed and an acceleration up to a speed without acceleration. */
  private void ramp(double speed, double rate, double top) {
    double least = Math.max(0, rate);
    double square = Math.max(least * least, jerk * (top - speed) + rate * rate / 2);
    if (!(square <= acceleration * acceleration)) {
      heldRamp(speed, rate, top, square);
      return;
    }
    double most = Math.sqrt(square);
    rampAcceleration = most;
    rampHold = 0;
    rampSeconds = perJerk * (2 * most - rate);
    rampLength = rampLength(speed, rate, top, most);
  }

  /** The sum of its stretches under a jerk, with what cancels out left out. */
  private double rampLength(double speed, double rate, double top, double most) {
    double bent = perJerk * rate * rate * (most / 2 - THIRD * rate);
    return perJerk * ((most - rate) * speed + most * top - bent);
  }

  /** The same where acceleration reaches its limit, as it does at once without a jerk limit. */
  private void heldRamp(double speed, double rate, double top, double square) {
    double most = acceleration;
    rampAcceleration = most;
    if (perJerk == 0) {
      rampHold = Math.max(0, top - speed) / most;
      rampSeconds = rampHold;
      rampLength = rampHold * (speed + top) / 2;
      return;
    }
    double hold = (square - most * most) * perJerk / most;
    rampHold = hold;
    rampSeconds = perJerk * (2 * most - rate) + hold;
    rampLength =
        rampLength(speed, rate, top, most) + hold * (top - most * (hold + most * perJerk) / 2);
  }

  /** The peak at which both ramps take the whole length, without a jerk limit. */
  private double unjerkedPeak(double lowest, double highest) {
    double square = (2 * acceleration * length + from * from + to * to) / 2;
    return Math.max(lowest, Math.min(highest, Math.sqrt(square)));
  }

  /** The peak at which both ramps, looked at last then, take the whole length, from below. */
  private double peakBetween(double lowest, double highest, double neededForHighest) {
    // The length grows smoothly with the root of the rise above the lowest peak.
    double low = 0;
    double high = Math.sqrt(highest - lowest);
    double longer = 1;
    double farther = highest;
    double root = high * Math.sqrt(length / neededForHighest);
    for (int k = 0; k < MOST_STEPS && high - low > 1e-11 * high; k++) {
      if (!(root > low && root < high)) {
        root = (low + high) / 2;
      }
      double top = lowest + root * root;
      double off = both(top) - length;
      // What the ramps gain in time and in length with the peak, and how that changes.
      double up = 1 / rampAcceleration;
      double down = 1 / downAcceleration;
      longer = up + down;
      farther = top * longer + (rampAcceleration + downAcceleration) * perJerk / 2;
      if (off > 0) {
        high = root;
      } else {
        low = root;
        if (off > -1e-10 * length) {
          pull = longer / farther;
          return top;
        }
      }
      double bent = bent(rampAcceleration, up, top) + bent(downAcceleration, down, top);
      // Aims a little too low, so that the answer is approached from below (Halley's method).
      double aim = off + 3e-11 * length;
      double slope = 2 * root * farther;
      double turn = 2 * farther + 4 * root * root * bent;
      root -= 2 * aim * slope / (2 * slope * slope - aim * turn);
    }
    double top = lowest + low * low;
    both(top);
    pull = longer / farther;
    return top;
  }

  /** How what a ramp gains in length with its peak changes with that. */
  private double bent(double most, double perMost, double top) {
    return most < acceleration ? perMost * (1.25 - top * jerk * perMost * perMost / 2) : perMost;
  }

  /** The hump with the ramps last looked at, which lead to this peak. */
  private void humpOf(double top, double cost) {
    peak = top;
    pull = cost;
    perPeak = top > 0 ? 1 / top : 0;
    steady = Math.max(0, length - downLength - rampLength) * perPeak;
    upSeconds = rampSeconds;
    upAcceleration = Math.max(rampAcceleration, -fromAcceleration);
    seconds = upSeconds + steady + downSeconds;
    peakFrom = Math.min(length, rampLength);
    peakTo = Math.max(peakFrom, length - downLength);
    startSlope = humpSlope(from, fromAcceleration, rampAcceleration);
    endSlope = -humpSlope(to, -toAcceleration, downAcceleration);
    downAcceleration = Math.max(downAcceleration, toAcceleration);
  }

  // Up all the way, or down.

  /** Plans from the slower to the faster end; accelerations are those of that direction. */
  private boolean rise(double low, double lowRate, double high, double highRate) {
    double change = jerk * (high - low);
    double squares = (highRate * highRate - lowRate * lowRate) / 2;
    double slack = ROUNDING * (lowRate * lowRate + highRate * highRate);
    if (change < squares - slack || (lowRate > 0 && change < -squares - slack)) {
      return false;
    }
    // The way shortens as less acceleration is taken back.
    double left =
        lowRate > 0
            ? Math.sqrt(Math.max(0, (lowRate * lowRate + highRate * highRate) / 2 - change))
            : 0;
    double right = highRate;
    double leftOff = dented(low, lowRate, high, highRate, left) - length;
    double rightOff = dented(low, lowRate, high, highRate, right) - length;
    if (leftOff < -ROUNDING * length || rightOff > ROUNDING * length) {
      return false;
    }
    // The rest of a way that was as short as can be lies at one of the ends, but for rounding.
    dent = rightOff >= 0 ? right : left;
    double off = leftOff <= 0 || rightOff >= 0 ? 0 : leftOff;
    for (int k = 0; k < MOST_STEPS && Math.abs(off) > 1e-12 * length; k++) {
      dent = left + (right - left) * leftOff / (leftOff - rightOff);
      if (!(dent > left && dent < right)) {
        dent = (left + right) / 2;
      }
      double before = off;
      off = dented(low, lowRate, high, highRate, dent) - length;
      if (off > 0) {
        left = dent;
        leftOff = off;
        rightOff = before > 0 ? rightOff / 2 : rightOff;
      } else {
        right = dent;
        rightOff = off;
        leftOff = before < 0 ? leftOff / 2 : leftOff;
      }
    }
    dented(low, lowRate, high, highRate, dent);
    seconds = rampSeconds;
    return true;
  }

  /**
   * The length of a rise whose acceleration is built up, taken back to a value, and built up again;
   * its time is in {@link #rampSeconds}.
   */
  private double dented(double low, double lowRate, double high, double highRate, double dented) {
    double square =
        Math.max(
            0,
            jerk * (high - low) + dented * dented + (lowRate * lowRate - highRate * highRate) / 2);
    rampHold = 0;
    if (square > acceleration * acceleration) {
      rampAcceleration = acceleration;
      rampHold = (square - acceleration * acceleration) / (jerk * acceleration);
    } else {
      rampAcceleration = Math.max(Math.sqrt(square), Math.max(lowRate, dented));
    }
    double most = rampAcceleration;
    double first = (most - lowRate) / jerk;
    double second = (most - dented) / jerk;
    double third = (highRate - dented) / jerk;
    rampSeconds = first + rampHold + second + third;
    double way = first * (low + first * (lowRate / 2 + first * jerk / 6));
    double speed = low + first * (lowRate + most) / 2;
    way += rampHold * (speed + rampHold * most / 2);
    speed += rampHold * most;
    way += second * (speed + second * (most / 2 - second * jerk / 6));
    speed += second * (most + dented) / 2;
    return way + third * (speed + third * (dented / 2 + third * jerk / 6));
  }

  // Phases.

  private void build() {
    foundPhase = 0;
    endPlace = 0;
    endSpeed = from;
    switch (shape) {
      case HUMP -> {
        ramp(from, fromAcceleration, peak);
        phase((rampAcceleration - fromAcceleration) / jerk, fromAcceleration, jerk);
        phase(rampHold, rampAcceleration, 0);
        phase(rampAcceleration / jerk, rampAcceleration, -jerk);
        phase(steady, 0, 0);
        ramp(to, -toAcceleration, peak);
        phase(rampAcceleration / jerk, 0, -jerk);
        phase(rampHold, -rampAcceleration, 0);
        phase((rampAcceleration + toAcceleration) / jerk, -rampAcceleration, jerk);
      }
      case RISE -> {
        dented(from, fromAcceleration, to, toAcceleration, dent);
        double most = rampAcceleration;
        phase((most - fromAcceleration) / jerk, fromAcceleration, jerk);
        phase(rampHold, most, 0);
        phase((most - dent) / jerk, most, -jerk);
        phase((toAcceleration - dent) / jerk, dent, jerk);
      }
      case FALL -> {
        dented(to, -toAcceleration, from, -fromAcceleration, dent);
        double most = rampAcceleration;
        phase((-fromAcceleration - dent) / jerk, fromAcceleration, jerk);
        phase((most - dent) / jerk, -dent, -jerk);
        phase(rampHold, -most, 0);
        phase((most + toAcceleration) / jerk, -most, jerk);
      }
    }
  }

  private void phase(double duration, double rate, double withJerk) {
    if (!(duration > 0)) {
      return;
    }
    int k = phases++;
    durations[k] = duration;
    times[k] = k == 0 ? 0 : times[k - 1] + durations[k - 1];
    places[k] = endPlace;
    speeds[k] = endSpeed;
    accelerations[k] = rate;
    jerks[k] = withJerk;
    endPlace += duration * (endSpeed + duration * (rate / 2 + duration * withJerk / 6));
    endSpeed = Math.max(0, endSpeed + duration * (rate + duration * withJerk / 2));
  }

  // Asking.

  double jerk() {
    return jerk;
  }

  /** Whether it rises, stays and falls. */
  boolean isHump() {
    return shape == Shape.HUMP;
  }

  /** The speed to which it rises; behind or before a dip it may be below those at the ends. */
  double peak() {
    return peak;
  }

  /** The highest speed anywhere. */
  double highest() {
    return Math.max(peak, Math.max(from, to));
  }

  double seconds() {
    return seconds;
  }

  /** The time from its start for which the feed changes. */
  double startChanging() {
    return upSeconds;
  }

  /** The time to its end for which the feed changes. */
  double endChanging() {
    return downSeconds;
  }

  /** Where along the length the peak is reached. */
  double peakFrom() {
    return peakFrom;
  }

  /** Where along the length the peak is left. */
  double peakTo() {
    return peakTo;
  }

  /**
   * How its time changes with the acceleration at its start, in s per mm/s², under a jerk limit.
   */
  double startSlope() {
    return startSlope;
  }

  /** How its time changes with the acceleration at its end, in s per mm/s², under a jerk limit. */
  double endSlope() {
    return endSlope;
  }

  /** How its slope changes with the acceleration at its start: exact where the feed is steady. */
  double startBend() {
    return 1.5 * upAcceleration * perJerk * perJerk * perPeak;
  }

  /** How its slope changes with the acceleration at its end: exact where the feed is steady. */
  double endBend() {
    return 1.5 * downAcceleration * perJerk * perJerk * perPeak;
  }

  /**
   * How the time of a hump changes with the acceleration at the foot of a ramp: by the time of that
   * ramp, its peak held, less what the length that it takes costs.
   */
  private double humpSlope(double speed, double rate, double most) {
    if (most <= 0) {
      return 0;
    }
    double first = (most - rate) * perJerk;
    double turned = speed + first * (rate + most) / 2;
    return -first / most * (1 - pull * turned) - pull * first * first / 2;
  }

  private double highestRate(double square, double least) {
    return square > acceleration * acceleration
        ? acceleration
        : Math.max(Math.sqrt(Math.max(0, square)), least);
  }

  /** The same of a rise, with the acceleration at its lower or at its higher end. */
  private double dentedSlope(
      double low, double lowRate, double high, double highRate, boolean atLow) {
    double square =
        jerk * (high - low) + dent * dent + (lowRate * lowRate - highRate * highRate) / 2;
    double most = highestRate(square, Math.max(lowRate, dent));
    if (most <= 0) {
      return 0;
    }
    double first = (most - lowRate) / jerk;
    double second = (most - dent) / jerk;
    double third = (highRate - dent) / jerk;
    double dented = high - third * (dent + highRate) / 2;
    double risen = dented - second * (dent + most) / 2;
    // What the dent gains in time and in length.
    double sooner = 2 * (dent / most - 1) / jerk;
    double shorter =
        (2 * dent / most - 1) / jerk * risen
            + second * dent / jerk
            - second * second / 2
            - dented / jerk;
    double cost = shorter < 0 ? sooner / shorter : 0;
    if (atLow) {
      double turned = low + first * (lowRate + most) / 2;
      return -first / most * (1 - cost * turned) - cost * first * first / 2;
    }
    double longer =
        dented / jerk
            - highRate / most / jerk * risen
            - second * highRate / jerk
            - third * third / 2;
    return (1 - highRate / most) / jerk - cost * longer;
  }

  /**
   * How much time a mm more to go costs, in s/mm, if it has a peak within: 1 over the peak where
   * the feed is steady there.
   */
  double pull() {
    return pull;
  }

  /** Where a dip behind its start is deepest; 0 without one. */
  double startDipPlace() {
    if (shape == Shape.FALL || fromAcceleration >= 0) {
      return 0;
    }
    double time = -fromAcceleration / jerk;
    return time * (from + time * (fromAcceleration / 2 + time * jerk / 6));
  }

  /** The lowest speed of a dip behind its start, or the speed there. */
  double startDip() {
    return shape != Shape.FALL && fromAcceleration < 0 ? ended(from, fromAcceleration) : from;
  }

  /** Where a dip before its end is deepest; the end without one. */
  double endDipPlace() {
    if (shape == Shape.RISE || toAcceleration <= 0) {
      return length;
    }
    double time = toAcceleration / jerk;
    return length - time * (to - time * (toAcceleration / 2 - time * jerk / 6));
  }

  /** The lowest speed of a dip before its end, or the speed there. */
  double endDip() {
    return shape != Shape.RISE && toAcceleration > 0 ? ended(to, -toAcceleration) : to;
  }

  /** The time at which a place is passed. */
  double timeAt(double place) {
    find(place);
    return foundTime;
  }

  /** The speed at a place. */
  double speedAt(double place) {
    find(place);
    return foundSpeed;
  }

  /** The acceleration at a place. */
  double accelerationAt(double place) {
    find(place);
    return foundAcceleration;
  }

  private void find(double place) {
    if (place == foundPlace) {
      return;
    }
    foundPlace = place;
    if (place <= 0) {
      foundTime = 0;
      foundSpeed = from;
      foundAcceleration = fromAcceleration;
      return;
    }
    if (place >= length) {
      foundTime = seconds;
      foundSpeed = to;
      foundAcceleration = toAcceleration;
      return;
    }
    if (phases == 0) {
      build();
    }
    // Places are mostly asked for in their order.
    int k = places[foundPhase] <= place ? foundPhase : 0;
    while (k + 1 < phases && places[k + 1] <= place) {
      k++;
    }
    foundPhase = k;
    double way = place - places[k];
    double speed = speeds[k];
    double rate = accelerations[k];
    double withJerk = jerks[k];
    if (rate == 0 && withJerk == 0 && speed > 0) {
      foundTime = Math.min(seconds, times[k] + Math.min(durations[k], way / speed));
      foundAcceleration = 0;
      foundSpeed = Math.min(highest(), speed);
      return;
    }
    double time =
        withJerk == 0
            ? Math.min(durations[k], unjerked(way, speed, rate))
            : within(way, speed, rate, withJerk, durations[k]);
    foundTime = Math.min(seconds, times[k] + time);
    foundAcceleration = rate + time * withJerk;
    foundSpeed = Math.min(highest(), Math.max(0, speed + time * (rate + time * withJerk / 2)));
  }

  /** The time for a way under a steady acceleration. */
  private static double unjerked(double way, double speed, double rate) {
    double sum = speed + Math.sqrt(Math.max(0, speed * speed + 2 * rate * way));
    return sum > 0 ? 2 * way / sum : Double.POSITIVE_INFINITY;
  }

  /** The time for a way under a steady jerk, within a phase. */
  private static double within(
      double way, double speed, double rate, double withJerk, double duration) {
    double low = 0;
    double high = duration;
    double time = unjerked(way, speed, rate);
    for (int k = 0; k < MOST_STEPS; k++) {
      if (!(time > low && time < high)) {
        time = (low + high) / 2;
      }
      double off = time * (speed + time * (rate / 2 + time * withJerk / 6)) - way;
      if (off > 0) {
        high = time;
      } else {
        low = time;
      }
      double present = speed + time * (rate + time * withJerk / 2);
      double next = present > 0 ? time - off / present : (low + high) / 2;
      if (Math.abs(next - time) <= 1e-13 * duration || high - low <= 1e-14 * duration) {
        return Math.max(0, Math.min(duration, next));
      }
      time = next;
    }
    return time;
  }
}

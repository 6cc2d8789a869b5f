package hairline.checks.timing;

/**
 * The fastest motion from one speed and acceleration to another over a length, within a speed, an
 * acceleration and a jerk, by halving: jerk is put on, off and against in three pulses, with rests
 * at the highest acceleration and speed, and their size is halved until the length comes out. Plain
 * on purpose, and apart from what it is compared with.
 */
final class StateToState {
  private static final int HALVINGS = 55;

  private final double most;
  private final double jerk;

  private double fromV;
  private double fromA;
  private double toV;
  private double toA;
  private int phases;
  private final double[] durations = new double[9];
  private final double[] jerks = new double[9];

  private double pulseLength;
  private double highA;
  private double hold;

  /**
   * Motions within limits.
   *
   * @param most highest acceleration in mm/s²
   * @param jerk in mm/s³
   */
  StateToState(double most, double jerk) {
    this.most = most;
    this.jerk = jerk;
  }

  /** Whether there is such a motion; it can be asked for afterwards. */
  boolean find(double v0, double a0, double v1, double a1, double length, double cap) {
    fromV = v0;
    fromA = a0;
    toV = v1;
    toA = a1;
    phases = 0;
    if (Math.abs(a0) > most || Math.abs(a1) > most) {
      return false;
    }
    double low = Math.max(v0 + a0 * Math.abs(a0) / (2 * jerk), v1 - a1 * Math.abs(a1) / (2 * jerk));
    double high = Math.max(cap, low);
    if (low <= cap * (1 + 1e-12)) {
      if (pulses(high) <= length) {
        motion(high, (length - pulses(high)) / high);
        if (lowest() > -1e-12) {
          return true;
        }
      }
      if (phases == 0 && pulses(low) <= length) {
        for (int k = 0; k < HALVINGS; k++) {
          double middle = (low + high) / 2;
          if (pulses(middle) <= length) {
            low = middle;
          } else {
            high = middle;
          }
        }
        motion(low, 0);
        if (lowest() > -1e-12) {
          return true;
        }
      }
    }
    phases = 0;
    boolean up = v1 - a1 * Math.abs(a1) / 2 / jerk >= v0 + a0 * Math.abs(a0) / 2 / jerk;
    if (a1 > 0 && (up || a0 >= 0)) {
      return growing(v0, a0, v1, a1, length, false) && lowest() > -1e-12;
    }
    return a0 < 0
        && (!up || a1 <= 0)
        && growing(v1, -a1, v0, -a0, length, true)
        && lowest() > -1e-12;
  }

  double seconds() {
    double seconds = 0;
    for (int k = 0; k < phases; k++) {
      seconds += durations[k];
    }
    return seconds;
  }

  // Up to a speed and down again.

  private double pulses(double top) {
    pulse(fromV, fromA, top);
    double length = pulseLength;
    pulse(toV, -toA, top);
    return length + pulseLength;
  }

  private void pulse(double v, double a, double top) {
    double square = Math.max(0, jerk * (top - v) + a * a / 2);
    highA = Math.max(a, Math.min(most, Math.sqrt(square)));
    hold = Math.max(0, (square - most * most) / (jerk * most));
    double[] end = {0, v, a};
    run(end, (highA - a) / jerk, jerk);
    run(end, hold, 0);
    run(end, highA / jerk, -jerk);
    pulseLength = end[0];
  }

  private void motion(double top, double steady) {
    pulse(fromV, fromA, top);
    phase((highA - fromA) / jerk, jerk);
    phase(hold, 0);
    phase(highA / jerk, -jerk);
    phase(steady, 0);
    pulse(toV, -toA, top);
    phase(highA / jerk, -jerk);
    phase(hold, 0);
    phase((highA + toA) / jerk, jerk);
  }

  // Acceleration taken back in part and built up again, or that run backwards.

  private boolean growing(
      double v0, double a0, double v1, double a1, double length, boolean backwards) {
    double change = jerk * (v1 - v0);
    double squares = (a1 * a1 - a0 * a0) / 2;
    if (change < squares || (a0 > 0 && change < -squares)) {
      return false;
    }
    double low = a0 > 0 ? Math.sqrt(Math.max(0, (a0 * a0 + a1 * a1) / 2 - change)) : 0;
    double high = a1;
    if (dented(v0, a0, v1, a1, low) < length || dented(v0, a0, v1, a1, high) > length) {
      return false;
    }
    for (int k = 0; k < HALVINGS; k++) {
      double middle = (low + high) / 2;
      if (dented(v0, a0, v1, a1, middle) > length) {
        low = middle;
      } else {
        high = middle;
      }
    }
    dented(v0, a0, v1, a1, high);
    double dent = high;
    double[] times = {(highA - a0) / jerk, hold, (highA - dent) / jerk, (a1 - dent) / jerk};
    double[] by = {jerk, 0, -jerk, jerk};
    for (int k = 0; k < 4; k++) {
      phase(times[backwards ? 3 - k : k], by[backwards ? 3 - k : k]);
    }
    return true;
  }

  private double dented(double v0, double a0, double v1, double a1, double dent) {
    double square = Math.max(0, jerk * (v1 - v0) + dent * dent + (a0 * a0 - a1 * a1) / 2);
    highA = Math.max(Math.max(a0, dent), Math.min(most, Math.sqrt(square)));
    hold = Math.max(0, (square - most * most) / (jerk * most));
    double[] end = {0, v0, a0};
    run(end, (highA - a0) / jerk, jerk);
    run(end, hold, 0);
    run(end, (highA - dent) / jerk, -jerk);
    run(end, (a1 - dent) / jerk, jerk);
    return end[0];
  }

  // The motion found.

  private void phase(double duration, double by) {
    if (duration > 0) {
      durations[phases] = duration;
      jerks[phases] = by;
      phases++;
    }
  }

  /** Moves a place, a speed and an acceleration on. */
  private static void run(double[] state, double time, double by) {
    state[0] += time * (state[1] + time * (state[2] / 2 + time * by / 6));
    state[1] += time * (state[2] + time * by / 2);
    state[2] += time * by;
  }

  private double lowest() {
    double[] state = {0, fromV, fromA};
    double lowest = fromV;
    for (int k = 0; k < phases; k++) {
      double turn = jerks[k] == 0 ? 0 : -state[2] / jerks[k];
      if (turn > 0 && turn < durations[k]) {
        lowest = Math.min(lowest, state[1] + turn * state[2] / 2);
      }
      run(state, durations[k], jerks[k]);
      lowest = Math.min(lowest, state[1]);
    }
    return lowest;
  }

  /**
   * Place, speed and acceleration after each of so many equal steps of time, by integrating.
   *
   * @return triples, the start first
   */
  double[] stepped(int steps) {
    double step = seconds() / steps;
    double[] all = new double[3 * (steps + 1)];
    double[] state = {0, fromV, fromA};
    int phase = 0;
    double left = phases > 0 ? durations[0] : 0;
    for (int k = 0; k <= steps; k++) {
      System.arraycopy(state, 0, all, 3 * k, 3);
      double rest = step;
      while (phase < phases && left <= rest) {
        run(state, left, jerks[phase]);
        rest -= left;
        phase++;
        left = phase < phases ? durations[phase] : 0;
      }
      if (phase < phases) {
        run(state, rest, jerks[phase]);
        left -= rest;
      }
    }
    return all;
  }
}

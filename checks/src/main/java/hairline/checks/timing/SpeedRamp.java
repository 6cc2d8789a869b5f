package hairline.checks.timing;

/**
 * A change of speed along a path within an acceleration and a jerk, acceleration zero at both ends:
 * jerk up, steady, jerk down (exact mechanics). Speeds in mm/s, lengths in mm, times in s. A jerk
 * of infinity means that none is limited.
 */
final class SpeedRamp {
  private static final int NEWTON_STEPS = 3;
  private static final int MOST_STEPS = 100;

  private SpeedRamp() {}

  /** Time to change the speed by this much. */
  static double seconds(double change, double acceleration, double jerk) {
    if (Double.isInfinite(jerk)) {
      return change / acceleration;
    }
    return change * jerk <= acceleration * acceleration
        ? 2 * Math.sqrt(change / jerk)
        : change / acceleration + acceleration / jerk;
  }

  /** Length on which the speed changes from one to another, in either direction. */
  static double length(double from, double to, double acceleration, double jerk) {
    return (from + to) / 2 * seconds(Math.abs(to - from), acceleration, jerk);
  }

  /** The highest speed to be had from a lower one on this length, acceleration zero at the end. */
  static double reached(double from, double length, double acceleration, double jerk) {
    if (length <= 0) {
      return from;
    }
    if (Double.isInfinite(jerk)) {
      return Math.sqrt(from * from + 2 * acceleration * length);
    }
    double border = acceleration * acceleration / jerk;
    if (length(from, from + border, acceleration, jerk) >= length) {
      // (2 v + x²) x = L √J, for x the root of the change.
      double root = cubic(2 * from, length * Math.sqrt(jerk));
      return from + root * root;
    }
    // (2 v + c) (c + A²/J) = 2 A L, for c the change.
    double half = (2 * from + border) / 2;
    double rest = 2 * from * border - 2 * acceleration * length;
    return from + Math.sqrt(half * half - rest) - half;
  }

  /**
   * The highest speed, a value at most, to which a higher one can be taken back on this length,
   * acceleration zero at both ends. Under a jerk limit the length is greatest for a third of the
   * first speed, so where the value is out of reach a lower one may be within it; where none is,
   * the value.
   */
  static double braked(double from, double most, double length, double acceleration, double jerk) {
    if (most >= from
        || length(from, most, acceleration, jerk) <= length
        || length(from, 0, acceleration, jerk) > length) {
      return most;
    }
    double low = 0;
    double high = most;
    for (int k = 0; k < MOST_STEPS && high - low > 1e-12 * most; k++) {
      double middle = (low + high) / 2;
      if (length(from, middle, acceleration, jerk) <= length) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** The highest speed to be had on this length, whatever the acceleration at the end. */
  static double passed(double from, double length, double acceleration, double jerk) {
    if (length <= 0) {
      return from;
    }
    if (Double.isInfinite(jerk)) {
      return Math.sqrt(from * from + 2 * acceleration * length);
    }
    double rise = acceleration / jerk;
    double risen = from + acceleration * rise / 2;
    double risenLength = from * rise + acceleration * rise * rise / 6;
    if (length <= risenLength) {
      double time = cubic(6 * from / jerk, 6 * length / jerk);
      return from + jerk * time * time / 2;
    }
    return Math.sqrt(risen * risen + 2 * acceleration * (length - risenLength));
  }

  /**
   * Whether a speed, not below the first, can be passed on this length: whether {@link #passed} is
   * above it, without a root of the third degree.
   */
  static boolean passes(double from, double to, double length, double acceleration, double jerk) {
    if (length <= 0) {
      return from > to;
    }
    if (Double.isInfinite(jerk)) {
      return from * from + 2 * acceleration * length > to * to;
    }
    double rise = acceleration / jerk;
    double risen = from + acceleration * rise / 2;
    if (to <= risen) {
      double time = Math.sqrt(2 * (to - from) / jerk);
      return length > from * time + jerk * time * time * time / 6;
    }
    double risenLength = from * rise + acceleration * rise * rise / 6;
    return risen * risen + 2 * acceleration * (length - risenLength) > to * to;
  }

  /** The root of x³ + p x = q for p and q of 0 or more. */
  private static double cubic(double p, double q) {
    if (q <= 0) {
      return 0;
    }
    double third = p / 3;
    double u = StrictMath.cbrt(q / 2 + Math.sqrt(q * q / 4 + third * third * third));
    double x = Math.max(0, u - third / u);
    for (int k = 0; k < NEWTON_STEPS; k++) {
      double slope = 3 * x * x + p;
      if (slope <= 0) {
        return x;
      }
      x -= (x * x * x + p * x - q) / slope;
    }
    return Math.max(0, x);
  }
}

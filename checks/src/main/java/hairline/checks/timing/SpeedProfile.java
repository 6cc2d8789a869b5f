package hairline.checks.timing;

/**
 * The fastest way between two places of a path at which acceleration is zero: up, steady, down.
 * Speeds in mm/s, lengths in mm, times in s.
 */
final class SpeedProfile {
  private static final int MOST_STEPS = 200;

  private final double from;
  private final double to;
  private final double length;
  private final double peak;
  private final double acceleration;
  private final double jerk;
  private final double upLength;
  private final double upSeconds;
  private final double downLength;
  private final double downSeconds;
  private final double steadySeconds;

  /**
   * A profile. The change from one speed to the other must fit the length.
   *
   * @param from speed at its start
   * @param to speed at its end
   * @param length its length, above 0
   * @param cap highest speed
   * @param acceleration highest acceleration
   * @param jerk highest jerk, infinity for none
   */
  SpeedProfile(
      double from, double to, double length, double cap, double acceleration, double jerk) {
    this.from = from;
    this.to = to;
    this.length = length;
    this.acceleration = acceleration;
    this.jerk = jerk;
    this.peak = peak(from, to, length, cap, acceleration, jerk);
    this.upSeconds = SpeedRamp.seconds(peak - from, acceleration, jerk);
    this.upLength = (from + peak) / 2 * upSeconds;
    this.downSeconds = SpeedRamp.seconds(peak - to, acceleration, jerk);
    this.downLength = (to + peak) / 2 * downSeconds;
    double steady = Math.max(0, length - upLength - downLength);
    this.steadySeconds = peak > 0 ? steady / peak : 0;
  }

  private static double peak(
      double from, double to, double length, double cap, double acceleration, double jerk) {
    double low = Math.max(from, to);
    double high = Math.max(low, cap);
    if (needed(from, to, high, acceleration, jerk) <= length) {
      return high;
    }
    if (from == to) {
      return Math.min(high, SpeedRamp.reached(from, length / 2, acceleration, jerk));
    }
    if (Double.isInfinite(jerk)) {
      double square = (2 * acceleration * length + from * from + to * to) / 2;
      return Math.max(low, Math.min(high, Math.sqrt(square)));
    }
    for (int k = 0; k < MOST_STEPS && high - low > 1e-13 * high; k++) {
      double middle = (low + high) / 2;
      if (needed(from, to, middle, acceleration, jerk) <= length) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  private static double needed(
      double from, double to, double peak, double acceleration, double jerk) {
    return SpeedRamp.length(from, peak, acceleration, jerk)
        + SpeedRamp.length(to, peak, acceleration, jerk);
  }

  double peak() {
    return peak;
  }

  double seconds() {
    return upSeconds + steadySeconds + downSeconds;
  }

  /** Where along the length the peak is reached. */
  double peakFrom() {
    return upLength;
  }

  /** Where along the length the peak is left. */
  double peakTo() {
    return length - downLength;
  }

  /** The time at which a place is passed. */
  double timeAt(double place) {
    if (place <= 0) {
      return 0;
    }
    if (place >= length) {
      return seconds();
    }
    if (place < upLength) {
      return SpeedRamp.timeAt(from, peak, acceleration, jerk, place);
    }
    if (place <= length - downLength) {
      return upSeconds + (place - upLength) / peak;
    }
    return seconds() - SpeedRamp.timeAt(to, peak, acceleration, jerk, length - place);
  }

  /** The speed at a place. */
  double speedAt(double place) {
    if (place <= 0) {
      return from;
    }
    if (place >= length) {
      return to;
    }
    if (place < upLength) {
      double time = SpeedRamp.timeAt(from, peak, acceleration, jerk, place);
      return SpeedRamp.speed(from, peak, acceleration, jerk, time);
    }
    if (place <= length - downLength) {
      return peak;
    }
    double left = SpeedRamp.timeAt(to, peak, acceleration, jerk, length - place);
    return SpeedRamp.speed(to, peak, acceleration, jerk, left);
  }
}

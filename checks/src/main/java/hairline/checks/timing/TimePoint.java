package hairline.checks.timing;

/** A point in the time of a program, to count from; see {@link ProgramTime#since}. */
public final class TimePoint {
  /** The point at which a program begins. */
  public static final TimePoint START = new TimePoint(0, 0, 0);

  private final double atLeastSeconds;
  private final double atMostSeconds;
  private final long gapCount;

  TimePoint(double atLeastSeconds, double atMostSeconds, long gapCount) {
    this.atLeastSeconds = atLeastSeconds;
    this.atMostSeconds = atMostSeconds;
    this.gapCount = gapCount;
  }

  /** The part that is known of the time since the program began. */
  public double atLeastSeconds() {
    return atLeastSeconds;
  }

  double atMostSeconds() {
    return atMostSeconds;
  }

  long gapCount() {
    return gapCount;
  }
}

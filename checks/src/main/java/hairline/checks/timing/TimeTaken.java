package hairline.checks.timing;

import java.util.ArrayList;
import java.util.List;

/**
 * How long something takes, within bounds.
 *
 * <p>Times are compared to the microsecond, far below what a control resolves, so that a sum of
 * many short moves meets a limit that it meets on paper.
 *
 * @param atLeastSeconds the part that is known
 * @param atMostSeconds the longest it can be; infinite where nothing bounds it
 * @param gaps what is not known of it, one for each cause; empty where both bounds are equal
 */
public record TimeTaken(double atLeastSeconds, double atMostSeconds, List<Gap> gaps) {
  /** No time. */
  public static final TimeTaken NONE = new TimeTaken(0, 0, List.of());

  private static final double SLACK_SECONDS = 1e-6;

  public TimeTaken {
    gaps = List.copyOf(gaps);
  }

  /** A time that is known. */
  public static TimeTaken of(double seconds) {
    return new TimeTaken(seconds, seconds, List.of());
  }

  /** Whether all of it is known. */
  public boolean isKnown() {
    return gaps.isEmpty();
  }

  /** Whether an M0 or M60 stands in it, which counts as longer than any limit. */
  public boolean waitsForOperator() {
    return gaps.stream().anyMatch(gap -> gap.cause() == Cause.OPERATOR);
  }

  /** Whether it is longer than the limit. */
  public Answer exceeds(double limitSeconds) {
    if (waitsForOperator() || exceeds(atLeastSeconds, limitSeconds)) {
      return Answer.YES;
    }
    return exceeds(atMostSeconds, limitSeconds) ? Answer.UNKNOWN : Answer.NO;
  }

  /** Whether the first time is longer than the second by more than a microsecond. */
  public static boolean exceeds(double seconds, double limitSeconds) {
    return seconds > limitSeconds + SLACK_SECONDS;
  }

  /** Whether the first time is as long as the second, or short of it by a microsecond at most. */
  public static boolean reaches(double seconds, double limitSeconds) {
    return seconds >= limitSeconds - SLACK_SECONDS;
  }

  /** Both times together; of two gaps with one cause the earlier stays. */
  public TimeTaken plus(TimeTaken other) {
    return new TimeTaken(
        atLeastSeconds + other.atLeastSeconds, atMostSeconds + other.atMostSeconds, both(other));
  }

  /** The longer of both, within the bounds that follow from theirs. */
  public TimeTaken orLonger(TimeTaken other) {
    if (atLeastSeconds >= other.atMostSeconds) {
      return this;
    }
    if (other.atLeastSeconds >= atMostSeconds) {
      return other;
    }
    return new TimeTaken(
        Math.max(atLeastSeconds, other.atLeastSeconds),
        Math.max(atMostSeconds, other.atMostSeconds),
        both(other));
  }

  private List<Gap> both(TimeTaken other) {
    if (other.gaps.isEmpty()) {
      return gaps;
    }
    List<Gap> both = new ArrayList<>(gaps);
    for (Gap gap : other.gaps) {
      if (both.stream().noneMatch(known -> known.cause() == gap.cause())) {
        both.add(gap);
      }
    }
    return both;
  }
}

package hairline.checks.timing;

import hairline.checks.motion.Place;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The time that a program has taken up to the event in hand: what later stages read, and the stage
 * that plans or counts durations writes. It knows nothing of a real clock.
 */
public final class ProgramTime {
  private final Sum atLeast = new Sum();
  private final Sum atMost = new Sum();
  private final Map<Cause, Numbered> latest = new EnumMap<>(Cause.class);
  private long gapCount;
  private double eventAtLeast;
  private double eventAtMost;
  private @Nullable Cause eventCause;
  private @Nullable Place eventPlace;

  private record Numbered(long number, Gap gap) {}

  /** The known part of the time since the program began, at the start of the event in hand. */
  public double secondsNow() {
    return atLeast.value();
  }

  /** This point, to count from. */
  public TimePoint now() {
    return new TimePoint(atLeast.value(), atMost.value(), gapCount);
  }

  /** The time since a point, with the latest gap of each cause. */
  public TimeTaken since(TimePoint from) {
    double atLeastSeconds = Math.max(0, atLeast.value() - from.atLeastSeconds());
    if (gapCount == from.gapCount()) {
      return TimeTaken.of(atLeastSeconds);
    }
    List<Numbered> since = new ArrayList<>();
    boolean unbounded = false;
    for (Numbered gap : latest.values()) {
      if (gap.number() > from.gapCount()) {
        since.add(gap);
        unbounded |= gap.gap().cause().unbounded();
      }
    }
    since.sort((one, other) -> Long.compare(one.number(), other.number()));
    double atMostSeconds =
        unbounded
            ? Double.POSITIVE_INFINITY
            : Math.max(atLeastSeconds, atMost.value() - from.atMostSeconds());
    return new TimeTaken(atLeastSeconds, atMostSeconds, since.stream().map(Numbered::gap).toList());
  }

  /** How long the event in hand takes. */
  public TimeTaken ofThisEvent() {
    if (eventCause == null || eventPlace == null) {
      return TimeTaken.of(eventAtLeast);
    }
    double atMostSeconds = eventCause.unbounded() ? Double.POSITIVE_INFINITY : eventAtMost;
    return new TimeTaken(eventAtLeast, atMostSeconds, List.of(new Gap(eventPlace, eventCause)));
  }

  /** Lets the event in hand pass; the next one takes this time, all of it known. */
  void next(double seconds) {
    pass();
    eventAtLeast = seconds;
    eventAtMost = seconds;
    eventCause = null;
    eventPlace = null;
  }

  /**
   * Lets the event in hand pass; the time of the next one is known within bounds, of which the
   * upper one is not used where nothing bounds it.
   */
  void next(double atLeastSeconds, double atMostSeconds, Cause cause, Place at) {
    pass();
    eventAtLeast = atLeastSeconds;
    eventAtMost = cause.unbounded() ? atLeastSeconds : atMostSeconds;
    eventCause = cause;
    eventPlace = at;
  }

  private void pass() {
    atLeast.add(eventAtLeast);
    atMost.add(eventAtMost);
    if (eventCause != null && eventPlace != null) {
      gapCount++;
      latest.put(eventCause, new Numbered(gapCount, new Gap(eventPlace, eventCause)));
    }
  }

  /** A sum whose error does not grow with the number of its terms (Neumaier 1974). */
  private static final class Sum {
    private double sum;
    private double lost;

    void add(double term) {
      double next = sum + term;
      lost += Math.abs(sum) >= Math.abs(term) ? (sum - next) + term : (term - next) + sum;
      sum = next;
    }

    double value() {
      return sum + lost;
    }
  }
}

package hairline.checks.warmth;

import hairline.checks.motion.Place;
import hairline.checks.timing.TimeTaken;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the spindle has run in sum, with no stop longer than {@code limits.idle_time} between: what
 * counts, or would count, as a warm-up spelled out in the program.
 *
 * <p>Nothing in a program says "this is the warm-up". What a practitioner calls one is a spindle
 * that turns for a time and cuts nothing. So a rule asks at the first contact in a run how long it
 * has been turning: seconds are a run-up and a way down to the part, half a minute is somebody
 * warming up (our choice, no source). Measuring is not counted in {@code turning}.
 *
 * @param number counts the runs of a program from 1; 0 before the first
 * @param from where the spindle first turned in it; empty before the first
 * @param atSpeed time at the speed asked or more; nothing where the sheet asks for none
 * @param turning time of turning at any speed, measuring left out
 * @param fastestRpm fastest speed in it, of those that are known
 * @param slowestRpm slowest speed in it, of those that are known
 * @param optionalStopAt the first M1 at which the spindle turned
 */
public record Run(
    int number,
    Optional<Place> from,
    TimeTaken atSpeed,
    TimeTaken turning,
    OptionalDouble fastestRpm,
    OptionalDouble slowestRpm,
    Optional<Place> optionalStopAt) {

  /** Whether it went at more than one speed. */
  public boolean isLadder() {
    return slowestRpm.isPresent() && slowestRpm.getAsDouble() < fastestRpm.orElse(0);
  }

  /** No run yet. */
  static final Run NONE =
      new Run(
          0,
          Optional.empty(),
          TimeTaken.NONE,
          TimeTaken.NONE,
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          Optional.empty());

  Run next(Place at) {
    return new Run(
        number + 1,
        Optional.of(at),
        TimeTaken.NONE,
        TimeTaken.NONE,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Optional.empty());
  }

  Run turned(TimeTaken time, OptionalDouble rpm, boolean fastEnough, boolean measuring) {
    return new Run(
        number,
        from,
        fastEnough ? atSpeed.plus(time) : atSpeed,
        measuring ? turning : turning.plus(time),
        rpm.isPresent() && rpm.getAsDouble() > fastestRpm.orElse(0) ? rpm : fastestRpm,
        rpm.isPresent() && rpm.getAsDouble() < slowestRpm.orElse(Double.POSITIVE_INFINITY)
            ? rpm
            : slowestRpm,
        optionalStopAt);
  }

  Run stoppedByOption(Place at) {
    return optionalStopAt.isPresent()
        ? this
        : new Run(number, from, atSpeed, turning, fastestRpm, slowestRpm, Optional.of(at));
  }
}

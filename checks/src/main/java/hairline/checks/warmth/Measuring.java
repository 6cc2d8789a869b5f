package hairline.checks.warmth;

import hairline.checks.motion.Place;
import hairline.checks.timing.TimePoint;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A tool was measured.
 *
 * @param at the code
 * @param end the time at its end
 * @param rpm speed at which the spindle turned, 0 standing; empty where not known
 * @param warmUp the warm-up behind it, at its start
 * @param growth growth of the spindle at its end, which it freezes; empty where the sheet does not
 *     tell
 * @param deletable whether it stands in a block with a block-delete mark, or below such a call
 * @param optionalStopAt the M1 that stands in one block with it
 */
public record Measuring(
    Place at,
    TimePoint end,
    OptionalDouble rpm,
    WarmUp warmUp,
    Optional<GrowthPoint> growth,
    boolean deletable,
    Optional<Place> optionalStopAt) {

  /** The known part of the time from the program's beginning to its end. */
  public double secondsAtEnd() {
    return end.atLeastSeconds();
  }

  Measuring hangingOn(Place optionalStop) {
    return new Measuring(at, end, rpm, warmUp, growth, deletable, Optional.of(optionalStop));
  }
}

package hairline.checks.timing;

import java.util.Optional;

/**
 * What a plan had to keep along a move and at its ends.
 *
 * @param highestMmPerMin highest feed along it
 * @param by what sets that; empty: the feed programmed
 * @param startMmPerMin highest feed at its start, infinity where the way goes straight on
 * @param start what sets that
 * @param endMmPerMin highest feed at its end
 * @param end what sets that
 */
public record FeedLimits(
    double highestMmPerMin,
    Optional<FeedHold> by,
    double startMmPerMin,
    FeedHold start,
    double endMmPerMin,
    FeedHold end) {
  /**
   * A feed that is so near the limit of a corner is held by it: under a jerk limit a plan may pass
   * a corner a little slower than it could, with the feed still falling or rising already.
   */
  private static final double TOUCHES = 0.05;

  /** What holds the feed on the way up from the start. */
  FeedHold atStart(PlannedMove planned) {
    return planned.entryMmPerMin() >= startMmPerMin * (1 - TOUCHES) ? start : FeedHold.ACCELERATION;
  }

  /** What holds the feed on the way down to the end. */
  FeedHold atEnd(PlannedMove planned) {
    return planned.exitMmPerMin() >= endMmPerMin * (1 - TOUCHES) ? end : FeedHold.ACCELERATION;
  }
}

package hairline.checks.timing;

import hairline.checks.motion.Move;
import java.util.Optional;

/**
 * A move and the feed that the machine reaches on it.
 *
 * @param move the move
 * @param planned how the machine goes along it; empty where that can't be planned
 * @param lostSeconds how much longer it takes than at the feed programmed; 0 for rapid moves
 * @param held what holds it below the feed programmed, the greater part of the time lost if there
 *     are two; empty where it reaches that feed all the way
 */
public record FeedMove(
    Move move, Optional<PlannedMove> planned, double lostSeconds, Optional<FeedHold> held) {

  /** Mean feed as a part of the feed programmed; 1 for what is not planned, or no feed move. */
  public double share() {
    return move.isFeed() && planned.isPresent()
        ? planned.get().meanMmPerMin() / move.feedMmPerMin().orElse(0)
        : 1;
  }
}

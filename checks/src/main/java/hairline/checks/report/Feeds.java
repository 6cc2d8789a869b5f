package hairline.checks.report;

import hairline.checks.timing.FeedMove;
import hairline.checks.timing.FeedsShown;
import java.io.IOException;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * The feeds that the machine reaches in a program.
 *
 * @param shown what they come to, where a report tells that
 * @param moves all moves, for tables; they are run through again, so that none need be kept
 */
public record Feeds(Optional<FeedsShown> shown, Moves moves) {
  /** Runs through the moves of a program. */
  @FunctionalInterface
  public interface Moves {
    /**
     * Hands out each move, in their order; the answer is what they come to.
     *
     * @throws IOException if the program can't be read
     */
    FeedsShown each(Consumer<FeedMove> taker) throws IOException;
  }
}

package hairline.checks.stock;

import hairline.checks.motion.Event;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.setup.Feature;
import java.util.Optional;

/**
 * A move along a wall that still stands when the program ends, and that no other move cut back
 * further; told just before {@link Event.Ended}, in the order of the moves.
 *
 * @param move the move
 * @param feature the declared feature in which it lies
 * @param climb whether it cuts climb (true) or conventional (false); empty where the direction of
 *     the spindle is not known
 */
public record WallCut(Move move, Feature feature, Optional<Boolean> climb) implements Event {
  @Override
  public Place at() {
    return move.at();
  }
}

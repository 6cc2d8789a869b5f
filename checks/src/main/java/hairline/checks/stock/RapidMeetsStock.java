package hairline.checks.stock;

import hairline.checks.motion.Event;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.setup.Tool;
import java.util.Optional;

/**
 * A rapid move enters stock; comes just before its {@link Cut}, which stays one without contact.
 * The part is then taken as cut by it.
 *
 * @param move the rapid move
 * @param tool its tool
 * @param depthPm the largest height of the surface above the tool's end along the way
 * @param xPm where the tip is when the tool first meets stock, to a cell
 * @param yPm the same in Y
 * @param zPm the same in Z
 */
public record RapidMeetsStock(
    Move move, Optional<Tool> tool, long depthPm, long xPm, long yPm, long zPm) implements Event {
  @Override
  public Place at() {
    return move.at();
  }
}

package hairline.checks.stock;

import hairline.checks.motion.Event;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.setup.Tool;

/**
 * In a move the cone or shank of the tool comes below stock that stands beside it; comes just
 * before the {@link Cut} of that move.
 *
 * @param move the move
 * @param tool its tool
 * @param depthPm height of that stock above the tip, the largest found
 * @param reachPm how far the tool is no wider than its cutting end
 * @param xPm where that stock stands
 * @param yPm the same in Y
 */
public record BodyMeetsStock(Move move, Tool tool, long depthPm, long reachPm, long xPm, long yPm)
    implements Event {
  @Override
  public Place at() {
    return move.at();
  }
}

package hairline.checks.motion;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What a program does with one tool.
 *
 * @param number T number; empty for what is done while no tool is known to be in the spindle
 * @param first the first block that uses it
 * @param speedsRpm the spindle speeds at which it turns, in the order of their first use
 * @param feedsMmPerMin the feeds of its feed moves, from the lowest to the highest; empty without
 *     such a move
 * @param feedMm length of its feed moves
 */
public record ToolUse(
    OptionalInt number,
    Place first,
    List<Double> speedsRpm,
    Optional<Feeds> feedsMmPerMin,
    double feedMm) {

  public ToolUse {
    speedsRpm = List.copyOf(speedsRpm);
  }

  /** From the lowest to the highest feed, in mm/min. */
  public record Feeds(double lowest, double highest) {
    Feeds and(double feed) {
      return new Feeds(Math.min(lowest, feed), Math.max(highest, feed));
    }
  }
}

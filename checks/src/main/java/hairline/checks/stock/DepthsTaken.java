package hairline.checks.stock;

import hairline.checks.motion.Event;
import hairline.checks.motion.Place;
import java.util.List;

/**
 * The depths that a move takes along its path; told only where somebody asked for them. A move that
 * varies Z, or a ball's, has one stretch with its largest depth.
 *
 * @param at the block
 * @param stretches the stretches in the order of travel, together the whole path
 */
public record DepthsTaken(Place at, List<DepthStretch> stretches) implements Event {
  public DepthsTaken {
    stretches = List.copyOf(stretches);
  }
}

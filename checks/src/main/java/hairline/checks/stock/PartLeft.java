package hairline.checks.stock;

import hairline.checks.motion.Event;
import hairline.checks.motion.Place;
import java.util.List;

/**
 * The part as the program leaves it; once, just before {@link Event.Ended}. Nothing is computed
 * before somebody asks the surfaces.
 *
 * @param at the end of the program
 * @param surfaces what is left under each work offset with a stock or a cut, in the order of use;
 *     whoever keeps one keeps the whole field
 */
public record PartLeft(Place at, List<SurfaceLeft> surfaces) implements Event {
  public PartLeft {
    surfaces = List.copyOf(surfaces);
  }
}

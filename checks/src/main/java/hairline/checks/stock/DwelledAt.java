package hairline.checks.stock;

import hairline.checks.motion.Event;
import hairline.checks.motion.Place;
import java.util.Optional;

/**
 * A dwell, and what the tool touches meanwhile; comes just before its {@link Event.Dwelled}.
 *
 * @param dwell the dwell
 * @param touch what it touches; empty where place, tool or surface are not known
 */
public record DwelledAt(Event.Dwelled dwell, Optional<Touch> touch) implements Event {

  /** What a tool that stands still touches. */
  public enum Touch {
    NOTHING,
    /** Its end stands on a floor, at exactly the floor's height. */
    FLOOR,
    /** Material stands at its rim, to a cell. */
    WALL
  }

  @Override
  public Place at() {
    return dwell.at();
  }
}

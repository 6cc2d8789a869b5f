package hairline.checks.finding;

import hairline.checks.motion.Event;
import hairline.checks.motion.Place;

/** An accept comment stands in the program; sent before the first block. */
public record AcceptSeen(Accept accept) implements Event {
  @Override
  public Place at() {
    return accept.at();
  }
}

package hairline.checks.finding;

import hairline.checks.motion.Event;
import hairline.checks.motion.Place;

/** An accept comment that nothing needed; sent after everything else. */
public record AcceptUnused(Accept accept) implements Event {
  @Override
  public Place at() {
    return accept.at();
  }
}

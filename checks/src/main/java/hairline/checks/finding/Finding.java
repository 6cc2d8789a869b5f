package hairline.checks.finding;

import hairline.checks.motion.Place;
import java.util.Optional;

/**
 * What a report shows: all occurrences of one rule, in one operation, for one cause.
 *
 * @param first the first occurrence; its place is where the finding points
 * @param worst the worst occurrence
 * @param count how many occurrences
 * @param last the last place
 * @param blockDelete with which setting of the block-delete switch it holds
 * @param acceptedBecause the reason given in an accept comment; then it is shown as suppressed only
 */
public record Finding(
    Occurrence first,
    Occurrence worst,
    long count,
    Place last,
    BlockDelete blockDelete,
    Optional<String> acceptedBecause) {

  /** With which setting of the block-delete switch a finding holds. */
  public enum BlockDelete {
    BOTH,
    ONLY_ON,
    ONLY_OFF
  }

  /** Name of the rule. */
  public String rule() {
    return first.rule();
  }

  /** The level of its worst occurrence. */
  public Level level() {
    return worst.level();
  }

  /** Where it points. */
  public Place at() {
    return first.at();
  }
}

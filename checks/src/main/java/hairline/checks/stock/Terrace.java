package hairline.checks.stock;

import hairline.checks.motion.Place;
import hairline.checks.setup.Tool;
import java.util.Optional;

/**
 * One of the two finished levels of a step.
 *
 * @param levelId the level, {@link Cut#UNCUT} for the uncut top; of two levels, the smaller id was
 *     cut first
 * @param storedZPm its Z as stored
 * @param writtenZPm its Z as written
 * @param first the first block that cut it; empty for the uncut top
 * @param last the last block that cut it; empty for the uncut top
 * @param tool the tool that cut it; empty for the uncut top
 * @param firstOperation the operation of its first block, 0 for the uncut top
 * @param lastOperation the operation of its last block, 0 for the uncut top
 * @param approach from where Z came when it was first cut
 */
public record Terrace(
    int levelId,
    long storedZPm,
    long writtenZPm,
    Optional<Place> first,
    Optional<Place> last,
    Optional<Tool> tool,
    int firstOperation,
    int lastOperation,
    ApproachDirection approach) {

  /** The uncut top of the stock. */
  static Terrace uncutTop(long topPm) {
    return new Terrace(
        Cut.UNCUT,
        topPm,
        topPm,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        0,
        0,
        ApproachDirection.UNKNOWN);
  }

  /** Whether it is the uncut top of the stock. */
  public boolean uncut() {
    return levelId == Cut.UNCUT;
  }
}

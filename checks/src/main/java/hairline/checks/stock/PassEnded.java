package hairline.checks.stock;

import hairline.checks.motion.Event;
import hairline.checks.motion.Place;
import hairline.checks.setup.Feature;
import hairline.checks.setup.Tool;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * A pass is over: Z changed, the tool left at rapid or was changed, or the program ended. Comes
 * before the event that ends it.
 *
 * @param at the block that ends it
 * @param passId the pass
 * @param levelId its level, or {@link Cut#NO_LEVEL}
 * @param first its first block in contact
 * @param last its last block in contact
 * @param lengthMm length of its moves in contact
 * @param stepDownPm the largest height its cuts took
 * @param writtenStepDownPm the same from values as written
 * @param fine whether every cut of it in contact is a fine cut
 * @param spring whether every cut of it in contact is a spring pass
 * @param tool the tool, where the sheet lists it
 * @param operation the operation
 * @param feature the feature of its first cut
 * @param offset the work offset
 */
public record PassEnded(
    Place at,
    int passId,
    int levelId,
    Place first,
    Place last,
    double lengthMm,
    OptionalLong stepDownPm,
    OptionalLong writtenStepDownPm,
    boolean fine,
    boolean spring,
    Optional<Tool> tool,
    int operation,
    Optional<Feature> feature,
    String offset)
    implements Event {

  /** The same pass, with its cuts decided. */
  PassEnded withFine(boolean isFine) {
    return isFine == fine
        ? this
        : new PassEnded(
            at,
            passId,
            levelId,
            first,
            last,
            lengthMm,
            stepDownPm,
            writtenStepDownPm,
            isFine,
            spring,
            tool,
            operation,
            feature,
            offset);
  }
}

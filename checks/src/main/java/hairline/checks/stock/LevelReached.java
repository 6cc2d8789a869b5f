package hairline.checks.stock;

import hairline.checks.motion.Event;
import hairline.checks.motion.Place;
import hairline.checks.setup.Feature;
import hairline.checks.setup.Tool;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * A pass begins to cut a level; comes just before the first {@link Cut} of the pass in contact.
 *
 * @param at the block of that cut
 * @param passId the pass
 * @param levelId the level, one for each connected area of one stored Z, written Z and tool under
 *     one offset
 * @param again whether an earlier pass cut the same level
 * @param storedZPm its Z as stored
 * @param writtenZPm its Z as written
 * @param approach from where Z came
 * @param tool the tool, where the sheet lists it
 * @param operation the operation
 * @param feature the feature of that first cut
 * @param offset the work offset, "G54" and so on
 * @param stepDownPm the largest height that the first cut takes, from stored values
 * @param writtenStepDownPm the same from values as written
 */
public record LevelReached(
    Place at,
    int passId,
    int levelId,
    boolean again,
    long storedZPm,
    long writtenZPm,
    ApproachDirection approach,
    Optional<Tool> tool,
    int operation,
    Optional<Feature> feature,
    String offset,
    OptionalLong stepDownPm,
    OptionalLong writtenStepDownPm)
    implements Event {}

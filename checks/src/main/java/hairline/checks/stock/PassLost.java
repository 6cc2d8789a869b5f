package hairline.checks.stock;

import hairline.checks.motion.Event;
import hairline.checks.motion.Place;

/**
 * A move at constant Z that the control's rounding put onto a floor which is there already,
 * although it was written to another height. One comes for each such move.
 *
 * @param at its block
 * @param operation the operation
 * @param offset the work offset
 * @param storedZPm its Z as stored, and that of the floor
 * @param writtenZPm its Z as written
 * @param floorWrittenZPm what was written for the floor
 */
public record PassLost(
    Place at, int operation, String offset, long storedZPm, long writtenZPm, long floorWrittenZPm)
    implements Event {}

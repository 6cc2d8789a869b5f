package hairline.checks.stock;

import hairline.checks.motion.Event;
import hairline.checks.motion.Place;

/**
 * A step that the control's rounding took away: two adjoining levels under one offset, different as
 * written and equal as stored. All come at the end of the program, beside every {@link StepFound}.
 *
 * @param at the first block of the level that was cut later
 * @param upper the level that is higher as written
 * @param lower the level that is lower as written
 * @param writtenHeightPm the height as written, positive
 * @param offset the work offset
 */
public record StepLost(Place at, Terrace upper, Terrace lower, long writtenHeightPm, String offset)
    implements Event {

  /** The level that was cut later. */
  public Terrace later() {
    return upper.levelId() > lower.levelId() ? upper : lower;
  }
}

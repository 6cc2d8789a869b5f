package hairline.checks.stock;

import hairline.checks.motion.Event;
import hairline.checks.motion.Place;
import hairline.checks.setup.Feature;
import java.util.Optional;

/**
 * A step of the finished part: two adjoining levels of different height under one offset. All steps
 * come at the end of the program, before its {@link Event.Ended}, ordered by their lines.
 *
 * @param at the first block of the level that was cut later: from there on the step stands
 * @param upper the higher level
 * @param lower the lower level
 * @param heightPm stored height, positive
 * @param writtenHeightPm the same from values as written; may differ in sign where rounding swaps
 *     levels
 * @param feature the feature in which the border of the two levels lies
 * @param offset the work offset
 * @param borderMm length of the border; an estimate
 */
public record StepFound(
    Place at,
    Terrace upper,
    Terrace lower,
    long heightPm,
    long writtenHeightPm,
    Optional<Feature> feature,
    String offset,
    double borderMm)
    implements Event {

  /** The level that was cut later. */
  public Terrace later() {
    return upper.levelId() > lower.levelId() ? upper : lower;
  }

  /** The level that was cut earlier, or the uncut top. */
  public Terrace earlier() {
    return upper.levelId() > lower.levelId() ? lower : upper;
  }

  /** Whether both levels were cut, and by tools of different numbers. */
  public boolean byTwoTools() {
    return upper.tool().isPresent()
        && lower.tool().isPresent()
        && upper.tool().get().number() != lower.tool().get().number();
  }
}

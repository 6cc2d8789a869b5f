package hairline.checks.budget;

import hairline.checks.motion.Place;
import java.util.Optional;

/**
 * The step that a budget is about.
 *
 * @param feature name of the declared feature; empty for a step outside of any
 * @param at the first block of the level that was cut later
 * @param upperZPm Z of the upper level, as stored
 * @param lowerZPm Z of the lower level, as stored
 * @param upperUncut whether the upper level is the uncut top
 * @param nominalPm the height asked for
 * @param declared whether the sheet declares that height; else it is the one written in the program
 */
public record BudgetedStep(
    Optional<String> feature,
    Place at,
    long upperZPm,
    long lowerZPm,
    boolean upperUncut,
    long nominalPm,
    boolean declared) {

  /** The stored height, above zero. */
  public long heightPm() {
    return upperZPm - lowerZPm;
  }
}

package hairline.checks.warmth;

import hairline.checks.motion.Place;
import java.util.Optional;

/**
 * Growth of the spindle while a level was cut.
 *
 * @param levelId the level
 * @param first at its first contact
 * @param last at the end of its last contact
 * @param cold whether a fine cut of it was made with no valid warm-up
 */
public record LevelGrowth(int levelId, Contact first, Contact last, boolean cold) {

  /**
   * A contact with a level.
   *
   * @param at the block
   * @param seconds the known part of the time since the program began
   * @param growth the growth then
   * @param measuring the last measuring of the tool before; empty where none stands in the program
   */
  public record Contact(
      Place at, double seconds, GrowthPoint growth, Optional<Measuring> measuring) {

    /** Growth since the tool was measured; empty where it was not, in the program. */
    public Optional<Drift> sinceMeasuring() {
      return measuring
          .flatMap(Measuring::growth)
          .map(atMeasuring -> Drift.between(atMeasuring, growth));
    }
  }
}

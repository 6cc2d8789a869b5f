package hairline.checks.setup;

/**
 * From one number to another, both included, in the unit that its key names.
 *
 * @param lo the lower end
 * @param hi the upper end, above the lower
 */
public record NumberRange(double lo, double hi) {
  public NumberRange {
    if (!(lo < hi)) {
      throw new IllegalArgumentException("empty range " + lo + ", " + hi);
    }
  }
}

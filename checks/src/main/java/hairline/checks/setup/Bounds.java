package hairline.checks.setup;

import java.math.BigDecimal;

/**
 * What range a number must lie in, in the first unit of its dimension.
 *
 * @param lo the lower end
 * @param loIncluded whether the lower end itself is allowed
 * @param hi the upper end, allowed
 */
record Bounds(BigDecimal lo, boolean loIncluded, BigDecimal hi) {

  /** More than nothing. */
  static Bounds positive(String hi) {
    return new Bounds(BigDecimal.ZERO, false, new BigDecimal(hi));
  }

  /** Nothing or more. */
  static Bounds fromZero(String hi) {
    return new Bounds(BigDecimal.ZERO, true, new BigDecimal(hi));
  }

  /** Both ends included. */
  static Bounds between(String lo, String hi) {
    return new Bounds(new BigDecimal(lo), true, new BigDecimal(hi));
  }

  boolean contain(BigDecimal number) {
    int low = number.compareTo(lo);
    return (low > 0 || (low == 0 && loIncluded)) && number.compareTo(hi) <= 0;
  }

  /** The range in words. */
  String say(Dimension dimension) {
    return (loIncluded ? "from " : "above ") + dimension.format(lo) + " to " + dimension.format(hi);
  }
}

package hairline.checks.cutting;

import java.util.function.DoubleUnaryOperator;

/**
 * A quantity known between two ends. The unit is that of the quantity; the name of the variable
 * that holds the band gives it.
 *
 * <p>Ends are worst cases, not standard deviations: arithmetic takes the ends as they are and adds
 * nothing in quadrature.
 *
 * @param low the least value it may have
 * @param typical the value to expect
 * @param high the greatest value it may have
 */
public record Band(double low, double typical, double high) {

  /**
   * Two values that differ by less than this part of the larger one are equal in a comparison, so
   * that no binary fraction decides about a finding.
   */
  public static final double EQUAL_WITHIN = 1e-12;

  /**
   * Checks the order of the three.
   *
   * @throws IllegalArgumentException unless all are finite and low ≤ typical ≤ high
   */
  public Band {
    if (!(low <= typical && typical <= high) || Double.isInfinite(low) || Double.isInfinite(high)) {
      throw new IllegalArgumentException(
          "a band needs low <= typical <= high, not " + low + ", " + typical + ", " + high);
    }
  }

  /** A quantity known exactly. */
  public static Band ofExact(double value) {
    return new Band(value, value, value);
  }

  /**
   * The narrowest band that holds three values, of which the second stays the typical one.
   *
   * @param first the value at one end
   * @param typical the value to expect
   * @param second the value at the other end
   */
  public static Band spanning(double first, double typical, double second) {
    return new Band(
        Math.min(typical, Math.min(first, second)),
        typical,
        Math.max(typical, Math.max(first, second)));
  }

  /** Whether the ends are one value. */
  public boolean isExact() {
    return low == high;
  }

  /**
   * The band of a function of this quantity.
   *
   * @param function rising or falling all over the band
   * @throws IllegalArgumentException if its three values show that it is neither
   */
  public Band map(DoubleUnaryOperator function) {
    double atLow = function.applyAsDouble(low);
    double atHigh = function.applyAsDouble(high);
    return new Band(
        Math.min(atLow, atHigh), function.applyAsDouble(typical), Math.max(atLow, atHigh));
  }

  /** The band times a factor, which may be negative. */
  public Band scale(double factor) {
    return map(value -> value * factor);
  }

  /** The sum: low with low, high with high. */
  public Band plus(Band other) {
    return new Band(low + other.low, typical + other.typical, high + other.high);
  }

  /** The sum with an exact value. */
  public Band plus(double value) {
    return plus(ofExact(value));
  }

  /**
   * The product: low with low, high with high.
   *
   * @throws IllegalArgumentException if either band reaches below zero
   */
  public Band times(Band other) {
    Require.notNegative("low end of a factor", low);
    Require.notNegative("low end of a factor", other.low);
    return new Band(low * other.low, typical * other.typical, high * other.high);
  }

  /** The smaller of the two at each of low, typical and high. */
  public Band min(Band other) {
    return new Band(
        Math.min(low, other.low), Math.min(typical, other.typical), Math.min(high, other.high));
  }

  /** The larger of the two at each of low, typical and high. */
  public Band max(Band other) {
    return new Band(
        Math.max(low, other.low), Math.max(typical, other.typical), Math.max(high, other.high));
  }

  /** Whether this quantity is less than the limit. */
  public Certainty below(Band limit) {
    if (less(high, limit.low)) {
      return Certainty.CERTAIN;
    }
    return less(typical, limit.typical) ? Certainty.LIKELY : Certainty.NOT_SHOWN;
  }

  /** Whether this quantity is less than the limit. */
  public Certainty below(double limit) {
    return below(ofExact(limit));
  }

  /** Whether this quantity is greater than the limit. */
  public Certainty above(Band limit) {
    return limit.below(this);
  }

  /** Whether this quantity is greater than the limit. */
  public Certainty above(double limit) {
    return above(ofExact(limit));
  }

  /** Whether this quantity reaches or passes the limit. */
  public Certainty atLeast(Band limit) {
    if (!less(low, limit.high)) {
      return Certainty.CERTAIN;
    }
    return !less(typical, limit.typical) ? Certainty.LIKELY : Certainty.NOT_SHOWN;
  }

  /** Whether this quantity reaches or passes the limit. */
  public Certainty atLeast(double limit) {
    return atLeast(ofExact(limit));
  }

  private static boolean less(double a, double b) {
    return b - a > EQUAL_WITHIN * Math.max(Math.abs(a), Math.abs(b));
  }
}

package hairline.checks.report;

import java.math.BigDecimal;

/**
 * Round values along a scale: one, two or five of a power of ten apart.
 *
 * @param step from one to the next, exact
 */
public record Ticks(BigDecimal step) {
  private static final int[] ROUND = {1, 2, 5};

  /** Steps of which at most so many fit into a range. */
  public static Ticks of(double range, int most) {
    for (int power = -9; power < 9; power++) {
      for (int digit : ROUND) {
        BigDecimal step = new BigDecimal(digit).scaleByPowerOfTen(power);
        if (range / step.doubleValue() <= most) {
          return new Ticks(step);
        }
      }
    }
    return new Ticks(BigDecimal.TEN.scaleByPowerOfTen(9));
  }

  /** The number of the first value at this or above; value k is k steps. */
  public long first(double from) {
    return (long) Math.ceil(from / step.doubleValue() - 1e-9);
  }

  /** The value of this number. */
  public double value(long k) {
    return step.multiply(BigDecimal.valueOf(k)).doubleValue();
  }

  /** The value as text, with as many digits as it needs. */
  public String text(long k) {
    BigDecimal value = step.multiply(BigDecimal.valueOf(k));
    return value.signum() == 0 ? "0" : minus(value.stripTrailingZeros().toPlainString());
  }

  /** With a minus sign as wide as a digit. */
  public static String minus(String number) {
    return number.replace('-', '−');
  }
}

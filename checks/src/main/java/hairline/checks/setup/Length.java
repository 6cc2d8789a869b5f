package hairline.checks.setup;

import java.math.BigDecimal;

/**
 * A length, exact.
 *
 * @param pm the length in picometres; an inch increment such as 0.00001 in is a whole number of
 *     them
 */
public record Length(long pm) implements Comparable<Length> {

  /** No length. */
  public static final Length ZERO = new Length(0);

  private static final int MM_TO_PM_DIGITS = 9;
  private static final int UM_TO_PM_DIGITS = 6;

  /**
   * The length of this many millimetres.
   *
   * @throws ArithmeticException if it is no whole number of picometres, or beyond 9 000 km
   */
  public static Length ofMm(BigDecimal mm) {
    return new Length(mm.scaleByPowerOfTen(MM_TO_PM_DIGITS).longValueExact());
  }

  /**
   * The length of this many millimetres, written as a decimal number.
   *
   * @throws ArithmeticException if it is no whole number of picometres
   */
  public static Length ofMm(String mm) {
    return ofMm(new BigDecimal(mm));
  }

  /**
   * The length of this many micrometres, written as a decimal number.
   *
   * @throws ArithmeticException if it is no whole number of picometres
   */
  public static Length ofUm(String um) {
    return new Length(new BigDecimal(um).scaleByPowerOfTen(UM_TO_PM_DIGITS).longValueExact());
  }

  /** Millimetres, the nearest double. */
  public double mm() {
    return exactMm().doubleValue();
  }

  /** Micrometres, the nearest double. */
  public double um() {
    return BigDecimal.valueOf(pm, UM_TO_PM_DIGITS).doubleValue();
  }

  /** Millimetres, exact. */
  public BigDecimal exactMm() {
    return BigDecimal.valueOf(pm, MM_TO_PM_DIGITS);
  }

  @Override
  public int compareTo(Length other) {
    return Long.compare(pm, other.pm);
  }

  /**
   * The length as a sheet has it: in micrometres below a tenth of a millimetre, else in
   * millimetres.
   */
  @Override
  public String toString() {
    boolean small = Math.abs(pm) < 100_000_000L && pm != 0;
    BigDecimal number = BigDecimal.valueOf(pm, small ? UM_TO_PM_DIGITS : MM_TO_PM_DIGITS);
    return Numbers.plain(number) + (small ? " um" : " mm");
  }
}

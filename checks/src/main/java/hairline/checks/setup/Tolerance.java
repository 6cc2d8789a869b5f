package hairline.checks.setup;

import java.math.BigDecimal;

/**
 * How far a size may lie from its nominal: from {@code lo} to {@code hi}. A lopsided tolerance
 * moves the nominal to its middle and then is ± half its width (T).
 *
 * @param lo the smallest deviation, with its sign
 * @param hi the largest deviation, with its sign, above {@code lo}
 */
public record Tolerance(Length lo, Length hi) {
  private static final int PM_TO_UM_DIGITS = 6;
  private static final BigDecimal TWO = BigDecimal.valueOf(2);

  public Tolerance {
    if (lo.pm() >= hi.pm()) {
      throw new IllegalArgumentException("empty tolerance " + lo + ", " + hi);
    }
  }

  /** ± this much. */
  public static Tolerance plusMinus(Length halfWidth) {
    return new Tolerance(new Length(-halfWidth.pm()), halfWidth);
  }

  /** T, half the width, in micrometres. */
  public double halfWidthUm() {
    return half(Math.subtractExact(hi.pm(), lo.pm()));
  }

  /** How far the middle lies from the nominal, in micrometres, with its sign. */
  public double shiftUm() {
    return half(Math.addExact(hi.pm(), lo.pm()));
  }

  private static double half(long pm) {
    return BigDecimal.valueOf(pm, PM_TO_UM_DIGITS).divide(TWO).doubleValue();
  }

  @Override
  public String toString() {
    return lo.pm() == -hi.pm() ? "±" + hi : "[" + lo + ", " + hi + "]";
  }
}

package hairline.viewer.draw;

import hairline.checks.finding.Quantities;
import hairline.checks.report.Ticks;
import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers as the window prints them. */
public final class Texts {
  private Texts() {}

  /** An exact length in µm, e.g. "−103 µm". */
  public static String um(long pm) {
    return Ticks.minus(Quantities.um(pm));
  }

  /** An exact length in mm, e.g. "−0.103 mm". */
  public static String mm(long pm) {
    return Ticks.minus(Quantities.mm(pm));
  }

  /** A length in mm, rounded to the micrometre. */
  public static String mmRounded(double mm) {
    return Ticks.minus(decimal(mm, 3)) + " mm";
  }

  /** Hours, minutes and seconds, e.g. "0:03:12.4". */
  public static String clock(double seconds) {
    long tenths = Math.round(seconds * 10);
    long whole = tenths / 10;
    return whole / 3600 + ":" + two(whole / 60 % 60) + ":" + two(whole % 60) + "." + tenths % 10;
  }

  private static String two(long number) {
    return number < 10 ? "0" + number : Long.toString(number);
  }

  /** A number with at most so many digits behind the point. */
  public static String decimal(double value, int digits) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(digits, RoundingMode.HALF_EVEN);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  /** A stored value of so many decimal places as a number. */
  public static String stored(long value, int scale) {
    BigDecimal exact = BigDecimal.valueOf(value, scale);
    return exact.signum() == 0 ? "0" : Ticks.minus(exact.stripTrailingZeros().toPlainString());
  }
}

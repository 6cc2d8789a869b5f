package hairline.checks.finding;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers with units as messages print them: decimal point, no exponent, no needless zeros. */
public final class Quantities {
  private Quantities() {}

  /** An exact length in micrometres, e.g. "0.4 µm". */
  public static String um(long picometres) {
    return plain(BigDecimal.valueOf(picometres, 6)) + " µm";
  }

  /** An exact length in millimetres, e.g. "1.2045 mm". */
  public static String mm(long picometres) {
    return plain(BigDecimal.valueOf(picometres, 9)) + " mm";
  }

  /** A computed length in micrometres to four significant digits, e.g. "0.3125 µm". */
  public static String um(double micrometres) {
    return significant(micrometres, 4) + " µm";
  }

  /** A computed length in millimetres to four significant digits. */
  public static String mm(double millimetres) {
    return significant(millimetres, 4) + " mm";
  }

  /** A speed, e.g. "30000 rpm". */
  public static String rpm(double revolutionsPerMinute) {
    return significant(revolutionsPerMinute, 9) + " rpm";
  }

  /** A feed, e.g. "180 mm/min". */
  public static String feed(double mmPerMin) {
    return significant(mmPerMin, 5) + " mm/min";
  }

  /** A time: below a minute in seconds, else in minutes. */
  public static String time(double seconds) {
    return Math.abs(seconds) < 60
        ? significant(seconds, 3) + " s"
        : significant(seconds / 60, 3) + " min";
  }

  /** A number to so many significant digits, rounded half up, without needless zeros. */
  public static String significant(double value, int digits) {
    if (Double.isNaN(value) || Double.isInfinite(value)) {
      return "unknown";
    }
    return plain(
        new BigDecimal(Double.toString(value))
            .round(new MathContext(digits, RoundingMode.HALF_UP)));
  }

  /** A computed length in micrometres, to as many digits as tell it from the other. */
  public static String um(double micrometres, double otherMicrometres) {
    return apart(micrometres, otherMicrometres) + " µm";
  }

  /**
   * A number to four significant digits, or to as many more, eleven at most, as make it print
   * otherwise than the other; so that a figure just beyond its limit does not read like it.
   */
  public static String apart(double value, double other) {
    for (int digits = 4; digits < 12; digits++) {
      String text = significant(value, digits);
      if (!text.equals(significant(other, digits))) {
        return text;
      }
    }
    return significant(value, 4);
  }

  private static String plain(BigDecimal value) {
    return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
  }
}

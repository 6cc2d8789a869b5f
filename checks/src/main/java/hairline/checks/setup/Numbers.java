package hairline.checks.setup;

import java.math.BigDecimal;

/** Numbers as text, the same everywhere. */
final class Numbers {
  private Numbers() {}

  /** Without exponent and without trailing zeros. */
  static String plain(BigDecimal number) {
    return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
  }

  /** The shortest decimal that reads back as this double, without exponent. */
  static String plain(double number) {
    return plain(BigDecimal.valueOf(number));
  }
}

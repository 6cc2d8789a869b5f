package hairline.checks.setup;

import java.math.BigDecimal;

/** Lengths as they are typed on a command line; units as on a sheet. */
public final class LengthText {
  private LengthText() {}

  /**
   * A length with its unit, such as "2 um".
   *
   * @throws IllegalArgumentException whose message says as a clause what is wrong
   */
  public static Length withUnit(String text) {
    try {
      return exact(text, Dimension.LENGTH.read(text));
    } catch (Misread e) {
      throw wrong(e);
    }
  }

  /**
   * A length in millimetres, or in the unit that stands behind.
   *
   * @throws IllegalArgumentException whose message says as a clause what is wrong
   */
  public static Length inMm(String text) {
    try {
      return exact(text, Dimension.NUMBER.read(text));
    } catch (Misread e) {
      return withUnit(text);
    }
  }

  private static Length exact(String text, BigDecimal mm) {
    try {
      return Length.ofMm(mm);
    } catch (ArithmeticException e) {
      throw new IllegalArgumentException(
          "`" + text.strip() + "` is finer than a picometre or larger than the earth", e);
    }
  }

  private static IllegalArgumentException wrong(Misread e) {
    return new IllegalArgumentException(
        e.sentence() + "; " + e.cure().replace("the key takes", "due is"), e);
  }
}

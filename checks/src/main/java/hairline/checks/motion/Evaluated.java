package hairline.checks.motion;

import java.math.BigDecimal;

/** What a value of the program comes to. */
public sealed interface Evaluated {

  /**
   * A number.
   *
   * @param number the number
   * @param exact whether it is exactly what was written; false once a division that does not end, a
   *     root or another function has been rounded
   */
  record Known(BigDecimal number, boolean exact) implements Evaluated {
    /** An exact number. */
    public static Known of(BigDecimal number) {
      return new Known(number, true);
    }

    /** An exact whole number. */
    public static Known of(long number) {
      return of(BigDecimal.valueOf(number));
    }
  }

  /**
   * A number that cannot be told from the program.
   *
   * @param line the line that made it unknown; 0 where no line did
   * @param why the reason, e.g. {@code "#5 was never set"}
   */
  record Unknown(int line, String why) implements Evaluated {}

  /**
   * No number: what is written cannot be computed.
   *
   * @param why the reason, e.g. {@code "division by zero"}
   */
  record Refused(String why) implements Evaluated {}
}

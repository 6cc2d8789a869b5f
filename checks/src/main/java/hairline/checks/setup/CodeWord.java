package hairline.checks.setup;

import java.math.BigDecimal;

/**
 * A code of the machine: a word such as M71 or G5.1, or a call of a subprogram such as P9001.
 *
 * @param letter M, G or P
 * @param number the number, without trailing zeros, so that M8 and M08 are equal
 */
public record CodeWord(char letter, BigDecimal number) {
  public CodeWord {
    number = number.signum() == 0 ? BigDecimal.ZERO : number.stripTrailingZeros();
    if (number.scale() < 0) {
      number = number.setScale(0);
    }
  }

  /** The word of this letter and whole number. */
  public static CodeWord of(char letter, long number) {
    return new CodeWord(letter, BigDecimal.valueOf(number));
  }

  @Override
  public String toString() {
    return letter + number.toPlainString();
  }
}

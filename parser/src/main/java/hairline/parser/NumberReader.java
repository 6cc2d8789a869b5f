package hairline.parser;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Optional;

/** The text of a number token to an exact decimal. */
final class NumberReader {
  /** Any number of so many digits fits a long. */
  private static final int LONG_DIGITS = 18;

  private int digits;
  private boolean blanks;
  private String withoutBlanks = "";
  private Value.Literal literal = new Value.Literal(0, 0, Optional.empty(), false);

  /** Reads digits with at most one point among them, perhaps blanks between. */
  void read(String text, boolean negative) {
    long unscaled = 0;
    int scale = 0;
    boolean point = false;
    digits = 0;
    blanks = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '.') {
        point = true;
      } else if (c >= '0' && c <= '9') {
        digits++;
        unscaled = unscaled * 10 + (c - '0');
        if (point) {
          scale++;
        }
      } else {
        blanks = true;
      }
    }
    withoutBlanks = blanks ? text.replace(" ", "").replace("\t", "") : text;
    if (digits <= LONG_DIGITS) {
      literal = new Value.Literal(negative ? -unscaled : unscaled, scale, Optional.empty(), point);
    } else if (digits <= Limits.NUMBER_DIGITS) {
      BigInteger big = new BigInteger(withoutBlanks.replace(".", ""));
      literal = Value.Literal.of(new BigDecimal(negative ? big.negate() : big, scale), point);
    } else {
      literal = new Value.Literal(0, 0, Optional.empty(), point);
    }
  }

  /** How many digits there were. */
  int digits() {
    return digits;
  }

  /** Whether blanks stood between them. */
  boolean hasBlanks() {
    return blanks;
  }

  /** The text without its blanks. */
  String withoutBlanks() {
    return withoutBlanks;
  }

  /** The value; not to be used beyond {@link Limits#NUMBER_DIGITS}. */
  Value.Literal literal() {
    return literal;
  }
}

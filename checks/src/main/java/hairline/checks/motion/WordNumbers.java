package hairline.checks.motion;

import hairline.checks.motion.Event.BecameUnknown.Cause;
import hairline.parser.Value;
import hairline.parser.Word;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** The numbers of words that are no lengths; what is no number is told as an event. */
final class WordNumbers {
  /** Why a word is refused that has no whole number. */
  static final String WHOLE_DUE = "a whole number from 0 on is due here";

  private static final int EXACT_POWERS = 22;
  private static final long EXACT_LONG = 1L << 53;
  private static final double[] POWERS = powers();

  private final Control control;

  WordNumbers(Control control) {
    this.control = control;
  }

  private static double[] powers() {
    double[] powers = new double[EXACT_POWERS + 1];
    for (int i = 0; i <= EXACT_POWERS; i++) {
      powers[i] = BigDecimal.TEN.pow(i).doubleValue();
    }
    return powers;
  }

  /** The exact value of a word; told and empty where there is none. */
  Optional<BigDecimal> exact(Word word) {
    Evaluated value = control.evaluator.evaluate(word.value());
    if (value instanceof Evaluated.Known known) {
      return Optional.of(known.number());
    }
    tell(word, value);
    return Optional.empty();
  }

  /** Tells why a word has no number. */
  void tell(Word word, Evaluated value) {
    if (value instanceof Evaluated.Refused refused) {
      control.refuse(word.span(), String.valueOf(word.letter()), refused.why());
    } else if (value instanceof Evaluated.Unknown unknown) {
      // What a line made unknown was told there.
      control.wordUnknown(
          word.span(),
          word.letter() + ": " + unknown.why(),
          unknown.line() == 0 ? Cause.NOT_UNDERSTOOD : Cause.NOT_SAID);
    }
  }

  /** The nearest double of a word's value; told and empty where there is none. */
  OptionalDouble number(Word word) {
    return number(word, 1, 0);
  }

  /** The nearest double, in millimetres, of a word in these units. */
  OptionalDouble millimetres(Word word, Modes.Units units) {
    return units == Modes.Units.INCH ? number(word, 254, 1) : number(word, 1, 0);
  }

  private OptionalDouble number(Word word, int factor, int digits) {
    if (word.value() instanceof Value.Literal literal
        && literal.big().isEmpty()
        && literal.scale() + digits <= EXACT_POWERS
        && Math.abs(literal.unscaled()) < EXACT_LONG / factor) {
      // Both operands are exact, so the quotient is the nearest double.
      return OptionalDouble.of(
          (double) (literal.unscaled() * factor) / POWERS[literal.scale() + digits]);
    }
    Optional<BigDecimal> exact = exact(word);
    return exact.isPresent()
        ? OptionalDouble.of(exact.get().multiply(BigDecimal.valueOf(factor, digits)).doubleValue())
        : OptionalDouble.empty();
  }

  /** The whole number of a word, zero or more; told and empty where there is none. */
  OptionalInt count(Word word) {
    Optional<BigDecimal> exact = exact(word);
    if (exact.isEmpty()) {
      return OptionalInt.empty();
    }
    Optional<Long> whole = Evaluator.whole(exact.get());
    if (whole.isEmpty() || whole.get() < 0 || whole.get() > Integer.MAX_VALUE) {
      String text = word.letter() + exact.get().toPlainString();
      control.refuse(word.span(), text, WHOLE_DUE);
      return OptionalInt.empty();
    }
    return OptionalInt.of(Math.toIntExact(whole.get()));
  }
}

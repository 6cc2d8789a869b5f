package hairline.checks.motion;

import hairline.checks.motion.ControlProfile.PointlessNumber;
import hairline.checks.motion.Event.BecameUnknown.Cause;
import hairline.parser.Value;
import hairline.parser.Word;
import hairline.parser.Words;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;

/** Reads words that are lengths: from decimals in the units in force to picometres, exactly. */
final class LengthWords {
  /** Why a length that fits no long is not known. */
  static final String TOO_LARGE = "beyond 9 000 km";

  private static final int MM_DIGITS = 9;

  /** An inch is 254 · 10^8 pm. */
  private static final int INCH_DIGITS = 8;

  private static final long INCH = 254;
  private static final BigDecimal PM_PER_MM = BigDecimal.TEN.pow(MM_DIGITS);
  private static final BigDecimal PM_PER_INCH = BigDecimal.valueOf(INCH).scaleByPowerOfTen(8);
  private static final BigDecimal MICRODEGREES = BigDecimal.TEN.pow(6);
  private static final long[] POWERS = powers();

  private final Control control;

  LengthWords(Control control) {
    this.control = control;
  }

  private static long[] powers() {
    long[] powers = new long[MM_DIGITS + 1];
    powers[0] = 1;
    for (int i = 1; i < powers.length; i++) {
      powers[i] = 10 * powers[i - 1];
    }
    return powers;
  }

  /** Reads a coordinate word of this axis. */
  void read(Word word, Axis axis, ReadLength into) {
    read(Words.of(List.of(word)), 0, axis, into);
  }

  /** Reads a length word: X, Y, Z, I, J, K, R or Q. */
  void read(Word word, ReadLength into) {
    read(Words.of(List.of(word)), 0, into);
  }

  /** Reads one of these words, a coordinate of this axis. */
  void read(Words words, int i, Axis axis, ReadLength into) {
    if (axis.linear()) {
      read(words, i, into);
    } else {
      readAngle(words.get(i), into);
    }
  }

  /** Reads one of these words, a length. */
  void read(Words words, int i, ReadLength into) {
    Optional<Modes.Units> stated = control.modal.units().value();
    if (stated.isEmpty()) {
      // It was told when the units became unknown.
      into.setUnknown();
      return;
    }
    Modes.Units units = stated.get();
    try {
      if (words.isPlain(i)) {
        readPlain(words, i, units, into);
      } else if (words.get(i).value() instanceof Value.Literal literal) {
        readLiteral(words.get(i), literal, units, into);
      } else {
        readComputed(words.get(i), units, into);
      }
    } catch (ArithmeticException tooLarge) {
      into.setUnknown();
      into.tooLarge = true;
      control.wordUnknown(words.span(i), words.letter(i) + ": " + TOO_LARGE);
    }
  }

  /** What {@link #readLiteral} does, by integers where they hold the length. */
  private void readPlain(Words words, int i, Modes.Units units, ReadLength into) {
    int digits = units == Modes.Units.INCH ? INCH_DIGITS : MM_DIGITS;
    if (words.scale(i) > digits || (!words.hasPoint(i) && countsIncrements())) {
      Word word = words.get(i);
      readLiteral(word, (Value.Literal) word.value(), units, into);
      return;
    }
    long pm = Math.multiplyExact(words.unscaled(i), POWERS[digits - words.scale(i)]);
    if (units == Modes.Units.INCH) {
      pm = Math.multiplyExact(pm, INCH);
    }
    // Most words are kept as written: no division is needed to know it.
    boolean kept = words.scale(i) <= control.rounding.digitsKept(units);
    into.set(kept ? pm : control.rounding.store(pm, units), pm, null);
    if (isRounded(into)) {
      Word word = words.get(i);
      tellRounding(word, ((Value.Literal) word.value()).toBigDecimal(), units, into);
    }
    if (!words.hasPoint(i) && !agreed() && words.unscaled(i) != 0) {
      Word word = words.get(i);
      tellPointMissing(word, (Value.Literal) word.value(), into);
    }
  }

  /** A number as written. */
  private void readLiteral(Word word, Value.Literal literal, Modes.Units units, ReadLength into) {
    if (!literal.hasPoint() && countsIncrements()) {
      readIncrements(word, literal, units, into);
      return;
    }
    set(literal.toBigDecimal(), units, into);
    if (isRounded(into)) {
      tellRounding(word, literal.toBigDecimal(), units, into);
    }
    if (!literal.hasPoint() && !agreed() && isNotZero(literal)) {
      tellPointMissing(word, literal, into);
    }
  }

  /** A number without a point that counts least input increments. */
  private void readIncrements(
      Word word, Value.Literal literal, Modes.Units units, ReadLength into) {
    if (!control.rounding.knows(units)) {
      into.setUnknown();
      control.wordUnknown(
          word.span(),
          word.letter() + ": a number of increments, and the increment is not known",
          Cause.NOT_SAID);
      return;
    }
    BigDecimal pm =
        literal.toBigDecimal().multiply(BigDecimal.valueOf(control.rounding.incrementPm(units)));
    into.set(pm.longValueExact(), pm.longValueExact(), null);
    if (isNotZero(literal)) {
      tellPointMissing(word, literal, into);
    }
  }

  private void readComputed(Word word, Modes.Units units, ReadLength into) {
    Evaluated value = control.evaluator.evaluate(word.value());
    if (value instanceof Evaluated.Known known) {
      set(known.number(), units, into);
      // Nobody wrote the digits of a quotient or a sine.
      if (known.exact() && isRounded(into)) {
        tellRounding(word, known.number(), units, into);
      }
    } else {
      into.setUnknown();
      control.numbers.tell(word, value);
    }
  }

  private void set(BigDecimal number, Modes.Units units, ReadLength into) {
    BigDecimal pm = number.multiply(units == Modes.Units.INCH ? PM_PER_INCH : PM_PER_MM);
    BigDecimal whole = pm.setScale(0, RoundingMode.HALF_EVEN);
    BigDecimal rest = pm.subtract(whole);
    into.set(
        control.rounding.store(pm, units),
        whole.longValueExact(),
        rest.signum() == 0 ? null : rest);
  }

  private void readAngle(Word word, ReadLength into) {
    try {
      Optional<BigDecimal> degrees = control.numbers.exact(word);
      if (degrees.isPresent()) {
        BigDecimal exact = degrees.get().multiply(MICRODEGREES);
        long angle = exact.setScale(0, RoundingMode.HALF_UP).longValueExact();
        into.set(angle, angle, null);
      } else {
        into.setUnknown();
      }
    } catch (ArithmeticException tooLarge) {
      into.setUnknown();
      control.wordUnknown(word.span(), word.letter() + ": too large an angle");
    }
  }

  /** Whether the control keeps something else than was written. */
  static boolean isRounded(ReadLength length) {
    return length.known && (length.storedPm != length.writtenPm || length.rest != null);
  }

  /** Whether the sheet says that a number without a point is one of least input increments. */
  private boolean countsIncrements() {
    return control.profile.decimalPoint().filter(p -> p == PointlessNumber.INCREMENTS).isPresent();
  }

  /** Whether the sheet says that a number without a point is as good as one with it. */
  private boolean agreed() {
    return control.profile.decimalPoint().filter(p -> p == PointlessNumber.UNITS).isPresent();
  }

  private static boolean isNotZero(Value.Literal literal) {
    return literal.unscaled() != 0 || literal.big().isPresent();
  }

  private void tellRounding(Word word, BigDecimal written, Modes.Units units, ReadLength length) {
    if (control.rounding.knows(units)) {
      control.emit(
          new Event.WordRounded(
              control.at(word.span()),
              word.letter(),
              written,
              units,
              length.writtenPm,
              length.storedPm,
              control.modal.snapshot()));
    }
  }

  private void tellPointMissing(Word word, Value.Literal literal, ReadLength length) {
    control.emit(
        new Event.PointMissing(
            control.at(word.span()),
            word.letter(),
            literal.toBigDecimal(),
            length.writtenPm,
            control.profile.decimalPoint()));
  }
}

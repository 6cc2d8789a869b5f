package hairline.checks.motion;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.OptionalLong;

/**
 * What the control keeps of a length: the multiple of its least input increment, by decimal
 * arithmetic, so that no binary fraction ever invents or hides half a micron.
 *
 * <p>An inch increment is a whole number of picometres (0.00001 in is 254 nm), and conversion is
 * exact, so rounding the inches to it and converting is the same as rounding the picometres to it.
 */
final class Rounding {
  /** Stands for an increment that is not known: everything is kept to a picometre. */
  private static final long NO_INCREMENT = 1;

  private static final long PM_PER_MM = 1_000_000_000;
  private static final long PM_PER_INCH = 25_400_000_000L;

  private final long mmIncrementPm;
  private final long inchIncrementPm;
  private final int mmDigitsKept;
  private final int inchDigitsKept;
  private final boolean mmKnown;
  private final boolean inchKnown;
  private final boolean truncates;

  Rounding(ControlProfile profile) {
    OptionalLong inch =
        profile.inchResolutionPm().isPresent()
            ? profile.inchResolutionPm()
            : profile.resolutionPm();
    mmIncrementPm = Math.max(NO_INCREMENT, profile.resolutionPm().orElse(NO_INCREMENT));
    inchIncrementPm = Math.max(NO_INCREMENT, inch.orElse(NO_INCREMENT));
    mmDigitsKept = digitsKept(PM_PER_MM, mmIncrementPm);
    inchDigitsKept = digitsKept(PM_PER_INCH, inchIncrementPm);
    mmKnown = profile.resolutionPm().isPresent();
    inchKnown = inch.isPresent();
    truncates = profile.truncates();
  }

  /** Whether the increment under these units is known; else nothing is rounded away. */
  boolean knows(Modes.Units units) {
    return units == Modes.Units.INCH ? inchKnown : mmKnown;
  }

  /** The increment under these units; a picometre where it is not known. */
  long incrementPm(Modes.Units units) {
    return units == Modes.Units.INCH ? inchIncrementPm : mmIncrementPm;
  }

  /**
   * How many digits behind the point a length may have and is kept as written, whatever they are;
   * -1 where not even whole units are sure to be.
   */
  int digitsKept(Modes.Units units) {
    return units == Modes.Units.INCH ? inchDigitsKept : mmDigitsKept;
  }

  private static int digitsKept(long unitPm, long incrementPm) {
    int digits = -1;
    for (long pm = unitPm; pm % incrementPm == 0; pm /= 10) {
      digits++;
      if (pm % 10 != 0) {
        break;
      }
    }
    return digits;
  }

  /**
   * The stored value of a length.
   *
   * @throws ArithmeticException if it does not fit a long
   */
  long store(long pm, Modes.Units units) {
    long increment = incrementPm(units);
    long rest = pm % increment;
    if (rest == 0) {
      return pm;
    }
    long cut = pm - rest;
    long size = Math.abs(rest);
    if (truncates || size < increment - size) {
      return cut;
    }
    return Math.addExact(cut, rest < 0 ? -increment : increment);
  }

  /**
   * The stored value of a length that is no whole number of picometres.
   *
   * @throws ArithmeticException if it does not fit a long
   */
  long store(BigDecimal pm, Modes.Units units) {
    BigDecimal increment = BigDecimal.valueOf(incrementPm(units));
    RoundingMode mode = truncates && knows(units) ? RoundingMode.DOWN : RoundingMode.HALF_UP;
    return pm.divide(increment, 0, mode).multiply(increment).longValueExact();
  }
}

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

  private final long mmIncrementPm;
  private final long inchIncrementPm;
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

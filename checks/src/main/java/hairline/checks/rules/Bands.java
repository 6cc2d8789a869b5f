package hairline.checks.rules;

import hairline.checks.cutting.Band;
import hairline.checks.finding.Quantities;

/** Banded figures as messages print them. */
final class Bands {
  private Bands() {}

  /** "1.5 µm", or "1.5 µm (1.2 to 2)" where the band has a width. */
  static String um(Band band) {
    return with(band, "µm");
  }

  /** The same, to as many digits as tell the typical value and the low end from a limit. */
  static String um(Band band, double limitUm) {
    return with(band, "µm", limitUm);
  }

  /** The typical value with its unit, and the band, told from a limit. */
  static String with(Band band, String unit, double limit) {
    String typical = Quantities.apart(band.typical(), limit) + " " + unit;
    return band.isExact()
        ? typical
        : typical
            + " ("
            + Quantities.apart(band.low(), limit)
            + " to "
            + Quantities.apart(band.high(), limit)
            + ")";
  }

  /** The typical value with its unit, and the band where it has a width. */
  static String with(Band band, String unit) {
    String typical = Quantities.significant(band.typical(), 4) + (unit.isEmpty() ? "" : " " + unit);
    return band.isExact()
        ? typical
        : typical
            + " ("
            + Quantities.significant(band.low(), 4)
            + " to "
            + Quantities.significant(band.high(), 4)
            + ")";
  }
}

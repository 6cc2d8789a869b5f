package hairline.checks.setup;

import hairline.checks.cutting.Band;

/**
 * A length known within limits; a single value has all three equal.
 *
 * @param low the smallest value it may have
 * @param typical the value it usually has
 * @param high the largest value it may have
 */
public record LengthBand(Length low, Length typical, Length high) {
  public LengthBand {
    if (low.pm() > typical.pm() || typical.pm() > high.pm()) {
      throw new IllegalArgumentException("unordered band " + low + ", " + typical + ", " + high);
    }
  }

  /** A single value. */
  public static LengthBand of(Length value) {
    return new LengthBand(value, value, value);
  }

  /** The band in micrometres. */
  public Band um() {
    return new Band(low.um(), typical.um(), high.um());
  }

  @Override
  public String toString() {
    return low.equals(high) ? low.toString() : "[" + low + ", " + typical + ", " + high + "]";
  }
}

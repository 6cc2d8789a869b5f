package hairline.checks.motion;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * By how much the zero of one axis is shifted: what is added to a programmed coordinate to have it
 * in the frame of {@link Position}.
 *
 * @param storedPm the shift as the control has stored it
 * @param writtenPm the shift with unlimited digits, to the nearest picometre
 * @param rest what {@code writtenPm} lacks of the exact value; absent for 0
 */
record Shift(long storedPm, long writtenPm, @Nullable BigDecimal rest) {
  static final Shift NONE = new Shift(0, 0, null);

  static Shift of(ReadLength length) {
    return new Shift(length.storedPm, length.writtenPm, length.rest);
  }

  static Shift of(AxisState axis) {
    return new Shift(axis.storedPm(), axis.writtenPm(), axis.rest());
  }

  boolean isNone() {
    return storedPm == 0 && writtenPm == 0 && rest == null;
  }

  /**
   * Both shifts together.
   *
   * @throws ArithmeticException if they are too large
   */
  Shift plus(Shift other) {
    return new Shift(
        Math.addExact(storedPm, other.storedPm),
        Math.addExact(writtenPm, other.writtenPm),
        sum(rest, other.rest));
  }

  /**
   * This shift without another.
   *
   * @throws ArithmeticException if the difference is too large
   */
  Shift minus(Shift other) {
    return new Shift(
        Math.subtractExact(storedPm, other.storedPm),
        Math.subtractExact(writtenPm, other.writtenPm),
        sum(rest, other.rest == null ? null : other.rest.negate()));
  }

  private static @Nullable BigDecimal sum(@Nullable BigDecimal a, @Nullable BigDecimal b) {
    if (a == null) {
      return b;
    }
    return b == null ? a : a.add(b);
  }
}

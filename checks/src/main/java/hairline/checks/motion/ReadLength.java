package hairline.checks.motion;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * The length that a word comes to; reused from block to block, so that a plain block makes none.
 */
final class ReadLength {
  /** Whether the word could be read. */
  boolean known;

  /** Whether it could not be read because no position holds it. */
  boolean tooLarge;

  /** The value the control keeps. */
  long storedPm;

  /** The value as written, to the nearest picometre. */
  long writtenPm;

  /** What {@code writtenPm} lacks of the exact value, at most half a picometre; absent for 0. */
  @Nullable BigDecimal rest;

  void setUnknown() {
    known = false;
    tooLarge = false;
    storedPm = 0;
    writtenPm = 0;
    rest = null;
  }

  void set(long stored, long written, @Nullable BigDecimal remainder) {
    known = true;
    tooLarge = false;
    storedPm = stored;
    writtenPm = written;
    rest = remainder;
  }
}

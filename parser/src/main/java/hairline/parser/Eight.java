package hairline.parser;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/**
 * Eight bytes at once: a digit in its turn costs a branch that the processor guesses wrong now and
 * then, and eight of them in one word cost none. The first byte stands lowest in the word.
 */
final class Eight {
  /** How many bytes. */
  static final int BYTES = 8;

  private static final VarHandle LONGS =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
  private static final long ONES = 0x0101010101010101L;
  private static final long HIGH_BITS = 0x8080808080808080L;
  private static final int BITS = 8;

  private Eight() {}

  /** The bytes from an index on; there must be eight. */
  static long at(byte[] bytes, int index) {
    return (long) LONGS.get(bytes, index);
  }

  /** How many bytes at the beginning are decimal digits. */
  static int digits(long eight) {
    long values = eight ^ ('0' * ONES);
    // Beyond the first byte that is no digit the bits mean nothing: sums carry over.
    long others = ((values + (0x80 - 10) * ONES) | values) & HIGH_BITS;
    return Long.numberOfTrailingZeros(others) / BITS;
  }

  /** The number that so many digits at the beginning make; one to eight. */
  static long number(long eight, int digits) {
    long values = (eight ^ ('0' * ONES)) << (BITS * (BYTES - digits));
    long pairs = values * 10 + (values >>> BITS);
    long mask = 0x000000FF000000FFL;
    return ((pairs & mask) * 0x000F424000000064L + ((pairs >>> 16) & mask) * 0x0000271000000001L)
        >>> 32;
  }

  /** Whether one of so many digits at the beginning is not zero; one to eight. */
  static boolean isNonzero(long eight, int digits) {
    return (eight ^ ('0' * ONES)) << (BITS * (BYTES - digits)) != 0;
  }

  /** The index of the first line feed or carriage return among them; eight where there is none. */
  static int lineEnd(long eight) {
    long ends = zeros(eight ^ ('\n' * ONES)) | zeros(eight ^ ('\r' * ONES));
    return Long.numberOfTrailingZeros(ends) / BITS;
  }

  /** Marks bytes that are zero; marks behind the first of them mean nothing. */
  private static long zeros(long eight) {
    return (eight - ONES) & ~eight & HIGH_BITS;
  }
}

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
  private static final long ZEROS = '0' * ONES;
  private static final int BITS = 8;
  private static final int BYTE_SHIFT = 3;
  private static final int MINUS = '-' ^ '0';
  private static final int POINT = '.' ^ '0';

  private Eight() {}

  /** The bytes from an index on; there must be eight. */
  static long at(byte[] bytes, int index) {
    return (long) LONGS.get(bytes, index);
  }

  /** How many bytes at the beginning are decimal digits. */
  static int digits(long eight) {
    long values = eight ^ ZEROS;
    // Beyond the first byte that is no digit the bits mean nothing: sums carry over.
    long others = ((values + (0x80 - 10) * ONES) | values) & HIGH_BITS;
    return Long.numberOfTrailingZeros(others) / BITS;
  }

  /** The number that so many digits at the beginning make; one to eight. */
  static long number(long eight, int digits) {
    return joined((eight ^ ZEROS) << (BITS * (BYTES - digits)));
  }

  /** The number that eight values of digits make, the first of them lowest. */
  static long joined(long values) {
    long pairs = values * 10 + (values >>> BITS);
    long mask = 0x000000FF000000FFL;
    return ((pairs & mask) * 0x000F424000000064L + ((pairs >>> 16) & mask) * 0x0000271000000001L)
        >>> 32;
  }

  /** Whether one of so many digits at the beginning is not zero; one to eight. */
  static boolean isNonzero(long eight, int digits) {
    return (eight ^ ZEROS) << (BITS * (BYTES - digits)) != 0;
  }

  /** The bytes with every digit replaced by its value. */
  static long values(long eight) {
    return eight ^ ZEROS;
  }

  /**
   * Marks each of such bytes but the first that is no digit, by its highest bit. Whoever needs the
   * first looks at it apart, so that where a number ends is known before its sign is.
   */
  static long othersBehindFirst(long values) {
    return (((values & ~HIGH_BITS) + (0x80 - 10) * ONES) | values) & (HIGH_BITS & -(1L << BITS));
  }

  /** Whether the first of such bytes is no digit. */
  static boolean isOther(long values) {
    return ((int) values & 0xFF) > 9;
  }

  /**
   * One where the first of such bytes is a minus, else 0; by no branch, as nobody foresees signs.
   */
  static int minus(long values) {
    return ((((int) values & 0xFF) ^ MINUS) - 1) >>> 31;
  }

  /** The values without the minus that stands first, if {@code minus} is one. */
  static long withoutMinus(long values, int minus) {
    return values & ~(0xFFL * minus);
  }

  /** How many bytes stand before the first that is marked; eight where none is. */
  static int bytesBefore(long marks) {
    return Long.numberOfTrailingZeros(marks) >>> BYTE_SHIFT;
  }

  /** How many bits stand before the first byte that is marked; 64 where none is. */
  static int bitsBefore(long marks) {
    // A mark is the highest bit of its byte.
    return Long.numberOfTrailingZeros(marks) & -BITS;
  }

  /** Whether the value behind so many bits is that of a decimal point. */
  static boolean isPoint(long values, int bits) {
    return ((values >>> bits) & 0xFF) == POINT;
  }

  /** The values without the one behind so many bits; those behind it close up. */
  static long without(long values, int bits) {
    long before = (1L << bits) - 1;
    return (values & before) | ((values >>> BITS) & ~before);
  }

  /**
   * The index of the first bracket that closes, line end or byte beyond ASCII; eight where there is
   * none.
   */
  static int commentEnd(long eight) {
    return Long.numberOfTrailingZeros(zeros(eight ^ (')' * ONES)) | remarkEnds(eight)) / BITS;
  }

  /** The index of the first line end or byte beyond ASCII; eight where there is none. */
  static int remarkEnd(long eight) {
    return Long.numberOfTrailingZeros(remarkEnds(eight)) / BITS;
  }

  private static long remarkEnds(long eight) {
    return zeros(eight ^ ('\n' * ONES)) | zeros(eight ^ ('\r' * ONES)) | (eight & HIGH_BITS);
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

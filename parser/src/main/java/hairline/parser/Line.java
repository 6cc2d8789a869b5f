package hairline.parser;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * One line of the input, as bytes and as code points. A reader fills the same instance again for
 * every line.
 *
 * <p>A line is UTF-8, or, where it is no valid UTF-8, ISO 8859-1. A line beyond {@link
 * Limits#LINE_BYTES} carries only its beginning and says so in {@link #tooLong}.
 */
final class Line {
  int number;
  long byteOffset;

  /** Length in the file, without the line end; {@code Integer.MAX_VALUE} for anything longer. */
  int byteLength;

  boolean tooLong;

  /** The code points; valid up to {@link #count}. */
  int[] codePoints = new int[256];

  int count;

  private boolean ascii;
  private boolean decoded;

  /** The bytes of the line stand here from {@link #from} to before {@link #to}; not copied. */
  byte[] bytes = {};

  int from;
  int to;

  /** Takes the text of the line from bytes, which must not change until it is decoded. */
  void take(byte[] source, int start, int end) {
    bytes = source;
    from = start;
    to = end;
    decoded = false;
  }

  /** Copies the bytes, which are about to change. */
  void keep() {
    if (!decoded) {
      take(Arrays.copyOfRange(bytes, from, to), 0, to - from);
    }
  }

  /** Takes the text of the line from bytes. */
  void decode(byte[] source, int start, int end) {
    take(source, start, end);
    decode();
  }

  /** Fills {@link #codePoints}, if that is not done yet. */
  void decode() {
    if (decoded) {
      return;
    }
    decoded = true;
    if (codePoints.length < to - from) {
      codePoints = new int[Math.max(to - from, 2 * codePoints.length)];
    }
    ascii = true;
    for (int i = from; i < to; i++) {
      byte b = bytes[i];
      if (b < 0) {
        ascii = false;
        if (!decodeUtf8(bytes, from, to)) {
          decodeLatin1(bytes, from, to);
        }
        return;
      }
      codePoints[i - from] = b;
    }
    count = to - from;
  }

  private void decodeLatin1(byte[] bytes, int from, int to) {
    for (int i = from; i < to; i++) {
      codePoints[i - from] = bytes[i] & 0xFF;
    }
    count = to - from;
  }

  /**
   * Decodes strictly: no overlong forms, no surrogates, nothing beyond U+10FFFF. Bytes that a cut
   * left over at the end of a line that is too long are dropped.
   */
  private boolean decodeUtf8(byte[] bytes, int from, int to) {
    int n = 0;
    int i = from;
    while (i < to) {
      int b = bytes[i];
      if (b >= 0) {
        codePoints[n++] = b;
        i++;
        continue;
      }
      int lead = b & 0xFF;
      int more = lead >= 0xF0 ? 3 : lead >= 0xE0 ? 2 : 1;
      if (lead < 0xC2 || lead > 0xF4) {
        return false;
      }
      int codePoint = lead & (0x3F >> more);
      for (int k = 1; k <= more; k++) {
        if (i + k == to) {
          count = n;
          return tooLong;
        }
        int next = bytes[i + k];
        if ((next & 0xC0) != 0x80) {
          return false;
        }
        codePoint = codePoint << 6 | (next & 0x3F);
      }
      boolean overlong = codePoint < (more == 3 ? 0x10000 : more == 2 ? 0x800 : 0x80);
      boolean surrogate = codePoint >= 0xD800 && codePoint <= 0xDFFF;
      if (overlong || surrogate || codePoint > Character.MAX_CODE_POINT) {
        return false;
      }
      codePoints[n++] = codePoint;
      i += more + 1;
    }
    count = n;
    return true;
  }

  /** The text from one code point to before another. */
  String text(int from, int to) {
    if (ascii) {
      byte[] bytes = new byte[to - from];
      for (int i = from; i < to; i++) {
        bytes[i - from] = (byte) codePoints[i];
      }
      return new String(bytes, StandardCharsets.ISO_8859_1);
    }
    return new String(codePoints, from, to - from);
  }

  /** The text of a line that holds ASCII only, cut off as {@link #shortText} is. */
  String shortAscii() {
    return new String(
        bytes, from, Math.min(to - from, Limits.TEXT_CODE_POINTS), StandardCharsets.ISO_8859_1);
  }

  /** The text, cut off at {@link Limits#TEXT_CODE_POINTS}. */
  String shortText() {
    decode();
    return text(0, Math.min(count, Limits.TEXT_CODE_POINTS));
  }

  /** Whether the line is a {@code %} with nothing but blanks around it. */
  boolean isBareTapeMark() {
    if (tooLong) {
      return false;
    }
    decode();
    boolean seen = false;
    for (int i = 0; i < count; i++) {
      int c = codePoints[i];
      if (c == '%' && !seen) {
        seen = true;
      } else if (c != ' ' && c != '\t') {
        return false;
      }
    }
    return seen;
  }

  /** Whether the line holds nothing but blanks. */
  boolean isBlank() {
    if (tooLong) {
      return false;
    }
    decode();
    for (int i = 0; i < count; i++) {
      if (codePoints[i] != ' ' && codePoints[i] != '\t') {
        return false;
      }
    }
    return true;
  }
}

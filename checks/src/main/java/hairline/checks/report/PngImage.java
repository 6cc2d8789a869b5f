package hairline.checks.report;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.zip.Adler32;
import java.util.zip.CRC32;

/**
 * Writes a picture of up to 256 colours as PNG (ISO/IEC 15948). The data is packed here, by runs of
 * equal bytes in the fixed code of RFC 1951, and not by the Java runtime, whose packing differs
 * from version to version: same picture, same bytes.
 */
final class PngImage {
  private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
  private static final int LONGEST_RUN = 258;
  private static final int SHORTEST_RUN = 3;
  private static final int UP = 2;
  private static final int END_OF_BLOCK = 256;

  /** RFC 1951, 3.2.5: the first length of each length code from 257 on. */
  private static final int[] LENGTHS = {
    3, 4, 5, 6, 7, 8, 9, 10, 11, 13, 15, 17, 19, 23, 27, 31, 35, 43, 51, 59, 67, 83, 99, 115, 131,
    163, 195, 227, 258
  };

  private static final int[] EXTRA_BITS = {
    0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 2, 3, 3, 3, 3, 4, 4, 4, 4, 5, 5, 5, 5, 0
  };

  private final ByteArrayOutputStream packed = new ByteArrayOutputStream();
  private int bits;
  private int count;

  private PngImage() {}

  /**
   * The file.
   *
   * @param pixels indices of colours, the upper row first
   * @param colours red, green and blue of each, as 0xRRGGBB
   */
  static byte[] of(int width, int height, byte[] pixels, int[] colours) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(SIGNATURE);
    ByteArrayOutputStream head = new ByteArrayOutputStream();
    number(head, width);
    number(head, height);
    // Eight bits, palette, the one packing, filtering and order there is.
    head.writeBytes(new byte[] {8, 3, 0, 0, 0});
    chunk(out, "IHDR", head.toByteArray());
    byte[] palette = new byte[3 * colours.length];
    for (int k = 0; k < colours.length; k++) {
      palette[3 * k] = (byte) (colours[k] >> 16);
      palette[3 * k + 1] = (byte) (colours[k] >> 8);
      palette[3 * k + 2] = (byte) colours[k];
    }
    chunk(out, "PLTE", palette);
    chunk(out, "IDAT", new PngImage().pack(filtered(width, height, pixels)));
    chunk(out, "IEND", new byte[0]);
    return out.toByteArray();
  }

  /** Each row as its difference from the one above: terraces become zeros. */
  private static byte[] filtered(int width, int height, byte[] pixels) {
    byte[] data = new byte[height * (width + 1)];
    int at = 0;
    for (int j = 0; j < height; j++) {
      data[at++] = UP;
      for (int i = 0; i < width; i++) {
        int above = j == 0 ? 0 : pixels[(j - 1) * width + i];
        data[at++] = (byte) (pixels[j * width + i] - above);
      }
    }
    return data;
  }

  private static void number(ByteArrayOutputStream out, int value) {
    for (int shift = 24; shift >= 0; shift -= 8) {
      out.write(value >> shift);
    }
  }

  private static void chunk(ByteArrayOutputStream out, String type, byte[] data) {
    number(out, data.length);
    byte[] name = type.getBytes(StandardCharsets.US_ASCII);
    CRC32 check = new CRC32();
    check.update(name);
    check.update(data);
    out.writeBytes(name);
    out.writeBytes(data);
    number(out, (int) check.getValue());
  }

  // RFC 1950 around one block of RFC 1951.

  private byte[] pack(byte[] data) {
    packed.write(0x78);
    packed.write(0x01);
    put(1, 1);
    put(1, 2);
    int at = 0;
    while (at < data.length) {
      literal(data[at] & 0xFF);
      int run = 0;
      while (at + 1 + run < data.length && run < LONGEST_RUN && data[at + 1 + run] == data[at]) {
        run++;
      }
      if (run >= SHORTEST_RUN) {
        repeat(run);
        at += run;
      }
      at++;
    }
    literal(END_OF_BLOCK);
    if (count > 0) {
      packed.write(bits);
    }
    Adler32 check = new Adler32();
    check.update(data);
    number(packed, (int) check.getValue());
    return packed.toByteArray();
  }

  /** Bits from the lowest on. */
  private void put(int value, int length) {
    bits |= value << count;
    count += length;
    while (count >= 8) {
      packed.write(bits);
      bits >>>= 8;
      count -= 8;
    }
  }

  /** A code of the fixed table (RFC 1951, 3.2.6), from the highest bit on. */
  private void literal(int symbol) {
    if (symbol < 144) {
      code(0x30 + symbol, 8);
    } else if (symbol < 256) {
      code(0x190 + symbol - 144, 9);
    } else if (symbol < 280) {
      code(symbol - 256, 7);
    } else {
      code(0xC0 + symbol - 280, 8);
    }
  }

  private void code(int value, int length) {
    put(Integer.reverse(value) >>> (32 - length), length);
  }

  /** The byte before, so many times more. */
  private void repeat(int run) {
    int k = LENGTHS.length - 1;
    while (LENGTHS[k] > run) {
      k--;
    }
    literal(257 + k);
    put(run - LENGTHS[k], EXTRA_BITS[k]);
    // Distance 1: code 0 of five bits.
    code(0, 5);
  }
}

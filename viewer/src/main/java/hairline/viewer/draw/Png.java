package hairline.viewer.draw;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import java.util.zip.Deflater;

/** Writes a picture as PNG (ISO/IEC 15948), eight bits each of red, green, blue and alpha. */
public final class Png {
  private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};

  private Png() {}

  /**
   * The file.
   *
   * @param argb the pixels, the upper row first
   */
  public static byte[] of(int[] argb, int columns, int rows) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(SIGNATURE);
    chunk(
        out,
        "IHDR",
        ByteBuffer.allocate(13)
            .putInt(columns)
            .putInt(rows)
            .put(new byte[] {8, 6, 0, 0, 0})
            .array());
    byte[] raw = new byte[rows * (1 + 4 * columns)];
    int at = 0;
    for (int row = 0; row < rows; row++) {
      at++;
      for (int column = 0; column < columns; column++) {
        int pixel = argb[row * columns + column];
        raw[at++] = (byte) (pixel >> 16);
        raw[at++] = (byte) (pixel >> 8);
        raw[at++] = (byte) pixel;
        raw[at++] = (byte) (pixel >>> 24);
      }
    }
    chunk(out, "IDAT", packed(raw));
    chunk(out, "IEND", new byte[0]);
    return out.toByteArray();
  }

  private static byte[] packed(byte[] raw) {
    Deflater deflater = new Deflater();
    try {
      deflater.setInput(raw);
      deflater.finish();
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      byte[] buffer = new byte[1 << 16];
      while (!deflater.finished()) {
        out.write(buffer, 0, deflater.deflate(buffer));
      }
      return out.toByteArray();
    } finally {
      deflater.end();
    }
  }

  private static void chunk(ByteArrayOutputStream out, String type, byte[] data) {
    byte[] name = type.getBytes(StandardCharsets.US_ASCII);
    CRC32 crc = new CRC32();
    crc.update(name);
    crc.update(data);
    out.writeBytes(ByteBuffer.allocate(4).putInt(data.length).array());
    out.writeBytes(name);
    out.writeBytes(data);
    out.writeBytes(ByteBuffer.allocate(4).putInt((int) crc.getValue()).array());
  }
}

package hairline.viewer.model;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;

/**
 * A growing table of records of one length. The first ones stand in memory, all later ones in a
 * temporary file that the system maps, so that the heap does not grow with the table. One thread
 * appends; any thread reads what lies below a count that was published to it.
 */
final class Records implements AutoCloseable {
  /** So many records stand in a chunk. */
  static final int PER_CHUNK = 1 << 14;

  private static final int CHUNK_BITS = 14;

  /** So many chunks stand in memory. */
  static final int IN_MEMORY = 16;

  private final int length;
  private volatile ByteBuffer[] chunks = new ByteBuffer[0];
  private FileChannelHolder file = new FileChannelHolder();

  /** The temporary file, once there is one. */
  private static final class FileChannelHolder {
    private FileChannel[] channel = new FileChannel[0];

    FileChannel get() throws IOException {
      if (channel.length == 0) {
        Path path = Files.createTempFile("hairline-view-", ".index");
        // On systems that can't delete an open file it goes with the process.
        path.toFile().deleteOnExit();
        channel =
            new FileChannel[] {
              FileChannel.open(
                  path,
                  StandardOpenOption.READ,
                  StandardOpenOption.WRITE,
                  StandardOpenOption.DELETE_ON_CLOSE)
            };
      }
      return channel[0];
    }

    void close() throws IOException {
      for (FileChannel open : channel) {
        open.close();
      }
    }
  }

  /**
   * An empty table.
   *
   * @param length bytes of a record
   */
  Records(int length) {
    this.length = length;
  }

  /**
   * Makes room for a record.
   *
   * @throws IOException if the temporary file cannot be written
   */
  void reserve(long index) throws IOException {
    int chunk = (int) (index >>> CHUNK_BITS);
    if (chunk < chunks.length) {
      return;
    }
    int bytes = PER_CHUNK * length;
    ByteBuffer buffer =
        chunk < IN_MEMORY
            ? ByteBuffer.allocate(bytes)
            : file.get()
                .map(FileChannel.MapMode.READ_WRITE, (chunk - IN_MEMORY) * (long) bytes, bytes);
    buffer.order(ByteOrder.nativeOrder());
    ByteBuffer[] more = Arrays.copyOf(chunks, chunk + 1);
    more[chunk] = buffer;
    chunks = more;
  }

  private ByteBuffer chunk(long index) {
    return chunks[(int) (index >>> CHUNK_BITS)];
  }

  private int at(long index, int field) {
    return (int) (index & (PER_CHUNK - 1)) * length + field;
  }

  void putLong(long index, int field, long value) {
    chunk(index).putLong(at(index, field), value);
  }

  void putDouble(long index, int field, double value) {
    chunk(index).putDouble(at(index, field), value);
  }

  void putInt(long index, int field, int value) {
    chunk(index).putInt(at(index, field), value);
  }

  long getLong(long index, int field) {
    return chunk(index).getLong(at(index, field));
  }

  double getDouble(long index, int field) {
    return chunk(index).getDouble(at(index, field));
  }

  int getInt(long index, int field) {
    return chunk(index).getInt(at(index, field));
  }

  /** Lets the file go; what is mapped stays readable as long as somebody holds the table. */
  @Override
  public void close() throws IOException {
    file.close();
  }
}

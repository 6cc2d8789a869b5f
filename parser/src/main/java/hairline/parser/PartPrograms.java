package hairline.parser;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Where part programs come from. */
public final class PartPrograms {
  private PartPrograms() {}

  /**
   * The program in a file. The file is opened anew for each reader and never read whole.
   *
   * @param file a file that can be read from any place
   */
  public static PartProgram of(Path file) {
    return new StoredProgram(file.toString(), () -> new FileBytes(file));
  }

  /**
   * The program in these bytes, which are not copied and must not change.
   *
   * @param name what to call it
   */
  public static PartProgram of(String name, byte[] bytes) {
    return new StoredProgram(name, () -> new ArrayBytes(bytes));
  }

  private static final class FileBytes implements ByteSource {
    private final FileChannel channel;

    FileBytes(Path file) throws IOException {
      channel = FileChannel.open(file, StandardOpenOption.READ);
    }

    @Override
    public int read(long position, byte[] target, int at, int length) throws IOException {
      return channel.read(ByteBuffer.wrap(target, at, length), position);
    }

    @Override
    public void close() throws IOException {
      channel.close();
    }
  }

  private static final class ArrayBytes implements ByteSource {
    private final byte[] bytes;

    ArrayBytes(byte[] bytes) {
      this.bytes = bytes;
    }

    @Override
    public int read(long position, byte[] target, int at, int length) {
      if (position >= bytes.length) {
        return -1;
      }
      int count = (int) Math.min(length, bytes.length - position);
      System.arraycopy(bytes, (int) position, target, at, count);
      return count;
    }

    @Override
    public void close() {}
  }
}

package hairline.parser;

import java.io.Closeable;
import java.io.IOException;

/** Bytes that can be read from any place. */
interface ByteSource extends Closeable {
  /**
   * Reads up to {@code length} bytes from {@code position} on into {@code target} from {@code at}
   * on.
   *
   * @return how many bytes were read, at least one; -1 at the end
   */
  int read(long position, byte[] target, int at, int length) throws IOException;

  /** The same bytes up to a place, closed with these. */
  default ByteSource upTo(long end) {
    ByteSource all = this;
    return new ByteSource() {
      @Override
      public int read(long position, byte[] target, int at, int length) throws IOException {
        return position >= end
            ? -1
            : all.read(position, target, at, (int) Math.min(length, end - position));
      }

      @Override
      public void close() {}
    };
  }
}

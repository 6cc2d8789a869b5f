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
}

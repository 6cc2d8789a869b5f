package hairline.parser;

import java.io.Closeable;
import java.io.IOException;
import java.util.Optional;

/** Blocks one after the other; memory does not grow with what was read. */
public interface BlockSource extends Closeable {
  /**
   * The next block, or nothing at the end.
   *
   * @throws IOException if the bytes cannot be read
   */
  Optional<Block> next() throws IOException;
}

package hairline.parser;

import java.io.Closeable;
import java.io.IOException;
import java.util.Optional;

/**
 * The blocks of a program that are more than plain motion, one after the other, with what is worth
 * knowing of the plain ones between them.
 */
public interface SkimmedBlocks extends Closeable {
  /**
   * The next block that is not plain, or nothing at the end.
   *
   * @throws IOException if the bytes cannot be read
   */
  Optional<Block> next() throws IOException;

  /** The plain blocks before the one that {@link #next} gave last, and after the one before. */
  PlainRun plain();

  /** Hands on every block and holds none to be plain. */
  static SkimmedBlocks ofAll(BlockSource blocks) {
    PlainRun none = new PlainRun();
    return new SkimmedBlocks() {
      @Override
      public Optional<Block> next() throws IOException {
        return blocks.next();
      }

      @Override
      public PlainRun plain() {
        return none;
      }

      @Override
      public void close() throws IOException {
        blocks.close();
      }
    };
  }
}

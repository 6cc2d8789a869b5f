package hairline.parser;

import java.io.IOException;
import java.util.Optional;

/**
 * The blocks of any source, tape marks and leader left out, each shown to an onlooker.
 *
 * @param watch shows them
 */
record SeenBlocks(BlockSource source, Watch watch) implements BlockSource {
  SeenBlocks(BlockSource source, Onlooker onlooker) {
    this(source, new Watch(onlooker));
  }

  @Override
  public Optional<Block> next() throws IOException {
    for (Optional<Block> next = source.next(); next.isPresent(); next = source.next()) {
      if (watch.wants(next.get()) && next.get().kind() == Block.Kind.BLOCK) {
        return next;
      }
    }
    watch.end();
    return Optional.empty();
  }

  @Override
  public void close() throws IOException {
    source.close();
  }
}

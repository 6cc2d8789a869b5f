package hairline.parser;

import java.io.IOException;
import java.util.Optional;

/**
 * The blocks of any source up to a place in the file, tape marks and leader left out.
 *
 * @param endByteOffset where the first block stands that is no longer one of them
 */
record ProgramBlocks(BlockSource source, long endByteOffset) implements BlockSource {
  @Override
  public Optional<Block> next() throws IOException {
    Optional<Block> next = source.next();
    while (next.isPresent()
        && next.get().kind() != Block.Kind.BLOCK
        && next.get().byteOffset() < endByteOffset) {
      next = source.next();
    }
    return next.filter(block -> block.byteOffset() < endByteOffset);
  }

  @Override
  public void close() throws IOException {
    source.close();
  }
}

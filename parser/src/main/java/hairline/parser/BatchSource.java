package hairline.parser;

import java.io.IOException;

/** Blocks that can be had by the batch. */
interface BatchSource extends BlockSource {
  /**
   * Adds the next blocks until the batch is full; none at the end. Those before a fault are in the
   * batch.
   *
   * @throws IOException if the bytes cannot be read
   */
  void fill(BlockBatch.Builder batch) throws IOException;
}

package hairline.parser;

import java.io.IOException;

/**
 * The text of a part program, readable from any line start any number of times: a file, or bytes in
 * memory.
 */
public interface PartProgram {
  /** How a report calls it: the path as given, or a name for bytes without a file. */
  String name();

  /**
   * Its blocks, from the start of a line.
   *
   * @param byteOffset where that line begins; 0 is the start of the file, byte order mark included
   * @param line the number of that line
   * @throws IOException if the bytes cannot be read
   */
  BlockSource blocksFrom(long byteOffset, int line) throws IOException;

  /**
   * Its blocks from the first on, as a first look wants them: plain ones are not made, but told of
   * in sum.
   *
   * @throws IOException if the bytes cannot be read
   */
  default SkimmedBlocks skim() throws IOException {
    return SkimmedBlocks.ofAll(blocks());
  }

  /** Its blocks from the first on. */
  default BlockSource blocks() throws IOException {
    return blocksFrom(0, 1);
  }
}

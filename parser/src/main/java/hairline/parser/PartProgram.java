package hairline.parser;

import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;

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
   * The blocks of one of the programs that stand in the text, from the start of a line; tape marks
   * and leader are left out.
   *
   * @param endByteOffset where the program ends: the first block at or behind this place is none of
   *     it
   * @throws IOException if the bytes cannot be read
   */
  default BlockSource blocksOf(long byteOffset, int line, long endByteOffset) throws IOException {
    return new ProgramBlocks(blocksFrom(byteOffset, line), endByteOffset);
  }

  /**
   * Its blocks from the first on, as a first look wants them: plain ones are not made, but told of
   * in sum.
   *
   * @throws IOException if the bytes cannot be read
   */
  default SkimmedBlocks skim() throws IOException {
    return SkimmedBlocks.ofAll(blocks());
  }

  /**
   * Its blocks from the first on, tape marks and leader left out, while an onlooker sees all of
   * them and tells with which of them the program ends that is wanted.
   *
   * @throws IOException if the bytes cannot be read
   */
  default BlockSource blocksSeenBy(Onlooker onlooker) throws IOException {
    return new SeenBlocks(blocks(), onlooker);
  }

  /**
   * The text of some lines, as their blocks have it; lines that it does not have are left out.
   *
   * @throws IOException if the bytes cannot be read
   */
  default Map<Integer, String> texts(SortedSet<Integer> lines) throws IOException {
    Map<Integer, String> texts = new HashMap<>();
    try (BlockSource blocks = blocks()) {
      Optional<Block> next = blocks.next();
      while (next.isPresent() && next.get().line() <= lines.last()) {
        if (lines.contains(next.get().line())) {
          texts.put(next.get().line(), next.get().text());
        }
        next = blocks.next();
      }
    }
    return texts;
  }

  /** Its blocks from the first on. */
  default BlockSource blocks() throws IOException {
    return blocksFrom(0, 1);
  }
}

package hairline.parser;

import java.io.IOException;

/**
 * Sees all blocks of a text while it is read, on the thread that reads them. What it throws is
 * thrown where the block behind is asked for.
 */
public interface Onlooker {
  /**
   * Plain blocks, in sum; before anything behind them is told of.
   *
   * @throws IOException to end the reading
   */
  void plain(PlainRun run) throws IOException;

  /**
   * A sequence number, written without a point, before the words of a block that is otherwise plain
   * and told of as one.
   *
   * @throws IOException to end the reading
   */
  void numbered(int line, long number) throws IOException;

  /**
   * Any other block, and plain ones that the reader has made for some reason.
   *
   * @return whether who reads the blocks is to get this one, unless it is a tape mark, and those
   *     behind it; once that is not so, the rest of the text is read for the onlooker alone
   * @throws IOException to end the reading
   */
  boolean other(Block block) throws IOException;

  /** The text has been read to its end. */
  void ended();
}

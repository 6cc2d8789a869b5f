package hairline.parser;

import java.io.IOException;

/** Shows an onlooker what is read: plain blocks in sum. */
final class Watch {
  private final Onlooker onlooker;
  private final PlainRun run = new PlainRun();
  private boolean wantsMore = true;
  private boolean ended;

  Watch(Onlooker onlooker) {
    this.onlooker = onlooker;
  }

  /**
   * Shows the line that the scanner has read last, which {@link LineScanner#isPlainButForNumber}.
   *
   * @param endOffset where it ends in the file
   */
  void plain(int line, long endOffset, LineScanner scanner) throws IOException {
    run.add(line, endOffset, scanner);
    if (scanner.isNumbered()) {
      onlooker.numbered(line, scanner.sequenceNumber());
    }
  }

  /** Shows a block; whether who reads the blocks is to get it, and those behind. */
  boolean wants(Block block) throws IOException {
    tellPlain();
    wantsMore &= onlooker.other(block);
    return wantsMore;
  }

  /** Tells of the plain blocks shown so far. */
  void tellPlain() throws IOException {
    if (!run.isEmpty()) {
      onlooker.plain(run);
      run.clear();
    }
  }

  /** The text has been read to its end. */
  void end() throws IOException {
    if (!ended) {
      tellPlain();
      ended = true;
      onlooker.ended();
    }
  }
}

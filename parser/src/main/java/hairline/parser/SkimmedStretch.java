package hairline.parser;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a first look finds in the lines that begin in one stretch of a file. Lines are counted from
 * the first of them, as nobody knows yet how many stand before.
 *
 * @param blocks those that are more than plain
 * @param plain the plain ones before each of them, and those behind the last
 * @param lines how many lines begin in the stretch
 * @param ended whether the file ends before the end of the stretch
 */
record SkimmedStretch(List<Block> blocks, List<PlainRun> plain, int lines, boolean ended) {

  /** So much is read beyond a stretch, for the line that its end cuts. */
  private static final int SPARE_BYTES = 256;

  /** Stretches are short: a buffer for each would be most of what is allocated. */
  private static final ThreadLocal<byte[]> BUFFERS = ThreadLocal.withInitial(LineReader::newBuffer);

  /**
   * Looks through a stretch.
   *
   * @param from where it begins, in the midst of a line as it may be
   * @param to where it ends
   * @param leaderEnd where the leader of the file ends
   */
  static SkimmedStretch of(StoredProgram.Opener opener, long from, long to, long leaderEnd)
      throws IOException {
    BlockParser parser = new BlockParser();
    LineSkimmer skimmer = new LineSkimmer();
    List<Block> blocks = new ArrayList<>();
    List<PlainRun> plain = new ArrayList<>();
    PlainRun run = new PlainRun();
    Line line = new Line();
    try (ByteSource bytes = opener.open()) {
      LineReader lines = new LineReader(bytes, Math.max(0, from - 1), 1, BUFFERS.get());
      lines.fillOnce((int) Math.min(Integer.MAX_VALUE, to - from + SPARE_BYTES));
      if (from > 0) {
        // The line that holds the byte before ends where another begins. Of a line without end in
        // the stretch no more is read: the one that begins it has it.
        lines.skipLine(to);
      }
      boolean more = true;
      while (more) {
        if (parser.scans() && lines.offset() >= leaderEnd) {
          passPlain(lines, to, run, skimmer);
        }
        if (lines.offset() >= to) {
          break;
        }
        more = lines.read(line);
        Optional<Block> block = more ? parser.unlessPlain(line, leaderEnd, run) : Optional.empty();
        if (block.isPresent()) {
          blocks.add(block.get());
          if (run.isEmpty()) {
            plain.add(PlainRun.NONE);
          } else {
            plain.add(run);
            run = new PlainRun();
          }
        }
      }
      plain.add(run);
      return new SkimmedStretch(blocks, plain, lines.number() - 1, !more);
    }
  }

  /** Passes over plain lines as long as they are written in the common way. */
  private static void passPlain(LineReader lines, long to, PlainRun run, LineSkimmer skimmer) {
    long offset = lines.offset();
    if (offset == 0 || offset >= to) {
      // The first line of the file may begin with a byte order mark.
      return;
    }
    int start = lines.start();
    int stop = (int) Math.min(lines.end(), start + to - offset);
    int next = skimmer.skimLines(lines.buffer(), start, lines.end(), stop);
    if (skimmer.lines() > 0) {
      run.add(lines.number(), offset + skimmer.lastEnd() - start, skimmer);
      lines.pass(next, skimmer.lines());
    }
  }
}

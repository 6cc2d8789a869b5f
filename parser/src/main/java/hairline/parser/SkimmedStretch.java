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
    List<Block> blocks = new ArrayList<>();
    List<PlainRun> plain = new ArrayList<>();
    PlainRun run = new PlainRun();
    Line line = new Line();
    try (ByteSource bytes = opener.open()) {
      LineReader lines = new LineReader(bytes, firstLine(bytes, from, to), 1, BUFFERS.get());
      boolean more = true;
      while (lines.offset() < to && (more = lines.read(line))) {
        Optional<Block> block = parser.unlessPlain(line, leaderEnd, run);
        if (block.isPresent()) {
          blocks.add(block.get());
          plain.add(run);
          run = new PlainRun();
        }
      }
      plain.add(run);
      return new SkimmedStretch(blocks, plain, lines.number() - 1, !more);
    }
  }

  /**
   * Where the first line begins at or behind a place; {@code to} or more where none does; at the
   * end of the file {@code from}.
   */
  private static long firstLine(ByteSource bytes, long from, long to) throws IOException {
    if (from == 0) {
      return 0;
    }
    // The line that holds the byte before ends where another begins. Of a line without end in the
    // stretch no more is read: the one that begins it has it.
    LineReader before = new LineReader(bytes.upTo(to + 1), from - 1, 1, BUFFERS.get());
    return before.read(new Line()) ? before.offset() : from;
  }

  /** A block of it, with its line counted from the beginning of the file. */
  static Block behind(int linesBefore, Block block) {
    return new Block(
        block.line() + linesBefore,
        block.byteOffset(),
        block.byteLength(),
        block.text(),
        block.kind(),
        block.deletable(),
        block.words(),
        block.settings(),
        block.comments(),
        block.problems());
  }
}

package hairline.parser;

import java.io.IOException;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The blocks of a stored program, one by one or by the batch. */
final class StoredBlocks implements BatchSource {
  /** Stands for the end of a program where every block of the file is wanted, of any kind. */
  static final long EVERY_BLOCK = Long.MAX_VALUE;

  private final LineReader lines;
  private final long leaderEnd;
  private final long end;
  private final @Nullable Watch watch;
  private final Line line = new Line();
  private final BlockParser parser = new BlockParser();

  /**
   * Blocks of what the lines hold.
   *
   * @param leaderEnd where the leader of the file ends
   * @param end where the program ends, of which tape marks and leader are left out, or {@link
   *     #EVERY_BLOCK}
   */
  StoredBlocks(LineReader lines, long leaderEnd, long end) {
    this(lines, leaderEnd, end, null);
  }

  private StoredBlocks(LineReader lines, long leaderEnd, long end, @Nullable Watch watch) {
    this.lines = lines;
    this.leaderEnd = leaderEnd;
    this.end = end;
    this.watch = watch;
  }

  /** Blocks that somebody else sees too, who tells where the program ends; tape marks left out. */
  static StoredBlocks seenBy(Onlooker onlooker, LineReader lines, long leaderEnd) {
    return new StoredBlocks(lines, leaderEnd, EVERY_BLOCK, new Watch(onlooker));
  }

  @Override
  public Optional<Block> next() throws IOException {
    return Optional.ofNullable(read());
  }

  private @Nullable Block read() throws IOException {
    if (watch != null) {
      return readWatched(watch);
    }
    while (lines.offset() < end && lines.read(line)) {
      Block block = blockOfLine();
      if (end == EVERY_BLOCK || block.kind() == Block.Kind.BLOCK) {
        return block;
      }
    }
    return null;
  }

  private Block blockOfLine() {
    return line.byteOffset < leaderEnd ? Leader.block(line) : parser.parse(line);
  }

  private @Nullable Block readWatched(Watch watching) throws IOException {
    while (lines.read(line)) {
      Block block = blockOfLine();
      if (watching.wants(block) && block.kind() == Block.Kind.BLOCK) {
        return block;
      }
    }
    watching.end();
    return null;
  }

  @Override
  public void fill(BlockBatch.Builder batch) throws IOException {
    while (!batch.isFull() && !batch.isTooFar(lines.offset())) {
      if (parser.scans() && lines.offset() >= leaderEnd) {
        addPlain(batch);
      }
      if (!batch.isFull()) {
        Block block = read();
        if (block == null) {
          return;
        }
        batch.add(block);
      }
    }
    if (watch != null) {
      watch.tellPlain();
    }
  }

  /** Adds plain lines as long as they stand in the buffer, one behind the other. */
  private void addPlain(BlockBatch.Builder batch) throws IOException {
    byte[] buffer = lines.buffer();
    int from = lines.start();
    long offset = lines.offset();
    LineScanner scanner = parser.scanner();
    try {
      addPlain(batch, buffer, scanner);
    } finally {
      scanner.packForItself();
      batch.addText(buffer, from, lines.start(), offset);
    }
  }

  private void addPlain(BlockBatch.Builder batch, byte[] buffer, LineScanner scanner)
      throws IOException {
    int known = lines.end();
    while (!batch.isFull() && lines.offset() < end) {
      int number = lines.number();
      int start = lines.start();
      long offset = lines.offset();
      scanner.packInto(batch.packed(), batch.wordsFrom());
      int eol = scanner.scan(buffer, start, known);
      if (eol < 0
          || eol == known
          || (watch != null && !scanner.isPlainButForNumber(buffer, eol))
          || !lines.pass(eol)) {
        return;
      }
      batch.addPlain(number, offset, eol - start, scanner.words(), scanner.comments());
      if (watch != null) {
        watch.plain(number, offset + eol - start, scanner);
      }
    }
  }

  @Override
  public void close() throws IOException {
    lines.close();
  }
}

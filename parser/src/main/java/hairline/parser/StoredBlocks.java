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
    this.lines = lines;
    this.leaderEnd = leaderEnd;
    this.end = end;
  }

  @Override
  public Optional<Block> next() throws IOException {
    return Optional.ofNullable(read());
  }

  private @Nullable Block read() throws IOException {
    while (lines.offset() < end && lines.read(line)) {
      Block block = line.byteOffset < leaderEnd ? Leader.block(line) : parser.parse(line);
      if (end == EVERY_BLOCK || block.kind() == Block.Kind.BLOCK) {
        return block;
      }
    }
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
  }

  /** Adds plain lines as long as they stand in the buffer, one behind the other. */
  private void addPlain(BlockBatch.Builder batch) {
    byte[] buffer = lines.buffer();
    int from = lines.start();
    int known = lines.end();
    long offset = lines.offset();
    LineScanner scanner = parser.scanner();
    int start = from;
    while (!batch.isFull() && lines.offset() < end) {
      int number = lines.number();
      scanner.packInto(batch.packed(), batch.wordsFrom());
      int eol = scanner.scan(buffer, start, known);
      if (eol < 0 || eol == known || !lines.pass(eol)) {
        break;
      }
      batch.addPlain(
          number, offset + start - from, eol - start, scanner.words(), scanner.comments());
      start = lines.start();
    }
    scanner.packForItself();
    batch.addText(buffer, from, start, offset);
  }

  @Override
  public void close() throws IOException {
    lines.close();
  }
}

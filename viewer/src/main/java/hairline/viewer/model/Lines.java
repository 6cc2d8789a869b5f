package hairline.viewer.model;

import hairline.checks.report.Visible;
import hairline.parser.Block;
import hairline.parser.BlockSource;
import hairline.parser.PartProgram;
import hairline.parser.PartPrograms;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/**
 * The lines of a file, read where they are looked at: kept are where every {@link #STRIDE}th line
 * begins (8 bytes each) and the text of the last {@link #PAGES_KEPT} pages.
 */
public final class Lines {
  /** Of so many lines one is remembered by its place, and so many are read at once. */
  static final int STRIDE = 128;

  /** So many pages stay in memory. */
  static final int PAGES_KEPT = 64;

  private static final int BUFFER_BYTES = 1 << 18;

  private final PartProgram text;
  private final Path file;
  private volatile long[] starts = new long[1024];
  private volatile int count;
  private volatile boolean complete;
  private final Map<Integer, List<String>> pages = new LinkedHashMap<>(16, 0.75f, true);

  /** The lines of a file, none of them found yet. */
  public Lines(Path file) {
    this.file = file;
    this.text = PartPrograms.of(file);
  }

  /** How many lines are found by now. */
  public int count() {
    return count;
  }

  /** Whether all are found. */
  public boolean complete() {
    return complete;
  }

  /**
   * Finds where the lines begin; to be run off the window's thread. Lines end like those of the
   * parser: in CRLF, LF or a lone CR.
   *
   * @param cancelled asked now and then
   * @throws IOException if the file cannot be read
   */
  void find(BooleanSupplier cancelled) throws IOException {
    ByteBuffer buffer = ByteBuffer.allocate(BUFFER_BYTES);
    long offset = 0;
    int lines = 0;
    boolean inLine = false;
    boolean afterReturn = false;
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
      while (channel.read(buffer) >= 0 && !cancelled.getAsBoolean()) {
        buffer.flip();
        while (buffer.hasRemaining()) {
          byte b = buffer.get();
          if (afterReturn && b == '\n') {
            afterReturn = false;
            offset++;
            continue;
          }
          afterReturn = false;
          if (!inLine) {
            begin(lines, offset);
            lines++;
            inLine = true;
          }
          offset++;
          if (b == '\n' || b == '\r') {
            inLine = false;
            afterReturn = b == '\r';
          }
        }
        count = lines;
        buffer.clear();
      }
    }
    count = lines;
    complete = true;
  }

  /** The file they stand in. */
  public Path file() {
    return file;
  }

  private void begin(int line, long offset) {
    if (line % STRIDE != 0) {
      return;
    }
    int page = line / STRIDE;
    if (page == starts.length) {
      starts = Arrays.copyOf(starts, 2 * page);
    }
    starts[page] = offset;
  }

  /**
   * The text of a line if its page is in memory.
   *
   * @param line from 1
   */
  public Optional<String> ifRead(int line) {
    synchronized (pages) {
      List<String> page = pages.get((line - 1) / STRIDE);
      int at = (line - 1) % STRIDE;
      return page == null || at >= page.size() ? Optional.empty() : Optional.of(page.get(at));
    }
  }

  /**
   * The text of a line, read from the file where it must be; what would steer or hide text is
   * spelled out.
   *
   * @param line from 1 to {@link #count}
   * @throws IOException if the file cannot be read any more
   */
  public String read(int line) throws IOException {
    Optional<String> known = ifRead(line);
    if (known.isPresent()) {
      return known.get();
    }
    int page = (line - 1) / STRIDE;
    List<String> lines = page(page);
    synchronized (pages) {
      pages.put(page, lines);
      if (pages.size() > PAGES_KEPT) {
        pages.remove(pages.keySet().iterator().next());
      }
    }
    int at = (line - 1) % STRIDE;
    return at < lines.size() ? lines.get(at) : "";
  }

  private List<String> page(int page) throws IOException {
    List<String> lines = new ArrayList<>(STRIDE);
    try (BlockSource blocks = text.blocksFrom(starts[page], page * STRIDE + 1)) {
      Optional<Block> block = blocks.next();
      while (block.isPresent() && lines.size() < STRIDE) {
        lines.add(Visible.of(block.get().text()));
        block = blocks.next();
      }
    }
    return lines;
  }
}

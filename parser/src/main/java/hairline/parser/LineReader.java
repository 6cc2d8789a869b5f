package hairline.parser;

import java.io.Closeable;
import java.io.IOException;

/**
 * Cuts bytes into lines, which end in CRLF, LF or a lone CR. Holds one buffer, whatever the length
 * of a line.
 */
final class LineReader implements Closeable {
  private static final int CHUNK_BYTES = 65_536;
  private static final int FEW_BYTES = 4_096;

  private final ByteSource source;
  private final byte[] buffer;
  private int chunkBytes = CHUNK_BYTES;

  /** The unread bytes are those from {@code start} to before {@code end}. */
  private int start;

  private int end;

  /** Where in the source the byte at {@code start} stands. */
  private long startOffset;

  private int nextNumber;
  private boolean exhausted;

  LineReader(ByteSource source, long byteOffset, int line) {
    this(source, byteOffset, line, newBuffer());
  }

  /** A reader with a buffer that another is done with. */
  LineReader(ByteSource source, long byteOffset, int line, byte[] buffer) {
    this.buffer = buffer;
    this.source = source;
    this.startOffset = byteOffset;
    this.nextNumber = line;
  }

  static byte[] newBuffer() {
    return new byte[Limits.LINE_BYTES + CHUNK_BYTES];
  }

  /**
   * Reads the next line.
   *
   * @return false at the end
   */
  boolean read(Line line) throws IOException {
    if (start == end && !fill()) {
      return false;
    }
    int scanned = start;
    while (true) {
      int eol = findLineEnd(scanned);
      if (eol >= 0) {
        finish(line, eol - start, eol - start);
        skipLineEnd(eol, line);
        return true;
      }
      if (end - start > Limits.LINE_BYTES) {
        readLongLine(line);
        return true;
      }
      int length = end - start;
      if (!fill()) {
        finish(line, length, length);
        consume(end);
        return true;
      }
      scanned = start + length;
    }
  }

  /**
   * Reads as much as this at first, if it fits, and little at a time from then on.
   *
   * @param bytes how much is known to be wanted
   */
  void fillOnce(int bytes) throws IOException {
    chunkBytes = Math.min(bytes, CHUNK_BYTES + Limits.LINE_BYTES / 2);
    boolean more = true;
    while (end < bytes && end + chunkBytes <= buffer.length && more) {
      more = fill();
    }
    chunkBytes = FEW_BYTES;
  }

  /**
   * Runs to the end of the line under way, if it ends before a place, else to some place behind.
   */
  void skipLine(long limit) throws IOException {
    while (startOffset <= limit && (start < end || fill())) {
      int eol = findLineEnd(start);
      if (eol >= 0) {
        skipLineEnd(eol);
        return;
      }
      consume(end);
    }
  }

  /** The buffer; the bytes of lines stand in it from {@link #start} to before {@link #end}. */
  byte[] buffer() {
    return buffer;
  }

  /** Where in the buffer the next line begins, if it is there already. */
  int start() {
    return start;
  }

  /** Where the bytes in the buffer end. */
  int end() {
    return end;
  }

  /**
   * Passes over a line that was read in the buffer.
   *
   * @param eol the index of its line end
   * @return false where the line is to be read by {@link #read} all the same
   */
  boolean pass(int eol) {
    int next = eol + 1;
    if (eol - start > Limits.LINE_BYTES || startOffset == 0) {
      return false;
    }
    if (buffer[eol] == '\r') {
      if (next == end) {
        return false;
      }
      if (buffer[next] == '\n') {
        next++;
      }
    }
    nextNumber++;
    consume(next);
    return true;
  }

  /**
   * Passes over lines that were read in the buffer.
   *
   * @param next where the next line begins there
   */
  void pass(int next, int lines) {
    nextNumber += lines;
    consume(next);
  }

  /** The offset of the first byte that no line has taken yet. */
  long offset() {
    return startOffset;
  }

  /** The number of the next line. */
  int number() {
    return nextNumber;
  }

  @Override
  public void close() throws IOException {
    source.close();
  }

  private void finish(Line line, int kept, long length) {
    line.number = nextNumber++;
    line.byteOffset = startOffset;
    line.byteLength = (int) Math.min(length, Integer.MAX_VALUE);
    line.tooLong = length > Limits.LINE_BYTES;
    int from = start;
    int to = start + Math.min(kept, Limits.LINE_BYTES);
    if (startOffset == 0 && startsWithByteOrderMark(to)) {
      from += 3;
    }
    line.take(buffer, from, to);
  }

  private boolean startsWithByteOrderMark(int to) {
    return to - start >= 3
        && buffer[start] == (byte) 0xEF
        && buffer[start + 1] == (byte) 0xBB
        && buffer[start + 2] == (byte) 0xBF;
  }

  /** Takes the beginning of a line that does not fit the buffer, and runs to its end. */
  private void readLongLine(Line line) throws IOException {
    long begin = startOffset;
    finish(line, Limits.LINE_BYTES, Long.MAX_VALUE);
    line.decode();
    consume(end);
    int eol = -1;
    while (eol < 0 && fill()) {
      eol = findLineEnd(start);
      consume(eol < 0 ? end : eol);
    }
    line.byteLength = (int) Math.min(startOffset - begin, Integer.MAX_VALUE);
    if (eol >= 0) {
      skipLineEnd(eol, line);
    }
  }

  private int findLineEnd(int from) {
    int i = from;
    for (; i <= end - Eight.BYTES; i += Eight.BYTES) {
      int found = Eight.lineEnd(Eight.at(buffer, i));
      if (found < Eight.BYTES) {
        return i + found;
      }
    }
    for (; i < end; i++) {
      byte b = buffer[i];
      if (b == '\n' || b == '\r') {
        return i;
      }
    }
    return -1;
  }

  private void skipLineEnd(int eol, Line line) throws IOException {
    if (buffer[eol] == '\r' && eol + 1 == end) {
      // Looking for its line feed moves what stands in the buffer.
      line.keep();
    }
    skipLineEnd(eol);
  }

  private void skipLineEnd(int eol) throws IOException {
    boolean carriageReturn = buffer[eol] == '\r';
    consume(eol + 1);
    if (carriageReturn && (start < end || fill()) && buffer[start] == '\n') {
      consume(start + 1);
    }
  }

  private void consume(int to) {
    startOffset += to - start;
    start = to;
  }

  /** Reads more bytes behind the unread ones, which move to the front of the buffer. */
  private boolean fill() throws IOException {
    if (exhausted) {
      return false;
    }
    System.arraycopy(buffer, start, buffer, 0, end - start);
    end -= start;
    start = 0;
    int read = source.read(startOffset + end, buffer, end, chunkBytes);
    if (read < 0) {
      exhausted = true;
      return false;
    }
    end += read;
    return true;
  }
}

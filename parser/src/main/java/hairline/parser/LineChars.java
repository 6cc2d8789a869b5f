package hairline.parser;

import org.antlr.v4.runtime.CharStream;
import org.antlr.v4.runtime.IntStream;
import org.antlr.v4.runtime.misc.Interval;

/**
 * A line as ANTLR reads it, without a copy. The index is the column less one.
 *
 * <p>ANTLR remembers its decisions for ASCII only and works out every other character afresh. The
 * grammar makes no difference between characters beyond ASCII and the control character DEL, so the
 * lexer is shown that one in their place; texts keep what stands in the line.
 */
final class LineChars implements CharStream {
  private static final int DEL = 0x7F;

  private Line line = new Line();
  private int index;

  /** Begins another line. */
  void reset(Line line) {
    this.line = line;
    index = 0;
  }

  @Override
  public String getText(Interval interval) {
    int to = Math.min(interval.b + 1, line.count);
    return interval.a >= to ? "" : line.text(interval.a, to);
  }

  @Override
  public void consume() {
    index++;
  }

  @Override
  public int LA(int i) {
    int at = index + i - (i > 0 ? 1 : 0);
    return at >= 0 && at < line.count ? Math.min(line.codePoints[at], DEL) : IntStream.EOF;
  }

  @Override
  public int mark() {
    return -1;
  }

  @Override
  public void release(int marker) {}

  @Override
  public int index() {
    return index;
  }

  @Override
  public void seek(int index) {
    this.index = index;
  }

  @Override
  public int size() {
    return line.count;
  }

  @Override
  public String getSourceName() {
    return "line " + line.number;
  }
}

package hairline.parser;

import java.nio.charset.StandardCharsets;
import java.util.AbstractList;
import java.util.Objects;
import java.util.RandomAccess;

/** The comments of a plain line, each made when somebody asks for it. */
final class PackedComments extends AbstractList<Comment> implements RandomAccess {
  private static final int END_SHIFT = 32;

  private final Words words;
  private final byte[] ascii;
  private final int textFrom;
  private final int count;

  /**
   * Comments.
   *
   * @param words the words of the line, the comments packed behind them
   * @param ascii holds the text of the line
   * @param textFrom where it begins in there
   */
  PackedComments(Words words, byte[] ascii, int textFrom, int count) {
    this.words = words;
    this.ascii = ascii;
    this.textFrom = textFrom;
    this.count = count;
  }

  /** What is kept of a comment: its first column and the one behind its last. */
  static long pack(int column, int endColumn) {
    return column | (long) endColumn << END_SHIFT;
  }

  @Override
  public int size() {
    return count;
  }

  @Override
  public Comment get(int index) {
    Objects.checkIndex(index, count);
    long pack = words.behind(index);
    Span span = new Span((int) pack, (int) (pack >>> END_SHIFT));
    int start = textFrom + span.column() - 1;
    int end = textFrom + span.endColumn() - 1;
    int text = start + LineScanner.commentMark(ascii, start, end);
    int textEnd = ascii[start] == '(' ? end - 1 : end;
    return new Comment(
        new String(ascii, text, textEnd - text, StandardCharsets.ISO_8859_1), true, span);
  }
}

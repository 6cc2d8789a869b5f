package hairline.parser;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * One line of a part program, read. Of a plain line nothing is made but where its words stand; its
 * text and its comments are when somebody asks for them.
 */
public final class Block {
  /** The sorts of line. */
  public enum Kind {
    /** A block of the program, perhaps empty, perhaps with comments only. */
    BLOCK,
    /** A bare {@code %}. */
    TAPE_MARK,
    /** Text before the first tape mark that the file has; not part of the program. */
    LEADER
  }

  /** What a line has that is more than plain. */
  private record More(
      String text,
      Kind kind,
      boolean deletable,
      List<Setting> settings,
      List<Comment> comments,
      List<Problem> problems) {}

  private static final byte[] NO_TEXT = {};

  private final int line;
  private final int byteLength;
  private final long byteOffset;
  private final Words words;

  /** Holds the text of a plain line from an index on. */
  private final byte[] ascii;

  private final int textFrom;

  /** How many comments of a plain line are packed behind its words. */
  private final int comments;

  private final @Nullable More more;

  /**
   * A block.
   *
   * @param line line number from 1
   * @param byteOffset where the line begins in its file
   * @param byteLength its length without the line end; a byte order mark before it counts
   * @param text the line as text, as {@link #text} gives it
   * @param kind what sort of line
   * @param deletable whether a {@code /} stands before it (block delete)
   * @param words its words in the order written, N and O included
   * @param settings its parameter settings in the order written
   * @param comments its comments in the order written
   * @param problems what is wrong with it
   */
  public Block(
      int line,
      long byteOffset,
      int byteLength,
      String text,
      Kind kind,
      boolean deletable,
      List<Word> words,
      List<Setting> settings,
      List<Comment> comments,
      List<Problem> problems) {
    this(
        line,
        byteOffset,
        byteLength,
        Words.of(words),
        NO_TEXT,
        0,
        0,
        new More(
            text,
            kind,
            deletable,
            List.copyOf(settings),
            List.copyOf(comments),
            List.copyOf(problems)));
  }

  private Block(
      int line,
      long byteOffset,
      int byteLength,
      Words words,
      byte[] ascii,
      int textFrom,
      int comments,
      @Nullable More more) {
    this.line = line;
    this.byteOffset = byteOffset;
    this.byteLength = byteLength;
    this.words = words;
    this.ascii = ascii;
    this.textFrom = textFrom;
    this.comments = comments;
    this.more = more;
  }

  /**
   * A plain line.
   *
   * @param words its words, its comments packed behind them
   * @param ascii holds its text, and perhaps more before and behind; must not change
   * @param textFrom where in there the text begins
   * @param comments how many comments it has
   */
  static Block plain(
      int line,
      long byteOffset,
      int byteLength,
      Words words,
      byte[] ascii,
      int textFrom,
      int comments) {
    return new Block(line, byteOffset, byteLength, words, ascii, textFrom, comments, null);
  }

  /** The same, so many lines further down. */
  Block behind(int lines) {
    return new Block(line + lines, byteOffset, byteLength, words, ascii, textFrom, comments, more);
  }

  /** Line number from 1. */
  public int line() {
    return line;
  }

  /** Where the line begins in its file. */
  public long byteOffset() {
    return byteOffset;
  }

  /** Its length without the line end; a byte order mark before it counts. */
  public int byteLength() {
    return byteLength;
  }

  /**
   * The line as text, without byte order mark, cut off behind {@link Limits#TEXT_CODE_POINTS} code
   * points; whatever characters the file has stand in it, control characters too, so that a writer
   * must escape it.
   */
  public String text() {
    if (more != null) {
      return more.text;
    }
    int length = Math.min(Math.min(byteLength, ascii.length - textFrom), Limits.TEXT_CODE_POINTS);
    return new String(ascii, textFrom, length, StandardCharsets.ISO_8859_1);
  }

  /** What sort of line. */
  public Kind kind() {
    return more == null ? Kind.BLOCK : more.kind;
  }

  /** Whether a {@code /} stands before it (block delete). */
  public boolean deletable() {
    return more != null && more.deletable;
  }

  /** Its words in the order written, N and O included; {@link Words}, whoever made the block. */
  public List<Word> words() {
    return words;
  }

  /** Its parameter settings in the order written. */
  public List<Setting> settings() {
    return more == null ? List.of() : more.settings;
  }

  /** Its comments in the order written. */
  public List<Comment> comments() {
    if (more != null) {
      return more.comments;
    }
    return comments == 0 ? List.of() : new PackedComments(words, ascii, textFrom, comments);
  }

  /**
   * What is wrong with it; with a {@code SYNTAX} or {@code MACRO} problem, words and settings are
   * empty.
   */
  public List<Problem> problems() {
    return more == null ? List.of() : more.problems;
  }

  @Override
  public boolean equals(@Nullable Object object) {
    return object instanceof Block other
        && line == other.line
        && byteOffset == other.byteOffset
        && byteLength == other.byteLength
        && kind() == other.kind()
        && deletable() == other.deletable()
        && words.equals(other.words)
        && settings().equals(other.settings())
        && comments().equals(other.comments())
        && problems().equals(other.problems())
        && text().equals(other.text());
  }

  @Override
  public int hashCode() {
    return Objects.hash(line, byteOffset, byteLength, words);
  }

  @Override
  public String toString() {
    return "Block[line="
        + line
        + ", byteOffset="
        + byteOffset
        + ", byteLength="
        + byteLength
        + ", text="
        + text()
        + ", kind="
        + kind()
        + ", deletable="
        + deletable()
        + ", words="
        + words
        + ", settings="
        + settings()
        + ", comments="
        + comments()
        + ", problems="
        + problems()
        + "]";
  }
}

package hairline.parser;

import java.util.List;

/**
 * One line of a part program, read.
 *
 * @param line line number from 1
 * @param byteOffset where the line begins in its file
 * @param byteLength its length without the line end; a byte order mark before it counts
 * @param text the line as text, without byte order mark, cut off behind {@link
 *     Limits#TEXT_CODE_POINTS} code points; whatever characters the file has stand in it, control
 *     characters too, so that a writer must escape it
 * @param kind what sort of line
 * @param deletable whether a {@code /} stands before it (block delete)
 * @param words its words in the order written, N and O included
 * @param settings its parameter settings in the order written
 * @param comments its comments in the order written
 * @param problems what is wrong with it; with a {@code SYNTAX} or {@code MACRO} problem, words and
 *     settings are empty
 */
public record Block(
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

  /** The sorts of line. */
  public enum Kind {
    /** A block of the program, perhaps empty, perhaps with comments only. */
    BLOCK,
    /** A bare {@code %}. */
    TAPE_MARK,
    /** Text before the first tape mark that the file has; not part of the program. */
    LEADER
  }

  public Block {
    words = Words.of(words);
    settings = List.copyOf(settings);
    comments = List.copyOf(comments);
    problems = List.copyOf(problems);
  }
}

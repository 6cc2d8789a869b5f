package hairline.checks.motion;

import hairline.parser.Span;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;

/**
 * What a first look at a file tells before anything runs: where its programs stand, and what
 * concerns its text as a whole. Made by {@link ProgramIndexer}.
 *
 * @param programs its programs in the order written; the first is the one that runs when the file
 *     is run
 * @param deletableBlocks whether a block begins with the block delete mark
 * @param mixesDecimalPoints whether some of its lengths other than zero have a decimal point and
 *     others have none
 * @param remarks its comments that speak to the checker
 */
public record ProgramIndex(
    List<Program> programs,
    boolean deletableBlocks,
    boolean mixesDecimalPoints,
    List<Remark> remarks) {

  public ProgramIndex {
    programs = List.copyOf(programs);
    remarks = List.copyOf(remarks);
  }

  /**
   * A program within a file.
   *
   * @param number the number behind O or a colon; empty where the first program has none
   * @param line the line where its text begins
   * @param byteOffset where that line begins
   * @param endByteOffset where its text ends: at the next program number, at a tape mark behind it,
   *     or with the file
   * @param lastLine the last line of its text
   * @param firstBlockLine the first line with more than numbers of the program or block
   * @param endCode the first of M2, M30, M99 that stands in it, as "M30"
   */
  public record Program(
      OptionalLong number,
      int line,
      long byteOffset,
      long endByteOffset,
      int lastLine,
      OptionalInt firstBlockLine,
      Optional<String> endCode) {

    /** How it is called in messages, e.g. "O1000"; empty without a number. */
    public String name() {
      return number.isPresent() ? "O" + number.getAsLong() : "";
    }
  }

  /**
   * A comment that begins with {@code hairline:}, raw.
   *
   * @param line where it stands
   * @param span the comment with its marks
   * @param text the text inside
   * @param standsAlone whether the line has no word and no setting
   * @param blockLine the line of the block it speaks of: its own, or, where it stands alone, that
   *     of the next block with content; its own again where none follows
   */
  public record Remark(int line, Span span, String text, boolean standsAlone, int blockLine) {}

  /** The program that runs when the file is run. */
  public Program first() {
    return programs.get(0);
  }
}

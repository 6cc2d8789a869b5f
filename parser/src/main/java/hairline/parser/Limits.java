package hairline.parser;

/**
 * How much the reader takes before it answers with a {@link Problem.Kind#SYNTAX} problem. Real
 * programs stay far below; the limits keep memory and time bounded whatever the input. NISTIR 6556
 * §3.3 allows 256 characters a line; longer lines are no error here.
 */
public final class Limits {
  /** Longest line that is read, in bytes without the line end. */
  public static final int LINE_BYTES = 65_536;

  /** Most digits of one number, leading and trailing zeros included. */
  public static final int NUMBER_DIGITS = 40;

  /** How deep brackets may nest, and how many {@code #} may stand one inside the other. */
  public static final int NESTING = 100;

  /** Most operations (operators, functions, signs, {@code #}) within one value. */
  public static final int OPERATIONS = 500;

  /** Most {@link Problem.Kind#SPACE_INSIDE_NUMBER} problems told of one block, the first ones. */
  public static final int SPACE_PROBLEMS = 4;

  /** Longest {@link Block#text()}, in code points; what lies behind is cut off. */
  public static final int TEXT_CODE_POINTS = 1024;

  /** Longest text of {@link Problem#found()} that is quoted from a program, in code points. */
  public static final int FOUND_CODE_POINTS = 24;

  /** Where a leader must end: the first tape mark is looked for within so many bytes ... */
  public static final int LEADER_BYTES = 65_536;

  /** ... and so many lines. */
  public static final int LEADER_LINES = 200;

  private Limits() {}
}

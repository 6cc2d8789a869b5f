package hairline.checks.motion;

import hairline.parser.Span;

/**
 * Where in the input something stands.
 *
 * @param file index of the file among those of this program: 0 is the program itself, others are
 *     subprogram files in the order first called
 * @param line line number from 1
 * @param span columns
 */
public record Place(int file, int line, Span span) {
  /** The same line, other columns. */
  public Place at(Span other) {
    return new Place(file, line, other);
  }
}

package hairline.parser;

/**
 * A stretch of one line.
 *
 * @param column first column, counted in Unicode code points from 1
 * @param endColumn one past the last column
 */
public record Span(int column, int endColumn) {
  public Span {
    if (column < 1 || endColumn < column) {
      throw new IllegalArgumentException("span " + column + ".." + endColumn);
    }
  }

  /** The smallest span that holds both. */
  public Span cover(Span other) {
    return new Span(Math.min(column, other.column), Math.max(endColumn, other.endColumn));
  }
}

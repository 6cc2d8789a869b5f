package hairline.checks.report;

import hairline.parser.Span;

/**
 * A source line as it is shown, and the marks below it.
 *
 * @param text the line, or the stretch of it around the marks, harmless and with tabs spread out
 * @param marks blanks, then marks below the columns concerned
 */
record Excerpt(String text, String marks) {
  private static final String MARK = "▔";
  private static final String CUT = "…";
  private static final int TAB = 4;
  private static final int BEFORE = 24;

  /**
   * @param line the source line
   * @param span the columns to mark, in code points from 1
   * @param width at most so many terminal columns are shown
   */
  static Excerpt of(String line, Span span, int width) {
    int start = 0;
    int column = 1;
    StringBuilder text = new StringBuilder();
    StringBuilder marks = new StringBuilder();
    if (span.endColumn() > width && span.column() > BEFORE) {
      // The words concerned stand far out: begin a little before them.
      int skipped = Math.min(span.column() - BEFORE, line.codePointCount(0, line.length()));
      start = line.offsetByCodePoints(0, skipped);
      column += skipped;
      text.append(CUT);
      marks.append(' ');
    }
    int shown = text.length();
    int marked = 0;
    for (int at = start; at < line.length(); column++) {
      int c = line.codePointAt(at);
      at += Character.charCount(c);
      String piece = c == '\t' ? " ".repeat(TAB - shown % TAB) : Visible.of(c);
      int columns = DisplayWidth.of(piece);
      if (shown + columns > width - 1 && at < line.length()) {
        text.append(CUT);
        break;
      }
      boolean mark = column >= span.column() && column < span.endColumn();
      text.append(piece);
      marks.append((mark ? MARK : " ").repeat(columns));
      marked += mark ? columns : 0;
      shown += columns;
    }
    if (marked == 0) {
      marks.append(MARK);
    }
    return new Excerpt(text.toString().stripTrailing(), marks.toString().stripTrailing());
  }
}

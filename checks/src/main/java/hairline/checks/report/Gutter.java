package hairline.checks.report;

import java.io.IOException;
import java.io.Writer;

/**
 * The layout of texts for people: labels stand in a gutter on the left, what they speak of in one
 * column beside it. All text passes {@link Visible} here, but for the lines of our own.
 */
final class Gutter {
  private static final int WIDTH = 9;
  private static final int COLUMN = WIDTH + 2;

  private final Writer out;
  private final int width;
  private final boolean colour;

  Gutter(Writer out, int width, boolean colour) {
    this.out = out;
    this.width = width;
    this.colour = colour;
  }

  /** A text beside a label, over as many lines as it takes. */
  void labelled(String label, Paint paint, String text) throws IOException {
    labelled(label, paint, text, false);
  }

  /** The same, the text strong. */
  void labelled(String label, Paint paint, String text, boolean strong) throws IOException {
    String next = label;
    for (String part : Wrap.at(columns(), Visible.of(text))) {
      label(next, paint);
      line(strong ? paint(Paint.STRONG, part) : part);
      next = "";
    }
  }

  /** A label, with nothing beside it yet. */
  void label(String text, Paint paint) throws IOException {
    out.write(" ".repeat(Math.max(0, WIDTH - DisplayWidth.of(text))));
    out.write(text.isEmpty() ? "" : paint(paint, text));
    out.write("  ");
  }

  /** The end of a line; of our own making. */
  void line(String text) throws IOException {
    out.write(text);
    out.write('\n');
  }

  /** A rule across the page. */
  void rule() throws IOException {
    line(paint(Paint.QUIET, "─".repeat(width)));
  }

  /** Columns beside the gutter. */
  int columns() {
    return width - COLUMN;
  }

  String paint(Paint paint, String text) {
    return colour && !text.isBlank() ? paint.on(text) : text;
  }
}

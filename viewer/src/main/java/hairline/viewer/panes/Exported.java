package hairline.viewer.panes;

import hairline.viewer.draw.Palette;
import hairline.viewer.draw.Pen;
import java.io.IOException;

/** A pane whose picture and figures can be written to a file. */
public interface Exported {
  /** What it is called in the name of a file. */
  String exportName();

  /** How wide its picture is, in logical pixels. */
  double exportWidth();

  /** How high its picture is. */
  double exportHeight();

  /** Draws it. */
  void drawTo(Pen pen, Palette palette);

  /**
   * Writes its figures as a table (RFC 4180), the first line the names of the columns.
   *
   * @throws IOException if that can't be written
   */
  void writeCsv(Appendable out) throws IOException;
}

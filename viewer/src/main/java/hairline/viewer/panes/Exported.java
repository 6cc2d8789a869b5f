package hairline.viewer.panes;

import hairline.viewer.draw.Palette;
import hairline.viewer.draw.Pen;
import java.io.IOException;

/** A pane whose picture and figures can be written to a file. */
public interface Exported {
  /** What it is called in the name of a file. */
  String exportName();

  /** The pane as it stands now; to be asked for on the window's thread. */
  Taken taken(Palette palette);

  /**
   * A pane as it stood when it was taken: it may be written on any thread while the pane goes on.
   */
  interface Taken {
    /** How wide its picture is, in logical pixels. */
    double width();

    /** How high its picture is. */
    double height();

    /** Draws it. */
    void draw(Pen pen);

    /**
     * Writes its figures as a table (RFC 4180), the first line the names of the columns.
     *
     * @throws IOException if that can't be written
     */
    void writeCsv(Appendable out, Progress progress) throws IOException;
  }
}

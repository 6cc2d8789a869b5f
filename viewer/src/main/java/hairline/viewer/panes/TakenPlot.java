package hairline.viewer.panes;

import hairline.viewer.draw.Pen;
import java.io.IOException;

/**
 * What was taken of a pane.
 *
 * @param width of its picture, in logical pixels
 * @param height of its picture
 * @param drawing draws it
 * @param table writes its figures
 */
record TakenPlot(double width, double height, Drawing drawing, Table table)
    implements Exported.Taken {

  /** Draws a pane as it was. */
  interface Drawing {
    void draw(Pen pen);
  }

  /** Writes the figures of a pane as they were. */
  interface Table {
    void write(Appendable out, Progress progress) throws IOException;
  }

  @Override
  public void draw(Pen pen) {
    drawing.draw(pen);
  }

  @Override
  public void writeCsv(Appendable out, Progress progress) throws IOException {
    table.write(out, progress);
  }
}

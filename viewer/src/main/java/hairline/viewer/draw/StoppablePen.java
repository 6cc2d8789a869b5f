package hairline.viewer.draw;

/** Draws with another pen, and asks before each stroke whether to go on. */
public final class StoppablePen implements Pen {
  private final Pen pen;
  private final Runnable before;

  /**
   * A pen.
   *
   * @param before run before each stroke; what it throws ends the drawing
   */
  public StoppablePen(Pen pen, Runnable before) {
    this.pen = pen;
    this.before = before;
  }

  @Override
  public void rectangle(double x, double y, double width, double height, int argb) {
    before.run();
    pen.rectangle(x, y, width, height, argb);
  }

  @Override
  public void line(double x0, double y0, double x1, double y1, Stroke stroke) {
    before.run();
    pen.line(x0, y0, x1, y1, stroke);
  }

  @Override
  public void polyline(double[] x, double[] y, int points, Stroke stroke) {
    before.run();
    pen.polyline(x, y, points, stroke);
  }

  @Override
  public void polygon(double[] x, double[] y, int points, int argb) {
    before.run();
    pen.polygon(x, y, points, argb);
  }

  @Override
  public void text(String text, double x, double y, Font font, int argb, Anchor anchor) {
    before.run();
    pen.text(text, x, y, font, argb, anchor);
  }

  @Override
  public void image(
      int[] argb, int columns, int rows, double x, double y, double width, double height) {
    before.run();
    pen.image(argb, columns, rows, x, y, width, height);
  }

  @Override
  public void columns(double x, double width, double[] from, double[] to, int argb) {
    before.run();
    pen.columns(x, width, from, to, argb);
  }

  @Override
  public void clip(double x, double y, double width, double height) {
    pen.clip(x, y, width, height);
  }

  @Override
  public void unclip() {
    pen.unclip();
  }

  @Override
  public double scale() {
    return pen.scale();
  }
}

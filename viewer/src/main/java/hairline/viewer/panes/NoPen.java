package hairline.viewer.panes;

import hairline.viewer.draw.Pen;

/** Draws nothing: for asking a drawing where things are. */
enum NoPen implements Pen {
  INSTANCE;

  @Override
  public void rectangle(double x, double y, double width, double height, int argb) {}

  @Override
  public void line(double x0, double y0, double x1, double y1, Stroke stroke) {}

  @Override
  public void polyline(double[] x, double[] y, int points, Stroke stroke) {}

  @Override
  public void polygon(double[] x, double[] y, int points, int argb) {}

  @Override
  public void text(String text, double x, double y, Font font, int argb, Anchor anchor) {}

  @Override
  public void image(
      int[] argb, int columns, int rows, double x, double y, double width, double height) {}

  @Override
  public void clip(double x, double y, double width, double height) {}

  @Override
  public void unclip() {}

  @Override
  public double scale() {
    return 1;
  }
}

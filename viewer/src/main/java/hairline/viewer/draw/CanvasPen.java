package hairline.viewer.draw;

import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.paint.Color;
import javafx.scene.shape.StrokeLineCap;
import javafx.scene.shape.StrokeLineJoin;
import javafx.scene.text.FontWeight;
import javafx.scene.text.TextAlignment;

/** Draws on a canvas. */
public final class CanvasPen implements Pen {
  private static final double[] NO_DASH = {};

  private final GraphicsContext out;
  private final double scale;

  /**
   * A pen.
   *
   * @param scale device pixels a logical one
   */
  public CanvasPen(GraphicsContext out, double scale) {
    this.out = out;
    this.scale = scale;
    out.setLineCap(StrokeLineCap.BUTT);
    out.setLineJoin(StrokeLineJoin.ROUND);
    out.setTextBaseline(VPos.BASELINE);
    out.setImageSmoothing(false);
  }

  private static Color color(int argb) {
    return Color.rgb((argb >> 16) & 0xFF, (argb >> 8) & 0xFF, argb & 0xFF, (argb >>> 24) / 255.0);
  }

  private void stroke(Stroke stroke) {
    out.setStroke(color(stroke.argb()));
    out.setLineWidth(stroke.width());
    if (stroke.dash() > 0) {
      out.setLineDashes(stroke.dash(), stroke.dash());
    } else {
      out.setLineDashes(NO_DASH);
    }
  }

  @Override
  public void rectangle(double x, double y, double width, double height, int argb) {
    out.setFill(color(argb));
    out.fillRect(x, y, width, height);
  }

  @Override
  public void line(double x0, double y0, double x1, double y1, Stroke stroke) {
    stroke(stroke);
    out.strokeLine(x0, y0, x1, y1);
  }

  @Override
  public void polyline(double[] x, double[] y, int points, Stroke stroke) {
    stroke(stroke);
    out.strokePolyline(x, y, points);
  }

  @Override
  public void polygon(double[] x, double[] y, int points, int argb) {
    out.setFill(color(argb));
    out.fillPolygon(x, y, points);
  }

  @Override
  public void text(String text, double x, double y, Font font, int argb, Anchor anchor) {
    out.setFont(
        javafx.scene.text.Font.font(
            font.mono() ? "Monospaced" : "System",
            font.bold() ? FontWeight.BOLD : FontWeight.NORMAL,
            font.size()));
    out.setTextAlign(
        switch (anchor) {
          case START -> TextAlignment.LEFT;
          case MIDDLE -> TextAlignment.CENTER;
          case END -> TextAlignment.RIGHT;
        });
    out.setFill(color(argb));
    out.fillText(text, x, y);
  }

  @Override
  public void image(
      int[] argb, int columns, int rows, double x, double y, double width, double height) {
    WritableImage image = new WritableImage(columns, rows);
    image
        .getPixelWriter()
        .setPixels(0, 0, columns, rows, PixelFormat.getIntArgbInstance(), argb, 0, columns);
    out.drawImage(image, x, y, width, height);
  }

  @Override
  public void clip(double x, double y, double width, double height) {
    out.save();
    out.beginPath();
    out.rect(x, y, width, height);
    out.clip();
  }

  @Override
  public void unclip() {
    out.restore();
  }

  @Override
  public double scale() {
    return scale;
  }
}

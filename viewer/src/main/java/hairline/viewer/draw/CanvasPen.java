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
  private static final double MOST_ROWS = 8192;

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

  /** As one picture: a thousand rectangles each frame would be slow without a graphics card. */
  @Override
  public void columns(double x, double width, double[] from, double[] to, int argb) {
    double top = Double.POSITIVE_INFINITY;
    double bottom = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < from.length; k++) {
      if (!Double.isNaN(from[k])) {
        top = Math.min(top, from[k]);
        bottom = Math.max(bottom, to[k]);
      }
    }
    if (!(bottom > top) || from.length == 0) {
      return;
    }
    double begin = Math.floor(top * scale) / scale;
    int rows = (int) Math.min(MOST_ROWS, Math.ceil((bottom - begin) * scale) + 1);
    int[] pixels = new int[rows * from.length];
    int rgb = argb & 0xFFFFFF;
    for (int k = 0; k < from.length; k++) {
      if (Double.isNaN(from[k])) {
        continue;
      }
      double upper = (from[k] - begin) * scale;
      double lower = (to[k] - begin) * scale;
      for (int row = (int) upper; row < rows && row < lower; row++) {
        double covered = Math.min(lower, row + 1.0) - Math.max(upper, row);
        pixels[row * from.length + k] = (int) Math.round(covered * (argb >>> 24)) << 24 | rgb;
      }
    }
    image(pixels, from.length, rows, x, begin, from.length * width, rows / scale);
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

package hairline.viewer.draw;

import hairline.checks.report.Visible;
import java.util.Base64;
import java.util.Locale;

/** Draws into an SVG 1.1 document. */
public final class SvgPen implements Pen {
  private final StringBuilder out = new StringBuilder(1 << 16);
  private int clips;

  /**
   * Begins a document.
   *
   * @param title what it shows
   * @param background its ground
   */
  public SvgPen(double width, double height, String title, int background) {
    out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"")
        .append(number(width))
        .append("\" height=\"")
        .append(number(height))
        .append("\" viewBox=\"0 0 ")
        .append(number(width))
        .append(' ')
        .append(number(height))
        .append("\" font-family=\"sans-serif\">\n<title>")
        .append(escaped(title))
        .append("</title>\n");
    rectangle(0, 0, width, height, background);
  }

  /** The whole document; the pen is used up. */
  public String document() {
    return out.append("</svg>\n").toString();
  }

  private static String number(double value) {
    String text = String.format(Locale.ROOT, "%.2f", value);
    int end = text.length();
    while (text.charAt(end - 1) == '0') {
      end--;
    }
    return text.substring(0, text.charAt(end - 1) == '.' ? end - 1 : end);
  }

  private static String escaped(String text) {
    return Visible.of(text)
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }

  private SvgPen paint(String name, int argb) {
    out.append(' ')
        .append(name)
        .append("=\"#")
        .append(String.format(Locale.ROOT, "%06x", argb & 0xFFFFFF))
        .append('"');
    int alpha = argb >>> 24;
    if (alpha != 0xFF) {
      out.append(' ').append(name).append("-opacity=\"").append(number(alpha / 255.0)).append('"');
    }
    return this;
  }

  private void stroke(Stroke stroke) {
    paint("stroke", stroke.argb());
    out.append(" stroke-width=\"").append(number(stroke.width())).append('"');
    if (stroke.dash() > 0) {
      out.append(" stroke-dasharray=\"").append(number(stroke.dash())).append('"');
    }
  }

  private SvgPen attribute(String name, double value) {
    out.append(' ').append(name).append("=\"").append(number(value)).append('"');
    return this;
  }

  @Override
  public void rectangle(double x, double y, double width, double height, int argb) {
    out.append("<rect");
    attribute("x", x).attribute("y", y).attribute("width", width).attribute("height", height);
    paint("fill", argb);
    out.append("/>\n");
  }

  @Override
  public void line(double x0, double y0, double x1, double y1, Stroke stroke) {
    out.append("<line");
    attribute("x1", x0).attribute("y1", y0).attribute("x2", x1).attribute("y2", y1);
    stroke(stroke);
    out.append("/>\n");
  }

  @Override
  public void polyline(double[] x, double[] y, int points, Stroke stroke) {
    out.append("<polyline fill=\"none\" stroke-linejoin=\"round\"");
    points(x, y, points);
    stroke(stroke);
    out.append("/>\n");
  }

  @Override
  public void polygon(double[] x, double[] y, int points, int argb) {
    out.append("<polygon");
    points(x, y, points);
    paint("fill", argb);
    out.append("/>\n");
  }

  private void points(double[] x, double[] y, int points) {
    out.append(" points=\"");
    for (int i = 0; i < points; i++) {
      out.append(i == 0 ? "" : " ").append(number(x[i])).append(',').append(number(y[i]));
    }
    out.append('"');
  }

  @Override
  public void text(String text, double x, double y, Font font, int argb, Anchor anchor) {
    out.append("<text");
    attribute("x", x).attribute("y", y).attribute("font-size", font.size());
    if (font.bold()) {
      out.append(" font-weight=\"bold\"");
    }
    if (font.mono()) {
      out.append(" font-family=\"monospace\" xml:space=\"preserve\"");
    }
    if (anchor != Anchor.START) {
      out.append(" text-anchor=\"").append(anchor == Anchor.MIDDLE ? "middle" : "end").append('"');
    }
    paint("fill", argb);
    out.append('>').append(escaped(text)).append("</text>\n");
  }

  @Override
  public void image(
      int[] argb, int columns, int rows, double x, double y, double width, double height) {
    out.append("<image");
    attribute("x", x).attribute("y", y).attribute("width", width).attribute("height", height);
    out.append(" preserveAspectRatio=\"none\" style=\"image-rendering:pixelated\"")
        .append(" href=\"data:image/png;base64,")
        .append(Base64.getEncoder().encodeToString(Png.of(argb, columns, rows)))
        .append("\"/>\n");
  }

  @Override
  public void clip(double x, double y, double width, double height) {
    clips++;
    out.append("<clipPath id=\"c").append(clips).append("\"><rect");
    attribute("x", x).attribute("y", y).attribute("width", width).attribute("height", height);
    out.append("/></clipPath>\n<g clip-path=\"url(#c").append(clips).append(")\">\n");
  }

  @Override
  public void unclip() {
    out.append("</g>\n");
  }

  @Override
  public double scale() {
    return 2;
  }
}

package hairline.checks.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/** Builds the text of a drawing: elements, escaped text, numbers to a hundredth of a pixel. */
final class SvgText {
  private final StringBuilder out = new StringBuilder();

  /** Markup of our own, as it is. */
  SvgText raw(String markup) {
    out.append(markup);
    return this;
  }

  /** Text from anywhere. */
  SvgText text(String text) {
    Visible.of(text)
        .codePoints()
        .forEach(
            c -> {
              switch (c) {
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '&' -> out.append("&amp;");
                case '"' -> out.append("&quot;");
                case '\'' -> out.append("&#39;");
                default -> out.appendCodePoint(c);
              }
            });
    return this;
  }

  /** A number. */
  SvgText number(double value) {
    out.append(px(value));
    return this;
  }

  /** An attribute with a number, a blank before it. */
  SvgText attribute(String name, double value) {
    return raw(" ").raw(name).raw("=\"").number(value).raw("\"");
  }

  /** A line of text. */
  SvgText label(double x, double y, String classes, String text) {
    return raw("<text class=\"")
        .raw(classes)
        .raw("\"")
        .attribute("x", x)
        .attribute("y", y)
        .raw(">")
        .text(text)
        .raw("</text>\n");
  }

  /** A straight line. */
  SvgText line(double x0, double y0, double x1, double y1, String classes) {
    return raw("<line class=\"")
        .raw(classes)
        .raw("\"")
        .attribute("x1", x0)
        .attribute("y1", y0)
        .attribute("x2", x1)
        .attribute("y2", y1)
        .raw("/>\n");
  }

  /** A rectangle of a colour. */
  SvgText swatch(double x, double y, double width, double height, int colour) {
    return raw("<rect class=\"edge\"")
        .attribute("x", x)
        .attribute("y", y)
        .attribute("width", width)
        .attribute("height", height)
        .raw(" fill=\"")
        .raw(hex(colour))
        .raw("\"/>\n");
  }

  static String hex(int colour) {
    return String.format(Locale.ROOT, "#%06x", colour);
  }

  static String px(double value) {
    BigDecimal rounded = new BigDecimal(value).setScale(2, RoundingMode.HALF_EVEN);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  @Override
  public String toString() {
    return out.toString();
  }
}

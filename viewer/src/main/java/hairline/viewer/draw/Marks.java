package hairline.viewer.draw;

import hairline.checks.finding.Level;

/** The marks of findings: told apart by shape first, by colour second. */
public final class Marks {
  private Marks() {}

  /**
   * Draws one: an error is a square with a slash, a warning a triangle, a note a circle; one that
   * is accepted is hollow.
   *
   * @param x its middle
   * @param y its middle
   * @param size how wide and high it is
   */
  public static void draw(
      Pen pen, Palette palette, Level level, boolean accepted, double x, double y, double size) {
    double r = size / 2;
    int colour = accepted ? palette.quiet() : palette.of(level);
    switch (level) {
      case ERROR -> {
        pen.rectangle(x - r, y - r, size, size, colour);
        if (accepted) {
          pen.rectangle(x - r + 1.5, y - r + 1.5, size - 3, size - 3, palette.ground());
        } else {
          pen.line(
              x - r * 0.55,
              y + r * 0.55,
              x + r * 0.55,
              y - r * 0.55,
              Pen.Stroke.solid(palette.ground(), 1.6));
        }
      }
      case WARNING -> {
        triangle(pen, x, y, r * 1.12, colour);
        if (accepted) {
          triangle(pen, x, y + 0.6, r * 0.62, palette.ground());
        }
      }
      case NOTE -> {
        circle(pen, x, y, r, colour);
        if (accepted) {
          circle(pen, x, y, r - 1.5, palette.ground());
        }
      }
    }
  }

  private static void triangle(Pen pen, double x, double y, double r, int colour) {
    pen.polygon(
        new double[] {x - r, x, x + r},
        new double[] {y + r * 0.85, y - r * 0.9, y + r * 0.85},
        3,
        colour);
  }

  private static void circle(Pen pen, double x, double y, double r, int colour) {
    int corners = 16;
    double[] xs = new double[corners];
    double[] ys = new double[corners];
    for (int k = 0; k < corners; k++) {
      double angle = 2 * StrictMath.PI * k / corners;
      xs[k] = x + r * StrictMath.cos(angle);
      ys[k] = y + r * StrictMath.sin(angle);
    }
    pen.polygon(xs, ys, corners, colour);
  }
}

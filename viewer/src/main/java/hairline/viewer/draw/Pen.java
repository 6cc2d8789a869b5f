package hairline.viewer.draw;

/**
 * What a pane is drawn with, on the screen and into a file alike. Lengths are logical pixels, Y
 * down; colours are 0xAARRGGBB.
 */
public interface Pen {
  /** Where a text stands against its point. */
  enum Anchor {
    START,
    MIDDLE,
    END
  }

  /**
   * How a text is set.
   *
   * @param size in pixels
   * @param bold whether it is heavy
   * @param mono whether all letters are of one width
   */
  record Font(double size, boolean bold, boolean mono) {
    /** Labels. */
    public static final Font LABEL = new Font(12, false, false);

    /** What must be seen first. */
    public static final Font STRONG = new Font(12, true, false);

    /** Remarks. */
    public static final Font SMALL = new Font(11, false, false);

    /** Program text. */
    public static final Font CODE = new Font(13, false, true);

    /** About how wide a text is. */
    public double width(String text) {
      double letters = 0;
      for (int i = 0; i < text.length(); i++) {
        letters += mono ? 0.62 : narrow(text.charAt(i)) ? 0.34 : 0.64;
      }
      return letters * size * (bold ? 1.07 : 1);
    }

    private static boolean narrow(char c) {
      return " .,:;'|!ijlftI()·".indexOf(c) >= 0;
    }
  }

  /**
   * A line.
   *
   * @param argb its colour
   * @param width its width
   * @param dash lengths of dash and gap; 0 for none
   */
  record Stroke(int argb, double width, double dash) {
    /** A line without gaps. */
    public static Stroke solid(int argb, double width) {
      return new Stroke(argb, width, 0);
    }

    /** A line of dashes. */
    public static Stroke dashed(int argb, double width, double dash) {
      return new Stroke(argb, width, dash);
    }
  }

  /** Fills a rectangle. */
  void rectangle(double x, double y, double width, double height, int argb);

  /** Draws a straight line. */
  void line(double x0, double y0, double x1, double y1, Stroke stroke);

  /** Draws lines from point to point. */
  void polyline(double[] x, double[] y, int points, Stroke stroke);

  /** Fills what lies within a line. */
  void polygon(double[] x, double[] y, int points, int argb);

  /** Sets a text with its base line at Y. */
  void text(String text, double x, double y, Font font, int argb, Anchor anchor);

  /**
   * Draws a raster, each of its pixels as a rectangle.
   *
   * @param argb its pixels, the upper row first
   */
  void image(int[] argb, int columns, int rows, double x, double y, double width, double height);

  /**
   * Fills columns of one width, side by side.
   *
   * @param x where the first begins
   * @param width of each
   * @param from upper ends; NaN for a column that is left out
   * @param to lower ends
   */
  default void columns(double x, double width, double[] from, double[] to, int argb) {
    for (int k = 0; k < from.length; k++) {
      if (!Double.isNaN(from[k])) {
        rectangle(x + k * width, from[k], width, to[k] - from[k], argb);
      }
    }
  }

  /** Draws nothing outside of a rectangle until {@link #unclip}. */
  void clip(double x, double y, double width, double height);

  /** Ends the last {@link #clip}. */
  void unclip();

  /** How many device pixels a logical pixel has along one side. */
  double scale();
}

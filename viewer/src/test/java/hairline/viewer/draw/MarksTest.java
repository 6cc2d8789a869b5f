package hairline.viewer.draw;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.finding.Level;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Marks and strokes are told apart without their colours: WCAG 2.2, 1.4.1 use of colour. */
class MarksTest {
  private static final int SIDE = 20;

  /** Black where a mark has ink, white where it has none or the ground. */
  private static boolean[] shape(Palette palette, Level level, boolean accepted) {
    BufferedImage image = new BufferedImage(SIDE, SIDE, BufferedImage.TYPE_INT_RGB);
    Graphics2D out = image.createGraphics();
    out.setColor(new Color(palette.ground() & 0xFFFFFF));
    out.fillRect(0, 0, SIDE, SIDE);
    Marks.draw(new Inked(out), palette, level, accepted, SIDE / 2.0, SIDE / 2.0, 14);
    out.dispose();
    boolean[] inked = new boolean[SIDE * SIDE];
    for (int k = 0; k < inked.length; k++) {
      inked[k] = (image.getRGB(k % SIDE, k / SIDE) & 0xFFFFFF) != (palette.ground() & 0xFFFFFF);
    }
    return inked;
  }

  private record Inked(Graphics2D out) implements Pen {
    @Override
    public void rectangle(double x, double y, double width, double height, int argb) {
      out.setColor(new Color(argb & 0xFFFFFF));
      out.fill(new Rectangle2D.Double(x, y, width, height));
    }

    @Override
    public void line(double x0, double y0, double x1, double y1, Stroke stroke) {
      out.setColor(new Color(stroke.argb() & 0xFFFFFF));
      out.setStroke(new java.awt.BasicStroke((float) stroke.width()));
      out.draw(new java.awt.geom.Line2D.Double(x0, y0, x1, y1));
    }

    @Override
    public void polyline(double[] x, double[] y, int points, Stroke stroke) {}

    @Override
    public void polygon(double[] x, double[] y, int points, int argb) {
      Path2D path = new Path2D.Double();
      path.moveTo(x[0], y[0]);
      for (int k = 1; k < points; k++) {
        path.lineTo(x[k], y[k]);
      }
      path.closePath();
      out.setColor(new Color(argb & 0xFFFFFF));
      out.fill(path);
    }

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

  @Test
  void marksDifferByShape() {
    for (Palette palette : List.of(Palette.LIGHT, Palette.DARK)) {
      List<boolean[]> shapes = new ArrayList<>();
      for (Level level : Level.values()) {
        for (boolean accepted : new boolean[] {false, true}) {
          boolean[] shape = shape(palette, level, accepted);
          for (boolean[] other : shapes) {
            int differing = 0;
            int inked = 0;
            for (int k = 0; k < shape.length; k++) {
              differing += shape[k] == other[k] ? 0 : 1;
              inked += shape[k] || other[k] ? 1 : 0;
            }
            // A good part of what either covers.
            assertThat(differing).isGreaterThan(inked / 8);
          }
          shapes.add(shape);
        }
      }
      assertThat(shapes).hasSize(2 * Level.values().length);
      assertThat(shapes.stream().map(Arrays::hashCode).distinct().count()).isEqualTo(6);
    }
  }
}

package hairline.viewer.draw;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.viewer.model.Along;
import hairline.viewer.model.Program;
import hairline.viewer.model.Programs;
import hairline.viewer.model.Trace;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StripDrawingTest {
  private static final int MOVES = 9000;
  private static final int SPIKE = 3457;

  @TempDir private Path folder;

  /** Remembers the columns drawn in one colour: where they begin and end, up and down. */
  private static final class Columns implements Pen {
    private final int colour;
    private final double scale;
    private final List<double[]> drawn = new ArrayList<>();

    Columns(int colour, double scale) {
      this.colour = colour;
      this.scale = scale;
    }

    @Override
    public void rectangle(double x, double y, double width, double height, int argb) {
      if (argb == colour) {
        drawn.add(new double[] {y, y + height});
      }
    }

    @Override
    public void line(double x0, double y0, double x1, double y1, Stroke stroke) {}

    @Override
    public void polyline(double[] x, double[] y, int points, Stroke stroke) {
      for (int i = 0; i < points && stroke.argb() == colour; i++) {
        drawn.add(new double[] {y[i], y[i]});
      }
    }

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
      return scale;
    }
  }

  private Program withASpike() throws Exception {
    List<String> lines = new ArrayList<>(List.of("G21 G90 G54", "G1 X0 Y0 Z-0.1 F100."));
    for (int i = 1; i <= MOVES; i++) {
      lines.add("X" + (i % 2 == 0 ? "0.01" : "0.02") + (i == SPIKE ? " Z-0.099" : " Z-0.1"));
    }
    return Programs.read(Programs.write(folder, "spike.nc", lines.toArray(new String[0])));
  }

  /** Along the path and the time, on a plain screen and on one of twice as many pixels. */
  @ParameterizedTest
  @CsvSource({"PATH, 1", "PATH, 2", "TIME, 1", "TIME, 2"})
  void aSpikeOfOneMicrometreIsDrawnAtEveryZoom(Along along, double scale) throws Exception {
    try (Program program = withASpike()) {
      long move = program.moves().firstOf(0, SPIKE + 2);
      assertThat(program.moves().z(move)).isEqualTo(-99_000_000L);
      double at = along.at(program.moves(), move);
      double all = along.at(program.moves(), program.moves().count() - 1);
      int zooms = 0;
      for (double share = 1; share > 1e-5; share /= 1.37) {
        StripView view =
            new StripView(
                along,
                Trace.NONE,
                false,
                at - 0.37 * share * all,
                at + 0.63 * share * all,
                -102,
                -97);
        Columns pen = new Columns(Palette.LIGHT.feed(), scale);
        StripDrawing drawing = new StripDrawing(pen, Palette.LIGHT, program, view, 700, 300);
        drawing.draw(height -> 0);
        double spike = drawing.y(-99_000_000.0);
        assertThat(pen.drawn)
            .as("share " + share)
            .anyMatch(column -> column[0] <= spike + 0.01 && column[1] >= spike - 0.01);
        // Nothing is drawn beyond it.
        assertThat(pen.drawn).allMatch(column -> column[0] >= spike - 1);
        zooms++;
      }
      assertThat(zooms).isGreaterThan(30);
    }
  }

  @Test
  void aColumnHoldsTheHeightsWhereItBeginsAndEnds() throws Exception {
    Path file =
        Programs.write(
            folder, "ramp.nc", "G21 G90 G54", "G0 X0 Y0 Z0", "G1 X10. Z-0.1 F100.", "M30");
    try (Program program = Programs.read(file)) {
      StripView view = new StripView(Along.PATH, Trace.NONE, false, 0, 10, -100, 0);
      StripDrawing drawing =
          new StripDrawing(new Columns(0, 1), Palette.LIGHT, program, view, 700, 300);
      double start = program.moves().pathMm(program.moves().count() - 2);
      double length = program.moves().pathMm(program.moves().count() - 1) - start;
      StripDrawing.Column column = drawing.column(start + 0.25 * length, start + 0.5 * length);
      // A quarter and a half of the way down to -100 µm.
      assertThat(column.feed().high()).isEqualTo(-25_000_000L);
      assertThat(column.feed().low()).isEqualTo(-50_000_000L);
    }
  }
}

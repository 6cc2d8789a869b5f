package hairline.checks.stock;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * Writes the programs that are measured: a finishing raster in short moves over a square field,
 * every move going on where the last one ended.
 *
 * @param kind what is cut
 * @param sideUm side of the field
 * @param moveUm length of a move
 * @param stepoverUm from line to line
 * @param seed of what varies at random
 */
record RasterProgram(Kind kind, double sideUm, double moveUm, double stepoverUm, long seed) {

  /** What is cut. */
  enum Kind {
    /** Floors at constant Z, each 4 µm below the last; the stock's top is Z0. */
    TERRACES,
    /** A surface that varies gently, 0.6 to 1.8 µm below the stock's top. */
    RELIEF
  }

  private static final int TERRACES_ACROSS = 8;
  private static final double STEP_UM = 4;

  /** The blocks before the first move. */
  static String head(int tool, double x, double y) {
    return String.format(
        Locale.ROOT,
        "G21 G90 G94 G17 G40 G49 G54%nT%d M6%nS30000 M3%nM8%nG0 X%.4f Y%.4f%nZ1.%n",
        tool,
        x / 1e3,
        y / 1e3);
  }

  /** Writes a whole program of at most so many moves; the moves written. */
  int write(Appendable out, int tool, int most) {
    return write(out, tool, most, 1);
  }

  /**
   * The same over and over the field, there and back, each time 4 µm deeper, without a lift.
   *
   * @param passes how often at most
   */
  int write(Appendable out, int tool, int most, int passes) {
    try {
      double half = sideUm / 2;
      out.append("%\nO1 (raster)\n");
      out.append(head(tool, -half, -half));
      out.append("G1 F300.\n");
      int moves = 0;
      int pass = 0;
      SplittableRandom random = new SplittableRandom(seed);
      double phase = random.nextDouble() * 2 * Math.PI;
      double x = -half;
      double y = -half;
      double way = moveUm;
      double across = stepoverUm;
      while (moves < most && pass < passes) {
        out.append(block(x, y, phase, pass * STEP_UM));
        moves++;
        boolean over = x + way > half || x + way < -half;
        if (over && (y + across > half || y + across < -half)) {
          pass++;
          way = -way;
          across = -across;
        } else if (over) {
          way = -way;
          y += across;
        } else {
          x += way;
        }
      }
      out.append("G0 Z1.\nM9\nM5\nM30\n%\n");
      return moves;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private String block(double x, double y, double phase, double deeperUm) {
    return String.format(
        Locale.ROOT, "X%.4f Y%.4f Z%.4f%n", x / 1e3, y / 1e3, (z(x, y, phase) - deeperUm) / 1e3);
  }

  private double z(double x, double y, double phase) {
    return switch (kind) {
      case TERRACES -> -STEP_UM * (1 + Math.floor((y / sideUm + 0.5) * TERRACES_ACROSS * 0.9999));
      case RELIEF ->
          -1.2 + 0.3 * (StrictMath.sin(x / 500 + phase) + StrictMath.cos(y / 700 - phase));
    };
  }
}

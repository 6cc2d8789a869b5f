package hairline.checks.motion;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.Paths;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * Writes a long program for the demo's stock, tools and control, on which reading and the rules are
 * timed: half of its blocks are bare finishing moves, the rest terraces with levels, arcs, sequence
 * numbers, feeds and comments. The same arguments give the same bytes.
 */
public final class WriteLongProgram {
  private static final int FAULT_EVERY = 10;
  private static final int TERRACE_BLOCKS = 50;
  private static final long SEED = 20;

  private final Writer out;
  private final boolean faults;
  private final SplittableRandom random = new SplittableRandom(SEED);
  private int written;

  private WriteLongProgram(Writer out, boolean faults) {
    this.out = out;
    this.faults = faults;
  }

  /**
   * Writes it.
   *
   * @param arguments the file, how many blocks, and perhaps "faults": then every tenth block has a
   *     digit below the control's resolution
   */
  public static void main(String[] arguments) throws IOException {
    Path file = Paths.get(arguments[0]);
    int blocks = Integer.parseInt(arguments[1]);
    boolean faults = arguments.length > 2 && arguments[2].equals("faults");
    try (BufferedWriter out = Files.newBufferedWriter(file, StandardCharsets.US_ASCII)) {
      new WriteLongProgram(out, faults).write(blocks);
    }
  }

  private void write(int blocks) throws IOException {
    out.write("%\nO1 (a long one)\nG21 G90 G94 G17 G40 G49 G54\nS30000 M3\nM71\n");
    out.write("T3 M6\nS50000 M3\nM72\nM8\nG0 G43 H3 Z1.\nG0 X-4. Y-3.\nG1 Z-0.004 F300.\n");
    terraces(blocks / 2);
    out.write("G0 Z1.\nT5 M6\nS50000 M3\nM72\nM8\nG0 G43 H5 Z1.\nG0 X-4. Y-3.\nG1 Z-0.002 F300.\n");
    finish(blocks);
    out.write("G0 Z10.\nM9\nM5\nM30\n%\n");
  }

  private void finish(int blocks) throws IOException {
    double x = -4;
    double y = -3;
    double way = 0.008;
    while (written < blocks) {
      if (x + way > 4 || x + way < -4) {
        way = -way;
        y = y > 3 ? -3 : y + 0.006;
      } else {
        x += way;
      }
      double z = -0.0012 + 0.0003 * (StrictMath.sin(2 * x) + StrictMath.cos(1.4 * y));
      block(String.format(Locale.ROOT, "X%.4f Y%.4f Z%.4f", x, y, z));
    }
  }

  private void terraces(int blocks) throws IOException {
    int number = 0;
    double y = -3;
    double x = -4;
    for (int level = 1; written < blocks; level = level % 3 + 1) {
      block(String.format(Locale.ROOT, "(terrace %d)", ++number));
      block(String.format(Locale.ROOT, "N%d G1 Z%.4f F60.", number, -0.004 * level));
      for (int i = 0; i < TERRACE_BLOCKS && written < blocks; i++) {
        double from = y;
        y = i % 5 == 1 ? y : y > 2.8 ? -3 : y + 0.01;
        double next = random.nextInt(40_000) / 1e4 - 2;
        x = i % 5 == 0 || i % 5 == 2 ? x : next;
        switch (i % 5) {
          case 0 -> block(String.format(Locale.ROOT, "G1 Y%.4f F400.", y));
          case 1 -> block(String.format(Locale.ROOT, "G1 X%.4f", x));
          case 2 -> {
            y = from + 0.1;
            block(String.format(Locale.ROOT, "G3 X%.4f Y%.4f I0. J0.05", x, y));
          }
          case 3 -> block(String.format(Locale.ROOT, "G1 X%.4f Y%.4f (side)", x, y));
          default -> block(String.format(Locale.ROOT, "X%.4f Y%.4f", x, y));
        }
      }
    }
  }

  private void block(String text) throws IOException {
    written++;
    out.write(text);
    if (faults && written % FAULT_EVERY == 0 && text.charAt(text.length() - 1) != ')') {
      out.write(text.endsWith(".") ? "00006" : "6");
    }
    out.write('\n');
  }
}

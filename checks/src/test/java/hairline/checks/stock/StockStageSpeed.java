package hairline.checks.stock;

import hairline.checks.motion.Event;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Measures this stage alone on programs of 200,000 blocks; run by hand. Prints milliseconds of
 * processor time of each of several rounds.
 */
final class StockStageSpeed {
  private static final int BLOCKS = 200_000;

  private StockStageSpeed() {}

  public static void main(String[] arguments) {
    run("terraces, passes of 4 mm", terraces(4000));
    run("terraces, passes of 1 mm", terraces(1000));
    run("chords of 5 µm", chords(5));
    run("ball raster in chords of 20 µm", ball());
  }

  private static void run(String what, Bench bench) {
    List<Event> program = new ArrayList<>();
    for (Event event : bench.events) {
      if (event instanceof Cut cut) {
        program.add(cut.move());
      } else if (event instanceof Event.Ended) {
        program.add(event);
      }
    }
    StringBuilder times = new StringBuilder();
    int[] count = {0, 0};
    for (int round = 0; round < 5; round++) {
      count[0] = 0;
      count[1] = 0;
      StockStage stage =
          new StockStage(
              bench.model(),
              event -> {
                if (event instanceof Cut cut && cut.inContact()) {
                  count[0]++;
                } else if (event instanceof StepFound) {
                  count[1]++;
                }
              });
      long start = cpuNanos();
      program.forEach(stage::accept);
      times.append(String.format(Locale.ROOT, " %d", (cpuNanos() - start) / 1_000_000));
    }
    System.out.println(
        what
            + ": "
            + program.size()
            + " blocks, "
            + count[0]
            + " in contact, "
            + count[1]
            + " steps; ms"
            + times);
  }

  private static long cpuNanos() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  private static Bench terraces(double length) {
    Bench bench = Bench.flat().stock().g0(0, 0, 50);
    int level = 0;
    while (bench.line() < BLOCKS) {
      level++;
      for (double x = -5500; x + length <= 5600 && bench.line() < BLOCKS; x += length + 1000) {
        bench.g0(x, -3000, 50).g1(x, -3000, -2 * level);
        double y = -3000;
        for (int k = 0; k < 60; k++) {
          double there = k % 2 == 0 ? x + length : x;
          bench.g1(there, y, -2 * level);
          y += 100;
          bench.g1(there, y, -2 * level);
        }
        bench.g0(x, y, 50);
      }
    }
    return bench.end();
  }

  private static Bench chords(double length) {
    Bench bench = Bench.flat().stock().g0(0, 0, 50);
    int level = 0;
    while (bench.line() < BLOCKS) {
      level++;
      for (double r = 500; r < 3000 && bench.line() < BLOCKS; r += 100) {
        int chords = (int) (2 * Math.PI * r / length);
        bench.g0(r, 0, 50).g1(r, 0, -2 * level);
        for (int k = 1; k <= chords; k++) {
          double angle = 2 * Math.PI * k / chords;
          bench.g1(r * StrictMath.cos(angle), r * StrictMath.sin(angle), -2 * level);
        }
        bench.g0(r, 0, 50);
      }
    }
    return bench.end();
  }

  private static Bench ball() {
    Bench bench =
        new Bench().tool(1, hairline.checks.setup.ToolShape.BALL, 400, 200, 1.5).change(1).stock();
    bench.g0(0, 0, 50);
    double y = -2000;
    while (bench.line() < BLOCKS) {
      bench.g0(-2000, y, 50);
      for (double x = -2000; x <= 2000; x += 20) {
        bench.g1(x, y, -100 - 50 * StrictMath.sin(x / 1000) * StrictMath.cos(y / 700));
      }
      bench.g0(2000, y, 50);
      y += 4;
    }
    return bench.end();
  }
}

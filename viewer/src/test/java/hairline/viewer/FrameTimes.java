package hairline.viewer;

import hairline.viewer.draw.StripView;
import hairline.viewer.model.Program;
import hairline.viewer.panes.StripPane;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadInfo;
import java.lang.management.ThreadMXBean;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.function.IntConsumer;
import javafx.animation.AnimationTimer;
import javafx.application.Platform;
import javafx.stage.Stage;

/**
 * Measures how long frames take while the heights are moved and zoomed, and while a program is
 * read. No test; run by hand, see DEVELOPERS.md. Frames come as fast as they can with {@code
 * -Djavafx.animation.fullspeed=true}.
 */
public final class FrameTimes {
  private static final int FRAMES = 300;

  private final Window window;

  private FrameTimes(Window window) {
    this.window = window;
  }

  /**
   * Measures.
   *
   * @param args the program
   */
  public static void main(String[] args) throws Exception {
    CountDownLatch up = new CountDownLatch(1);
    Platform.startup(up::countDown);
    up.await();
    Window[] window = new Window[1];
    on(
        () -> {
          Stage stage = new Stage();
          Settings settings = new Settings(Path.of("no-such-folder", "none"));
          settings.put("width", Window.LEAST_WIDTH);
          settings.put("height", Window.LEAST_HEIGHT);
          window[0] = new Window(stage, settings);
          stage.show();
        });
    FrameTimes times = new FrameTimes(window[0]);
    long begun = System.nanoTime();
    on(() -> window[0].open(Path.of(args[0]), Optional.empty()));
    times.whileReading(begun);
    StripPane strip = window[0].panes().strip();
    on(strip::requestFocus);
    times.measure("zoom", k -> window[0].panes().zoom(k < FRAMES / 2 ? 1 / 1.06 : 1.06, false));
    on(
        () -> {
          StripView view = strip.view();
          double width = view.to() - view.from();
          strip.setView(view.between(view.from() + width * 0.3, view.from() + width * 0.6));
        });
    times.measure("pan", k -> window[0].panes().pan(k < FRAMES / 2 ? -7 : 7, 0));
    on(window[0].panes()::fit);
    times.measure("pan, all in view", k -> window[0].panes().pan(k % 2 == 0 ? -7 : 7, 0));
    times.measure(
        "scroll of lines",
        k -> {
          int lines = window[0].program().map(p -> p.lines().count()).orElse(1);
          window[0].panes().program().scrollTo((int) ((k * 7919L * 131) % lines));
        });
    System.exit(0);
  }

  private static void on(Runnable task) throws InterruptedException {
    CountDownLatch done = new CountDownLatch(1);
    Platform.runLater(
        () -> {
          task.run();
          done.countDown();
        });
    done.await();
  }

  private void whileReading(long begun) throws InterruptedException {
    CountDownLatch done = new CountDownLatch(1);
    double[] firstSeconds = new double[1];
    long[] intervals = new long[1 << 20];
    int[] count = new int[1];
    on(
        () ->
            new AnimationTimer() {
              private long last;

              @Override
              public void handle(long now) {
                long at = System.nanoTime();
                if (last != 0 && count[0] < intervals.length) {
                  intervals[count[0]++] = at - last;
                }
                last = at;
                Optional<Program> program = window.program();
                if (firstSeconds[0] == 0
                    && program.isPresent()
                    && program.get().moves().count() > 0) {
                  firstSeconds[0] = (at - begun) / 1e9;
                }
                if (window.settled()) {
                  stop();
                  done.countDown();
                }
              }
            }.start());
    done.await();
    print(
        "while it is read (first heights after "
            + String.format(Locale.ROOT, "%.1f", firstSeconds[0])
            + " s, all after "
            + String.format(Locale.ROOT, "%.1f", (System.nanoTime() - begun) / 1e9)
            + " s)",
        Arrays.copyOf(intervals, count[0]));
  }

  /** Processor time of the threads that make and draw frames, in ns. */
  private static long drawingNanos() {
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    long sum = 0;
    for (long id : threads.getAllThreadIds()) {
      ThreadInfo info = threads.getThreadInfo(id);
      if (info != null
          && info.getThreadName().matches("JavaFX Application Thread|QuantumRenderer.*")) {
        sum += Math.max(0, threads.getThreadCpuTime(id));
      }
    }
    return sum;
  }

  private void measure(String what, IntConsumer step) throws InterruptedException {
    long processor = drawingNanos();
    CountDownLatch done = new CountDownLatch(1);
    long[] intervals = new long[FRAMES];
    on(
        () ->
            new AnimationTimer() {
              private long last;
              private int k = -30;

              @Override
              public void handle(long now) {
                long at = System.nanoTime();
                if (k > 0) {
                  intervals[k - 1] = at - last;
                }
                last = at;
                if (k == FRAMES) {
                  stop();
                  done.countDown();
                  return;
                }
                if (k >= 0) {
                  step.accept(k);
                }
                k++;
              }
            }.start());
    done.await();
    double each = (drawingNanos() - processor) / 1e6 / (FRAMES + 30);
    print(String.format(Locale.ROOT, "%s (%.1f ms of processor a frame)", what, each), intervals);
  }

  private static void print(String what, long[] nanos) {
    long[] sorted = nanos.clone();
    Arrays.sort(sorted);
    System.out.println(
        String.format(
            Locale.ROOT,
            "%s: median %.1f ms, 99th percentile %.1f ms, longest %.1f ms of %d frames",
            what,
            sorted[sorted.length / 2] / 1e6,
            sorted[(int) (sorted.length * 0.99)] / 1e6,
            sorted[sorted.length - 1] / 1e6,
            sorted.length));
  }
}

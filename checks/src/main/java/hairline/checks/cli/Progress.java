package hairline.checks.cli;

import java.io.PrintWriter;
import java.util.Locale;

/** A bar on a terminal's standard error that appears after a second and goes when done. */
final class Progress implements AutoCloseable {
  private static final long FIRST_MILLIS = 1000;
  private static final long NEXT_MILLIS = 200;
  private static final int CELLS = 24;
  private static final String CLEAR = "\r\u001b[K";

  private final PrintWriter err;
  private final int total;
  private final String what;
  private final Thread thread;
  private volatile int done;
  private volatile boolean over;

  private Progress(PrintWriter err, int total, String what) {
    this.err = err;
    this.total = total;
    this.what = what;
    this.thread = new Thread(this::run, "progress");
    thread.setDaemon(true);
  }

  /** Starts one for so many programs that are checked; without a terminal it does nothing. */
  static Progress start(Streams streams, int total, boolean wanted) {
    return start(streams, total, "checked", wanted);
  }

  /** Starts one for a program that is only read. */
  static Progress reading(Streams streams) {
    return start(streams, 1, "read", true);
  }

  private static Progress start(Streams streams, int total, String what, boolean wanted) {
    Progress progress = new Progress(streams.err(), total, what);
    if (wanted && streams.errIsTerminal()) {
      progress.thread.start();
    }
    return progress;
  }

  /** So many are done. */
  void done(int programs) {
    done = programs;
  }

  private void run() {
    long started = System.nanoTime();
    boolean shown = false;
    try {
      Thread.sleep(FIRST_MILLIS);
      while (!over) {
        shown = true;
        err.print(CLEAR + bar(done, total, what, (System.nanoTime() - started) / 1_000_000_000));
        err.flush();
        Thread.sleep(NEXT_MILLIS);
      }
    } catch (InterruptedException e) {
      // Over.
    }
    if (shown) {
      err.print(CLEAR);
      err.flush();
    }
  }

  static String bar(int done, int total, String what, long seconds) {
    int filled = total == 0 ? 0 : (int) ((long) CELLS * done / total);
    return String.format(
        Locale.ROOT,
        "%s%s %d of %s %s, %d s",
        "█".repeat(filled),
        "░".repeat(CELLS - filled),
        done,
        total == 1 ? "1 program" : total + " programs",
        what,
        seconds);
  }

  @Override
  public void close() {
    over = true;
    thread.interrupt();
    try {
      thread.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}

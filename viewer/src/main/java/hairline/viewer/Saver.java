package hairline.viewer;

import hairline.checks.report.Trouble;
import hairline.viewer.draw.Palette;
import hairline.viewer.panes.Exported;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import javafx.application.Platform;

/** Writes panes to files on a thread of its own, one after the other. */
final class Saver implements AutoCloseable {
  private static final long PATIENCE_SECONDS = 10;

  /** How a file ended. */
  enum Ended {
    WRITTEN,
    CANCELLED,
    FAILED
  }

  /**
   * What is told of a file, on the window's thread.
   *
   * @param file the file
   * @param ended how it ended
   * @param trouble why it failed
   */
  record Told(Path file, Ended ended, Optional<Trouble> trouble) {}

  private final Consumer<Told> told;
  private final AtomicLong waiting = new AtomicLong();
  private volatile double share = Saving.UNKNOWN_SHARE;
  private volatile String name = "";
  private volatile boolean cancelled;
  private final ExecutorService worker =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread thread = new Thread(task, "hairline-file");
            thread.setDaemon(true);
            return thread;
          });

  /**
   * A saver.
   *
   * @param told is told of each file that has ended
   */
  Saver(Consumer<Told> told) {
    this.told = told;
  }

  /** Begins to write a pane as it stands now; on the window's thread. */
  void save(Exported pane, Saving.Format format, Palette palette, Path file, List<Path> inputs) {
    Exported.Taken taken = pane.taken(palette);
    String shows = pane.exportName();
    if (waiting.getAndIncrement() == 0) {
      cancelled = false;
      name = fileName(file);
    }
    worker.execute(() -> write(taken, shows, palette.ground(), format, file, inputs));
  }

  private static String fileName(Path file) {
    return String.valueOf(file.getFileName());
  }

  private void write(
      Exported.Taken taken,
      String shows,
      int ground,
      Saving.Format format,
      Path file,
      List<Path> inputs) {
    name = fileName(file);
    share = Saving.UNKNOWN_SHARE;
    Told end;
    try {
      Optional<Trouble> trouble =
          Saving.write(taken, shows, ground, format, file, inputs, this::at);
      end = new Told(file, trouble.isEmpty() ? Ended.WRITTEN : Ended.FAILED, trouble);
    } catch (CancellationException e) {
      end = new Told(file, Ended.CANCELLED, Optional.empty());
    } catch (RuntimeException | OutOfMemoryError e) {
      Trouble trouble =
          new Trouble(
              "output-failed",
              "cannot write `" + file + "`: " + e,
              "a smaller stretch may be written: zoom in first");
      end = new Told(file, Ended.FAILED, Optional.of(trouble));
    }
    waiting.decrementAndGet();
    Told last = end;
    Platform.runLater(() -> told.accept(last));
  }

  private void at(double written) {
    if (cancelled) {
      throw new CancellationException();
    }
    share = written;
  }

  /** Whether anything is being written. */
  boolean isBusy() {
    return waiting.get() > 0;
  }

  /** The file being written. */
  String name() {
    return name;
  }

  /** How much of it is written, 0 to 1; below 0 where that is not known. */
  double share() {
    return share;
  }

  /** Ends the writing soon: neither this file nor those that wait are written. */
  void cancel() {
    if (isBusy()) {
      cancelled = true;
    }
  }

  /** Ends all writing, and waits a while until nothing half-written is left. */
  @Override
  public void close() {
    cancelled = true;
    worker.shutdown();
    try {
      if (!worker.awaitTermination(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
        worker.shutdownNow();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}

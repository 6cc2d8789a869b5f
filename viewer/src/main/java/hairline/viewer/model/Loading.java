package hairline.viewer.model;

import hairline.checks.cli.Opened;
import hairline.checks.finding.ProgramResult;
import hairline.checks.rules.ProgramCheck;
import hairline.checks.rules.Selection;
import hairline.checks.setup.Setup;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.CancellationException;

/** Reads a program on threads of its own. */
public final class Loading {
  private final Program program;
  private volatile boolean cancelled;
  private final Thread checking;
  private final Thread finding;

  private Loading(Opened opened) {
    this.program = new Program(opened.program(), opened.setup());
    opened.trouble().ifPresent(program::setTrouble);
    this.finding = thread("lines", this::findLines);
    this.checking = thread("check", () -> check(opened.setup()));
  }

  /**
   * Begins to read a program.
   *
   * @param sheet the sheet that the user names for it
   */
  public static Loading start(Path file, Optional<Path> sheet) {
    Loading loading = new Loading(Opened.of(file, sheet));
    loading.finding.start();
    loading.checking.start();
    return loading;
  }

  private static Thread thread(String name, Runnable task) {
    Thread thread = new Thread(task, "hairline-" + name);
    thread.setDaemon(true);
    return thread;
  }

  /** What is read, growing. */
  public Program program() {
    return program;
  }

  /** Ends the reading soon; what was read stays. */
  public void cancel() {
    cancelled = true;
  }

  /** Waits until nothing more comes. */
  public void await() throws InterruptedException {
    checking.join();
    finding.join();
  }

  private void findLines() {
    try {
      program.lines().find(() -> cancelled);
    } catch (IOException e) {
      // The check meets the same file and tells the trouble.
      return;
    }
  }

  private void check(Optional<Setup> setup) {
    try {
      if (setup.isPresent()) {
        ProgramResult result =
            ProgramCheck.of(Selection.ALL)
                .check(program.file(), setup.get(), new Watch(program, () -> cancelled));
        program.setResult(result);
      }
    } catch (CancellationException e) {
      program.setCancelled();
    } catch (UncheckedIOException e) {
      IOException cause = e.getCause();
      program.setTrouble(
          Opened.unreadable(program.file(), cause == null ? new IOException(e) : cause));
    } catch (IOException e) {
      program.setTrouble(Opened.unreadable(program.file(), e));
    } catch (RuntimeException | StackOverflowError | AssertionError | OutOfMemoryError e) {
      program.setTrouble(Opened.fault(program.file(), e));
    } finally {
      program.setFinished();
    }
  }
}

package hairline.viewer;

import hairline.checks.cli.Quietly;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.logging.Level;
import java.util.logging.Logger;
import javafx.application.Platform;
import javafx.scene.text.Text;

/** Starts what windows are made with. */
final class Toolkit {
  /** Held, so that its level lasts: it would tell of the class path, where JavaFX runs well. */
  private static final Logger JAVAFX = Logger.getLogger("javafx");

  private static final long PATIENCE_SECONDS = 60;

  private Toolkit() {}

  /**
   * Starts it and sets a first text, for which further libraries are loaded.
   *
   * @return why that fails, as a clause; empty where windows can be opened
   */
  static Optional<String> start() {
    JAVAFX.setLevel(Level.SEVERE);
    return Quietly.run(Toolkit::startNoisily);
  }

  private static Optional<String> startNoisily() {
    CompletableFuture<Double> set = new CompletableFuture<>();
    try {
      Platform.startup(
          () -> {
            try {
              set.complete(new Text("µm").getLayoutBounds().getWidth());
            } catch (RuntimeException | LinkageError e) {
              set.completeExceptionally(e);
            }
          });
      set.get(PATIENCE_SECONDS, TimeUnit.SECONDS);
      return Optional.empty();
    } catch (RuntimeException | LinkageError | ExecutionException e) {
      return Optional.of(reason(e));
    } catch (TimeoutException e) {
      return Optional.of("the toolkit does not start");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Optional.of("the start was interrupted");
    }
  }

  /** The innermost reason, which names the library or the display. */
  static String reason(Throwable thrown) {
    Throwable inner = thrown;
    while (inner.getCause() != null) {
      inner = inner.getCause();
    }
    String message = inner.getMessage();
    return message == null
        ? inner.getClass().getSimpleName()
        : message.lines().findFirst().orElse("").replaceAll(" in java\\.library\\.path.*", "");
  }
}

package hairline.viewer;

import com.google.auto.service.AutoService;
import hairline.checks.cli.Viewer;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.logging.Level;
import java.util.logging.Logger;
import javafx.application.Platform;
import javafx.stage.Stage;

/** Opens the window for the command {@code hairline view}. */
@AutoService(Viewer.class)
public final class WindowViewer implements Viewer {
  /** Held, so that its level lasts: it would tell of the class path, where JavaFX runs well. */
  private static final Logger JAVAFX = Logger.getLogger("javafx");

  @Override
  public Optional<String> show(Optional<Path> program, Optional<Path> sheet) {
    JAVAFX.setLevel(Level.SEVERE);
    CountDownLatch closed = new CountDownLatch(1);
    List<String> refused = new CopyOnWriteArrayList<>();
    Runnable open =
        () -> {
          try {
            Settings settings =
                new Settings(
                    Settings.usualFile(System.getenv(), System.getProperty("user.home", ".")));
            Stage stage = new Stage();
            Window window = new Window(stage, settings);
            stage.setOnHidden(
                e -> {
                  window.close();
                  closed.countDown();
                });
            stage.show();
            program.ifPresent(file -> window.open(file, sheet));
          } catch (RuntimeException e) {
            refused.add(reason(e));
            closed.countDown();
          }
        };
    try {
      Platform.startup(open);
      closed.await();
      Platform.exit();
    } catch (RuntimeException | LinkageError e) {
      return Optional.of(reason(e));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return refused.stream().findFirst();
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
        : message.lines().findFirst().orElse("");
  }
}

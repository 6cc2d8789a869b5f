package hairline.viewer;

import com.google.auto.service.AutoService;
import hairline.checks.cli.Viewer;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import javafx.application.Platform;
import javafx.stage.Stage;

/** Opens the window for the command {@code hairline view}. */
@AutoService(Viewer.class)
public final class WindowViewer implements Viewer {
  @Override
  public Optional<String> show(Optional<Path> program, Optional<Path> sheet) {
    Optional<String> missing = Toolkit.start();
    if (missing.isPresent()) {
      return missing;
    }
    CountDownLatch closed = new CountDownLatch(1);
    List<String> refused = new CopyOnWriteArrayList<>();
    Platform.runLater(
        () -> {
          try {
            open(program, sheet, closed);
          } catch (RuntimeException | LinkageError e) {
            refused.add(Toolkit.reason(e));
            closed.countDown();
          }
        });
    try {
      closed.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    Platform.exit();
    return refused.stream().findFirst();
  }

  private static void open(Optional<Path> program, Optional<Path> sheet, CountDownLatch closed) {
    Settings settings =
        new Settings(Settings.usualFile(System.getenv(), System.getProperty("user.home", ".")));
    Stage stage = new Stage();
    Window window = new Window(stage, settings);
    stage.setOnHidden(
        e -> {
          window.close();
          closed.countDown();
        });
    stage.show();
    program.ifPresent(file -> window.open(file, sheet));
  }
}

package hairline.viewer;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import hairline.viewer.model.Program;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import javafx.application.Platform;
import javafx.scene.SnapshotParameters;
import javafx.scene.image.WritableImage;
import javafx.scene.transform.Scale;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;

/**
 * A window on a screen that is none. Where the window's libraries are missing its tests are skipped
 * with one printed reason, unless {@code hairline.viewer.required} is true.
 */
abstract class Screen {
  private static final long PATIENCE_SECONDS = 120;

  private static Optional<String> missing = Optional.empty();
  private static boolean started;

  @TempDir protected Path folder;

  protected Window window;
  protected Stage stage;
  protected Settings settings;
  protected final FxRobot robot = new FxRobot();

  @BeforeAll
  static synchronized void start() {
    if (!started) {
      started = true;
      missing = Toolkit.start();
      if (missing.isEmpty()) {
        Platform.setImplicitExit(false);
      }
      missing.ifPresent(
          why ->
              System.err.println(
                  "The tests of the window do not run: JavaFX can't be loaded here (" + why + ")"));
    }
    if (missing.isPresent() && Boolean.getBoolean("hairline.viewer.required")) {
      throw new IllegalStateException("JavaFX is due here and can't be loaded: " + missing.get());
    }
    assumeTrue(missing.isEmpty(), () -> missing.orElse(""));
  }

  @BeforeEach
  void openWindow() {
    settings = new Settings(folder.resolve("viewer.properties"));
    settings.put("width", Window.LEAST_WIDTH);
    settings.put("height", Window.LEAST_HEIGHT);
    settings.put("x", 0);
    settings.put("y", 0);
    stage = onScreen(Stage::new);
    window = onScreen(() -> new Window(stage, settings));
    onScreen(
        () -> {
          stage.show();
          return true;
        });
  }

  @AfterEach
  void closeWindow() {
    onScreen(
        () -> {
          window.close();
          stage.hide();
          return true;
        });
  }

  /** Runs on the window's thread and waits for what it gives. */
  protected static <T> T onScreen(Callable<T> task) {
    CompletableFuture<T> done = new CompletableFuture<>();
    Platform.runLater(
        () -> {
          try {
            done.complete(task.call());
          } catch (Exception | AssertionError e) {
            done.completeExceptionally(e);
          }
        });
    try {
      return done.get(PATIENCE_SECONDS, TimeUnit.SECONDS);
    } catch (ExecutionException e) {
      throw new AssertionError(e.getCause());
    } catch (InterruptedException | java.util.concurrent.TimeoutException e) {
      throw new AssertionError(e);
    }
  }

  /** Waits until something holds on the window's thread. */
  protected static void until(String what, BooleanSupplier holds) {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
    while (!onScreen(holds::getAsBoolean)) {
      if (System.nanoTime() > end) {
        throw new AssertionError("waited in vain until " + what);
      }
      try {
        Thread.sleep(20);
      } catch (InterruptedException e) {
        throw new AssertionError(e);
      }
    }
  }

  /** Opens a program and waits until all of it is shown. */
  protected Program open(Path file) {
    onScreen(
        () -> {
          window.open(file, Optional.empty());
          return true;
        });
    return shown();
  }

  /** Waits until the program is read and its part drawn. */
  protected Program shown() {
    until("the program is read", () -> window.settled());
    until(
        "the part is drawn",
        () ->
            window.program().orElseThrow().part().isEmpty()
                || (window.panes().shared().part().get().isPresent()
                    && !window.panes().remark().get().contains("computed")));
    frames();
    return onScreen(() -> window.program().orElseThrow());
  }

  /** Lets a few frames pass. */
  protected static void frames() {
    for (int k = 0; k < 6; k++) {
      onScreen(() -> true);
      try {
        Thread.sleep(40);
      } catch (InterruptedException e) {
        throw new AssertionError(e);
      }
    }
  }

  /** Keeps a picture of the window. */
  protected void keep(String name, double scale) throws IOException {
    byte[] png =
        onScreen(
            () -> {
              SnapshotParameters parameters = new SnapshotParameters();
              parameters.setTransform(new Scale(scale, scale));
              WritableImage image =
                  stage
                      .getScene()
                      .getRoot()
                      .snapshot(
                          parameters,
                          new WritableImage(
                              (int) (stage.getScene().getWidth() * scale),
                              (int) (stage.getScene().getHeight() * scale)));
              return Saving.bytes(image);
            });
    Path screens = Path.of(System.getProperty("hairline.screens", "target/screens"));
    Files.createDirectories(screens);
    Files.write(screens.resolve(name + ".png"), png);
  }
}

package hairline.viewer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import hairline.viewer.model.Programs;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javafx.scene.image.WritableImage;
import javafx.scene.robot.Robot;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A real window, photographed from the screen; only where the tests are told to show real ones. */
class RealWindowTest extends Screen {
  @BeforeAll
  static void onARealScreen() {
    assumeTrue(
        System.getProperty("glass.platform", "").equals("gtk"),
        "windows are shown on a screen that is none");
  }

  @Test
  void theDemoStandsOnAScreenOf1280By720() throws IOException {
    open(Programs.FAULTY);
    onScreen(
        () -> {
          window.nextFinding(1);
          return true;
        });
    frames();
    shown();
    byte[] png =
        onScreen(
            () -> {
              // In the pixels of the screen, however many of them make a logical one.
              WritableImage image =
                  new Robot()
                      .getScreenCapture(
                          null,
                          stage.getX(),
                          stage.getY(),
                          stage.getWidth(),
                          stage.getHeight(),
                          false);
              double scale = stage.getOutputScaleX();
              assertThat(image.getWidth()).isLessThanOrEqualTo(scale * Window.LEAST_WIDTH);
              assertThat(image.getHeight()).isLessThanOrEqualTo(scale * Window.LEAST_HEIGHT);
              assertThat(image.getWidth()).isGreaterThan(scale * Window.LEAST_WIDTH - 40);
              return Saving.bytes(image);
            });
    Path screens = Path.of(System.getProperty("hairline.screens", "target/screens"));
    Files.createDirectories(screens);
    boolean scaled = onScreen(() -> stage.getOutputScaleX()) > 1;
    Files.write(screens.resolve(scaled ? "real-window-scaled.png" : "real-window.png"), png);
  }
}

package hairline.viewer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import hairline.viewer.model.Programs;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command where no window can be opened: it says so and what is due, and ends. */
class NoDisplayTest {
  @TempDir private Path folder;

  @Test
  void theCommandSaysWhyThereIsNoWindow() throws IOException, InterruptedException {
    assumeTrue(System.getProperty("os.name", "").toLowerCase(Locale.ROOT).contains("linux"));
    Path err = folder.resolve("err.txt");
    ProcessBuilder builder =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                "-Dglass.platform=gtk",
                "hairline.checks.cli.Main",
                "view",
                Programs.DEMO.toString())
            .redirectOutput(folder.resolve("out.txt").toFile())
            .redirectError(err.toFile());
    builder.environment().remove("DISPLAY");
    builder.environment().remove("WAYLAND_DISPLAY");
    assertThat(builder.start().waitFor()).isEqualTo(2);
    assertThat(Files.readString(err))
        .contains("no window can be opened: ", "a display is due", "hairline check tells the same")
        .doesNotContain("\tat ", "Exception");
    assertThat(folder.resolve("out.txt")).isEmptyFile();
  }
}

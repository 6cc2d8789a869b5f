package hairline.checks.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Output that is kept and compared; {@code -Dbless} writes it anew. */
public final class Golden {
  private static final Path FOLDER = Path.of("src/test/resources/hairline/checks/report/golden");

  private Golden() {}

  /** Holds the text against the kept one. */
  public static void check(String name, String text) {
    Path file = FOLDER.resolve(name);
    try {
      if (System.getProperty("bless") != null) {
        Files.createDirectories(FOLDER);
        Files.writeString(file, text);
      }
      assertThat(file).as("kept by -Dbless").exists();
      assertThat(text).isEqualTo(Files.readString(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

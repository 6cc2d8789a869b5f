package hairline.viewer;

import java.io.IOException;
import java.io.Reader;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Properties;

/**
 * What the window remembers from one time to the next: a small file of the user's. Where it can't
 * be read or written the window opens as new.
 */
public final class Settings {
  private final Path file;
  private final Properties values = new Properties();

  /** Those in a file. */
  public Settings(Path file) {
    this.file = file;
    try (Reader in = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
      values.load(in);
    } catch (IOException | IllegalArgumentException e) {
      // Not there yet, or not to be read: nothing is remembered.
      values.clear();
    }
  }

  /** The file of the user: where the system keeps such things. */
  public static Path usualFile(Map<String, String> environment, String home) {
    String base =
        environment.getOrDefault(
            "XDG_CONFIG_HOME", environment.getOrDefault("APPDATA", home + "/.config"));
    return Path.of(base, "hairline", "viewer.properties");
  }

  /** A text. */
  public String text(String key, String otherwise) {
    return values.getProperty(key, otherwise);
  }

  /** A number. */
  public double number(String key, double otherwise) {
    try {
      double value = Double.parseDouble(text(key, ""));
      return Double.isFinite(value) ? value : otherwise;
    } catch (NumberFormatException e) {
      return otherwise;
    }
  }

  /** Remembers a value. */
  public void put(String key, Object value) {
    values.setProperty(key, String.valueOf(value));
  }

  /** Writes them. */
  public void save() {
    try {
      Path folder = file.toAbsolutePath().getParent();
      if (folder != null) {
        Files.createDirectories(folder);
      }
      try (Writer out = Files.newBufferedWriter(file, StandardCharsets.UTF_8)) {
        values.store(out, null);
      }
    } catch (IOException e) {
      // A read-only home must not keep the window from closing.
      return;
    }
  }
}

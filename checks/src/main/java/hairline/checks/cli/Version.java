package hairline.checks.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;
import picocli.CommandLine.IVersionProvider;

/** The version this program was built as. */
final class Version implements IVersionProvider {
  /** The number alone, such as {@code 1.2.0}. */
  static String number() {
    try (InputStream resource = Version.class.getResourceAsStream("version.properties")) {
      if (resource == null) {
        throw new IllegalStateException("version.properties is missing from the program");
      }
      Properties properties = new Properties();
      properties.load(resource);
      return properties.getProperty("version", "unknown");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public String[] getVersion() {
    return new String[] {"hairline " + number()};
  }
}

package hairline.checks.cli;

import java.io.IOException;
import java.io.InputStream;
import java.util.Properties;
import picocli.CommandLine.IVersionProvider;

/** The version this program was built as. */
final class Version implements IVersionProvider {
  private Version() {}

  /** The number alone, such as {@code 1.2.0}. */
  static String number() throws IOException {
    try (InputStream resource = Version.class.getResourceAsStream("version.properties")) {
      if (resource == null) {
        throw new IOException("version.properties is missing from the program");
      }
      Properties properties = new Properties();
      properties.load(resource);
      return properties.getProperty("version", "unknown");
    }
  }

  @Override
  public String[] getVersion() throws IOException {
    return new String[] {"hairline " + number()};
  }
}

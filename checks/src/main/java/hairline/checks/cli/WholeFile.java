package hairline.checks.cli;

import hairline.checks.report.Trouble;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * What the commands and the window do alike when they write a file: it is there whole or not at
 * all, and never in the place of what was read.
 */
public final class WholeFile {
  private WholeFile() {}

  /** What is to stand in a file. */
  public interface Content {
    /**
     * Writes it. Whatever is thrown leaves the place of the file as it was.
     *
     * @throws IOException if that is not possible
     */
    void writeTo(OutputStream out) throws IOException;
  }

  /**
   * Writes a file.
   *
   * @param inputs files that must stay as they are
   * @return why it could not be written; empty where it was
   */
  public static Optional<Trouble> write(Path file, List<Path> inputs, Content content) {
    try {
      try (OutputFile out = OutputFile.open(OutputFile.checkedReport(file.toString(), inputs))) {
        try {
          content.writeTo(out.stream());
        } catch (IOException e) {
          throw out.failed(e);
        }
        out.commit();
      }
      return Optional.empty();
    } catch (Failed e) {
      return Optional.of(e.trouble());
    }
  }
}

package hairline.checks.setup;

import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Sheets for tests. */
final class Sheets {
  private Sheets() {}

  static String resource(String name) {
    try (InputStream in = Sheets.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new AssertionError("no resource " + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A sheet that is in order. */
  static Setup read(String text) {
    try {
      return new SheetReader().parse(text, "setup.yaml");
    } catch (SheetException e) {
      throw new AssertionError(e);
    }
  }

  /** What is wrong with a sheet, as a user sees it. */
  static List<String> problems(String text) {
    SheetException thrown =
        catchThrowableOfType(
            SheetException.class, () -> new SheetReader().parse(text, "setup.yaml"));
    if (thrown == null) {
      throw new AssertionError("read without a problem:\n" + text);
    }
    return thrown.problems().stream().map(SheetProblem::toString).toList();
  }
}

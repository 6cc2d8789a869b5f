package hairline.checks.rules;

import hairline.checks.finding.Finding;
import hairline.checks.finding.ProgramResult;
import hairline.checks.setup.Setup;
import hairline.checks.setup.SheetException;
import hairline.checks.setup.SheetReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** The part programs of the project, as tests use them. */
final class Programs {
  /** The folder of all programs. */
  static final Path ROOT = root();

  private Programs() {}

  private static Path root() {
    Path here = Path.of("").toAbsolutePath();
    for (Path folder = here; folder != null; folder = folder.getParent()) {
      Path programs = folder.resolve("programs");
      if (Files.isDirectory(programs) && Files.exists(folder.resolve("pom.xml"))) {
        return programs;
      }
    }
    throw new IllegalStateException("no folder 'programs' above " + here);
  }

  /** Checks a program with the sheet that is found for it. */
  static ProgramResult check(Path program) {
    try {
      return ProgramCheck.of(Selection.ALL).check(program, sheetFor(program));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (SheetException e) {
      throw new AssertionError(e.getMessage(), e);
    }
  }

  /** The sheet of the demo. */
  static Setup demoSheet() {
    try {
      return sheetFor(ROOT.resolve("mixer-insert/mixer-insert.nc"));
    } catch (SheetException e) {
      throw new AssertionError(e.getMessage(), e);
    }
  }

  /** The sheet for a program: the one of its own name, else the nearest above it. */
  static Setup sheetFor(Path program) throws SheetException {
    String name = String.valueOf(program.getFileName());
    Path own = program.resolveSibling(name.substring(0, name.length() - 3) + ".setup.yaml");
    if (Files.exists(own)) {
      return new SheetReader().read(own);
    }
    for (Path folder = program.getParent(); folder != null; folder = folder.getParent()) {
      if (Files.exists(folder.resolve("setup.yaml"))) {
        return new SheetReader().read(folder.resolve("setup.yaml"));
      }
    }
    throw new AssertionError("no sheet for " + program);
  }

  /**
   * The findings of one rule in an annotated program, e.g. {@code
   * "digits-below-resolution/speaks.nc"}.
   */
  static List<Finding> findings(String rule, String program) {
    return check(ROOT.resolve("rules").resolve(rule).resolve(program)).findings().stream()
        .filter(f -> f.rule().equals(rule))
        .toList();
  }

  /** The text of an annotated program. */
  static String text(String rule, String program) {
    try {
      return Files.readString(ROOT.resolve("rules").resolve(rule).resolve(program));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The figure of a finding's first occurrence. */
  static double figure(Finding finding, String name) {
    return finding.first().figures().stream()
        .filter(f -> f.name().equals(name))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no figure " + name + " in " + finding))
        .value();
  }
}

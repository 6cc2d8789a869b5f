package hairline.checks.cli;

import hairline.checks.report.Conditions;
import hairline.checks.rules.Rules;
import hairline.checks.setup.Setup;
import hairline.checks.setup.SheetException;
import hairline.checks.setup.SheetFinder;
import hairline.checks.setup.SheetReader;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/** The setup sheets of a run; programs that share a sheet share what was read of it. */
final class Sheets {
  private record Read(Optional<Setup> setup, Optional<Failed> failed) {}

  private final SheetReader reader =
      new SheetReader(Rules.all().stream().map(rule -> rule.info().name()).toList());
  private final Map<String, Read> known = new ConcurrentHashMap<>();
  private final Optional<Path> asked;
  private final List<Conditions.WhatIf> changes;

  /**
   * @param asked the sheet that the user names for all programs
   * @param changes what {@code --set} changes of each sheet
   */
  Sheets(Optional<Path> asked, List<Conditions.WhatIf> changes) {
    this.asked = asked;
    this.changes = changes;
  }

  /**
   * Those of a command line; a sheet named for all programs is read at once, so that a slip is told
   * once.
   *
   * @param setup what {@code --setup} names
   * @param changes what {@code --set} takes
   */
  static Sheets of(@Nullable String setup, List<String> changes) throws Failed {
    List<Conditions.WhatIf> whatIf = new ArrayList<>();
    for (String change : changes) {
      whatIf.add(whatIf(change));
    }
    Sheets sheets = new Sheets(setup == null ? Optional.empty() : Optional.of(path(setup)), whatIf);
    if (setup != null) {
      sheets.setupFor(Optional.empty());
    }
    return sheets;
  }

  /** What {@code --set} takes, read. */
  private static Conditions.WhatIf whatIf(String text) throws Failed {
    int equals = text.indexOf('=');
    if (equals < 1 || equals == text.length() - 1) {
      throw Failed.of(Failure.VALUE_WITHOUT_KEY, text);
    }
    return new Conditions.WhatIf(
        text.substring(0, equals).strip(), text.substring(equals + 1).strip());
  }

  /** What differs from the sheets as they are. */
  List<Conditions.WhatIf> changes() {
    return changes;
  }

  private static Path path(String sheet) throws Failed {
    try {
      return Path.of(sheet);
    } catch (InvalidPathException e) {
      throw Failed.because(e, Failure.INPUT_NOT_NAMEABLE, sheet);
    }
  }

  /** The sheet that holds for a program. */
  Optional<Path> fileFor(Optional<Path> program) {
    return asked.or(() -> program.flatMap(SheetFinder::find));
  }

  /**
   * What the sheet for a program says; the embedded sheet where there is none.
   *
   * @throws Failed if it can't be used
   */
  Setup setupFor(Optional<Path> program) throws Failed {
    Optional<Path> file = fileFor(program);
    Read read = known.computeIfAbsent(file.map(Path::toString).orElse(""), name -> read(file));
    if (read.failed().isPresent()) {
      throw read.failed().get();
    }
    return read.setup().orElseThrow();
  }

  private Read read(Optional<Path> file) {
    try {
      Setup setup = file.isPresent() ? reader.read(file.get()) : reader.embedded();
      for (Conditions.WhatIf change : changes) {
        setup = setup.withOverride(change.key(), change.value());
      }
      return new Read(Optional.of(setup), Optional.empty());
    } catch (SheetException e) {
      return new Read(
          Optional.empty(),
          Optional.of(Failed.because(e, Failure.SHEET_WRONG, String.valueOf(e.getMessage()))));
    }
  }
}

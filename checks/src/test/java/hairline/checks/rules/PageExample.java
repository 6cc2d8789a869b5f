package hairline.checks.rules;

import hairline.checks.finding.ProgramResult;
import hairline.checks.setup.Setup;
import hairline.checks.setup.SheetException;
import hairline.checks.setup.SheetReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What stands on a rule's page under "A program that triggers it, and its cure": fenced blocks, the
 * program and its cure marked {@code nc}, the sheet {@code yaml}. A second {@code yaml} is the
 * sheet of the cure; where the sheet alone cures, there is no second {@code nc}. Without a sheet
 * the embedded one holds, as on the command line.
 */
record PageExample(List<String> programs, List<String> sheets) {
  private static final String FENCE = "```";

  /**
   * Reads the example of a page.
   *
   * @throws IllegalArgumentException if the blocks are not those of one program and one cure
   */
  static PageExample of(RulePage page) {
    List<String> programs = new ArrayList<>();
    List<String> sheets = new ArrayList<>();
    Optional<String> kind = Optional.empty();
    StringBuilder block = new StringBuilder();
    for (String line :
        page.sections().getOrDefault(RulePage.HEADINGS.get(2), "").lines().toList()) {
      if (!line.startsWith(FENCE)) {
        block.append(line).append('\n');
      } else if (kind.isEmpty()) {
        kind = Optional.of(line.substring(FENCE.length()));
        block.setLength(0);
      } else {
        switch (kind.get()) {
          case "nc" -> programs.add(block.toString());
          case "yaml" -> sheets.add(block.toString());
          default -> throw new IllegalArgumentException("neither nc nor yaml: " + kind.get());
        }
        kind = Optional.empty();
      }
    }
    if (kind.isPresent() || programs.isEmpty() || programs.size() > 2 || sheets.size() > 2) {
      throw new IllegalArgumentException("not one program and its cure");
    }
    if (programs.size() < 2 && sheets.size() < 2) {
      throw new IllegalArgumentException("no cure");
    }
    return new PageExample(programs, sheets);
  }

  /** Checks the program as a file in this folder. */
  ProgramResult program(Path folder) throws IOException, SheetException {
    return check(folder, programs.get(0), sheets.stream().findFirst());
  }

  /** Checks the cure as a file in this folder. */
  ProgramResult cure(Path folder) throws IOException, SheetException {
    return check(
        folder,
        programs.get(programs.size() - 1),
        sheets.stream().skip(Math.max(0, sheets.size() - 1)).findFirst());
  }

  private static ProgramResult check(Path folder, String program, Optional<String> sheet)
      throws IOException, SheetException {
    SheetReader reader = new SheetReader();
    Setup setup =
        sheet.isPresent() ? reader.parse(sheet.get(), "the sheet of the page") : reader.embedded();
    return ProgramCheck.of(Selection.ALL)
        .check(Files.writeString(folder.resolve("page.nc"), program), setup);
  }
}

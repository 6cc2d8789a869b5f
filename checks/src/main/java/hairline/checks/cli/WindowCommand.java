package hairline.checks.cli;

import hairline.checks.finding.ProgramResult;
import hairline.checks.report.ReportOptions;
import hairline.checks.report.WindowDrawing;
import hairline.checks.report.WindowFormat;
import hairline.checks.rules.CutsOfOperations;
import hairline.checks.rules.CuttingWindow;
import hairline.checks.rules.ProgramCheck;
import hairline.checks.rules.Selection;
import hairline.checks.rules.WindowSolver;
import hairline.checks.setup.Setup;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code hairline window}. */
@Command(
    name = "window",
    description = {
      "Tells for each operation how far feed, depth and speed may move until a rule speaks: each"
          + " limit, the rule behind it, and, where no feed is left, which two rules close the"
          + " window and the smallest changes that would open it.",
      "",
      "The limits are found by asking the rules again with other feeds, depths, speeds and sheets."
          + " The feeds of an operation move together, then those of each class of its moves by"
          + " themselves: straight down, along at a level, along with Z varying; of the last, the"
          + " depth that they take too. All else stays as programmed.",
      "",
      "acceleration is no rule but a measure of this command: the feed above which the machine, as"
          + " planned by machine.acceleration, machine.jerk and machine.control, stays below it on"
          + " more than half of the length that is cut.",
      ""
    })
final class WindowCommand implements Action {
  @Parameters(paramLabel = "PROGRAM", description = "The part program, or - for standard input.")
  private String program = "";

  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      description = "Format of the windows: ${COMPLETION-CANDIDATES} (text).")
  private WindowFormat format = WindowFormat.TEXT;

  @Option(
      names = "--svg",
      paramLabel = "FILE",
      description =
          "Draws feed against depth into a file, with each limit named and the programmed point.")
  private @Nullable String svg;

  @Mixin private final CommonOptions common = new CommonOptions();

  @Override
  public boolean verbose() {
    return common.verbose();
  }

  @Override
  public ExitStatus run(Streams streams, Messages messages) throws Failed {
    OneProgram one = OneProgram.of(program, streams);
    Sheets sheets = common.sheets();
    Setup sheet = sheets.setupFor(one.path());
    Optional<Path> target =
        svg == null
            ? Optional.empty()
            : Optional.of(OutputFile.checkedReport(svg, one.path().stream().toList()));
    CutsOfOperations cuts = new CutsOfOperations(sheet);
    ProgramResult result = one.read(() -> one.check(ProgramCheck.of(Selection.ALL), sheet, cuts));
    List<CuttingWindow> windows = WindowSolver.solve(cuts, target.isPresent());
    ReportOptions options = common.report(streams, sheets);
    ExitStatus status =
        result.stepBudgetReached() || result.notUnderstood() || result.macroUnread()
            ? ExitStatus.INCOMPLETE
            : ExitStatus.CLEAN;
    try {
      format.write(streams.out(), result, windows, options, status.code());
    } catch (IOException e) {
      throw Failed.because(e, Failure.OUTPUT_FAILED, "standard output", Reasons.of(e));
    }
    if (target.isPresent()) {
      try (OutputFile file = OutputFile.open(target.get())) {
        try {
          file.stream()
              .write(
                  WindowDrawing.of(one.name(), result, windows, options.conditions())
                      .getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
          throw file.failed(e);
        }
        file.commit();
      }
    }
    return status;
  }
}

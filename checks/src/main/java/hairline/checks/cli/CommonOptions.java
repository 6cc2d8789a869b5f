package hairline.checks.cli;

import hairline.checks.report.Conditions;
import hairline.checks.report.ReportOptions;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The options that every command has that tells of one program or two. */
final class CommonOptions {
  @Option(
      names = "--setup",
      paramLabel = "FILE",
      description = "The setup sheet, for each program named.")
  private @Nullable String setup;

  @Option(
      names = "--set",
      paramLabel = "KEY=VALUE",
      description = "What if: a value of the sheet changed. May be repeated.")
  private List<String> changes = new ArrayList<>();

  @Option(
      names = "--color",
      paramLabel = "WHEN",
      description =
          "Colour in the text: ${COMPLETION-CANDIDATES} (auto: on a terminal, unless NO_COLOR is"
              + " set).")
  private Colour colour = Colour.AUTO;

  @Option(
      names = {"-v", "--verbose"},
      description = "Lists in the text whole; failures with their traces.")
  private boolean verbose;

  boolean verbose() {
    return verbose;
  }

  /**
   * The sheets that are asked for.
   *
   * @throws Failed if the one named can't be used
   */
  Sheets sheets() throws Failed {
    return Sheets.of(setup, changes);
  }

  /** How a report on standard output is written. */
  ReportOptions report(Streams streams, Sheets sheets) {
    return new ReportOptions(
        Version.number(),
        Optional.empty(),
        colour.on(streams),
        false,
        verbose,
        streams.columns(),
        List.of(),
        new Conditions(List.of(), List.of(), sheets.changes()));
  }

  /** How a report in a file is written: in no colour, in the usual width. */
  ReportOptions reportInFile(Sheets sheets) {
    return new ReportOptions(
        Version.number(),
        Optional.empty(),
        false,
        false,
        verbose,
        ReportOptions.USUAL_WIDTH,
        List.of(),
        new Conditions(List.of(), List.of(), sheets.changes()));
  }
}

package hairline.checks.cli;

import hairline.checks.report.BriefText;
import hairline.checks.report.CheckedProgram;
import hairline.checks.report.HtmlReport;
import hairline.checks.report.ReportOptions;
import hairline.checks.report.ReportWriter;
import hairline.checks.rules.Selection;
import hairline.checks.rules.Timings;
import hairline.checks.stock.SurfaceWanted;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code hairline brief}. */
@Command(
    name = "brief",
    description = {
      "Tells the setter what an unfamiliar program will do: tools, offsets and travel, stops,"
          + " warm-up and measuring, levels, time and growth, what the check finds, and what is to"
          + " be verified by hand.",
      "",
      "The HTML page holds its drawings, asks the network for nothing, runs no script and prints on"
          + " A4 and letter. check --report html=FILE writes the same page.",
      ""
    })
final class BriefCommand implements Action {
  /** The formats of a brief. */
  enum Format {
    TEXT,
    HTML;

    ReportWriter writer(OutputStream out, ReportOptions options) {
      return this == TEXT ? new BriefText(out, options) : new HtmlReport(out, options);
    }

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  @Parameters(paramLabel = "PROGRAM", description = "The part program, or - for standard input.")
  private String program = "";

  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      description = "Format of the brief: ${COMPLETION-CANDIDATES} (text).")
  private Format format = Format.TEXT;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE",
      description = "Where to write it (standard output).")
  private @Nullable String output;

  @Mixin private final CommonOptions common = new CommonOptions();

  @Override
  public boolean verbose() {
    return common.verbose();
  }

  @Override
  public ExitStatus run(Streams streams, Messages messages) throws Failed {
    OneProgram one = OneProgram.of(program, streams);
    Sheets sheets = common.sheets();
    ReportOptions options =
        output == null ? common.report(streams, sheets) : common.reportInFile(sheets);
    Surfaces surfaces =
        new Surfaces(SurfaceWanted.NOTHING, false, false, true, OptionalLong.empty());
    CheckRun run =
        new CheckRun(
            Selection.ALL,
            sheets,
            options,
            false,
            false,
            FeedTables.NONE,
            surfaces,
            Timings.NONE,
            false,
            messages);
    List<CheckedProgram> checked = new ArrayList<>();
    try (Progress progress = Progress.start(streams, 1, true)) {
      run.run(List.of(one.input()), 1, progress, checked::add);
    }
    Writing writing =
        out -> {
          ReportWriter writer = format.writer(out, options);
          writer.begin();
          writer.program(checked.get(0));
          writer.end(run.verdict());
        };
    write(streams, one, writing);
    return run.status() == ExitStatus.FOUND ? ExitStatus.CLEAN : run.status();
  }

  /** Writes the page. */
  private interface Writing {
    void to(OutputStream out) throws IOException;
  }

  private void write(Streams streams, OneProgram one, Writing writing) throws Failed {
    if (output == null) {
      try {
        writing.to(streams.out());
      } catch (IOException e) {
        throw Failed.because(e, Failure.OUTPUT_FAILED, "standard output", Reasons.of(e));
      }
      return;
    }
    Path target = OutputFile.checkedReport(output, one.path().stream().toList());
    try (OutputFile file = OutputFile.open(target)) {
      try {
        writing.to(file.stream());
      } catch (IOException e) {
        throw file.failed(e);
      }
      file.commit();
    }
  }
}

package hairline.checks.cli;

import hairline.checks.report.CheckedProgram;
import hairline.checks.report.ReportFormat;
import hairline.checks.report.ReportOptions;
import hairline.checks.report.ReportWriter;
import hairline.checks.report.Verdict;
import hairline.checks.setup.Nearest;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The reports of a run: one on standard output, any number in files. */
final class Reports implements AutoCloseable {
  /** A report asked for by {@code --report}. */
  record Wanted(ReportFormat format, Path file) {
    /**
     * Reads {@code FORMAT=FILE}.
     *
     * @param inputs files that must stay as they are
     * @throws Failed if it can't be done
     */
    static List<Wanted> of(List<String> texts, List<Path> inputs) throws Failed {
      List<Wanted> all = new ArrayList<>();
      for (String text : texts) {
        int equals = text.indexOf('=');
        if (equals < 1 || equals == text.length() - 1) {
          throw Failed.of(Failure.REPORT_WITHOUT_FILE, text);
        }
        ReportFormat format = format(text.substring(0, equals));
        Path file = OutputFile.checkedReport(text.substring(equals + 1), inputs);
        if (all.stream().anyMatch(other -> OutputFile.same(other.file(), file))) {
          throw Failed.of(Failure.OUTPUT_TWICE, text.substring(equals + 1));
        }
        all.add(new Wanted(format, file));
      }
      return all;
    }

    /** The formats of such texts, as far as they can be read. */
    static List<ReportFormat> formats(List<String> texts) {
      return Arrays.stream(ReportFormat.values())
          .filter(format -> texts.stream().anyMatch(text -> text.startsWith(format + "=")))
          .toList();
    }

    private static ReportFormat format(String name) throws Failed {
      for (ReportFormat format : ReportFormat.values()) {
        if (format.toString().equals(name)) {
          return format;
        }
      }
      List<String> names = Arrays.stream(ReportFormat.values()).map(Object::toString).toList();
      throw Failed.of(
          Failure.REPORT_FORMAT_UNKNOWN,
          name,
          names.stream().collect(Collectors.joining(", "))
              + Nearest.of(name, names).map(near -> "; nearest is " + near).orElse(""));
    }
  }

  /** A report being written; one that failed once is left alone. */
  private static final class Open {
    final ReportWriter writer;
    final Optional<OutputFile> file;
    boolean failed;

    Open(ReportWriter writer, Optional<OutputFile> file) {
      this.writer = writer;
      this.file = file;
    }
  }

  private interface Step {
    void on(ReportWriter writer) throws IOException;
  }

  private final Messages messages;
  private final List<Open> open = new ArrayList<>();
  private ExitStatus status = ExitStatus.CLEAN;

  /**
   * Begins them.
   *
   * @throws Failed if one of the files can't be begun; then none is
   */
  Reports(
      ReportFormat format,
      OutputStream out,
      List<Wanted> wanted,
      ReportOptions options,
      Messages messages)
      throws Failed {
    this.messages = messages;
    open.add(new Open(format.writer(out, options), Optional.empty()));
    try {
      for (Wanted report : wanted) {
        OutputFile file = OutputFile.open(report.file());
        open.add(
            new Open(report.format().writer(file.stream(), options.inFile()), Optional.of(file)));
      }
    } catch (Failed e) {
      close();
      throw e;
    }
    each(ReportWriter::begin);
  }

  void program(CheckedProgram program) {
    each(writer -> writer.program(program));
  }

  /** Ends them and puts the files in their places. */
  void end(Verdict verdict) {
    each(writer -> writer.end(verdict));
    for (Open report : open) {
      if (!report.failed && report.file.isPresent()) {
        try {
          report.file.get().commit();
        } catch (Failed e) {
          fail(report, e);
        }
      }
    }
  }

  private void each(Step step) {
    for (Open report : open) {
      if (!report.failed) {
        try {
          step.on(report.writer);
        } catch (IOException e) {
          fail(
              report,
              report.file.isPresent()
                  ? report.file.get().failed(e)
                  : Failed.because(e, Failure.OUTPUT_FAILED, "standard output", Reasons.of(e)));
        }
      }
    }
  }

  private void fail(Open report, Failed failed) {
    report.failed = true;
    status = status.and(failed.status());
    messages.tell(failed);
  }

  ExitStatus status() {
    return status;
  }

  @Override
  public void close() {
    for (Open report : open) {
      report.file.ifPresent(OutputFile::close);
    }
  }
}

package hairline.checks.report;

import java.io.OutputStream;
import java.util.Locale;

/** The formats there are: a new one is one class and its line here. */
public enum ReportFormat {
  TEXT {
    @Override
    public ReportWriter writer(OutputStream out, ReportOptions options) {
      return new TextReport(out, options);
    }
  },
  JSON {
    @Override
    public ReportWriter writer(OutputStream out, ReportOptions options) {
      return new JsonReport(out, options);
    }
  },
  SARIF {
    @Override
    public ReportWriter writer(OutputStream out, ReportOptions options) {
      return new SarifReport(out, options);
    }
  },
  JUNIT {
    @Override
    public ReportWriter writer(OutputStream out, ReportOptions options) {
      return new JunitReport(out, options);
    }
  },
  CSV {
    @Override
    public ReportWriter writer(OutputStream out, ReportOptions options) {
      return new CsvReport(out, options);
    }
  },
  SVG {
    @Override
    public ReportWriter writer(OutputStream out, ReportOptions options) {
      return new SvgReport(out, options);
    }
  },
  HTML {
    @Override
    public ReportWriter writer(OutputStream out, ReportOptions options) {
      return new HtmlReport(out, options);
    }
  };

  /** A writer of this format; what it writes is UTF-8. */
  public abstract ReportWriter writer(OutputStream out, ReportOptions options);

  /** Its name on the command line. */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}

package hairline.checks.report;

import hairline.checks.compare.Comparison;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Locale;

/** The formats of a comparison of two programs. */
public enum ComparisonFormat {
  TEXT {
    @Override
    public void write(OutputStream out, Comparison comparison, ReportOptions options, int status)
        throws IOException {
      new ComparisonText(out, options).write(comparison);
    }
  },
  JSON {
    @Override
    public void write(OutputStream out, Comparison comparison, ReportOptions options, int status)
        throws IOException {
      new ComparisonJson(out, options).write(comparison, status);
    }
  },
  HTML {
    @Override
    public void write(OutputStream out, Comparison comparison, ReportOptions options, int status)
        throws IOException {
      ComparisonHtml.write(out, options, comparison);
    }
  };

  /**
   * Writes one as UTF-8.
   *
   * @param status the exit status of the run
   * @throws IOException if it can't be written
   */
  public abstract void write(
      OutputStream out, Comparison comparison, ReportOptions options, int status)
      throws IOException;

  /** Its name on the command line. */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}

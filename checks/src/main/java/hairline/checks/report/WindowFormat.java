package hairline.checks.report;

import hairline.checks.finding.ProgramResult;
import hairline.checks.rules.CuttingWindow;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Locale;

/** The formats of the windows of a program's operations. */
public enum WindowFormat {
  TEXT {
    @Override
    public void write(
        OutputStream out,
        ProgramResult result,
        List<CuttingWindow> windows,
        ReportOptions options,
        int status)
        throws IOException {
      new WindowReport(out, options).write(result, windows);
    }
  },
  JSON {
    @Override
    public void write(
        OutputStream out,
        ProgramResult result,
        List<CuttingWindow> windows,
        ReportOptions options,
        int status)
        throws IOException {
      new WindowJson(out, options).write(result, windows, status);
    }
  };

  /**
   * Writes them as UTF-8.
   *
   * @param status the exit status of the run
   * @throws IOException if they can't be written
   */
  public abstract void write(
      OutputStream out,
      ProgramResult result,
      List<CuttingWindow> windows,
      ReportOptions options,
      int status)
      throws IOException;

  /** Its name on the command line. */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}

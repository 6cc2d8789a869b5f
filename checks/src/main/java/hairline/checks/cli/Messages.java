package hairline.checks.cli;

import hairline.checks.report.Visible;
import java.io.PrintWriter;

/**
 * Writes failures on standard error: what is wrong, below it what to do, then the trace if asked.
 */
final class Messages {
  private static final String PROGRAM = "hairline: ";
  private static final String INDENT = " ".repeat(PROGRAM.length());

  private final PrintWriter err;
  private boolean verbose;

  Messages(PrintWriter err) {
    this.err = err;
  }

  /** Adds the trace from here on. */
  void verbose(boolean on) {
    verbose = on;
  }

  /** Says that something was done. */
  void note(String sentence) {
    err.println(PROGRAM + Visible.of(sentence));
    err.flush();
  }

  void tell(Failed failed) {
    String prefix = PROGRAM;
    for (String line : failed.trouble().sentence().split("\n", -1)) {
      err.println(prefix + Visible.of(line));
      prefix = INDENT;
    }
    err.println(INDENT + Visible.of(failed.trouble().cure()));
    if (verbose) {
      err.println(INDENT + "[" + failed.failure().code() + "]");
      Throwable cause = failed.getCause();
      trace(cause == null ? failed : cause);
    }
    err.flush();
  }

  /** Tells something that is no failure. */
  void tell(String sentence) {
    err.println(PROGRAM + Visible.of(sentence));
    err.flush();
  }

  private void trace(Throwable thrown) {
    err.println(INDENT + Visible.of(thrown.toString()));
    for (StackTraceElement at : thrown.getStackTrace()) {
      err.println(INDENT + "  at " + Visible.of(at.toString()));
    }
  }
}

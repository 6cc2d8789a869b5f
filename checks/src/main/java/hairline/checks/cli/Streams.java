package hairline.checks.cli;

import hairline.checks.report.ReportOptions;
import java.io.BufferedOutputStream;
import java.io.Console;
import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

/**
 * What a command reads and writes.
 *
 * @param in standard input
 * @param out standard output: reports and what was asked for
 * @param err standard error: all else, UTF-8
 * @param outIsTerminal whether somebody looks at standard output
 * @param errIsTerminal whether somebody looks at standard error
 * @param oneTarget whether both outputs are known to be one file or pipe
 * @param environment the environment variables
 */
record Streams(
    InputStream in,
    WatchedOutput out,
    PrintWriter err,
    boolean outIsTerminal,
    boolean errIsTerminal,
    boolean oneTarget,
    Map<String, String> environment) {

  private static final int LEAST_COLUMNS = 60;

  /** Those of the process. */
  static Streams ofProcess() {
    return new Streams(
        new FileInputStream(FileDescriptor.in),
        new WatchedOutput(
            new BufferedOutputStream(new FileOutputStream(FileDescriptor.out), 1 << 16),
            isPipe(target(1))),
        utf8(new FileOutputStream(FileDescriptor.err)),
        isTerminal(1),
        isTerminal(2),
        isOneFile(target(1), target(2)),
        System.getenv());
  }

  static PrintWriter utf8(OutputStream stream) {
    return new PrintWriter(new OutputStreamWriter(stream, StandardCharsets.UTF_8), true);
  }

  /** Whether what is written to both lands before the same eyes. */
  boolean bothInOnePlace() {
    return oneTarget || (outIsTerminal && errIsTerminal);
  }

  /** Columns of a text report: the terminal's, at least 60; the usual ones where none is known. */
  int columns() {
    String given = environment.getOrDefault("COLUMNS", "");
    return outIsTerminal && given.matches("[1-9][0-9]{0,3}")
        ? Math.max(LEAST_COLUMNS, Integer.parseInt(given))
        : ReportOptions.USUAL_WIDTH;
  }

  /** Whether colour is welcome where nobody decided: NO_COLOR counts when present and not empty. */
  boolean wantsColour() {
    return outIsTerminal
        && environment.getOrDefault("NO_COLOR", "").isEmpty()
        && !environment.getOrDefault("TERM", "").equals("dumb");
  }

  // Only a plain java.io.Console says that a terminal is there; newer Javas have others too.
  @SuppressWarnings("SystemConsoleNull")
  private static boolean isTerminal(int descriptor) {
    String target = target(descriptor);
    if (!target.isEmpty()) {
      return target.startsWith("/dev/pts/")
          || target.startsWith("/dev/tty")
          || target.equals("/dev/console");
    }
    Console console = System.console();
    return console != null && console.getClass().getName().equals("java.io.Console");
  }

  private static boolean isOneFile(String out, String err) {
    return !out.isEmpty() && out.equals(err) && !out.equals("/dev/null");
  }

  private static boolean isPipe(String target) {
    return target.startsWith("pipe:") || target.startsWith("socket:");
  }

  /** What a descriptor leads to, where the system tells. */
  private static String target(int descriptor) {
    try {
      return Files.readSymbolicLink(Path.of("/proc/self/fd/" + descriptor)).toString();
    } catch (IOException | UnsupportedOperationException | SecurityException e) {
      return "";
    }
  }
}

package hairline.checks.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Where the program starts. */
@Command(
    name = "hairline",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description = "Checks G-code part programs of micro-features before they run.")
public final class Main implements Runnable {
  @Spec private CommandSpec spec;

  Main() {}

  /**
   * Starts the program.
   *
   * @param args the command line
   */
  public static void main(String[] args) {
    System.exit(
        run(
            utf8(new FileOutputStream(FileDescriptor.out)),
            utf8(new FileOutputStream(FileDescriptor.err)),
            args));
  }

  /** Runs one command line and returns its exit status. */
  static int run(PrintWriter out, PrintWriter err, String... args) {
    int status =
        new CommandLine(new Main()).setOut(out).setErr(err).setExpandAtFiles(false).execute(args);
    out.flush();
    err.flush();
    return status;
  }

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "no command given");
  }

  private static PrintWriter utf8(FileOutputStream stream) {
    return new PrintWriter(new OutputStreamWriter(stream, StandardCharsets.UTF_8));
  }
}

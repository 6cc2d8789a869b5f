package hairline.checks.cli;

import hairline.checks.motion.Event;
import hairline.checks.motion.Interpreter;
import hairline.checks.motion.ProgramFiles;
import hairline.checks.motion.SheetControl;
import hairline.checks.motion.UsageCollector;
import hairline.checks.setup.SheetReader;
import hairline.checks.setup.StarterSheet;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code hairline init}. */
@Command(
    name = "init",
    description =
        "Writes a setup sheet to start from for a program: what the program uses is filled in,"
            + " the rest stands in comments.")
final class InitCommand implements Action {
  @Parameters(paramLabel = "PROGRAM", description = "The part program, or - for standard input.")
  private String program = "";

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE",
      description =
          "Where to write the sheet (standard output); setup.yaml beside the program is found"
              + " by check.")
  private @Nullable String output;

  @Option(names = "--force", description = "Write over a file that is there already.")
  private boolean force;

  @Option(
      names = {"-v", "--verbose"},
      description = "Failures with their traces.")
  private boolean verbose;

  @Override
  public boolean verbose() {
    return verbose;
  }

  @Override
  public ExitStatus run(Streams streams, Messages messages) throws Failed {
    Input input = input(streams);
    String sheet;
    try {
      sheet = StarterSheet.write(usage(input).usage(input.name()));
    } catch (IOException e) {
      throw Inputs.unreadable(input.name(), e);
    }
    if (output == null) {
      return Printed.text(streams, sheet);
    }
    Path target = OutputFile.checkedSheet(output, Inputs.files(List.of(input)));
    if (!force && Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
      throw Failed.of(Failure.OUTPUT_EXISTS, output);
    }
    try (OutputFile file = OutputFile.open(target)) {
      try {
        file.stream().write(sheet.getBytes(StandardCharsets.UTF_8));
      } catch (IOException e) {
        throw file.failed(e);
      }
      file.commit();
    }
    messages.note("wrote `" + Inputs.name(target) + "`");
    return ExitStatus.CLEAN;
  }

  private Input input(Streams streams) throws Failed {
    if (program.equals(Inputs.STANDARD_INPUT)) {
      Input input = Inputs.spooled(streams.in());
      if (input instanceof Input.Unusable unusable) {
        throw unusable.failed();
      }
      return input;
    }
    Path path;
    try {
      path = Path.of(program);
    } catch (InvalidPathException e) {
      throw Failed.because(e, Failure.INPUT_NOT_NAMEABLE, program);
    }
    if (Files.isDirectory(path)) {
      throw Failed.of(Failure.INIT_WANTS_A_FILE, program);
    }
    Input.InFile file = new Input.InFile(Inputs.name(path), path, false);
    Inputs.lookAt(file);
    return file;
  }

  private static UsageCollector usage(Input input) throws IOException {
    UsageCollector usage = new UsageCollector();
    ProgramFiles files =
        input instanceof Input.Spooled spooled
            ? ProgramFiles.alone(spooled.program(), usage)
            : ProgramFiles.of(((Input.InFile) input).path(), usage);
    new Interpreter(SheetControl.of(new SheetReader().embedded()), files)
        .run(
            event -> {
              if (!(event instanceof Event.BlockProblem)) {
                usage.accept(event);
              }
            },
            false);
    return usage;
  }
}

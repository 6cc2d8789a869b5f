package hairline.checks.cli;

import hairline.checks.motion.Event;
import hairline.checks.motion.Interpreter;
import hairline.checks.motion.Place;
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
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
  /** Where the step budget ended the reading. */
  private record CutShort(long budget, String where) {}

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
    Optional<Path> target = target(input);
    UsageCollector usage = new UsageCollector();
    Optional<CutShort> cut;
    try (Progress progress = Progress.reading(streams)) {
      cut = read(input, usage);
      progress.done(1);
    } catch (IOException e) {
      throw Inputs.unreadable(input.name(), e);
    }
    String sheet = StarterSheet.write(usage.usage(input.name()));
    ExitStatus status =
        target.isPresent() ? written(sheet, target.get(), messages) : Printed.text(streams, sheet);
    if (cut.isPresent()) {
      Failed cutShort =
          Failed.of(Failure.INIT_CUT_SHORT, input.name(), cut.get().budget(), cut.get().where());
      messages.tell(cutShort);
      status = status.and(cutShort.status());
    }
    return status;
  }

  /** The file to write, where one is named. */
  private Optional<Path> target(Input input) throws Failed {
    if (output == null) {
      return Optional.empty();
    }
    Path target = OutputFile.checkedSheet(output, Inputs.files(List.of(input)));
    if (!force && Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
      throw Failed.of(Failure.OUTPUT_EXISTS, output);
    }
    return Optional.of(target);
  }

  private static ExitStatus written(String sheet, Path target, Messages messages) throws Failed {
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

  /** Collects what the program uses; where the step budget ended that, if it did. */
  private static Optional<CutShort> read(Input input, UsageCollector usage) throws IOException {
    List<CutShort> cut = new ArrayList<>();
    ProgramFiles files =
        input instanceof Input.Spooled spooled
            ? ProgramFiles.alone(spooled.program(), usage)
            : ProgramFiles.of(((Input.InFile) input).path(), usage);
    new Interpreter(SheetControl.of(new SheetReader().embedded()), files)
        .run(
            event -> {
              if (event instanceof Event.StepBudgetReached reached) {
                Place at = reached.at();
                String of = at.file() == 0 ? "" : " of " + files.name(at.file());
                cut.add(new CutShort(reached.budget(), "line " + at.line() + of));
              } else if (!(event instanceof Event.BlockProblem)) {
                usage.accept(event);
              }
            },
            false);
    return cut.stream().findFirst();
  }
}

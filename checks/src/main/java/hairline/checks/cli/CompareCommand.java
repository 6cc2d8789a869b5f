package hairline.checks.cli;

import hairline.checks.compare.Comparison;
import hairline.checks.compare.LevelWatcher;
import hairline.checks.compare.MotionComparison;
import hairline.checks.compare.SheetDifference;
import hairline.checks.finding.ProgramResult;
import hairline.checks.motion.Event;
import hairline.checks.motion.EventSink;
import hairline.checks.motion.Interpreter;
import hairline.checks.motion.Place;
import hairline.checks.motion.ProgramFiles;
import hairline.checks.motion.SheetControl;
import hairline.checks.report.ComparisonFormat;
import hairline.checks.report.ReportOptions;
import hairline.checks.rules.ProgramCheck;
import hairline.checks.rules.Selection;
import hairline.checks.setup.Length;
import hairline.checks.setup.MachineKeys;
import hairline.checks.setup.Setup;
import java.io.IOException;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code hairline compare}. */
@Command(
    name = "compare",
    description = {
      "Tells what a changed program does otherwise than before: in motion, depth and state, in the"
          + " surface it leaves, and in what the check finds.",
      "",
      "No comparison of text: sequence numbers, blanks, comments and the order of words do not"
          + " count, nor does another way to write one and the same motion.",
      ""
    })
final class CompareCommand implements Action {
  /** What makes the exit status 1. */
  enum FailOnWhat {
    DIFFERENCE,
    FINDING;

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  @Parameters(index = "0", paramLabel = "BEFORE", description = "The part program as it was.")
  private String before = "";

  @Parameters(index = "1", paramLabel = "AFTER", description = "The part program as it is.")
  private String after = "";

  @Option(
      names = "--fail-on",
      paramLabel = "WHAT",
      description =
          "What makes the exit status 1: ${COMPLETION-CANDIDATES} (difference: any in motion, state"
              + " or surface, and new findings; finding: new findings only).")
  private FailOnWhat failOn = FailOnWhat.DIFFERENCE;

  @Option(
      names = "--allow-unread",
      description = "Macro statements that are not read do not make the exit status 3.")
  private boolean allowUnread;

  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      description = "Format of the comparison: ${COMPLETION-CANDIDATES} (text).")
  private ComparisonFormat format = ComparisonFormat.TEXT;

  @Mixin private final CommonOptions common = new CommonOptions();

  @Override
  public boolean verbose() {
    return common.verbose();
  }

  /** One of the two programs. */
  private record Side(OneProgram program, Setup sheet) {
    ProgramResult check(EventSink watcher) throws Failed {
      return program.read(
          () -> {
            ProgramCheck check = ProgramCheck.of(Selection.ALL);
            return program.check(check, sheet, watcher);
          });
    }

    /** Its motion, of whose places the result knows the files. */
    MotionComparison.Program motion(ProgramResult result, boolean blockDeleteOn) {
      return sink -> {
        // What the first look tells of lines that can't be read, the run tells again.
        ProgramFiles files = program.open(result.files(), event -> {});
        new Interpreter(SheetControl.of(sheet), files)
            .run(
                event -> {
                  if (!(event instanceof Event.BlockProblem)) {
                    sink.accept(event);
                  }
                },
                blockDeleteOn);
      };
    }
  }

  @Override
  public ExitStatus run(Streams streams, Messages messages) throws Failed {
    Sheets sheets = common.sheets();
    if (before.equals(Inputs.STANDARD_INPUT) && after.equals(Inputs.STANDARD_INPUT)) {
      throw Failed.of(
          Failure.WRONG_OPTION, "- stands for standard input, which holds one program", "compare ");
    }
    OneProgram programBefore = OneProgram.of(before, streams);
    OneProgram programAfter = OneProgram.of(after, streams);
    Side was = new Side(programBefore, sheets.setupFor(programBefore.path()));
    Side is = new Side(programAfter, sheets.setupFor(programAfter.path()));
    LevelWatcher levelsBefore = new LevelWatcher();
    LevelWatcher levelsAfter = new LevelWatcher();
    ProgramResult resultBefore = was.check(levelsBefore);
    ProgramResult resultAfter = is.check(levelsAfter);
    long increment = increment(was.sheet(), is.sheet());
    Set<Place> asked = levelsBefore.placesOfLevels();
    Comparison comparison =
        programAfter.read(
            () ->
                Comparison.of(
                    resultBefore,
                    resultAfter,
                    SheetDifference.of(was.sheet(), is.sheet()),
                    MotionComparison.of(
                        was.motion(resultBefore, false),
                        is.motion(resultAfter, false),
                        increment,
                        asked),
                    resultBefore.deletable() || resultAfter.deletable()
                        ? Optional.of(
                            MotionComparison.of(
                                was.motion(resultBefore, true),
                                is.motion(resultAfter, true),
                                increment,
                                Set.of()))
                        : Optional.empty(),
                    levelsBefore,
                    levelsAfter));
    ExitStatus status = status(comparison).and(complete(resultBefore)).and(complete(resultAfter));
    ReportOptions options = common.report(streams, sheets);
    try {
      format.write(streams.out(), comparison, options, status.code());
    } catch (IOException e) {
      throw Failed.because(e, Failure.OUTPUT_FAILED, "standard output", Reasons.of(e));
    }
    return status;
  }

  /** The finer of the two machines' increments; 0 where one is not known. */
  private static long increment(Setup before, Setup after) {
    return Math.min(
        before.get(MachineKeys.RESOLUTION).map(Length::pm).orElse(0L),
        after.get(MachineKeys.RESOLUTION).map(Length::pm).orElse(0L));
  }

  private ExitStatus status(Comparison comparison) {
    boolean fails =
        comparison.newFindings() || (failOn == FailOnWhat.DIFFERENCE && comparison.differ());
    return fails ? ExitStatus.FOUND : ExitStatus.CLEAN;
  }

  private ExitStatus complete(ProgramResult result) {
    return result.stepBudgetReached()
            || result.notUnderstood()
            || (result.macroUnread() && !allowUnread)
        ? ExitStatus.INCOMPLETE
        : ExitStatus.CLEAN;
  }
}

package hairline.checks.rules;

import hairline.checks.finding.AcceptUnused;
import hairline.checks.finding.Assumption;
import hairline.checks.finding.Finding;
import hairline.checks.finding.NotChecked;
import hairline.checks.finding.ProgramResult;
import hairline.checks.finding.ProgramResult.SourceLine;
import hairline.checks.motion.ControlProfile;
import hairline.checks.motion.EventSink;
import hairline.checks.motion.NotAsAssumedException;
import hairline.checks.motion.ProgramFiles;
import hairline.checks.motion.SheetControl;
import hairline.checks.setup.Setup;
import hairline.parser.PartProgram;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * Checks one program: runs it once with the block delete switch off and, where it has deletable
 * blocks, once with the switch on, and puts both together.
 */
public final class ProgramCheck {
  /** A watcher who sees nothing: stages that no rule needs are left out. */
  public static final EventSink NOBODY = event -> {};

  private static final String UNKNOWN_MACHINE =
      "as without a sheet, for machine.name still says unknown machine";

  private final Selection selection;
  private final OptionalLong cellPm;
  private final Threads threads;
  private final Timings timings;

  /** On how many threads a program is checked; the result is the same. */
  enum Threads {
    /** On one; each file is looked through before it is read to be run. */
    ONE,
    /** Read, made, cut and judged on one each; the file is looked through while it is read. */
    SEVERAL,
    /** On several where the program is long. */
    AS_IT_PAYS
  }

  private ProgramCheck(Selection selection, OptionalLong cellPm, Threads threads, Timings timings) {
    this.timings = timings;
    this.selection = selection;
    this.cellPm = cellPm;
    this.threads = threads;
  }

  /** A check that asks these rules. */
  public static ProgramCheck of(Selection selection) {
    return new ProgramCheck(selection, OptionalLong.empty(), Threads.AS_IT_PAYS, Timings.NONE);
  }

  /** The same with cells of this edge for the surface of the part; empty for the usual ones. */
  public ProgramCheck withCell(OptionalLong edgePm) {
    return new ProgramCheck(selection, edgePm, threads, timings);
  }

  /** The same, of which the clocks are read. */
  public ProgramCheck timedBy(Timings clocks) {
    return new ProgramCheck(selection, cellPm, threads, clocks);
  }

  /** The same on so many threads. */
  ProgramCheck on(Threads number) {
    return new ProgramCheck(selection, cellPm, number, timings);
  }

  private ProgramFiles open(Source source, List<String> known, Run run) throws IOException {
    timings.begin("first look at the file");
    try {
      return source.open(known, run.beforeStart());
    } finally {
      timings.end();
    }
  }

  private boolean parts(ProgramFiles files) {
    return switch (threads) {
      case ONE -> false;
      case SEVERAL -> true;
      case AS_IT_PAYS -> files.isLong();
    };
  }

  /** Where the program comes from; opened once for each run. */
  private interface Source {
    ProgramFiles open(List<String> known, EventSink sink) throws IOException;

    /** Whether it stands in a file so long that looking through it first takes its time. */
    default boolean isLongFile() throws IOException {
      return false;
    }

    /** The same for a run that a look at the file goes along with; nothing where none may. */
    default Optional<ProgramFiles> openUnseen(EventSink sink) throws IOException {
      return Optional.empty();
    }
  }

  private record InFile(Path program) implements Source {
    @Override
    public ProgramFiles open(List<String> known, EventSink sink) throws IOException {
      return ProgramFiles.of(program, known, sink);
    }

    @Override
    public boolean isLongFile() throws IOException {
      return ProgramFiles.isLong(program);
    }

    @Override
    public Optional<ProgramFiles> openUnseen(EventSink sink) throws IOException {
      return ProgramFiles.lookingWhileReading(program, sink);
    }
  }

  /**
   * Checks the program in a file; subprograms may stand in files beside it.
   *
   * @throws IOException if a file cannot be read
   */
  public ProgramResult check(Path program, Setup setup) throws IOException {
    return check(program, setup, NOBODY);
  }

  /**
   * The same for somebody who watches.
   *
   * @param watcher takes the events of the run with the block delete switch off
   * @throws IOException if a file cannot be read
   */
  public ProgramResult check(Path program, Setup setup, EventSink watcher) throws IOException {
    return check(new InFile(program), setup, watcher);
  }

  /**
   * Checks a program that stands in no folder, such as one from standard input.
   *
   * @throws IOException if it cannot be read
   */
  public ProgramResult check(PartProgram program, Setup setup) throws IOException {
    return check(program, setup, NOBODY);
  }

  /**
   * The same for somebody who watches.
   *
   * @param watcher takes the events of the run with the block delete switch off
   * @throws IOException if it cannot be read
   */
  public ProgramResult check(PartProgram program, Setup setup, EventSink watcher)
      throws IOException {
    return check((known, sink) -> ProgramFiles.alone(program, sink), setup, watcher);
  }

  private ProgramResult check(Source source, Setup setup, EventSink watcher) throws IOException {
    ControlProfile profile = SheetControl.of(setup);
    Optional<Ran> unseen = watcher == NOBODY ? runUnseen(source, setup, profile) : Optional.empty();
    Ran first = unseen.isPresent() ? unseen.get() : runSeen(source, setup, profile, watcher);
    Run off = first.run();
    ProgramFiles files = first.files();
    if (!files.deletableBlocks()) {
      off.accepts().unused().forEach(accept -> off.dispatch(new AcceptUnused(accept)));
      return result(List.of(files), setup, List.of(off), off.findings());
    }
    Run on = new Run(selection, setup, cellPm, NOBODY, timings);
    ProgramFiles again = open(source, names(files), on);
    on.run(again, profile, true, parts(again));
    off.accepts().unused().stream()
        .filter(on.accepts().unused()::contains)
        .forEach(
            accept -> {
              off.dispatch(new AcceptUnused(accept));
              on.dispatch(new AcceptUnused(accept));
            });
    return result(List.of(files, again), setup, List.of(off, on), BlockDeleteMerge.of(off, on));
  }

  /** A run to its end with the block delete switch off, and the files it drew on. */
  private record Ran(Run run, ProgramFiles files) {}

  private Ran runSeen(Source source, Setup setup, ControlProfile profile, EventSink watcher)
      throws IOException {
    Run off = new Run(selection, setup, cellPm, watcher, timings);
    ProgramFiles files = open(source, List.of(), off);
    off.run(files, profile, false, parts(files));
    return new Ran(off, files);
  }

  /**
   * Runs a long file that nobody has looked through before; nothing where that proves to be needed.
   */
  private Optional<Ran> runUnseen(Source source, Setup setup, ControlProfile profile)
      throws IOException {
    boolean pays =
        switch (threads) {
          case ONE -> false;
          case SEVERAL -> true;
          case AS_IT_PAYS -> source.isLongFile();
        };
    // A run is not set up for nothing: that is a good part of a short check.
    if (!pays) {
      return Optional.empty();
    }
    Run off = new Run(selection, setup, cellPm, NOBODY, timings);
    Optional<ProgramFiles> unseen = source.openUnseen(off.beforeStart());
    if (unseen.isEmpty()) {
      return Optional.empty();
    }
    ProgramFiles files = unseen.get();
    try {
      off.run(files, profile, false, true);
      files.endLook();
    } catch (NotAsAssumedException e) {
      return Optional.empty();
    }
    return Optional.of(new Ran(off, files));
  }

  private static List<String> names(ProgramFiles files) {
    List<String> names = new ArrayList<>();
    for (int file = 0; file < files.count(); file++) {
      names.add(files.name(file));
    }
    return names;
  }

  /**
   * Puts the runs together.
   *
   * @param files the files of each run; the last knows all of them
   */
  private static ProgramResult result(
      List<ProgramFiles> files, Setup setup, List<Run> runs, List<Finding> findings)
      throws IOException {
    List<Finding> standing = new ArrayList<>();
    List<Finding> accepted = new ArrayList<>();
    for (Finding finding : findings) {
      (finding.acceptedBecause().isPresent() ? accepted : standing).add(finding);
    }
    List<String> names = names(files.get(files.size() - 1));
    return new ProgramResult(
        names.get(0),
        names,
        standing,
        accepted,
        notChecked(runs),
        assumptions(setup, runs),
        setup.name(),
        setup.embedded(),
        excerpts(files, names.size(), findings),
        runs.stream().anyMatch(Run::isStepBudgetReached),
        runs.stream().anyMatch(Run::isMacroUnread),
        runs.stream().anyMatch(Run::isNotUnderstood),
        BlockDeleteMerge.budgets(runs),
        files.get(0).deletableBlocks());
  }

  private static List<Assumption> assumptions(Setup setup, List<Run> runs) {
    Stream<Assumption> ofMachine =
        setup.valuesOfUnknownMachine().entrySet().stream()
            .map(value -> new Assumption(value.getKey(), value.getValue(), UNKNOWN_MACHINE));
    Stream<Assumption> used = runs.stream().flatMap(run -> run.assumptions().stream());
    return Stream.concat(ofMachine, used).distinct().toList();
  }

  /** What either run could not decide, with the larger count where both could not. */
  private static List<NotChecked> notChecked(List<Run> runs) {
    Map<List<String>, NotChecked> all = new LinkedHashMap<>();
    for (Run run : runs) {
      for (NotChecked next : run.notChecked()) {
        all.merge(
            List.of(next.rule(), next.reason()), next, (a, b) -> b.count() > a.count() ? b : a);
      }
    }
    return List.copyOf(all.values());
  }

  /**
   * The lines that findings point at; one more reading of the text, and only where there are any.
   */
  private static Map<SourceLine, String> excerpts(
      List<ProgramFiles> files, int count, List<Finding> findings) throws IOException {
    Map<SourceLine, String> excerpts = new HashMap<>();
    for (int file = 0; file < count; file++) {
      TreeSet<Integer> lines = new TreeSet<>();
      for (Finding finding : findings) {
        if (finding.at().file() == file) {
          lines.add(finding.at().line());
        }
        if (finding.worst().at().file() == file) {
          lines.add(finding.worst().at().line());
        }
      }
      if (lines.isEmpty()) {
        continue;
      }
      int of = file;
      text(files, file)
          .texts(lines)
          .forEach((line, text) -> excerpts.put(new SourceLine(of, line), text));
    }
    return excerpts;
  }

  private static PartProgram text(List<ProgramFiles> files, int file) {
    return files.stream()
        .filter(known -> file < known.count() && known.isDrawnOn(file))
        .findFirst()
        .orElseThrow()
        .text(file);
  }
}

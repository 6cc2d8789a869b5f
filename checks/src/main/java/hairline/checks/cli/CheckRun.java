package hairline.checks.cli;

import hairline.checks.finding.Finding;
import hairline.checks.finding.Level;
import hairline.checks.finding.NotChecked;
import hairline.checks.finding.ProgramResult;
import hairline.checks.report.CheckedProgram;
import hairline.checks.report.ReportOptions;
import hairline.checks.report.Verdict;
import hairline.checks.rules.ProgramCheck;
import hairline.checks.rules.Selection;
import hairline.checks.rules.Timings;
import hairline.checks.setup.RuleKeys;
import hairline.checks.setup.Setup;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** Checks the programs of a run, several at a time, and hands them on in their order. */
final class CheckRun {
  /** So many programs a worker may be ahead of the one that is due. */
  private static final int AHEAD = 4;

  private final Selection selection;
  private final ProgramCheck check;
  private final Sheets sheets;
  private final ReportOptions options;
  private final boolean allowUnread;
  private final boolean withSummary;
  private final FeedTables feeds;
  private final Surfaces surfaces;
  private final boolean reportIsSeen;
  private final Messages messages;
  private final Set<String> told = new HashSet<>();
  private ExitStatus status = ExitStatus.CLEAN;
  private int checked;
  private int troubled;
  private int incomplete;
  private final Map<Level, Long> byLevel = new EnumMap<>(Level.class);
  private long accepted;
  private final Set<String> undecided = new HashSet<>();

  /**
   * @param timings takes how long stages and rules take
   * @param reportIsSeen whether the report on standard output is read where standard error is
   */
  CheckRun(
      Selection selection,
      Sheets sheets,
      ReportOptions options,
      boolean allowUnread,
      boolean withSummary,
      FeedTables feeds,
      Surfaces surfaces,
      Timings timings,
      boolean reportIsSeen,
      Messages messages) {
    this.selection = selection;
    this.check = ProgramCheck.of(selection).withCell(surfaces.cellPm()).timedBy(timings);
    this.sheets = sheets;
    this.options = options;
    this.allowUnread = allowUnread;
    this.withSummary = withSummary;
    this.feeds = feeds;
    this.surfaces = surfaces;
    this.reportIsSeen = reportIsSeen;
    this.messages = messages;
  }

  /** One program and, if there is one, the failure behind it. */
  private record Done(CheckedProgram program, Optional<Failed> failed) {}

  /** Takes the programs as they are due. */
  interface Taker {
    void take(CheckedProgram program);
  }

  /** Checks them all. */
  void run(List<Input> inputs, int jobs, Progress progress, Taker taker) {
    if (jobs == 1 || inputs.size() < 2) {
      for (Input input : inputs) {
        due(check(input), taker, progress);
      }
      return;
    }
    ExecutorService workers =
        Executors.newFixedThreadPool(
            Math.min(jobs, inputs.size()),
            task -> {
              Thread thread = new Thread(task, "check");
              thread.setDaemon(true);
              return thread;
            });
    ArrayDeque<Future<Done>> ahead = new ArrayDeque<>();
    for (Input input : inputs) {
      ahead.add(workers.submit(() -> check(input)));
      if (ahead.size() > jobs * AHEAD) {
        due(of(ahead.remove()), taker, progress);
      }
    }
    while (!ahead.isEmpty()) {
      due(of(ahead.remove()), taker, progress);
    }
    workers.shutdown();
  }

  private static Done of(Future<Done> future) {
    try {
      return future.get();
    } catch (ExecutionException e) {
      throw new IllegalStateException(e.getCause());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted while a program was checked", e);
    }
  }

  private Done check(Input input) {
    try {
      return new Done(checked(input), Optional.empty());
    } catch (Failed e) {
      return failed(input, e);
    } catch (UncheckedIOException e) {
      IOException cause = e.getCause() == null ? new IOException(e) : e.getCause();
      return failed(input, Inputs.unreadable(input.name(), cause));
    } catch (IOException e) {
      return failed(input, Inputs.unreadable(input.name(), e));
    } catch (InvalidPathException e) {
      return failed(input, Failed.because(e, Failure.INPUT_NOT_NAMEABLE, input.name()));
    } catch (OutOfMemoryError e) {
      return failed(input, Failed.because(e, Failure.OUT_OF_MEMORY, input.name()));
    } catch (RuntimeException | StackOverflowError | AssertionError e) {
      return failed(input, ownFault(e, " in `" + input.name() + "`"));
    }
  }

  /** What could not have happened. */
  static Failed ownFault(Throwable e, String where) {
    return Failed.because(e, Failure.OWN_FAULT, where, String.valueOf(e));
  }

  private static Done failed(Input input, Failed failed) {
    return new Done(CheckedProgram.failed(input.name(), failed.trouble()), Optional.of(failed));
  }

  private CheckedProgram checked(Input input) throws Failed, IOException {
    if (input instanceof Input.Unusable unusable) {
      throw unusable.failed();
    }
    Optional<Path> path = Optional.empty();
    if (input instanceof Input.InFile file) {
      Inputs.lookAt(file);
      path = Optional.of(file.path());
    }
    OneProgram program = new OneProgram(input);
    Setup setup = setupFor(path);
    Surfaces.Watcher watcher = surfaces.watcher(setup);
    CheckedProgram checked =
        CheckedProgram.of(
                program.check(check, setup, watcher.sink()),
                withSummary ? Optional.of(Summaries.of(program::open, setup)) : Optional.empty())
            .withSurface(watcher.shown())
            .withDepths(watcher.depths())
            .withTimeline(watcher.timeline())
            .withFeeds(feeds.of(program::open, setup));
    return surfaces.brief()
        ? checked.withBrief(
            watcher.brief(Digest.of(program.file()), Summaries.of(program::open, setup)))
        : checked;
  }

  /** The sheet, which leaves a rule to ask. */
  private Setup setupFor(Optional<Path> program) throws Failed {
    Setup setup = sheets.setupFor(program);
    if (selection.rules(setup.get(RuleKeys.SKIP).orElse(List.of())).isEmpty()) {
      throw Failed.of(
          Failure.NO_RULE_LEFT, "rules.skip of `" + setup.name() + "` and the command line");
    }
    return setup;
  }

  private void due(Done done, Taker taker, Progress progress) {
    if (done.failed().isPresent()) {
      troubled++;
      status = status.and(done.failed().get().status());
      tell(done.failed().get());
    } else {
      checked++;
      count(done.program().result().orElseThrow());
    }
    taker.take(done.program());
    progress.done(checked + troubled);
  }

  /** On standard error too, unless the report tells it before the same eyes; a sentence once. */
  private void tell(Failed failed) {
    if (!reportIsSeen && told.add(failed.trouble().sentence())) {
      messages.tell(failed);
    }
  }

  private void count(ProgramResult result) {
    for (Finding finding : result.findings()) {
      byLevel.merge(finding.level(), 1L, Long::sum);
      if (options.fails(finding.level())) {
        status = status.and(ExitStatus.FOUND);
      }
    }
    accepted += result.accepted().size();
    result.notChecked().stream()
        .map(NotChecked::rule)
        .filter(rule -> !rule.isEmpty())
        .forEach(undecided::add);
    if (result.stepBudgetReached()
        || result.notUnderstood()
        || (result.macroUnread() && !allowUnread)) {
      incomplete++;
      status = status.and(ExitStatus.INCOMPLETE);
    }
  }

  /** What all of them come to. */
  Verdict verdict() {
    return new Verdict(
        checked,
        troubled,
        incomplete,
        byLevel.getOrDefault(Level.ERROR, 0L),
        byLevel.getOrDefault(Level.WARNING, 0L),
        byLevel.getOrDefault(Level.NOTE, 0L),
        accepted,
        undecided.size(),
        status.code());
  }

  ExitStatus status() {
    return status;
  }
}

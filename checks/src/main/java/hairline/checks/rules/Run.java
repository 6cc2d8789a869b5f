package hairline.checks.rules;

import hairline.checks.budget.StepBudget;
import hairline.checks.finding.Accept;
import hairline.checks.finding.AcceptSeen;
import hairline.checks.finding.Accepts;
import hairline.checks.finding.Assumption;
import hairline.checks.finding.Collector;
import hairline.checks.finding.Finding;
import hairline.checks.finding.Level;
import hairline.checks.finding.NotChecked;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.ControlProfile;
import hairline.checks.motion.Event;
import hairline.checks.motion.EventSink;
import hairline.checks.motion.Interpreter;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.motion.ProgramFiles;
import hairline.checks.motion.ProgramIndex;
import hairline.checks.rules.RuleInfo.Hides;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.rules.RuleInfo.Scope;
import hairline.checks.setup.RuleKeys;
import hairline.checks.setup.Setup;
import hairline.checks.stock.PartLeft;
import hairline.checks.stock.PartNotKnown;
import hairline.checks.stock.SurfaceLeft;
import hairline.parser.Problem;
import hairline.parser.Span;
import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;

/** One run over one program with one setting of the block delete switch. */
final class Run {
  /** At most so many remarks of the first look at the files wait for the run to begin. */
  private static final int MOST_EARLY_EVENTS = 100_000;

  /** Cutting takes far longer than handing over: the fewer wait for it, the fewer are copied. */
  private static final int EVENTS_TO_STOCK = 256;

  private final List<Rule> rules;
  private final EventSink watcher;
  private final Accepts accepts = new Accepts();
  private final Collector collector;

  /** To the thread that cuts the stock, if there is one; what goes around the stages goes on. */
  private final Handover toStock = new Handover(EVENTS_TO_STOCK, this::goAroundStock);

  private final Handover toJudge = new Handover(Handover.EVENTS_A_BATCH, this::dispatch);
  private final Stages stages;
  private final Subscriptions subscriptions;
  private final Timings timings;
  private final List<Event> earlyEvents = new ArrayList<>();
  private Optional<ProgramFiles> files = Optional.empty();

  /** As the thread knows that makes the events. */
  private int filesTold;

  private boolean stepBudgetReached;
  private boolean macroUnread;
  private boolean notUnderstood;

  /**
   * A run.
   *
   * @param cellPm edge of a cell of the surface, where it is not to be the usual one
   * @param watcher takes every event behind the rules
   * @param timings takes how long everything takes
   */
  Run(Selection selection, Setup setup, OptionalLong cellPm, EventSink watcher, Timings timings) {
    this.timings = timings;
    this.subscriptions = new Subscriptions(timings);
    this.watcher = watcher;
    this.rules = selection.rules(setup.get(RuleKeys.SKIP).orElse(List.of()));
    this.collector = new Collector(accepts, hidesInBlock(rules));
    this.stages =
        Stages.before(
            setup,
            needs(rules, watcher),
            cellPm,
            watcher instanceof DepthWatcher,
            toStock::to,
            toJudge::to,
            timings,
            timings.stage("rules, called", this::dispatch));
    if (watcher instanceof StagesWatcher reader) {
      reader.begin(stages);
    }
    if (watcher instanceof FindingsWatcher reader) {
      reader.begin(new Told());
    }
    Map<String, Level> levels = levels(setup);
    if (watcher instanceof ChipWatcher chipWatcher) {
      // What it cannot tell, the rules do: nobody reads this collector.
      Collector unread = new Collector(accepts, Map.of());
      ChipBelowMinimum.tell(
          new RuleContext(ChipBelowMinimum.INFO, levels, setup, stages, unread, this::fileName),
          subscriptions,
          chipWatcher);
    }
    for (Rule rule : rules) {
      subscriptions.speakFor(rule.info().name());
      rule.begin(
          new RuleContext(rule.info(), levels, setup, stages, collector, this::fileName),
          subscriptions);
    }
  }

  private static Set<Need> needs(List<Rule> rules, EventSink watcher) {
    if (watcher != ProgramCheck.NOBODY) {
      return EnumSet.allOf(Need.class);
    }
    Set<Need> needs = EnumSet.noneOf(Need.class);
    rules.forEach(rule -> needs.addAll(rule.info().needs()));
    return needs;
  }

  private static Map<String, Level> levels(Setup setup) {
    Map<String, Level> levels = new HashMap<>();
    setup
        .get(RuleKeys.LEVEL)
        .ifPresent(given -> given.forEach((rule, l) -> levels.put(rule, Level.valueOf(l.name()))));
    return levels;
  }

  private static Map<String, List<String>> hidesInBlock(List<Rule> rules) {
    Map<String, List<String>> hides = new HashMap<>();
    for (Rule rule : rules) {
      List<String> names =
          rule.info().hides().stream()
              .filter(h -> h.scope() == Scope.BLOCK)
              .map(Hides::rule)
              .toList();
      if (!names.isEmpty()) {
        hides.put(rule.info().name(), names);
      }
    }
    return hides;
  }

  /** The name of a file without its folder. */
  private String fileName(int file) {
    return files.map(known -> known.shortName(file)).orElse("");
  }

  /** Takes what the first look at the files notices; it is handed on once the run begins. */
  EventSink beforeStart() {
    return event -> {
      if (files.isPresent()) {
        toStock.acceptDirectly(event);
      } else if (earlyEvents.size() < MOST_EARLY_EVENTS) {
        earlyEvents.add(event);
      } else if (earlyEvents.size() == MOST_EARLY_EVENTS) {
        earlyEvents.add(
            new Event.CapReached(event.at(), "remarks on lines before the run", MOST_EARLY_EVENTS));
      }
    };
  }

  /** These files are known from here on, with their accepts. */
  private record FilesKnown(Place at, List<Integer> files) implements Event {}

  /**
   * Runs the program.
   *
   * @param parted whether events are made, cut and judged on a thread each
   */
  void run(ProgramFiles programFiles, ControlProfile profile, boolean blockDeleteOn, boolean parted)
      throws IOException {
    files = Optional.of(programFiles);
    filesTold = programFiles.drawnOn().size();
    learn(programFiles.drawnOn());
    int line = 0;
    collector.endBlock();
    for (Event event : earlyEvents) {
      if (event.at().line() != line) {
        collector.endBlock();
        line = event.at().line();
      }
      dispatch(event);
    }
    earlyEvents.clear();
    if (parted) {
      toJudge.part("judge");
      if (toStock.isUsed()) {
        toStock.part("stock");
      }
    }
    timings.begin("motion, with reading or waiting for it");
    try {
      new Interpreter(profile, programFiles).run(this::made, blockDeleteOn);
      join();
    } finally {
      toStock.abandon();
      toJudge.abandon();
      timings.end();
    }
    collector.endBlock();
  }

  private void goAroundStock(Event event) {
    toJudge.acceptDirectly(event);
  }

  private void join() throws IOException {
    if (toStock.isUsed()) {
      join(Stages.TO_STOCK, toStock);
    }
    join(Stages.TO_JUDGE, toJudge);
  }

  private void join(String name, Handover handover) throws IOException {
    timings.begin(name);
    try {
      handover.join();
    } finally {
      timings.end();
    }
  }

  /** Takes what the interpreter tells, on its thread. */
  private void made(Event event) {
    if (event instanceof Event.SubprogramEntered) {
      List<Integer> drawnOn = files.orElseThrow().drawnOn();
      if (drawnOn.size() > filesTold) {
        List<Integer> more = List.copyOf(drawnOn.subList(filesTold, drawnOn.size()));
        filesTold += more.size();
        toStock.acceptDirectly(new FilesKnown(event.at(), more));
      }
    }
    stages.first().accept(event);
  }

  private void learn(List<Integer> more) {
    for (int file : more) {
      ProgramIndex index = files.orElseThrow().index(file);
      dispatch(new Event.Indexed(new Place(file, 1, new Span(1, 1)), index));
      for (ProgramIndex.Remark remark : index.remarks()) {
        Accept.read(
                new Place(file, remark.line(), remark.span()), remark.text(), remark.standsAlone())
            .forEach(
                accept -> {
                  accepts.add(accept, remark.blockLine());
                  dispatch(new AcceptSeen(accept));
                });
      }
    }
  }

  private void noteStock(SurfaceLeft surface) {
    surface
        .assumedStock()
        .ifPresent(
            box ->
                collector.assumed(
                    new Assumption(
                        "stock of " + surface.offset(),
                        "X "
                            + Quantities.mm(box.xMinPm())
                            + " to "
                            + Quantities.mm(box.xMaxPm())
                            + ", Y "
                            + Quantities.mm(box.yMinPm())
                            + " to "
                            + Quantities.mm(box.yMaxPm())
                            + ", top "
                            + Quantities.mm(box.topPm())
                            + " or above",
                        "none on the sheet: the box around all cutting moves up to the highest"
                            + " floor; what the first of them take is not known")));
  }

  /** Hands an event to the rules. */
  void dispatch(Event event) {
    if (!(event instanceof Move)) {
      note(event);
    }
    subscriptions.accept(event);
    watcher.accept(event);
  }

  /** What the run itself keeps of an event. */
  private void note(Event event) {
    if (event instanceof Event.BlockStarted) {
      collector.endBlock();
    } else if (event instanceof FilesKnown known) {
      learn(known.files());
    } else if (event instanceof PartLeft part) {
      part.surfaces().forEach(this::noteStock);
    } else if (event instanceof PartNotKnown unknown) {
      tellBlind(unknown);
    } else if (event instanceof Event.StepBudgetReached) {
      stepBudgetReached = true;
    } else if (event instanceof Event.BlockProblem problem) {
      macroUnread |= problem.problem().kind() == Problem.Kind.MACRO;
    } else if (event instanceof Event.CapReached cap) {
      collector.notChecked(
          "", cap.what() + ": the limit of " + cap.cap() + " is reached", Optional.of(cap.at()));
    } else if (event instanceof Event.BecameUnknown unknown) {
      collector.notChecked(
          "", "unknown from here on: " + unknown.what(), Optional.of(unknown.at()));
      notUnderstood |= unknown.cause() == Event.BecameUnknown.Cause.NOT_UNDERSTOOD;
    } else if (event instanceof Event.SubprogramMissing
        || event instanceof Event.SubprogramEndless) {
      notUnderstood = true;
    }
  }

  /** The rules that needed to know could not decide. */
  private void tellBlind(PartNotKnown unknown) {
    for (Rule rule : rules) {
      boolean asks =
          unknown.contact()
              ? rule.info().needsContact()
              : rule.info().needs().contains(Need.SURFACE);
      if (asks) {
        collector.notChecked(rule.info().name(), unknown.reason(), Optional.of(unknown.at()));
      }
    }
  }

  Accepts accepts() {
    return accepts;
  }

  boolean isStepBudgetReached() {
    return stepBudgetReached;
  }

  boolean isMacroUnread() {
    return macroUnread;
  }

  /** Whether a block was not understood, so that what follows is not checked in full. */
  boolean isNotUnderstood() {
    return notUnderstood;
  }

  List<StepBudget> budgets() {
    return collector.budgets();
  }

  List<NotChecked> notChecked() {
    return collector.notChecked();
  }

  Set<Assumption> assumptions() {
    return collector.assumptions();
  }

  /** The findings with their grouping keys, less those that others of the run explain away. */
  Map<Collector.Key, Finding> groups() {
    return explained(new LinkedHashMap<>(collector.findings()));
  }

  /** The groups less those that others of them explain away. */
  private Map<Collector.Key, Finding> explained(Map<Collector.Key, Finding> groups) {
    for (Rule rule : rules) {
      for (Hides hides : rule.info().hides()) {
        if (hides.scope() != Scope.BLOCK) {
          List<Finding> hiders =
              groups.values().stream().filter(f -> f.rule().equals(rule.info().name())).toList();
          groups.values().removeIf(f -> f.rule().equals(hides.rule()) && covers(hides, hiders, f));
        }
      }
    }
    return groups;
  }

  private static boolean covers(Hides hides, List<Finding> hiders, Finding finding) {
    if (hides.cause().isPresent() && !hides.cause().get().equals(finding.first().cause())) {
      return false;
    }
    return hiders.stream()
        .anyMatch(
            hider ->
                hides.scope() == Scope.PROGRAM
                    || hider.first().operation() == finding.first().operation());
  }

  /** The findings in the order of their places, then rules. */
  List<Finding> findings() {
    return FindingOrder.sorted(groups().values());
  }

  /** What is found while the run goes on. */
  private final class Told implements FindingsWatcher.SoFar {
    @Override
    public List<Finding> findings() {
      return FindingOrder.sorted(explained(collector.findingsOfEndedBlocks()).values());
    }

    @Override
    public List<NotChecked> notChecked() {
      return collector.notChecked();
    }

    @Override
    public List<String> files() {
      List<String> names = new ArrayList<>();
      int known = files.map(ProgramFiles::count).orElse(0);
      for (int file = 0; file < known; file++) {
        names.add(files.orElseThrow().name(file));
      }
      return names;
    }
  }
}

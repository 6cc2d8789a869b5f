package hairline.checks.warmth;

import hairline.checks.motion.Event;
import hairline.checks.motion.EventSink;
import hairline.checks.motion.Modal;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.setup.CodeKeys;
import hairline.checks.setup.Key;
import hairline.checks.setup.SpindleKeys;
import hairline.checks.stock.Cut;
import hairline.checks.timing.Answer;
import hairline.checks.timing.Cause;
import hairline.checks.timing.Gap;
import hairline.checks.timing.ProgramTime;
import hairline.checks.timing.TimePoint;
import hairline.checks.timing.TimeTaken;
import hairline.checks.timing.Timeline;
import hairline.parser.Block;
import hairline.parser.Problem;
import hairline.parser.Span;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * Follows warm-up and measuring through a program: a stage behind {@link Timeline} that hands every
 * event on unchanged. What it tells is the state at the start of the event last handed on.
 *
 * <p>A warm-up is a warm-up code, or the spindle at the speed asked for the time asked, in sum,
 * with no stop longer than {@code limits.idle_time}. It expires once the spindle stood longer than
 * {@code valid_for}; M0 and M60 count as longer than any limit, and the spindle stands in a tool
 * change. Warming up again while valid changes nothing. M1 is held to be switched off. A change to
 * the tool that is in the spindle stops the spindle and leaves the tool where it is.
 *
 * <p>A warm-up code counts at the speed the sheet gives it, else at the one commanded; commanded
 * slower than {@code min_speed} it warms nothing. Without any speed it counts, as the machine's own
 * cycle.
 *
 * <p>A ladder of speeds, a run at more than one, counts as well once growth has come to within
 * {@link GrowthFigures#warmWithinUm()} of its end value for the speed then turning, if that speed
 * is {@code min_speed} or more; growth with the typical figures decides.
 *
 * <p>Every answer holds for all that is not known: durations within their bounds, a spindle of
 * unknown state, missing keys. Where the best and the worst case differ, it is unknown, with the
 * reasons.
 */
public final class SpindleWarmth implements EventSink {
  /** Tools whose measuring is kept; that of further ones is forgotten when they are changed. */
  public static final int MOST_TOOLS = 1000;

  private static final int NO_TOOL = -1;
  private static final int UNKNOWN_TOOL = -2;
  private static final int ONE_TOO_MANY = -3;

  private final WarmUpDemand demand;
  private final ProgramTime time;
  private final EventSink next;
  private final Optional<GrowthFollower> growth;
  private final OptionalDouble warmWithinUm;

  private final WarmUpState worst;
  private final WarmUpState best;

  /** The worst case with every deletable block left out. */
  private final WarmUpState withoutDeletable;

  private final Map<String, Doubt> doubts = new LinkedHashMap<>();
  private final Map<Integer, ToolRecord> tools = new HashMap<>();

  private @Nullable Modes modes;
  private SpindleState spindle = SpindleState.STANDING;
  private SpindleState spindleWithoutDeletable = SpindleState.STANDING;

  /** Where the stretch begins that is not yet told to the states: the spindle is the same in it. */
  private TimePoint stretchStart = TimePoint.START;

  /** The event during which time passed last. */
  private Place lastAt = new Place(0, 1, new Span(1, 1));

  /** Where the spindle last stopped; the program's first line where it never turned. */
  private Place stoppedAt = lastAt;

  /** The event in hand, where it takes time of its own and is no move. */
  private @Nullable Event special;

  private boolean blockDeletable;
  private int deletableCallDepth;
  private Optional<Place> deletableAt = Optional.empty();

  private Run run = Run.NONE;
  private boolean inRun;

  /** The first deletable block in which the spindle turned in this run. */
  private Optional<Place> deletableInRun = Optional.empty();

  private Optional<Place> codeInBlock = Optional.empty();
  private Optional<Place> optionalStopAt = Optional.empty();

  private @Nullable WarmUp warmUpBehind;
  private Optional<ToolRecord> inSpindle = Optional.empty();
  private Optional<Place> toolChangedAt = Optional.empty();
  private boolean measuredSinceChange;
  private Optional<Place> speedChangedAt = Optional.empty();
  private TimePoint speedChangedTime = TimePoint.START;
  private boolean capReported;
  private Optional<SpindleTrace> trace = Optional.empty();

  /**
   * A stage before {@code next}.
   *
   * @param demand what the sheet asks of a warm-up
   * @param time the time that the stage before counts
   * @param growth what the sheet says of growth
   * @param next takes every event
   */
  public SpindleWarmth(
      WarmUpDemand demand, ProgramTime time, Optional<GrowthFigures> growth, EventSink next) {
    this.demand = demand;
    this.time = time;
    this.next = next;
    this.growth = growth.map(figures -> new GrowthFollower(figures, lastAt));
    this.warmWithinUm = growth.map(GrowthFigures::warmWithinUm).orElse(OptionalDouble.empty());
    this.worst = worst(demand);
    this.withoutDeletable = worst(demand);
    this.best =
        new WarmUpState(
            demand.timeSeconds().orElse(0),
            demand.validForSeconds().orElse(Double.POSITIVE_INFINITY),
            demand.idleSeconds(),
            demand.before());
  }

  private static WarmUpState worst(WarmUpDemand demand) {
    return new WarmUpState(
        demand.timeSeconds().orElse(Double.POSITIVE_INFINITY),
        demand.validForSeconds().orElse(0),
        demand.idleSeconds(),
        demand.before());
  }

  /** Tells what the spindle does to this one as well; from the program's beginning on. */
  void traceTo(SpindleTrace to) {
    trace = Optional.of(to);
  }

  // What rules ask.

  /** Whether the spindle is warmed up. */
  public WarmUp warmUp() {
    settle();
    if (worst.valid()) {
      return new WarmUp(
          Answer.YES,
          worst.since(),
          Optional.empty(),
          List.of(),
          withoutDeletable.valid() ? Optional.empty() : deletableAt.or(worst::since),
          optionalStopAt);
    }
    Answer answer = best.valid() ? Answer.UNKNOWN : Answer.NO;
    return new WarmUp(
        answer,
        Optional.empty(),
        best.valid() ? worst.expiredAt() : best.expiredAt(),
        answer == Answer.UNKNOWN ? reasons() : List.of(),
        Optional.empty(),
        Optional.empty());
  }

  /** How far the spindle has grown; empty where the sheet does not tell. */
  public Optional<GrowthPoint> growth() {
    settle();
    return growth.map(follower -> follower.point(spindle));
  }

  /** How near growth must come to its end value for a ladder of speeds to be a warm-up. */
  public OptionalDouble warmWithinUm() {
    return warmWithinUm;
  }

  /** How far it has grown at the end of the event in hand. */
  public Optional<GrowthPoint> growthAtEnd() {
    return growth().map(point -> point.later(time.ofThisEvent()));
  }

  /** What the spindle has run in sum, up to now or up to a stop that broke it off. */
  public Run run() {
    settle();
    return run;
  }

  /** The number of {@link #run()}, at less cost; it is up to date while the spindle turns. */
  public int runNumber() {
    return run.number();
  }

  /** The last measuring of the tool in the spindle. */
  public Optional<Measuring> measuring() {
    return inSpindle.map(ToolRecord::measuring);
  }

  /** Whether the tool was measured since it was put in the spindle. */
  public boolean measuredSinceChange() {
    return measuredSinceChange;
  }

  /** Where the tool was put in the spindle; empty for one that is there from the start. */
  public Optional<Place> toolChangedAt() {
    return toolChangedAt;
  }

  /** The time since the tool in the spindle was measured, from the end of measuring. */
  public Optional<TimeTaken> timeSinceMeasuring() {
    return measuring().map(measuring -> time.since(measuring.end()));
  }

  /** The longest single stop of the spindle since its tool was measured. */
  public Optional<Stop> longestStopSinceMeasuring() {
    settle();
    return inSpindle.map(ToolRecord::longestStop);
  }

  /** Where the spindle last started or changed its speed or direction. */
  public Optional<Place> speedChangedAt() {
    return speedChangedAt;
  }

  /** The time since the spindle was told so; since the program's start where it never was. */
  public TimeTaken timeSinceSpeedChange() {
    return time.since(speedChangedTime);
  }

  private List<Doubt> reasons() {
    List<Doubt> reasons = new ArrayList<>();
    if (worst.expiredAt().isPresent() && demand.validForSeconds().isEmpty()) {
      reasons.add(missing("how long a warm-up stays valid", SpindleKeys.WARM_UP_VALID_FOR_S));
    } else {
      if (demand.timeSeconds().isEmpty()) {
        reasons.add(missing("how long a warm-up lasts", SpindleKeys.WARM_UP_TIME_S));
      }
      if (demand.minRpm().isEmpty()) {
        reasons.add(missing("the slowest speed that warms up", SpindleKeys.WARM_UP_MIN_SPEED_RPM));
      }
    }
    reasons.addAll(doubts.values());
    return reasons;
  }

  private static Doubt missing(String what, Key<?> key) {
    return new Doubt(what + " is not given", Optional.of(key.path()), Optional.empty());
  }

  // What events do.

  @Override
  public void accept(Event event) {
    if (special != null) {
      endSpecial(special);
      special = null;
    }
    Place at = begin(event);
    next.accept(event);
    lastAt = at;
  }

  /** Where time passes from here on. */
  private Place begin(Event event) {
    if (event instanceof Move move) {
      follow(move.modes(), move.at());
      return move.at();
    }
    if (event instanceof Cut cut) {
      follow(cut.move().modes(), cut.at());
      return cut.at();
    }
    if (event instanceof Event.BlockStarted block) {
      beginBlock(block);
      return lastAt;
    }
    beginRare(event);
    return event.at();
  }

  private void beginRare(Event event) {
    if (event instanceof Event.ModesChanged change) {
      follow(change.after(), change.at());
      if (!SpindleState.of(change.before()).equals(SpindleState.of(change.after()))) {
        settleWithoutDeletable();
      }
    } else if (event instanceof Event.SpindleChanged change) {
      beginSpeed(change);
    } else if (event instanceof Event.ToolChanged change) {
      beginTool(change);
    } else if (event instanceof Event.MachineCode code) {
      beginCode(code);
    } else if (event instanceof Event.Stopped stop) {
      settle();
      if (stop.code().equals("M1")) {
        optionalStop(stop.at());
      } else {
        noteStop(stop.at());
        special = stop;
      }
    } else if (event instanceof Event.SubprogramEntered call) {
      if (blockDeletable && deletableCallDepth == 0) {
        deletableCallDepth = call.depth();
      }
    } else if (event instanceof Event.SubprogramLeft call) {
      if (deletableCallDepth == call.depth()) {
        deletableCallDepth = 0;
      }
    } else if (event instanceof Event.CodeUnknown || event instanceof Event.SubprogramMissing) {
      mayWarmUp(event.at());
    } else if (event instanceof Event.Dwelled) {
      settle();
      special = event;
    }
  }

  private void beginBlock(Event.BlockStarted block) {
    boolean deletable = block.block().deletable() || deletableCallDepth > 0;
    if (deletable != blockDeletable) {
      settle();
      blockDeletable = deletable;
    }
    follow(block.modes(), block.at());
    codeInBlock = Optional.empty();
    if (!block.block().problems().isEmpty() && isMacro(block.block())) {
      mayWarmUp(block.at());
    }
  }

  private void beginSpeed(Event.SpindleChanged change) {
    settle();
    if (Timeline.reachesNewSpeed(change.before(), change.after())) {
      speedChangedAt = Optional.of(change.at());
      speedChangedTime = time.now();
    }
    follow(change.after(), change.at());
    settleWithoutDeletable();
    if (blockDeletable && spindle.turns()) {
      noteDeletable(change.at());
    }
  }

  private void beginTool(Event.ToolChanged change) {
    settle();
    noteStop(change.at());
    spindle = SpindleState.STANDING;
    settleWithoutDeletable();
    if (!isSameTool(change)) {
      toolChangedAt = Optional.of(change.at());
      measuredSinceChange = false;
      inSpindle =
          change.after().isUnknown()
              ? Optional.empty()
              : Optional.ofNullable(tools.get(number(change.after())));
    }
    special = change;
  }

  /** Whether the tool called is the one in the spindle, so that it stays there. */
  private static boolean isSameTool(Event.ToolChanged change) {
    return change.after().value().isPresent()
        && change.after().value().equals(change.before().value());
  }

  private void beginCode(Event.MachineCode code) {
    switch (code.meaning()) {
      case WARM_UP -> {
        settle();
        codeInBlock = Optional.of(code.at());
        special = code;
      }
      case MEASURE_TOOL -> {
        warmUpBehind = warmUp();
        codeInBlock = Optional.of(code.at());
        special = code;
      }
      case COOLANT_ON, COOLANT_OFF, IGNORE -> {}
    }
  }

  private static boolean isMacro(Block block) {
    return block.problems().stream().anyMatch(p -> p.kind() == Problem.Kind.MACRO);
  }

  /** A code, call or statement that may be the warm-up, unless the sheet names the code for it. */
  private void mayWarmUp(Place at) {
    if (!demand.codesNamed()) {
      settle();
      String reason = "a code or call without known meaning may be the warm-up";
      doubt(reason, CodeKeys.WARM_UP, at);
      growth.ifPresent(
          follower ->
              follower.mayHaveTurned(
                  new Doubt(reason, Optional.of(CodeKeys.WARM_UP.path()), Optional.of(at))));
      best.warm(at);
    }
  }

  private void optionalStop(Place at) {
    if (inRun && spindle.turns()) {
      run = run.stoppedByOption(at);
    }
    if (codeInBlock.isPresent()) {
      if (worst.since().equals(codeInBlock)) {
        optionalStopAt = Optional.of(at);
      }
      if (inSpindle.isPresent() && inSpindle.get().measuring().at().equals(codeInBlock.get())) {
        inSpindle.get().hangOn(at);
      }
    }
  }

  /** The time of such an event is over. */
  private void endSpecial(Event event) {
    if (event instanceof Event.ToolChanged change) {
      settle();
      modes = change.modes();
      spindle = SpindleState.of(change.modes());
      settleWithoutDeletable();
      beginRun(change.at());
    } else if (event instanceof Event.Stopped stop) {
      SpindleState spindleBefore = spindle;
      SpindleState withoutBefore = spindleWithoutDeletable;
      spindle = SpindleState.STANDING;
      spindleWithoutDeletable = SpindleState.STANDING;
      settle();
      spindle = spindleBefore;
      spindleWithoutDeletable = withoutBefore;
      beginRun(stop.at());
    } else if (event instanceof Event.MachineCode code) {
      if (code.meaning() == Event.MachineCode.Meaning.WARM_UP) {
        endWarmUpCode(code);
      } else {
        settle(true);
        endMeasuring(code);
      }
    } else {
      settle();
    }
  }

  private void endWarmUpCode(Event.MachineCode code) {
    Place at = code.at();
    OptionalDouble rpm = demand.codeRpm();
    Optional<Double> commanded = code.modes().speedRpm().value();
    if (rpm.isEmpty() && commanded.isPresent() && !code.modes().surfaceSpeed()) {
      rpm = OptionalDouble.of(commanded.get());
    }
    boolean slow = rpm.isPresent() && rpm.getAsDouble() < demand.minRpm().orElse(0);
    TimeTaken taken = time.since(stretchStart);
    double fromSeconds = stretchStart.atLeastSeconds();
    stretchStart = time.now();
    continueRun(at);
    pass(new SpindleState(SpindleState.Kind.TURNING, rpm), fromSeconds, taken, at);
    turned(taken, rpm, !slow, false, at);
    if (slow) {
      worst.turn();
      best.turn();
      if (!blockDeletable) {
        withoutDeletable.turn();
      } else if (worst.valid()) {
        // It may be what ends a stop, so that the warm-up before it lasts.
        noteDeletable(at);
      }
    } else {
      if (!worst.valid()) {
        optionalStopAt = Optional.empty();
      }
      worst.warm(at);
      best.warm(at);
      if (blockDeletable) {
        noteDeletable(at);
      } else {
        withoutDeletable.warm(at);
      }
    }
    forgetDoubts();
  }

  private void endMeasuring(Event.MachineCode code) {
    if (warmUpBehind == null) {
      return;
    }
    ToolRecord record =
        new ToolRecord(
            new Measuring(
                code.at(),
                time.now(),
                spindle.speedRpm(),
                warmUpBehind,
                growth.map(follower -> follower.point(spindle)),
                blockDeletable,
                Optional.empty()),
            !spindle.turns());
    warmUpBehind = null;
    measuredSinceChange = true;
    inSpindle = Optional.of(record);
    Modal<Integer> tool = code.modes().tool();
    int number = tool.isUnknown() ? UNKNOWN_TOOL : number(tool);
    if (!tools.containsKey(number) && tools.size() >= MOST_TOOLS) {
      if (!capReported) {
        capReported = true;
        next.accept(new Event.CapReached(code.at(), "tools whose measuring is kept", MOST_TOOLS));
      }
      number = ONE_TOO_MANY;
    }
    tools.put(number, record);
  }

  private static int number(Modal<Integer> tool) {
    return tool.value().orElse(NO_TOOL);
  }

  // The spindle from stretch to stretch.

  /** Takes the spindle from the modes: one object as long as nothing changes. */
  @SuppressWarnings("ReferenceEquality")
  private void follow(Modes now, Place at) {
    if (now == modes) {
      return;
    }
    modes = now;
    SpindleState state = SpindleState.of(now);
    if (!state.equals(spindle)) {
      settle();
      noteStop(at);
      spindle = state;
      beginRun(at);
    }
  }

  /** The spindle is now as a block leaves it that runs whatever the switch says. */
  private void settleWithoutDeletable() {
    if (!blockDeletable) {
      spindleWithoutDeletable = spindle;
    }
  }

  private void settle() {
    settle(false);
  }

  /** Tells the stretch that ends now to all that follow the spindle. */
  private void settle(boolean measuring) {
    TimeTaken taken = time.since(stretchStart);
    if (taken.atMostSeconds() == 0) {
      return;
    }
    double fromSeconds = stretchStart.atLeastSeconds();
    stretchStart = time.now();
    for (Gap gap : taken.gaps()) {
      String reason = gap.cause().reason();
      doubts.putIfAbsent(reason, new Doubt(reason, gap.cause().key(), Optional.of(gap.at())));
    }
    pass(spindle, fromSeconds, taken, lastAt);
    worse(worst, spindle, taken);
    if (!blockDeletable) {
      worse(withoutDeletable, spindleWithoutDeletable, taken);
    }
    double minRpm = demand.minRpm().orElse(0);
    if (spindle.stands()) {
      best.stand(
          taken.waitsForOperator() ? Double.POSITIVE_INFINITY : taken.atLeastSeconds(), lastAt);
    } else if (spindle.mayReach(minRpm)) {
      best.run(taken.atMostSeconds(), lastAt);
    } else {
      best.turn();
    }
    if (spindle.turns()) {
      turned(taken, spindle.rpm(), spindle.reaches(minRpm), measuring, lastAt);
      ladder(spindle.rpm(), lastAt);
    } else {
      stood(taken);
    }
    forgetDoubts();
  }

  /** The spindle grows in a stretch, which is traced where that is asked for. */
  private void pass(SpindleState state, double fromSeconds, TimeTaken taken, Place at) {
    if (trace.isEmpty()) {
      growth.ifPresent(follower -> follower.pass(state, taken, at));
      return;
    }
    Optional<GrowthPoint> before = growth.map(follower -> follower.point(state));
    growth.ifPresent(follower -> follower.pass(state, taken, at));
    trace
        .get()
        .pass(state, fromSeconds, taken, before, growth.map(follower -> follower.point(state)));
  }

  /** Whether what the spindle has run in sum is a warm-up because it has grown enough. */
  private void ladder(OptionalDouble rpm, Place at) {
    if (worst.valid()
        || warmWithinUm.isEmpty()
        || growth.isEmpty()
        || !run.isLadder()
        || rpm.isEmpty()
        || !(rpm.getAsDouble() >= demand.minRpm().orElse(Double.POSITIVE_INFINITY))) {
      return;
    }
    GrowthPoint now = growth.get().point(spindle);
    switch (now.within(warmWithinUm.getAsDouble(), rpm.getAsDouble())) {
      case NO -> {}
      case UNKNOWN -> {
        now.doubts().forEach(doubt -> doubts.putIfAbsent(doubt.reason(), doubt));
        best.warm(at);
      }
      case YES -> {
        optionalStopAt = Optional.empty();
        worst.warm(at);
        best.warm(at);
        if (deletableInRun.isPresent()) {
          noteDeletable(deletableInRun.get());
        } else {
          withoutDeletable.warm(at);
        }
      }
    }
  }

  private void worse(WarmUpState state, SpindleState turning, TimeTaken taken) {
    if (turning.reaches(demand.minRpm().orElse(Double.POSITIVE_INFINITY))) {
      state.run(taken.atLeastSeconds(), lastAt);
    } else if (turning.turns()) {
      state.turn();
    } else {
      state.stand(taken.atMostSeconds(), lastAt);
    }
  }

  private void turned(
      TimeTaken taken, OptionalDouble rpm, boolean fastEnough, boolean measuring, Place at) {
    run = run.turned(taken, rpm, fastEnough, measuring);
    if (rpm.isEmpty()) {
      doubt("the speed of the spindle is not known", at);
    }
    if (blockDeletable && fastEnough) {
      noteDeletable(at);
    }
    if (blockDeletable && deletableInRun.isEmpty()) {
      deletableInRun = Optional.of(at);
    }
    for (ToolRecord tool : tools.values()) {
      tool.turned();
    }
  }

  private void stood(TimeTaken taken) {
    TimeTaken stop = taken;
    if (!spindle.stands()) {
      Gap gap = new Gap(lastAt, Cause.SPINDLE);
      doubt(gap.cause().reason(), lastAt);
      stop =
          new TimeTaken(0, taken.atMostSeconds(), taken.gaps())
              .plus(new TimeTaken(0, 0, List.of(gap)));
    }
    for (ToolRecord tool : tools.values()) {
      tool.stood(stoppedAt, stop);
    }
    inRun &= !best.brokenOff();
  }

  /**
   * What the spindle does ends here; if it turned and goes on to stand, this is where it stopped.
   */
  private void noteStop(Place at) {
    if (spindle.turns()) {
      stoppedAt = at;
    }
  }

  private void beginRun(Place at) {
    if (spindle.turns()) {
      continueRun(at);
    }
  }

  private void continueRun(Place at) {
    if (!inRun) {
      inRun = true;
      run = run.next(at);
      if (!worst.valid() || withoutDeletable.valid()) {
        deletableAt = Optional.empty();
      }
      deletableInRun = Optional.empty();
    }
  }

  private void noteDeletable(Place at) {
    if (deletableAt.isEmpty()) {
      deletableAt = Optional.of(at);
    }
  }

  private void doubt(String reason, Place at) {
    doubts.putIfAbsent(reason, new Doubt(reason, Optional.empty(), Optional.of(at)));
  }

  private void doubt(String reason, Key<?> key, Place at) {
    doubts.putIfAbsent(reason, new Doubt(reason, Optional.of(key.path()), Optional.of(at)));
  }

  /** Once the best and the worst case are the same, what made them differ counts no more. */
  private void forgetDoubts() {
    if (worst.agreesWith(best)) {
      doubts.clear();
    }
  }
}

package hairline.checks.timing;

import hairline.checks.motion.Axis;
import hairline.checks.motion.Event;
import hairline.checks.motion.EventSink;
import hairline.checks.motion.Extent;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.motion.ToolUses;
import hairline.checks.stock.Cut;
import hairline.checks.timing.ProgramSummary.Doubt;
import hairline.checks.timing.ProgramSummary.Ending;
import hairline.checks.timing.ProgramSummary.Reach;
import hairline.parser.Problem;
import hairline.parser.Span;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Sums up what a program does. Stands behind the stage that counts time; hands nothing on. Follows
 * {@value #OFFSETS_CAP} work offsets, {@value #CALLS_CAP} subprograms, {@value
 * OperationTimes#OPERATIONS_CAP} operations and {@value #DOUBTS_CAP} doubts.
 */
public final class Summarizer implements EventSink {
  /** How many work offsets are told apart. */
  static final int OFFSETS_CAP = 400;

  /** How many subprograms are told apart. */
  static final int CALLS_CAP = 1_000;

  /** How many doubts are told apart. */
  static final int DOUBTS_CAP = 1_000;

  private static final Axis[] AXES = Axis.values();

  private static final class Offset {
    final Map<Axis, Extent> rapid = new EnumMap<>(Axis.class);
    final Map<Axis, Extent> feed = new EnumMap<>(Axis.class);
  }

  private final ProgramTime time;
  private final PlannedFeed feed;
  private final OperationTimes operations = new OperationTimes();
  private final ToolUses tools = new ToolUses();
  private final Map<String, Offset> offsets = new LinkedHashMap<>();
  private final Map<String, Long> calls = new LinkedHashMap<>();
  private final Map<String, Doubt> doubts = new LinkedHashMap<>();
  private final Map<Move.Kind, Long> moves = new EnumMap<>(Move.Kind.class);
  private final Set<String> capsReached = new LinkedHashSet<>();
  private @Nullable Modes modes;
  private @Nullable Offset offset;
  private long blocks;
  private long inCycles;
  private long dwells;
  private double rapidMm;
  private double feedMm;
  private double feedSeconds;
  private double rapidSeconds;
  private double dwellSeconds;
  private Optional<Ending> ending = Optional.empty();

  /**
   * A summary.
   *
   * @param time holds the time of the events
   * @param feed holds the planned feed of the moves
   */
  public Summarizer(ProgramTime time, PlannedFeed feed) {
    this.time = time;
    this.feed = feed;
  }

  @Override
  public void accept(Event event) {
    // A cut stands in the place of its move.
    take(event instanceof Cut cut ? cut.move() : event);
  }

  private void take(Event event) {
    tools.accept(event);
    operations.accept(event, time.ofThisEvent().atLeastSeconds(), feed.ofThisMove());
    if (event instanceof Move move) {
      move(move);
    } else if (event instanceof Event.BlockStarted) {
      blocks++;
    } else if (event instanceof Event.Dwelled) {
      dwells++;
      dwellSeconds += time.ofThisEvent().atLeastSeconds();
    } else if (event instanceof Event.SubprogramEntered entered) {
      call(entered);
    } else if (event instanceof Event.Ended ended) {
      ending = Optional.of(new Ending(ended.at(), ended.code(), ended.modes()));
    } else {
      doubtOf(event).ifPresent(what -> doubt(what, event.at()));
    }
  }

  private void move(Move move) {
    moves.merge(move.kind(), 1L, Long::sum);
    if (move.source() == Move.Source.CYCLE) {
      inCycles++;
    }
    double seconds = time.ofThisEvent().atLeastSeconds();
    if (move.isFeed()) {
      feedMm += move.lengthMm();
      feedSeconds += seconds;
    } else {
      rapidMm += move.lengthMm();
      rapidSeconds += seconds;
    }
    reach(move);
  }

  private void reach(Move move) {
    // Mostly the same object, until a block changes something.
    if (!move.modes().equals(modes)) {
      modes = move.modes();
      offset = offset(move.modes().workOffset().value().orElse(""));
    }
    if (offset != null) {
      Map<Axis, Extent> extents = move.isFeed() ? offset.feed : offset.rapid;
      for (Axis axis : AXES) {
        Extent.of(move, axis).ifPresent(extent -> extents.merge(axis, extent, Extent::cover));
      }
    }
  }

  private @Nullable Offset offset(String name) {
    if (!offsets.containsKey(name) && offsets.size() >= OFFSETS_CAP) {
      capsReached.add("extents under work offsets beyond the first " + OFFSETS_CAP);
      return null;
    }
    return offsets.computeIfAbsent(name, key -> new Offset());
  }

  private void call(Event.SubprogramEntered entered) {
    if (calls.containsKey(entered.name()) || calls.size() < CALLS_CAP) {
      calls.merge(entered.name(), 1L, Long::sum);
    } else {
      capsReached.add("calls of subprograms beyond the first " + CALLS_CAP);
    }
  }

  private static Optional<String> doubtOf(Event event) {
    if (event instanceof Event.BecameUnknown unknown) {
      return Optional.of(unknown.what() + " unknown from here on");
    }
    if (event instanceof Event.CodeUnknown unknown) {
      return Optional.of(unknown.code() + " has no known meaning");
    }
    if (event instanceof Event.SubprogramMissing missing) {
      return Optional.of("subprogram " + missing.name() + " not found and left out");
    }
    if (event instanceof Event.SubprogramEndless endless) {
      return Optional.of(
          "call " + String.join(" > ", endless.chain()) + " never ends and is left out");
    }
    if (event instanceof Event.StepBudgetReached reached) {
      return Optional.of(
          (reached.repeats().isPresent() ? reached.repeats().getAsLong() + " repeats: " : "")
              + "the budget of "
              + reached.budget()
              + " steps is used up");
    }
    if (event instanceof Event.StartAssumed assumed) {
      return Optional.of(assumed.item() + " never stated, " + assumed.assumed() + " assumed");
    }
    if (event instanceof Event.OffsetAssumed) {
      return Optional.of("work offset never chosen");
    }
    if (event instanceof Event.ArcImpossible arc) {
      return Optional.of("an arc left out: " + arc.reason());
    }
    if (event instanceof Event.BlockProblem problem) {
      return doubtOf(problem.problem());
    }
    if (event instanceof Event.CapReached cap) {
      return Optional.of(cap.what() + ": the limit of " + cap.cap() + " is reached");
    }
    return Optional.empty();
  }

  private static Optional<String> doubtOf(Problem problem) {
    return switch (problem.kind()) {
      case SYNTAX -> Optional.of("a block that breaks the grammar left out");
      case MACRO -> Optional.of("a macro statement left out");
      case SPACE_INSIDE_NUMBER -> Optional.empty();
    };
  }

  private void doubt(String what, Place at) {
    Doubt before = doubts.get(what);
    if (before != null) {
      doubts.put(what, new Doubt(what, before.first(), before.count() + 1));
    } else if (doubts.size() < DOUBTS_CAP) {
      doubts.put(what, new Doubt(what, at, 1));
    } else {
      capsReached.add("doubts beyond the first " + DOUBTS_CAP);
    }
  }

  /** What the events so far come to. */
  public ProgramSummary summary() {
    List<Reach> extents = new ArrayList<>();
    offsets.forEach((name, o) -> extents.add(new Reach(name, byAxis(o.rapid), byAxis(o.feed))));
    if (tools.isCapReached()) {
      capsReached.add("tools or speeds beyond the first");
    }
    if (operations.isCapReached()) {
      capsReached.add("operations beyond the first " + OperationTimes.OPERATIONS_CAP);
    }
    List<Doubt> all = new ArrayList<>(doubts.values());
    Place start = new Place(0, 1, new Span(1, 1));
    capsReached.forEach(what -> all.add(new Doubt(what + " left out of the summary", start, 1)));
    return new ProgramSummary(
        blocks,
        count(Move.Kind.RAPID),
        count(Move.Kind.LINE),
        count(Move.Kind.ARC_CW),
        count(Move.Kind.ARC_CCW),
        inCycles,
        dwells,
        rapidMm,
        feedMm,
        extents,
        time.since(TimePoint.START),
        feedSeconds,
        rapidSeconds,
        dwellSeconds,
        operations.ofProgram(),
        operations.list(),
        tools.list(),
        Collections.unmodifiableMap(new LinkedHashMap<>(calls)),
        all,
        ending);
  }

  private long count(Move.Kind kind) {
    return moves.getOrDefault(kind, 0L);
  }

  private static Map<Axis, Extent> byAxis(Map<Axis, Extent> extents) {
    return Collections.unmodifiableMap(new EnumMap<>(extents));
  }
}

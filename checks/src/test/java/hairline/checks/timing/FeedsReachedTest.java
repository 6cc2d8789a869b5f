package hairline.checks.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.motion.Arc;
import hairline.checks.motion.Event;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.motion.Position;
import hairline.checks.setup.AxisValues;
import hairline.parser.Span;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;

/** What holds a move below the feed programmed, by worked values of exact mechanics. */
class FeedsReachedTest {
  private static final Modes MODES = new Programs(event -> {}).modes();

  /** a 2000 mm/s², 1 ms a block, rapid 15 m/min, 2 µm of path tolerance. */
  private static final MotionLimits LIMITS =
      new MotionLimits(
          Optional.of(AxisValues.alongPath(15_000)),
          Optional.of(AxisValues.alongPath(2000)),
          Optional.empty(),
          OptionalDouble.of(0.001),
          OptionalDouble.of(0.002),
          OptionalInt.of(200));

  private final List<FeedMove> moves = new ArrayList<>();

  private FeedsShown run(MotionLimits limits, Consumer<FeedPlanner> program) {
    PlannedFeed feed = PlannedFeed.withLimits();
    ProgramTime time = new ProgramTime();
    FeedsReached reached = new FeedsReached(limits, time, feed, moves::add);
    TimeTable table =
        new TimeTable(
            Optional.of(AxisValues.alongPath(15_000)),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            true);
    program.accept(new FeedPlanner(limits, true, feed, new Timeline(table, feed, time, reached)));
    return reached.shown();
  }

  private FeedsShown program(Consumer<Programs> of) {
    return run(
        LIMITS,
        planner -> {
          Programs program = new Programs(planner);
          of.accept(program);
          program.end();
        });
  }

  private FeedsShown moves(Move... all) {
    return run(
        LIMITS,
        planner -> {
          for (Move move : all) {
            planner.accept(move);
          }
          planner.accept(new Event.Ended(all[0].at(), Optional.of("M30"), MODES));
        });
  }

  private static long pm(double mm) {
    return Math.round(mm * 1e9);
  }

  private static Move move(
      double x0, double x1, double feed, Optional<Arc> arc, boolean exactStop) {
    Position from = new Position(pm(x0), 0, 0, 0, 0, 0, 0);
    Position to = new Position(pm(x1), 0, 0, 0, 0, 0, 0);
    return new Move(
        new Place(0, 1, new Span(1, 2)),
        arc.isPresent() ? Move.Kind.ARC_CCW : Move.Kind.LINE,
        Move.Source.BLOCK,
        MODES,
        from,
        to,
        from,
        to,
        arc,
        arc.map(a -> a.startRadiusMm() * Math.abs(a.sweepRad())).orElse(Math.abs(x1 - x0)),
        OptionalDouble.of(feed),
        exactStop);
  }

  private static double seconds(double mm, double mmPerMin) {
    return mm / mmPerMin * 60;
  }

  private static double sum(FeedsShown shown) {
    return shown.lostSeconds().values().stream().mapToDouble(Double::doubleValue).sum();
  }

  /** v ≤ L/T: blocks of 5 µm at 1 ms a block hold 300 mm/min (exact). */
  @Test
  void shortBlocksAreHeldByBlockTime() {
    FeedsShown shown =
        program(
            p -> {
              p.g0(0, 0, 0);
              for (int k = 1; k <= 400; k++) {
                p.g1(0.005 * k, 0, 0, 600);
              }
            });
    FeedMove middle = moves.get(200);
    assertThat(middle.held()).contains(FeedHold.BLOCK_TIME);
    assertThat(middle.lostSeconds())
        .isCloseTo(seconds(0.005, 300) - seconds(0.005, 600), within(1e-12));
    assertThat(shown.lostSeconds().get(FeedHold.BLOCK_TIME))
        .isCloseTo(seconds(2, 300) - seconds(2, 600), within(1e-9));
    assertThat(shown.operations().get(0).slowest())
        .anySatisfy(slow -> assertThat(slow.count()).isGreaterThan(390));
  }

  /** 600 mm/min is held but for v²/2a = 25 µm at either end, which costs 2.5 ms each (exact). */
  @Test
  void aLineBetweenStopsIsHeldByThem() {
    FeedsShown shown = program(p -> p.g0(0, 0, 0).dwell(0).g1(1, 0, 0, 600));
    FeedMove line = moves.get(1);
    assertThat(line.held()).contains(FeedHold.STOP);
    assertThat(line.lostSeconds()).isCloseTo(0.005, within(1e-9));
    assertThat(shown.lostSeconds()).containsOnlyKeys(FeedHold.STOP);
    assertThat(shown.operations().get(0).moves()).isEqualTo(1);
    assertThat(shown.operations().get(0).below()).isEqualTo(1);
  }

  /** From rest, and behind a line that reached the feed, none is lost: only the first is below. */
  @Test
  void aCornerHoldsTheMovesAtBothSides() {
    program(p -> p.g0(0, 0, 0).g1(1, 0, 0, 600).g1(2, 0, 0, 600).g1(2, 1, 0, 600).g1(3, 1, 0, 600));
    List<Optional<FeedHold>> held = moves.subList(1, 5).stream().map(FeedMove::held).toList();
    assertThat(held.get(0)).contains(FeedHold.STOP);
    assertThat(held.get(1)).contains(FeedHold.CORNER);
    assertThat(held.get(2)).contains(FeedHold.CORNER);
    // v² = a d s/(1 − s): 186.45 mm/min (from memory); (v − v0)²/(2 a v) is lost at each end.
    double lost = StrictMath.pow(10 - 186.45 / 60, 2) / (2 * 2000 * 10);
    assertThat(moves.get(2).lostSeconds()).isCloseTo(lost, within(1e-6));
    assertThat(moves.get(3).lostSeconds()).isCloseTo(2 * lost, within(2e-6));
    // One end at rest, one at the corner: rest is slower.
    assertThat(held.get(3)).contains(FeedHold.STOP);
  }

  /** v ≤ √(a r); a 2000 mm/s², r 0.1 mm → 848.53 mm/min (exact). */
  @Test
  void anArcIsHeldByItsRadius() {
    Arc turns = new Arc(0, 0, 0.1, 0.1, 20 * Math.PI, false);
    FeedsShown shown = moves(move(0.1, 0.1, 6000, Optional.of(turns), false));
    double length = 2 * Math.PI;
    assertThat(moves.get(0).held()).contains(FeedHold.ARC);
    assertThat(shown.lostSeconds().get(FeedHold.ARC))
        .isCloseTo(seconds(length, 848.53) - seconds(length, 6000), within(1e-5));
    assertThat(shown.lostSeconds().get(FeedHold.STOP)).isCloseTo(848.53 / 60 / 2000, within(1e-7));
  }

  @Test
  void anExactStopIsNamed() {
    FeedsShown shown =
        moves(
            move(0, 5, 600, Optional.empty(), true),
            move(5, 10, 600, Optional.empty(), true),
            move(10, 15, 600, Optional.empty(), false));
    assertThat(moves.get(1).held()).contains(FeedHold.EXACT_STOP);
    // Two stops, each with a way down and a way up at 2.5 ms (exact).
    assertThat(shown.lostSeconds().get(FeedHold.EXACT_STOP)).isCloseTo(0.01, within(1e-9));
    assertThat(shown.lostSeconds().get(FeedHold.STOP)).isCloseTo(0.005, within(1e-9));
  }

  @Test
  void noAxisIsFasterThanAtRapid() {
    FeedsShown shown = moves(move(0, 500, 30_000, Optional.empty(), false));
    assertThat(moves.get(0).held()).contains(FeedHold.AXES);
    assertThat(shown.lostSeconds().get(FeedHold.AXES)).isCloseTo(1, within(1e-9));
  }

  /** Behind a start from rest in short blocks it is the way that is missing. */
  @Test
  void aShortWayBehindASlowPlaceIsHeldByAcceleration() {
    FeedsShown shown =
        program(
            p -> {
              p.g0(0, 0, 0).dwell(0);
              for (int k = 1; k <= 60; k++) {
                p.g1(0.02 * k, 0, 0, 1200);
              }
            });
    // The way goes straight on: there is no corner to hold it.
    assertThat(shown.lostSeconds())
        .containsOnlyKeys(FeedHold.STOP, FeedHold.ACCELERATION)
        .allSatisfy((hold, seconds) -> assertThat(seconds).isGreaterThan(1e-4));
    assertThat(moves.get(1).held()).contains(FeedHold.STOP);
    assertThat(moves.get(2).held()).contains(FeedHold.ACCELERATION);
    assertThat(moves.get(30).held()).isEmpty();
    assertThat(moves.get(30).lostSeconds()).isZero();
  }

  /**
   * 1000 mm/min, held at 300 by block time, between rest and straight on: the way up from rest to
   * 300 costs v/2a = 1.25 ms (exact), and none of it is lost at the other end.
   */
  @Test
  void onlyTheWayUpIsLostToTheEndItLeadsFrom() {
    FeedsShown shown =
        program(
            p -> {
              p.g0(0, 0, 0).dwell(0).g1(0.0125, 0, 0, 2000);
              for (int k = 2; k <= 10; k++) {
                p.g1(0.0125 * k, 0, 0, 2000);
              }
            });
    assertThat(moves.get(1).planned().orElseThrow().exitMmPerMin()).isLessThan(750);
    assertThat(moves.get(5).held()).contains(FeedHold.BLOCK_TIME);
    // From 424 to 750 in the second block, whose first end alone is slow.
    FeedMove second = moves.get(2);
    double steady = seconds(0.0125, 750) - seconds(0.0125, 2000);
    assertThat(second.lostSeconds()).isGreaterThan(steady);
    assertThat(shown.lostSeconds())
        .containsOnlyKeys(FeedHold.BLOCK_TIME, FeedHold.STOP, FeedHold.ACCELERATION);
    double ramps = sum(shown) - 10 * steady;
    assertThat(shown.lostSeconds().get(FeedHold.BLOCK_TIME)).isCloseTo(10 * steady, within(1e-9));
    // Up and down, v/2a each: 12.5 mm/s by 2000 mm/s².
    assertThat(ramps).isCloseTo(2 * 12.5 / 2 / 2000, within(1e-9));
  }

  @Test
  void whatIsLostAddsUp() {
    FeedsShown shown =
        program(
            p -> {
              p.g0(0, 0, 0).m3(1000);
              for (int k = 1; k <= 100; k++) {
                p.g1(0.05 * k, 0.01 * (k % 3), 0, 900);
              }
              for (int k = 1; k <= 100; k++) {
                p.g1(5 - 0.05 * k, 0.03 * (k % 2), 0, 400);
              }
            });
    ProgramSummary.Plan plan = shown.plan().orElseThrow();
    assertThat(sum(shown))
        .isCloseTo(plan.plannedSeconds() - plan.programmedSeconds(), within(1e-9))
        .isGreaterThan(0.05);
    double ofMoves = moves.stream().mapToDouble(FeedMove::lostSeconds).sum();
    assertThat(ofMoves).isCloseTo(sum(shown), within(1e-9));
    assertThat(shown.operations()).hasSize(1);
    double ofOperations = 0;
    for (FeedsShown.Operation operation : shown.operations()) {
      assertThat(operation.moves()).isEqualTo(200);
      assertThat(operation.slowest()).hasSizeLessThanOrEqualTo(FeedsReached.SLOWEST);
      for (int k = 1; k < operation.slowest().size(); k++) {
        assertThat(operation.slowest().get(k).first().share())
            .isGreaterThanOrEqualTo(operation.slowest().get(k - 1).first().share() * (1 - 1e-5));
      }
      ofOperations +=
          operation.lostSeconds().values().stream().mapToDouble(Double::doubleValue).sum();
    }
    assertThat(ofOperations).isCloseTo(sum(shown), within(1e-9));
  }

  /** The slowest of all is kept, wherever it stands, and equal ones are one. */
  @Test
  void theSlowestAreKept() {
    FeedsShown shown =
        program(
            p -> {
              p.g0(0, 0, 0);
              for (int k = 1; k <= 40; k++) {
                // Apart by stops: the shorter, the slower.
                p.dwell(0).g1(0.1 + 0.01 * ((k * 7) % 40), k, 0, 1).dwell(0).g1(0, k, 0, 6000);
              }
            });
    List<FeedsShown.Slow> slowest = shown.operations().get(0).slowest();
    List<FeedMove> all =
        moves.stream()
            .filter(m -> m.held().isPresent())
            .sorted(java.util.Comparator.comparingDouble(FeedMove::share))
            .toList();
    assertThat(slowest).hasSize(FeedsReached.SLOWEST);
    for (int k = 0; k < slowest.size(); k++) {
      assertThat(slowest.get(k).first().share()).isCloseTo(all.get(k).share(), within(1e-6));
      assertThat(slowest.get(k).count()).isEqualTo(1);
    }
    moves.clear();
    FeedsShown alike =
        program(
            p -> {
              p.g0(0, 0, 0);
              for (int k = 1; k <= 30; k++) {
                p.dwell(0).g1(0.1 * k, 0, 0, 6000);
              }
            });
    assertThat(alike.operations().get(0).slowest())
        .singleElement()
        .satisfies(slow -> assertThat(slow.count()).isEqualTo(30))
        .satisfies(slow -> assertThat(slow.first().move().at().line()).isEqualTo(3));
  }

  @Test
  void whatCannotBePlannedIsCounted() {
    FeedsShown shown =
        program(p -> p.g0(0, 0, 0).g1WithoutFeed(1, 0, 0).g1WithoutFeed(1, 0, 0).g1(2, 0, 0, 600));
    assertThat(shown.notPlanned()).isEqualTo(1);
    assertThat(shown.missing()).isEmpty();
    MotionLimits none =
        new MotionLimits(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalInt.empty());
    FeedsShown nothing =
        run(none, planner -> new Programs(planner).g0(0, 0, 0).g1(2, 0, 0, 600).end());
    assertThat(nothing.plan()).isEmpty();
    assertThat(nothing.operations()).isEmpty();
    assertThat(nothing.missing())
        .containsExactly("machine.acceleration", "machine.control.path_tolerance");
  }

  /** Limits are told only where somebody asks for them. */
  @Test
  void withoutAskingNoLimitsAreKept() {
    PlannedFeed feed = new PlannedFeed();
    FeedPlanner planner =
        new FeedPlanner(LIMITS, true, feed, event -> assertThat(feed.limitsOfThisMove()).isEmpty());
    new Programs(planner).g0(0, 0, 0).g1(2, 0, 0, 600).end();
  }

  /** Two without a feed, three planned, one that goes nowhere, and rapids from a place unknown. */
  @Test
  void onlyFeedMovesWithALengthCountAsNotPlanned() {
    FeedsShown shown =
        program(
            p ->
                p.g28()
                    .g0(0, 0, 0)
                    .g1WithoutFeed(1, 0, 0)
                    .g1WithoutFeed(1, 0, 0)
                    .g1WithoutFeed(3, 0, 0)
                    .g1(4, 0, 0, 600)
                    .g1(5, 0, 0, 600)
                    .g1(6, 0, 0, 600));
    assertThat(shown.notPlanned()).isEqualTo(2);
    assertThat(moves).filteredOn(m -> m.planned().isEmpty()).hasSize(5);
    assertThat(moves).filteredOn(m -> m.planned().isEmpty()).allMatch(m -> m.share() == 1);
    // A rapid move falls short of no feed.
    assertThat(moves.get(1).share()).isEqualTo(1);
  }

  /**
   * Between stops a line of L at v takes L/v + v/a, so its part of the feed is 1/(1 + v²/(a L)): ½
   * for 0.05 mm at 600 mm/min and for 0.2 mm at 1200, which are two entries.
   */
  @Test
  void movesOfOneShareButAnotherFeedAreNotAlike() {
    FeedsShown shown =
        program(
            p -> {
              p.g0(0, 0, 0);
              for (int k = 1; k <= 3; k++) {
                p.dwell(0).g1(0.05, 0, 0, 600).dwell(0).g1(0.25, 0, 0, 1200).dwell(0).g0(0, 0, 0);
              }
            });
    assertThat(moves.get(1).share()).isCloseTo(0.5, within(1e-9));
    assertThat(moves.get(2).share()).isCloseTo(0.5, within(1e-9));
    assertThat(shown.operations().get(0).slowest())
        .hasSize(2)
        .allSatisfy(slow -> assertThat(slow.count()).isEqualTo(3));
  }

  /**
   * From rest along mild corners of 5.7° (2 µm of path tolerance allow 20 mm/s there and more) with
   * 20 µm between them it is acceleration, not the corner, that is missing: √(2 a s) = 8.9 mm/s.
   */
  @Test
  void aCornerThatIsNotReachedDoesNotHold() {
    FeedsShown shown =
        program(
            p -> {
              p.g0(0, 0, 0).dwell(0);
              for (int k = 1; k <= 40; k++) {
                p.g1(0.02 * k, 0.001 * (k % 2), 0, 1200);
              }
            });
    assertThat(moves.get(2).planned().orElseThrow().entryMmPerMin()).isCloseTo(537, within(1.0));
    assertThat(moves.get(2).held()).contains(FeedHold.ACCELERATION);
    assertThat(shown.lostSeconds()).containsOnlyKeys(FeedHold.STOP, FeedHold.ACCELERATION);
  }
}

package hairline.checks.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.motion.Event;
import hairline.checks.motion.Move;
import hairline.checks.setup.AxisValues;
import hairline.checks.stock.Cut;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;

/**
 * Where the axes come to rest between two lines in one direction, and where they do not. 10 mm/s by
 * 2000 mm/s² takes 25 µm (exact), so 1 mm is enough to be at the feed where nothing stops it.
 */
class FeedPlannerStopsTest {
  private static final MotionLimits LIMITS =
      new MotionLimits(
          Optional.of(AxisValues.alongPath(15_000)),
          Optional.of(AxisValues.alongPath(2000)),
          Optional.empty(),
          OptionalDouble.empty(),
          OptionalDouble.of(0.002),
          OptionalInt.of(200));

  private final List<PlannedMove> planned = new ArrayList<>();
  private final List<Event> handedOn = new ArrayList<>();

  private Programs program(MotionLimits limits, boolean waitsForSpindle) {
    PlannedFeed feed = new PlannedFeed();
    return new Programs(
        new FeedPlanner(
            limits,
            waitsForSpindle,
            feed,
            event -> {
              handedOn.add(event);
              if (event instanceof Move || event instanceof Cut) {
                planned.add(feed.ofThisMove().orElse(PlannedMove.NONE));
              }
            }));
  }

  /** The feed in mm/min between two lines with something between them. */
  private double feedBetween(boolean waitsForSpindle, UnaryOperator<Programs> what) {
    planned.clear();
    Programs program = program(LIMITS, waitsForSpindle).m3(10_000).g0(0, 0, 0).g1(1, 0, 0, 600);
    what.apply(program).g1(2, 0, 0, 600).end();
    PlannedMove before = planned.get(1);
    PlannedMove behind = planned.get(planned.size() - 1);
    assertThat(behind.entryMmPerMin()).isEqualTo(before.exitMmPerMin());
    return before.exitMmPerMin();
  }

  @Test
  void dwellsToolsStopsAndTheMachinesOwnCodesStopTheAxes() {
    assertThat(feedBetween(true, p -> p.dwell(0.1))).isZero();
    assertThat(feedBetween(true, p -> p.m6(2))).isZero();
    assertThat(feedBetween(true, p -> p.stop("M1"))).isZero();
    assertThat(feedBetween(true, Programs::measure)).isZero();
  }

  @Test
  void whatTakesNoTimeDoesNot() {
    assertThat(feedBetween(true, p -> p)).isEqualTo(600);
    assertThat(feedBetween(true, p -> p.call().back())).isEqualTo(600);
    assertThat(feedBetween(true, Programs::unknownCode)).isEqualTo(600);
  }

  /** A new speed is waited for where the sheet tells how long the spindle runs up. */
  @Test
  void theSpindleStopsTheAxesWhereItIsWaitedFor() {
    assertThat(feedBetween(true, p -> p.s(20_000))).isZero();
    assertThat(feedBetween(false, p -> p.s(20_000))).isEqualTo(600);
    // Of a speed that it has already nothing is waited for.
    assertThat(feedBetween(true, p -> p.s(10_000))).isEqualTo(600);
  }

  /** A move that is not known has to begin and end at rest. */
  @Test
  void aMoveWithoutFeedOrPlaceStopsTheAxes() {
    program(LIMITS, true)
        .g0(0, 0, 0)
        .g1(1, 0, 0, 600)
        .g1WithoutFeed(2, 0, 0)
        .g1(3, 0, 0, 600)
        .g1(4, 0, 0, 600)
        .g28()
        .end();
    assertThat(planned).hasSize(6);
    assertThat(planned.get(1).exitMmPerMin()).isZero();
    assertThat(planned.get(2)).isEqualTo(PlannedMove.NONE);
    assertThat(planned.get(3).entryMmPerMin()).isZero();
    assertThat(planned.get(3).exitMmPerMin()).isEqualTo(600);
    assertThat(planned.get(4).exitMmPerMin()).isZero();
    assertThat(planned.get(5)).isEqualTo(PlannedMove.NONE);
  }

  /** Along Z no acceleration is known: 0.5 mm down is not planned, and lies between rests. */
  @Test
  void anAxisWithoutALimitIsNotPlanned() {
    MotionLimits onlyXy =
        new MotionLimits(
            Optional.empty(),
            Optional.of(
                AxisValues.perAxis(
                    OptionalDouble.of(2000), OptionalDouble.of(2000), OptionalDouble.empty())),
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.of(0.002),
            OptionalInt.of(200));
    program(onlyXy, true)
        .g0(0, 0, 0)
        .g1(1, 0, 0, 600)
        .g1(1, 0, -0.5, 600)
        .g1(2, 0, -0.5, 600)
        .end();
    assertThat(planned).hasSize(4);
    assertThat(planned.get(1).exitMmPerMin()).isZero();
    assertThat(planned.get(1).peakMmPerMin()).isEqualTo(600);
    assertThat(planned.get(2)).isEqualTo(PlannedMove.NONE);
    assertThat(planned.get(3).entryMmPerMin()).isZero();
    assertThat(planned.get(3).peakMmPerMin()).isEqualTo(600);
  }

  /** A rapid move goes as fast as its axes, whatever the feed; 250 mm/s. */
  @Test
  void rapidsGoAsFastAsTheAxes() {
    program(LIMITS, true).g0(0, 0, 0).g0(100, 0, 0).end();
    assertThat(planned.get(1).peakMmPerMin()).isCloseTo(15_000, within(1e-9));
  }

  @Test
  void cutsArePlannedAsTheirMoves() {
    Consumer<Programs> moves =
        program -> program.g0(0, 0, 0).g1(1, 0, 0, 600).g1(1, 1, 0, 300).g1(2, 1, 0, 600).end();
    moves.accept(program(LIMITS, true));
    List<PlannedMove> ofMoves = List.copyOf(planned);
    planned.clear();
    moves.accept(program(LIMITS, true).asCuts());
    assertThat(planned).isEqualTo(ofMoves).hasSize(4);
    assertThat(handedOn).filteredOn(Cut.class::isInstance).hasSize(4);
  }

  /** A program of one move and endless comments is not kept in memory: 65,536 events are. */
  @Test
  void eventsAreNotHeldBackWithoutEnd() {
    Programs program = program(LIMITS, true).g0(0, 0, 0).g1(1, 0, 0, 600);
    int before = handedOn.size();
    for (int k = 0; k < 65_534; k++) {
      program.problem(hairline.parser.Problem.Kind.SYNTAX);
    }
    assertThat(handedOn).hasSize(before);
    program
        .problem(hairline.parser.Problem.Kind.SYNTAX)
        .problem(hairline.parser.Problem.Kind.SYNTAX);
    assertThat(handedOn).hasSizeGreaterThan(65_536);
    assertThat(planned.get(planned.size() - 1).exitMmPerMin()).isZero();
    assertThat(planned.get(planned.size() - 1).peakMmPerMin()).isEqualTo(600);
  }

  /** machine.control.look_ahead may be 0: the control knows no move but the present one. */
  @Test
  void aControlThatLooksNoBlockAheadStopsBehindEach() {
    MotionLimits blind =
        new MotionLimits(
            LIMITS.rapidMmPerMin(),
            LIMITS.accelerationMmPerS2(),
            Optional.empty(),
            OptionalDouble.empty(),
            LIMITS.pathToleranceMm(),
            OptionalInt.of(0));
    program(blind, true).g0(0, 0, 0).g1(1, 0, 0, 600).g1(2, 0, 0, 600).g1(3, 0, 0, 600).end();
    for (PlannedMove move : planned.subList(1, 4)) {
      assertThat(move.entryMmPerMin()).isZero();
      assertThat(move.peakMmPerMin()).isEqualTo(600);
      assertThat(move.exitMmPerMin()).isZero();
    }
  }
}

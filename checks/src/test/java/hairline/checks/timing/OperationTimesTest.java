package hairline.checks.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.motion.Event;
import hairline.checks.motion.Modes;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Times added up by operation, each event taking a second. */
class OperationTimesTest {
  private final OperationTimes times = new OperationTimes();
  private final Programs program = new Programs(this::take);
  private Optional<PlannedMove> planned = Optional.empty();

  private void take(Event event) {
    if (!(event instanceof Event.BlockStarted || event instanceof Event.ModesChanged)) {
      times.accept(event, 1, planned);
    }
  }

  /** The interpreter counts operations; here they are counted by hand. */
  private Programs nextOperation() {
    Modes now = program.modes();
    return program.taking(
        new Modes(
            now.units(),
            now.plane(),
            now.distance(),
            now.arcDistance(),
            now.feedMode(),
            now.pathMode(),
            now.workOffset(),
            now.compensation(),
            now.compensationNumber(),
            now.lengthOffset(),
            now.cycleReturn(),
            now.spindle(),
            now.speedRpm(),
            now.surfaceSpeed(),
            now.feed(),
            now.tool(),
            now.coolant(),
            now.operation() + 1));
  }

  private List<Double> seconds() {
    return times.list().stream().map(ProgramSummary.Operation::seconds).toList();
  }

  /** What comes before the first move of a tool is its own: the change, the spindle, dwells. */
  @Test
  void allThatTakesTimeBelongsToAnOperation() {
    assertThat(times.present()).isEqualTo(-1);
    program.m6(1).m3(10_000).dwell(1).measure().stop("M0").g0(0, 0, 0).g1(1, 0, 0, 60);
    assertThat(seconds()).containsExactly(7.0);
    assertThat(times.present()).isZero();
    program.dwell(1).stop("M0");
    assertThat(seconds()).containsExactly(9.0);
    nextOperation().m6(2).m3(10_000).g1(2, 0, 0, 60);
    assertThat(seconds()).containsExactly(9.0, 3.0);
    assertThat(times.present()).isEqualTo(1);
    assertThat(times.list())
        .extracting(o -> o.from().line(), o -> o.tool().orElse(-1), o -> o.rpm().orElse(-1))
        .containsExactly(tuple(6, 1, 10_000.0), tuple(12, 2, 10_000.0));
  }

  /** What took no time and moved nothing is no operation. */
  @Test
  void withoutTimeOrMotionThereIsNoOperation() {
    Programs still = new Programs(event -> times.accept(event, 0, Optional.empty()));
    still.m6(1).m6(2).g0(0, 0, 0);
    assertThat(times.list()).extracting(o -> o.tool().orElse(-1)).containsExactly(2);
  }

  /**
   * 2 mm at 600 mm/min in 0.25 s instead of 0.2: from rest to rest at 1000 mm/s², 0.1 mm and 20 ms
   * of it below the feed.
   */
  @Test
  void theSharesAreThoseOfAllItsMoves() {
    PlannedMove line = new PlannedMove(0.21, 0, 0, 0, 600, 2 / 0.21 * 60, 0, 0.025, 0.975);
    PlannedMove steady = new PlannedMove(0.2, 600, 600, 600, 600, 600, 0, 0, 1);
    program.g0(0, 0, 0);
    planned = Optional.of(line);
    program.g1(2, 0, 0, 600);
    planned = Optional.of(steady);
    program.g1(4, 0, 0, 600);
    ProgramSummary.Plan plan = times.ofProgram().orElseThrow();
    assertThat(plan.plannedSeconds()).isCloseTo(0.41, within(1e-12));
    assertThat(plan.programmedSeconds()).isCloseTo(0.4, within(1e-12));
    assertThat(plan.shareBelowFeed()).isCloseTo(0.1 / 4, within(1e-6));
    assertThat(plan.shareOfTimeBelowFeed()).isCloseTo(0.02 / 0.41, within(1e-6));
    assertThat(times.list().get(0).plan()).contains(plan);
    assertThat(times.operation(0).plan()).contains(plan);
  }

  /** Rapids have no feed to fall short of. */
  @Test
  void rapidsAreNotCompared() {
    planned = Optional.of(new PlannedMove(0.2, 600, 600, 600, 600, 600, 0, 0, 1));
    program.g0(0, 0, 0).g0(2, 0, 0);
    assertThat(times.ofProgram()).isEmpty();
    assertThat(times.list().get(0).plan()).isEmpty();
  }

  @Test
  void aThousandOperationsAreToldApart() {
    for (int k = 1; k <= OperationTimes.OPERATIONS_CAP; k++) {
      nextOperation().m6(k).g0(k, 0, 0);
    }
    assertThat(times.isCapReached()).isFalse();
    assertThat(times.present()).isEqualTo(OperationTimes.OPERATIONS_CAP - 1);
    nextOperation().m6(5000).g0(0, 0, 0);
    assertThat(times.isCapReached()).isTrue();
    assertThat(times.present()).isEqualTo(-1);
    assertThat(times.list()).hasSize(OperationTimes.OPERATIONS_CAP);
    // What is left out counts for the program all the same.
    planned = Optional.of(new PlannedMove(0.2, 600, 600, 600, 600, 600, 0, 0, 1));
    program.g1(2, 0, 0, 600);
    assertThat(times.ofProgram()).isPresent();
  }
}

package hairline.checks.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.motion.Event;
import hairline.checks.motion.Event.MachineCode.Meaning;
import hairline.checks.motion.Modes.Spindle;
import hairline.checks.setup.AxisValues;
import hairline.checks.setup.MachineKeys;
import hairline.checks.setup.Setup;
import hairline.checks.setup.ShopKeys;
import hairline.checks.setup.SpindleKeys;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** Times as programmed, each worked out by hand: length over rate, or the time of the sheet. */
class TimelineTest {
  private static final Offset<Double> EXACT = within(1e-12);

  private static final TimeTable FULL =
      new TimeTable(
          Optional.of(AxisValues.alongPath(15000)),
          OptionalDouble.of(4),
          OptionalDouble.of(12),
          OptionalDouble.of(720),
          OptionalDouble.of(1.5),
          true);

  private static final TimeTable NOTHING =
      new TimeTable(
          Optional.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          true);

  private static TimeTaken run(TimeTable table, Consumer<Programs> blocks) {
    ProgramTime time = new ProgramTime();
    Programs program = new Programs(new Timeline(table, new PlannedFeed(), time, event -> {}));
    blocks.accept(program);
    program.end();
    return time.since(TimePoint.START);
  }

  /** The time of the last block of several. */
  private static TimeTaken last(TimeTable table, Consumer<Programs> before, Consumer<Programs> it) {
    ProgramTime time = new ProgramTime();
    Programs program = new Programs(new Timeline(table, new PlannedFeed(), time, event -> {}));
    before.accept(program);
    program.dwell(0);
    TimePoint start = time.now();
    it.accept(program);
    program.end();
    return time.since(start);
  }

  private static TimeTable perAxis(OptionalDouble x, OptionalDouble y, OptionalDouble z) {
    return new TimeTable(
        Optional.of(AxisValues.perAxis(x, y, z)),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        true);
  }

  @Test
  void aFeedMoveTakesItsLengthOverItsFeed() {
    TimeTaken taken = last(FULL, p -> p.g0(0, 0, 0), p -> p.g1(6, 8, 0, 100));
    assertThat(taken.atLeastSeconds()).isCloseTo(6.0, EXACT);
    assertThat(taken.isKnown()).isTrue();
  }

  @Test
  void theProgramOfTheLanguageReport() {
    // NISTIR 6556 appendix C.1: its feed moves together are 183.4305 mm, at F20.
    TimeTaken taken = last(FULL, p -> p.g0(0, 0, 0), p -> p.g1(183.4305, 0, 0, 20));
    assertThat(taken.atLeastSeconds()).isCloseTo(550.2915, within(1e-9));
  }

  @Test
  void aRapidMoveTakesItsLengthOverTheRapidRate() {
    TimeTaken taken = last(FULL, p -> p.g0(0, 0, 0), p -> p.g0(30, 40, 0));
    assertThat(taken.atLeastSeconds()).isCloseTo(0.2, EXACT);
    assertThat(taken.isKnown()).isTrue();
  }

  @Test
  void aCutTakesTheTimeOfItsMove() {
    TimeTaken feed = last(FULL, p -> p.asCuts().g0(0, 0, 0), p -> p.g1(10, 0, 0, 100));
    assertThat(feed).isEqualTo(TimeTaken.of(6));
    TimeTaken rapid = last(FULL, p -> p.asCuts().g0(0, 0, 0), p -> p.g0(30, 40, 0));
    assertThat(rapid.atLeastSeconds()).isCloseTo(0.2, EXACT);
  }

  @Test
  void withARateForEachAxisTheSlowestDecides() {
    TimeTable table =
        perAxis(OptionalDouble.of(15000), OptionalDouble.of(10000), OptionalDouble.of(5000));
    // 0.12 s, 0.06 s, 0.18 s
    assertThat(last(table, p -> p.g0(0, 0, 0), p -> p.g0(30, -10, 15)).atLeastSeconds())
        .isCloseTo(0.18, EXACT);
    // 0.12 s, 0.24 s, 0.12 s
    assertThat(last(table, p -> p.g0(0, 0, 0), p -> p.g0(-30, 40, 10)).atLeastSeconds())
        .isCloseTo(0.24, EXACT);
    // 0.12 s alone
    assertThat(last(table, p -> p.g0(5, 0, 0), p -> p.g0(35, 0, 0)).atLeastSeconds())
        .isCloseTo(0.12, EXACT);
  }

  @Test
  void anAxisWithoutRateMattersOnlyWhereItMoves() {
    TimeTable table =
        perAxis(OptionalDouble.of(15000), OptionalDouble.empty(), OptionalDouble.empty());
    assertThat(last(table, p -> p.g0(0, 0, 0), p -> p.g0(30, 0, 0)).isKnown()).isTrue();
    TimeTaken taken = last(table, p -> p.g0(0, 0, 0), p -> p.g0(30, 40, 0));
    assertThat(taken.gaps()).extracting(Gap::cause).containsExactly(Cause.RAPID_RATE);
  }

  @Test
  void withoutARapidRateTheTimeIsBounded() {
    TimeTaken taken = last(NOTHING, p -> p.g0(0, 0, 0), p -> p.g0(30, 40, 0));
    assertThat(taken.atLeastSeconds()).isZero();
    // 50 mm at 1 m/min
    assertThat(taken.atMostSeconds()).isCloseTo(3.0, EXACT);
    assertThat(taken.gaps()).extracting(Gap::cause).containsExactly(Cause.RAPID_RATE);
    assertThat(taken.gaps().get(0).at().line()).isEqualTo(3);
  }

  @Test
  void aRapidMoveToWhereTheToolIsTakesNoTime() {
    assertThat(last(NOTHING, p -> p.g0(1, 2, 3), p -> p.g0(1, 2, 3))).isEqualTo(TimeTaken.NONE);
  }

  @Test
  void aMoveFromOrToAnUnknownPlaceIsBounded() {
    // 2 m at 15 m/min; at 1 m/min; at F100
    for (Consumer<Programs> it : List.<Consumer<Programs>>of(p -> p.g0(1, 1, 1), Programs::g28)) {
      TimeTaken full = last(FULL, p -> {}, it);
      assertThat(full.atLeastSeconds()).isZero();
      assertThat(full.atMostSeconds()).isCloseTo(8.0, EXACT);
      assertThat(full.gaps()).extracting(Gap::cause).containsExactly(Cause.POSITION);
      assertThat(last(NOTHING, p -> {}, it).atMostSeconds()).isCloseTo(120.0, EXACT);
    }
    TimeTaken feed = last(FULL, p -> {}, p -> p.g1(1, 1, 1, 100));
    assertThat(feed.atMostSeconds()).isCloseTo(1200.0, EXACT);
    assertThat(feed.gaps()).extracting(Gap::cause).containsExactly(Cause.POSITION);
    assertThat(last(FULL, p -> p.g0(0, 0, 0), Programs::g28).atMostSeconds()).isCloseTo(8.0, EXACT);
  }

  @Test
  void anUnknownPlaceIsReachedAtTheSlowestRate() {
    TimeTable table =
        perAxis(OptionalDouble.of(15000), OptionalDouble.of(2000), OptionalDouble.of(5000));
    assertThat(last(table, p -> {}, Programs::g28).atMostSeconds()).isCloseTo(60.0, EXACT);
    TimeTable zOnly = perAxis(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.of(9));
    assertThat(last(zOnly, p -> {}, Programs::g28).atMostSeconds())
        .isCloseTo(2000 / 9.0 * 60, within(1e-6));
    TimeTable xyOnly =
        perAxis(OptionalDouble.of(15000), OptionalDouble.of(15000), OptionalDouble.empty());
    assertThat(last(xyOnly, p -> {}, Programs::g28).atMostSeconds()).isCloseTo(120.0, EXACT);
  }

  @Test
  void aFeedMoveWithoutFeedHasNoBound() {
    for (Consumer<Programs> it :
        List.<Consumer<Programs>>of(
            p -> p.g1WithoutFeed(10, 0, 0), p -> p.g1(10, 0, 0, 0), p -> p.g1(10, 0, 0, -1))) {
      TimeTaken taken = last(FULL, p -> p.g0(0, 0, 0), it);
      assertThat(taken.atLeastSeconds()).isZero();
      assertThat(taken.atMostSeconds()).isInfinite();
      assertThat(taken.gaps()).extracting(Gap::cause).containsExactly(Cause.FEED);
    }
    assertThat(last(FULL, p -> {}, p -> p.g1WithoutFeed(10, 0, 0)).gaps())
        .extracting(Gap::cause)
        .containsExactly(Cause.FEED);
    assertThat(last(FULL, p -> p.g0(1, 0, 0), p -> p.g1WithoutFeed(1, 0, 0)))
        .isEqualTo(TimeTaken.NONE);
  }

  @Test
  void theControlWaitsForANewSpeed() {
    assertThat(run(FULL, p -> p.m3(30000))).isEqualTo(TimeTaken.of(1.5));
    assertThat(last(FULL, p -> p.m3(30000), p -> p.m3(40000))).isEqualTo(TimeTaken.of(1.5));
    assertThat(last(FULL, p -> p.m3(30000), p -> p.s(29999))).isEqualTo(TimeTaken.of(1.5));
    assertThat(last(FULL, p -> p.m3(30000), p -> p.spindle(Spindle.COUNTER_CLOCKWISE, 30000)))
        .isEqualTo(TimeTaken.of(1.5));
    assertThat(last(FULL, p -> p.m3(30000).m6(2), p -> p.m3(30000))).isEqualTo(TimeTaken.of(1.5));
  }

  @Test
  void noNewSpeedNoWaiting() {
    assertThat(last(FULL, p -> p.m3(30000), p -> p.m3(30000))).isEqualTo(TimeTaken.NONE);
    assertThat(last(FULL, p -> p.m3(30000), Programs::m5)).isEqualTo(TimeTaken.NONE);
    assertThat(last(FULL, p -> p.m3(30000).m5(), p -> p.s(20000))).isEqualTo(TimeTaken.NONE);
    assertThat(last(FULL, p -> {}, p -> p.s(20000))).isEqualTo(TimeTaken.NONE);
  }

  @Test
  void aControlThatDoesNotWaitMovesAtOnce() {
    TimeTable table =
        new TimeTable(
            FULL.rapidMmPerMin(),
            FULL.toolChangeSeconds(),
            FULL.measuringSeconds(),
            FULL.warmUpSeconds(),
            FULL.runUpSeconds(),
            false);
    assertThat(run(table, p -> p.m3(30000))).isEqualTo(TimeTaken.NONE);
  }

  @Test
  void anUnknownRunUpIsBounded() {
    TimeTaken taken = run(NOTHING, p -> p.m3(30000));
    assertThat(taken.atLeastSeconds()).isZero();
    assertThat(taken.atMostSeconds()).isEqualTo(60.0);
    assertThat(taken.gaps()).extracting(Gap::cause).containsExactly(Cause.RUN_UP);
  }

  @Test
  void dwellsAndTheTimesOfTheSheet() {
    assertThat(run(FULL, p -> p.dwell(2.5))).isEqualTo(TimeTaken.of(2.5));
    assertThat(run(FULL, p -> p.m6(3))).isEqualTo(TimeTaken.of(4));
    assertThat(run(FULL, Programs::measure)).isEqualTo(TimeTaken.of(12));
    assertThat(run(FULL, Programs::warmUp)).isEqualTo(TimeTaken.of(720));
  }

  @Test
  void withoutThemNothingBoundsTheTime() {
    assertOpen(run(NOTHING, Programs::dwellWithoutUnit), Cause.DWELL_UNIT);
    assertOpen(run(NOTHING, p -> p.m6(3)), Cause.TOOL_CHANGE);
    assertOpen(run(NOTHING, Programs::measure), Cause.MEASURING);
    assertOpen(run(NOTHING, Programs::warmUp), Cause.WARM_UP);
  }

  private static void assertOpen(TimeTaken taken, Cause cause) {
    assertThat(taken.atLeastSeconds()).isZero();
    assertThat(taken.atMostSeconds()).isInfinite();
    assertThat(taken.gaps()).extracting(Gap::cause).containsExactly(cause);
  }

  @Test
  void otherCodesTakeNoTime() {
    for (Meaning meaning : List.of(Meaning.COOLANT_ON, Meaning.COOLANT_OFF, Meaning.IGNORE)) {
      assertThat(run(NOTHING, p -> p.code(meaning))).isEqualTo(TimeTaken.NONE);
    }
    assertThat(run(NOTHING, Programs::unknownCode)).isEqualTo(TimeTaken.NONE);
  }

  @Test
  void theOperatorTakesLongerThanAnyLimit() {
    for (String code : List.of("M0", "M60")) {
      TimeTaken taken = run(FULL, p -> p.stop(code));
      assertOpen(taken, Cause.OPERATOR);
      assertThat(taken.exceeds(1e9)).isEqualTo(Answer.YES);
    }
    // The switch for it is held to be off.
    assertThat(run(FULL, p -> p.stop("M1"))).isEqualTo(TimeTaken.NONE);
  }

  @Test
  void aRuleSeesTheTimeAtTheStartOfAnEvent() {
    ProgramTime time = new ProgramTime();
    List<Event> passed = new ArrayList<>();
    List<Double> starts = new ArrayList<>();
    List<TimeTaken> durations = new ArrayList<>();
    Timeline timeline =
        new Timeline(
            FULL,
            new PlannedFeed(),
            time,
            event -> {
              if (!(event instanceof Event.BlockStarted)) {
                passed.add(event);
                starts.add(time.secondsNow());
                durations.add(time.ofThisEvent());
              }
            });
    new Programs(timeline).dwell(5).m6(1).stop("M0").dwell(7).end();
    assertThat(starts).containsExactly(0.0, 5.0, 9.0, 9.0, 16.0);
    assertThat(durations)
        .extracting(TimeTaken::atLeastSeconds)
        .containsExactly(5.0, 4.0, 0.0, 7.0, 0.0);
    assertThat(durations.get(2).waitsForOperator()).isTrue();
    assertThat(durations.get(2).atMostSeconds()).isInfinite();
    assertThat(durations.get(3).isKnown()).isTrue();
    assertThat(passed).hasSize(5);
    assertThat(passed.get(4)).isInstanceOf(Event.Ended.class);
  }

  @Test
  void theBoundsOfTheEventInHand() {
    ProgramTime time = new ProgramTime();
    Programs program = new Programs(new Timeline(NOTHING, new PlannedFeed(), time, event -> {}));
    program.g0(0, 0, 0).g0(50, 0, 0);
    assertThat(time.ofThisEvent().atLeastSeconds()).isZero();
    assertThat(time.ofThisEvent().atMostSeconds()).isCloseTo(3.0, EXACT);
    assertThat(time.ofThisEvent().gaps()).extracting(gap -> gap.at().line()).containsExactly(2);
  }

  @Test
  void theTimeSinceAPointKnowsOnlyTheGapsSince() {
    ProgramTime time = new ProgramTime();
    Programs program = new Programs(new Timeline(NOTHING, new PlannedFeed(), time, event -> {}));
    program.dwell(1).m6(1).g0(0, 0, 0).dwell(2);
    TimePoint behindToolChange = time.now();
    program.g0(50, 0, 0).dwell(4).g0(0, 0, 0).m3(1000).dwell(0);
    TimePoint behindRapids = time.now();
    assertThat(behindRapids.atLeastSeconds()).isEqualTo(7.0);
    program.dwell(8).end();

    assertThat(time.since(TimePoint.START).gaps())
        .extracting(Gap::cause)
        .containsExactly(Cause.TOOL_CHANGE, Cause.POSITION, Cause.RAPID_RATE, Cause.RUN_UP);
    TimeTaken since = time.since(behindToolChange);
    assertThat(since.gaps()).extracting(Gap::cause).containsExactly(Cause.RAPID_RATE, Cause.RUN_UP);
    // The latest of each cause.
    assertThat(since.gaps()).extracting(gap -> gap.at().line()).containsExactly(7, 8);
    // A point stands at the start of the event in hand: the dwells of 2, 4 and 8 s follow.
    assertThat(since.atLeastSeconds()).isCloseTo(14.0, EXACT);
    assertThat(since.atMostSeconds()).isCloseTo(14.0 + 3 + 3 + 60, EXACT);
    assertThat(time.since(behindRapids)).isEqualTo(TimeTaken.of(8));
  }

  @Test
  void fromTheSheet() {
    Setup setup =
        Setup.builder()
            .with(MachineKeys.RAPID_MM_PER_MIN, AxisValues.alongPath(15000))
            .with(ShopKeys.TOOL_CHANGE_S, 4.0)
            .with(ShopKeys.MEASURING_S, 12.0)
            .with(SpindleKeys.WARM_UP_TIME_S, 720.0)
            .with(SpindleKeys.RUN_UP_S, 1.5)
            .build();
    assertThat(TimeTable.of(setup)).isEqualTo(FULL);
    assertThat(TimeTable.of(Setup.builder().build())).isEqualTo(NOTHING);
    Setup hasty = Setup.builder().with(SpindleKeys.WAITS, false).build();
    assertThat(TimeTable.of(hasty).waitsForSpindle()).isFalse();
  }

  @Test
  void theKeysThatWouldHelp() {
    assertThat(Cause.RAPID_RATE.key()).hasValue("machine.rapid");
    assertThat(Cause.DWELL_UNIT.key()).hasValue("machine.control.dwell");
    assertThat(Cause.TOOL_CHANGE.key()).hasValue("times.tool_change");
    assertThat(Cause.MEASURING.key()).hasValue("times.measuring");
    assertThat(Cause.WARM_UP.key()).hasValue("machine.spindle.warm_up.time");
    assertThat(Cause.RUN_UP.key()).hasValue("machine.spindle.run_up");
    assertThat(List.of(Cause.POSITION, Cause.FEED, Cause.SPINDLE, Cause.OPERATOR))
        .allMatch(cause -> cause.key().isEmpty());
  }
}

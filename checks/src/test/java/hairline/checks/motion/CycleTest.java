package hairline.checks.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hairline.checks.motion.Cycle.Code;
import hairline.checks.motion.Cycle.Target;
import hairline.checks.motion.Cycle.Words;
import hairline.checks.motion.CycleStep.Dwell;
import hairline.checks.motion.CycleStep.OperatorStop;
import hairline.checks.motion.CycleStep.SpindleStep;
import hairline.checks.motion.CycleStep.SpindleStep.Action;
import hairline.checks.motion.CycleStep.Travel;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class CycleTest {
  private static final Coordinate GAP = mm("0.25");
  private static final Optional<Boolean> G98 = Optional.of(false);
  private static final Optional<Boolean> G99 = Optional.of(true);

  private static Coordinate mm(String mm) {
    return Coordinate.of(new BigDecimal(mm).scaleByPowerOfTen(9).longValueExact());
  }

  private static Cycle.Point point(String first, String second, String normal) {
    return new Cycle.Point(mm(first), mm(second), mm(normal));
  }

  private static Optional<Target> absolute(String mm) {
    return Optional.of(new Target(mm(mm), false));
  }

  private static Optional<Target> incremental(String mm) {
    return Optional.of(new Target(mm(mm), true));
  }

  /** Words X, Y, Z and R, done once. */
  private static Words words(
      Optional<Target> first,
      Optional<Target> second,
      Optional<Target> normal,
      Optional<Target> level) {
    return new Words(
        first,
        second,
        normal,
        level,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        1);
  }

  private static Words repeated(Words words, long repeats) {
    return new Words(
        words.first(),
        words.second(),
        words.normal(),
        words.level(),
        words.peck(),
        words.dwell(),
        words.offsetFirst(),
        words.offsetSecond(),
        words.top(),
        repeats);
  }

  private static Words pecked(Words words, Coordinate peck) {
    return new Words(
        words.first(),
        words.second(),
        words.normal(),
        words.level(),
        Optional.of(peck),
        words.dwell(),
        words.offsetFirst(),
        words.offsetSecond(),
        words.top(),
        words.repeats());
  }

  private static Words dwelled(Words words, double seconds) {
    return new Words(
        words.first(),
        words.second(),
        words.normal(),
        words.level(),
        words.peck(),
        Optional.of(new Dwell(OptionalDouble.of(seconds))),
        words.offsetFirst(),
        words.offsetSecond(),
        words.top(),
        words.repeats());
  }

  private static Travel rapid(String first, String second, String normal) {
    return new Travel(true, mm(first), mm(second), mm(normal));
  }

  private static Travel feed(String first, String second, String normal) {
    return new Travel(false, mm(first), mm(second), mm(normal));
  }

  private static SpindleStep spindle(Action action) {
    return new SpindleStep(action);
  }

  private static List<CycleStep> all(Iterator<CycleStep> steps) {
    List<CycleStep> list = new ArrayList<>();
    steps.forEachRemaining(list::add);
    return list;
  }

  /** One hole at (4, 5) from (1, 2, 3): R 2.8, depth 1.5. */
  private static List<CycleStep> hole(Code code, Words words, Optional<Boolean> toLevel) {
    Cycle cycle = Cycle.begin(code, mm("3")).with(words);
    assertThat(cycle.refusals()).isEmpty();
    return all(cycle.steps(words, point("1", "2", "3"), toLevel, GAP));
  }

  private static final Words AT_4_5 =
      words(absolute("4"), absolute("5"), absolute("1.5"), absolute("2.8"));

  @Test
  void drillsTheFirstExampleOfTheReport() {
    // NISTIR 6556 §3.5.16.2, example 1: G90 G81 G98 X4 Y5 Z1.5 R2.8 from (1, 2, 3).
    assertThat(hole(Code.G81, AT_4_5, G98))
        .containsExactly(
            rapid("4", "5", "3"),
            rapid("4", "5", "2.8"),
            feed("4", "5", "1.5"),
            rapid("4", "5", "3"));
  }

  @Test
  void drillsTheSecondExampleOfTheReport() {
    // NISTIR 6556 §3.5.16.2, example 2: G91 G81 G98 X4 Y5 Z-0.6 R1.8 L3 from (1, 2, 3).
    Words words =
        repeated(
            words(incremental("4"), incremental("5"), incremental("-0.6"), incremental("1.8")), 3);
    assertThat(hole(Code.G81, words, G98))
        .containsExactly(
            rapid("1", "2", "4.8"),
            rapid("5", "7", "4.8"),
            feed("5", "7", "4.2"),
            rapid("5", "7", "4.8"),
            rapid("9", "12", "4.8"),
            feed("9", "12", "4.2"),
            rapid("9", "12", "4.8"),
            rapid("13", "17", "4.8"),
            feed("13", "17", "4.2"),
            rapid("13", "17", "4.8"));
  }

  @Test
  void returnsToTheLevelUnderG99() {
    assertThat(hole(Code.G81, AT_4_5, G99))
        .containsExactly(
            rapid("4", "5", "3"),
            rapid("4", "5", "2.8"),
            feed("4", "5", "1.5"),
            rapid("4", "5", "2.8"));
  }

  @Test
  void dwellsAtTheBottom() {
    Dwell dwell = new Dwell(OptionalDouble.of(0.5));
    Words words = dwelled(AT_4_5, 0.5);
    // NISTIR 6556 §3.5.16.3 and §3.5.16.10
    assertThat(hole(Code.G82, words, G98))
        .containsExactly(
            rapid("4", "5", "3"),
            rapid("4", "5", "2.8"),
            feed("4", "5", "1.5"),
            dwell,
            rapid("4", "5", "3"));
    assertThat(hole(Code.G89, words, G98).subList(2, 5))
        .containsExactly(feed("4", "5", "1.5"), dwell, feed("4", "5", "3"));
    // Without P there is no dwell (common practice, no source).
    assertThat(hole(Code.G82, AT_4_5, G98)).hasSize(4).doesNotContain(dwell);
  }

  @Test
  void pecksWithFullRetract() {
    // NISTIR 6556 §3.5.16.4, with the R level between pecks (common practice, no source).
    assertThat(hole(Code.G83, pecked(AT_4_5, mm("0.5")), G98))
        .containsExactly(
            rapid("4", "5", "3"),
            rapid("4", "5", "2.8"),
            feed("4", "5", "2.3"),
            rapid("4", "5", "2.8"),
            rapid("4", "5", "2.55"),
            feed("4", "5", "1.8"),
            rapid("4", "5", "2.8"),
            rapid("4", "5", "2.05"),
            feed("4", "5", "1.5"),
            rapid("4", "5", "3"));
  }

  @Test
  void breaksChips() {
    // Common practice, no source.
    assertThat(hole(Code.G73, pecked(AT_4_5, mm("0.65")), G99))
        .containsExactly(
            rapid("4", "5", "3"),
            rapid("4", "5", "2.8"),
            feed("4", "5", "2.15"),
            rapid("4", "5", "2.4"),
            feed("4", "5", "1.5"),
            rapid("4", "5", "2.8"));
  }

  @Test
  void neverBacksOffAboveTheLevel() {
    List<CycleStep> steps = hole(Code.G83, pecked(AT_4_5, mm("0.2")), G99);
    assertThat(steps.subList(2, 6))
        .containsExactly(
            feed("4", "5", "2.6"),
            rapid("4", "5", "2.8"),
            feed("4", "5", "2.4"),
            rapid("4", "5", "2.8"));
    assertThat(steps).contains(rapid("4", "5", "2.65"));
  }

  @Test
  void makesOnePeckWhereTheDepthOfPecksIsNotKnown() {
    assertThat(hole(Code.G83, pecked(AT_4_5, Coordinate.UNKNOWN), G99))
        .containsExactly(
            rapid("4", "5", "3"),
            rapid("4", "5", "2.8"),
            feed("4", "5", "1.5"),
            rapid("4", "5", "2.8"));
  }

  @Test
  void tapsWithTheSpindleReversed() {
    // NISTIR 6556 §3.5.16.5
    assertThat(hole(Code.G84, AT_4_5, G99).subList(2, 8))
        .containsExactly(
            feed("4", "5", "1.5"),
            spindle(Action.STOP),
            spindle(Action.START_COUNTER_CLOCKWISE),
            feed("4", "5", "2.8"),
            spindle(Action.STOP),
            spindle(Action.START_CLOCKWISE));
  }

  @Test
  void boresAndFeedsOut() {
    // NISTIR 6556 §3.5.16.6
    assertThat(hole(Code.G85, AT_4_5, G98).subList(2, 4))
        .containsExactly(feed("4", "5", "1.5"), feed("4", "5", "3"));
  }

  @Test
  void boresAndStopsTheSpindle() {
    // NISTIR 6556 §3.5.16.7
    assertThat(hole(Code.G86, dwelled(AT_4_5, 1), G98).subList(2, 7))
        .containsExactly(
            feed("4", "5", "1.5"),
            new Dwell(OptionalDouble.of(1)),
            spindle(Action.STOP),
            rapid("4", "5", "3"),
            spindle(Action.RESTART));
  }

  @Test
  void boresBack() {
    Words words =
        new Words(
            absolute("4"),
            absolute("5"),
            absolute("-1"),
            absolute("2.8"),
            Optional.empty(),
            Optional.empty(),
            Optional.of(mm("0.1")),
            Optional.of(mm("-0.2")),
            absolute("0.5"),
            1);
    // NISTIR 6556 §3.5.16.8
    assertThat(hole(Code.G87, words, G98))
        .containsExactly(
            rapid("4", "5", "3"),
            rapid("4", "5", "2.8"),
            rapid("4.1", "4.8", "2.8"),
            spindle(Action.STOP_ORIENTED),
            rapid("4.1", "4.8", "-1"),
            rapid("4", "5", "-1"),
            spindle(Action.RESTART),
            feed("4", "5", "0.5"),
            feed("4", "5", "-1"),
            spindle(Action.STOP_ORIENTED),
            rapid("4.1", "4.8", "-1"),
            rapid("4.1", "4.8", "3"),
            rapid("4", "5", "3"),
            spindle(Action.RESTART));
  }

  @Test
  void waitsForTheOperator() {
    // NISTIR 6556 §3.5.16.9; where the operator leaves the tool is not known.
    List<CycleStep> steps = hole(Code.G88, dwelled(AT_4_5, 1), G98);
    assertThat(steps.subList(2, 7))
        .containsExactly(
            feed("4", "5", "1.5"),
            new Dwell(OptionalDouble.of(1)),
            spindle(Action.STOP),
            new OperatorStop(),
            new Travel(true, mm("4"), mm("5"), Coordinate.UNKNOWN));
    assertThat(steps.get(7)).isEqualTo(spindle(Action.RESTART));
  }

  @Test
  void keepsItsNumbersFromBlockToBlock() {
    Cycle cycle = Cycle.begin(Code.G83, mm("3")).with(pecked(AT_4_5, mm("2")));
    Words next = words(absolute("6"), Optional.empty(), Optional.empty(), Optional.empty());
    Cycle same = cycle.with(next);
    assertThat(same).isEqualTo(cycle);
    assertThat(all(same.steps(next, point("4", "5", "2.8"), G98, GAP)))
        .containsExactly(rapid("6", "5", "2.8"), feed("6", "5", "1.5"), rapid("6", "5", "3"));
    Words deeper = words(Optional.empty(), absolute("7"), absolute("1"), absolute("2"));
    assertThat(all(cycle.with(deeper).steps(deeper, point("6", "5", "3"), G99, GAP)))
        .containsExactly(
            rapid("6", "7", "3"), rapid("6", "7", "2"), feed("6", "7", "1"), rapid("6", "7", "2"));
  }

  @Test
  void countsAnIncrementalLevelFromWhereTheCycleModeBegan() {
    Words first = words(incremental("1"), Optional.empty(), incremental("-2"), incremental("-1"));
    Cycle cycle = Cycle.begin(Code.G81, mm("3")).with(first);
    assertThat(all(cycle.steps(first, point("0", "0", "3"), G99, GAP)))
        .containsExactly(
            rapid("1", "0", "3"), rapid("1", "0", "2"), feed("1", "0", "0"), rapid("1", "0", "2"));
    Words next = words(incremental("1"), Optional.empty(), Optional.empty(), Optional.empty());
    assertThat(all(cycle.with(next).steps(next, point("1", "0", "2"), G99, GAP)))
        .containsExactly(rapid("2", "0", "2"), feed("2", "0", "0"), rapid("2", "0", "2"));
  }

  @Test
  void changesTheCodeAndKeepsTheInitialLevel() {
    Cycle drilling = Cycle.begin(Code.G81, mm("3")).with(dwelled(AT_4_5, 2));
    assertThat(drilling.change(Code.G81)).isSameAs(drilling);
    Cycle boring = drilling.change(Code.G89);
    assertThat(boring.code()).isEqualTo(Code.G89);
    assertThat(boring.initialLevel()).isEqualTo(mm("3"));
    assertThat(boring.bottomPosition()).isEqualTo(mm("1.5"));
    assertThat(boring.dwell()).isPresent();
  }

  @Test
  void drillsInTheSamePlaceUnderAbsoluteRepeats() {
    assertThat(hole(Code.G81, repeated(AT_4_5, 2), G99))
        .containsExactly(
            rapid("4", "5", "3"),
            rapid("4", "5", "2.8"),
            feed("4", "5", "1.5"),
            rapid("4", "5", "2.8"),
            feed("4", "5", "1.5"),
            rapid("4", "5", "2.8"));
  }

  @Test
  void doesNothingForNoRepeats() {
    // Common practice, no source: the numbers are kept.
    Words none = repeated(AT_4_5, 0);
    Cycle cycle = Cycle.begin(Code.G81, mm("0")).with(none);
    assertThat(all(cycle.steps(none, point("1", "2", "0"), G98, GAP))).isEmpty();
    assertThat(cycle.bottomPosition()).isEqualTo(mm("1.5"));
  }

  @Test
  void makesABillionRepeatsOneByOne() {
    Words words =
        repeated(
            words(incremental("1"), incremental("0"), absolute("1.5"), absolute("2.8")),
            1_000_000_000L);
    Iterator<CycleStep> steps =
        Cycle.begin(Code.G81, mm("3")).with(words).steps(words, point("1", "2", "3"), G99, GAP);
    CycleStep last = steps.next();
    for (int i = 0; i < 300_000; i++) {
      last = steps.next();
    }
    assertThat(last).isEqualTo(rapid("100001", "2", "2.8"));
    assertThat(steps.hasNext()).isTrue();
  }

  @Test
  void makesEndlessPecksOneByOne() {
    Words words = pecked(AT_4_5, Coordinate.of(1));
    Iterator<CycleStep> steps =
        Cycle.begin(Code.G73, mm("3")).with(words).steps(words, point("4", "5", "2.8"), G99, GAP);
    for (int i = 0; i < 100_000; i++) {
      assertThat(steps.hasNext()).isTrue();
      steps.next();
    }
  }

  @Test
  void leavesUnknownWhatItCannotTell() {
    Cycle.Point nowhere = new Cycle.Point(Coordinate.UNKNOWN, mm("2"), Coordinate.UNKNOWN);
    Words words = words(Optional.empty(), absolute("5"), absolute("1.5"), absolute("2.8"));
    Cycle cycle = Cycle.begin(Code.G81, Coordinate.UNKNOWN).with(words);
    assertThat(cycle.refusals()).isEmpty();
    assertThat(all(cycle.steps(words, nowhere, G98, GAP)))
        .containsExactly(
            new Travel(true, Coordinate.UNKNOWN, mm("5"), Coordinate.UNKNOWN),
            new Travel(true, Coordinate.UNKNOWN, mm("5"), mm("2.8")),
            new Travel(false, Coordinate.UNKNOWN, mm("5"), mm("1.5")),
            new Travel(true, Coordinate.UNKNOWN, mm("5"), Coordinate.UNKNOWN));
    // Without G98 or G99 known, the end is unknown, unless both agree.
    assertThat(hole(Code.G81, AT_4_5, Optional.empty()).get(3))
        .isEqualTo(new Travel(true, mm("4"), mm("5"), Coordinate.UNKNOWN));
    Words level = words(absolute("4"), absolute("5"), absolute("1.5"), absolute("3"));
    assertThat(hole(Code.G81, level, Optional.empty()).get(2)).isEqualTo(rapid("4", "5", "3"));
    Words above = words(absolute("4"), absolute("5"), absolute("1.5"), absolute("4"));
    assertThat(hole(Code.G81, above, Optional.empty()).get(3)).isEqualTo(rapid("4", "5", "4"));
    Words unknownLevel =
        words(
            absolute("4"),
            absolute("5"),
            absolute("1.5"),
            Optional.of(new Target(Coordinate.UNKNOWN, false)));
    assertThat(hole(Code.G81, unknownLevel, G98))
        .containsExactly(
            rapid("4", "5", "3"),
            new Travel(true, mm("4"), mm("5"), Coordinate.UNKNOWN),
            feed("4", "5", "1.5"),
            new Travel(true, mm("4"), mm("5"), Coordinate.UNKNOWN));
  }

  @Test
  void followsStoredAndWrittenSideBySide() {
    Words words =
        words(
            Optional.of(new Target(Coordinate.of(1_000, 1_200), true)),
            Optional.empty(),
            absolute("1.5"),
            absolute("2.8"));
    Words twice = repeated(words, 2);
    List<CycleStep> steps =
        all(
            Cycle.begin(Code.G81, mm("3"))
                .with(twice)
                .steps(twice, new Cycle.Point(Coordinate.of(0), mm("0"), mm("2.8")), G99, GAP));
    assertThat(((Travel) steps.get(0)).first()).isEqualTo(Coordinate.of(1_000, 1_200));
    assertThat(((Travel) steps.get(3)).first()).isEqualTo(Coordinate.of(2_000, 2_400));
  }

  @Test
  void saysWhyAControlRefuses() {
    // NISTIR 6556 §3.5.16 and its parts
    assertThat(Cycle.begin(Code.G81, mm("3")).refusals())
        .containsExactly("no R level was given", "no depth was given");
    assertThat(
            Cycle.begin(Code.G81, mm("3"))
                .with(words(Optional.empty(), Optional.empty(), absolute("2"), absolute("1.9")))
                .refusals())
        .containsExactly("the R level lies below the bottom");
    assertThat(Cycle.begin(Code.G83, mm("3")).with(AT_4_5).refusals())
        .containsExactly("no Q was given");
    assertThat(Cycle.begin(Code.G73, mm("3")).with(pecked(AT_4_5, mm("0"))).refusals())
        .containsExactly("Q is not positive");
    assertThat(Cycle.begin(Code.G83, mm("3")).with(pecked(AT_4_5, Coordinate.of(1))).refusals())
        .isEmpty();
    assertThat(Cycle.begin(Code.G82, mm("3")).with(dwelled(AT_4_5, -0.1)).refusals())
        .containsExactly("P is negative");
    assertThat(Cycle.begin(Code.G82, mm("3")).with(dwelled(AT_4_5, 0)).refusals()).isEmpty();
    assertThat(Cycle.begin(Code.G87, mm("3")).with(AT_4_5).refusals())
        .containsExactly(
            "no offset was given for the tool to pass the hole",
            "no upper end of the counterbore was given");
  }

  @Test
  void endsAsAnIteratorDoes() {
    Iterator<CycleStep> steps =
        Cycle.begin(Code.G81, mm("3")).steps(Words.NONE, point("1", "2", "3"), G98, GAP);
    steps.forEachRemaining(step -> {});
    assertThatThrownBy(steps::next).isInstanceOf(NoSuchElementException.class);
  }

  @Test
  void addsCoordinatesWithinTheirRange() {
    Coordinate large = Coordinate.of(Long.MAX_VALUE, 5);
    assertThat(large.plus(Coordinate.of(1))).isEqualTo(Coordinate.UNKNOWN);
    assertThat(large.plus(Coordinate.of(0, 1))).isEqualTo(Coordinate.of(Long.MAX_VALUE, 6));
    assertThat(Coordinate.of(5, Long.MAX_VALUE).plus(Coordinate.of(0, 1)))
        .isEqualTo(Coordinate.UNKNOWN);
    assertThat(Coordinate.of(-2).minus(large)).isEqualTo(Coordinate.UNKNOWN);
    assertThat(Coordinate.of(7, 9).minus(Coordinate.of(2, 3))).isEqualTo(Coordinate.of(5, 6));
    assertThat(Coordinate.of(7).minus(Coordinate.of(Long.MIN_VALUE, 0)))
        .isEqualTo(Coordinate.UNKNOWN);
    assertThat(Coordinate.of(7).minus(Coordinate.of(0, Long.MIN_VALUE)))
        .isEqualTo(Coordinate.UNKNOWN);
    assertThat(Coordinate.of(7).plus(Coordinate.UNKNOWN)).isEqualTo(Coordinate.UNKNOWN);
    assertThat(Coordinate.UNKNOWN.plus(Coordinate.of(7))).isEqualTo(Coordinate.UNKNOWN);
    assertThat(Coordinate.of(7).minus(Coordinate.UNKNOWN)).isEqualTo(Coordinate.UNKNOWN);
    assertThat(Coordinate.of(7).above(Coordinate.of(7))).isFalse();
    assertThat(Coordinate.of(8).above(Coordinate.of(7))).isTrue();
    assertThat(Coordinate.of(8).above(Coordinate.UNKNOWN)).isFalse();
    assertThat(Coordinate.UNKNOWN.above(Coordinate.of(-7))).isFalse();
  }
}

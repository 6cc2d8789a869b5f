package hairline.checks.motion;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.motion.ControlProfile.DwellUnit;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class CycleMotionsTest {
  private static final ControlProfile SECONDS =
      Profiles.with(Runs.TENTH_UM, p -> p.dwellP = Optional.of(DwellUnit.SECONDS));

  private static List<Move> cycleMoves(String... lines) {
    return Runs.of(Move.class, Runs.events(SECONDS, lines)).stream()
        .filter(move -> move.source() == Move.Source.CYCLE)
        .toList();
  }

  private static List<String> texts(String... lines) {
    return cycleMoves(lines).stream().map(Runs::text).toList();
  }

  @Test
  void exampleOneOfTheReport() {
    // NISTIR 6556 §3.5.16.2, example 1.
    assertThat(texts("G0 X1 Y2 Z3", "G90 G81 G98 X4 Y5 Z1.5 R2.8 F10"))
        .containsExactly("RAPID X4 Y5 Z3", "RAPID X4 Y5 Z2.8", "LINE X4 Y5 Z1.5", "RAPID X4 Y5 Z3");
  }

  @Test
  void exampleTwoOfTheReport() {
    // NISTIR 6556 §3.5.16.2, example 2: three holes in incremental mode.
    assertThat(texts("G0 X1 Y2 Z3", "G91 G81 G98 X4 Y5 Z-0.6 R1.8 L3 F10"))
        .containsExactly(
            "RAPID X1 Y2 Z4.8",
            "RAPID X5 Y7 Z4.8",
            "LINE X5 Y7 Z4.2",
            "RAPID X5 Y7 Z4.8",
            "RAPID X9 Y12 Z4.8",
            "LINE X9 Y12 Z4.2",
            "RAPID X9 Y12 Z4.8",
            "RAPID X13 Y17 Z4.8",
            "LINE X13 Y17 Z4.2",
            "RAPID X13 Y17 Z4.8");
  }

  @Test
  void kRepeatsAsLDoes() {
    String[] begin = {"G0 X1 Y2 Z3", "G91 G81 G98 X4 Y5 Z-0.6 R1.8 L3 F10"};
    String[] withK = {"G0 X1 Y2 Z3", "G91 G81 G98 X4 Y5 Z-0.6 R1.8 K3 F10"};
    assertThat(texts(withK)).isEqualTo(texts(begin));
  }

  @Test
  void numbersStayWithTheCycle() {
    assertThat(texts("G0 X0 Y0 Z3", "G99 G81 X1 Z-1 R1 F10", "X2", "G80", "G0 X5"))
        .containsExactly(
            "RAPID X1 Y0 Z3",
            "RAPID X1 Y0 Z1",
            "LINE X1 Y0 Z-1",
            "RAPID X1 Y0 Z1",
            "RAPID X2 Y0 Z1",
            "LINE X2 Y0 Z-1",
            "RAPID X2 Y0 Z1");
  }

  @Test
  void g98ReturnsToTheLevelBeforeTheFirstHole() {
    // physics.md §12 of the project: the Z that stood when the cycle mode began.
    List<String> moves = texts("G0 X0 Y0 Z5", "G99 G81 X1 Z-1 R1 F10", "G98 X2");
    assertThat(moves.get(moves.size() - 1)).isEqualTo("RAPID X2 Y0 Z5");
  }

  @Test
  void anotherPlaneBeginsAnew() {
    assertThat(texts("G0 X0 Y0 Z3", "G18 G81 Z1 X2 Y-1 R1 F10", "G80"))
        .containsExactly("RAPID X0 Y1 Z3", "RAPID X2 Y1 Z1", "LINE X2 Y-1 Z1", "RAPID X2 Y1 Z1");
    List<Event> events = Runs.events(SECONDS, "G0 X0 Y0 Z3", "G81 X1 Z-1 R1 F10", "G18 X2", "G80");
    // Nothing is known of the hole in the new plane.
    assertThat(Runs.of(Event.WordRefused.class, events)).isNotEmpty();
  }

  @Test
  void shiftsCountForLevels() {
    assertThat(texts("G0 X0 Y0 Z3", "G92 X10 Y10 Z13", "G99 G81 X11 Z9 R11 F10"))
        .containsExactly("RAPID X1 Y0 Z3", "RAPID X1 Y0 Z1", "LINE X1 Y0 Z-1", "RAPID X1 Y0 Z1");
  }

  @Test
  void peckGapComesFromTheProfile() {
    ControlProfile gap = Profiles.with(SECONDS, p -> p.peckGapPm = 100_000_000);
    assertThat(Runs.moves(gap, "G0 X0 Y0 Z1", "G99 G83 Z-2 R1 Q1.5 F10").stream().skip(1).toList())
        .containsExactly(
            "LINE X0 Y0 Z-0.5",
            "RAPID X0 Y0 Z1",
            "RAPID X0 Y0 Z-0.4",
            "LINE X0 Y0 Z-2",
            "RAPID X0 Y0 Z1");
  }

  @Test
  void dwellsAtTheBottom() {
    List<Event> events = Runs.events(SECONDS, "G0 X0 Y0 Z1", "G99 G82 Z-2 R1 P0.5 F10");
    assertThat(Runs.only(Event.Dwelled.class, events).seconds()).hasValue(0.5);
    ControlProfile milliseconds =
        Profiles.with(SECONDS, p -> p.dwellP = Optional.of(DwellUnit.MILLISECONDS));
    events = Runs.events(milliseconds, "G0 X0 Y0 Z1", "G99 G82 Z-2 R1 P500 F10");
    assertThat(Runs.only(Event.Dwelled.class, events).seconds()).hasValue(0.5);
    events = Runs.events(Runs.TENTH_UM, "G0 X0 Y0 Z1", "G99 G82 Z-2 R1 P500 F10");
    assertThat(Runs.only(Event.Dwelled.class, events).seconds()).isEmpty();
  }

  @Test
  void tappingReversesTheSpindleAndLeavesItAsItWas() {
    List<Event> events =
        Runs.events(SECONDS, "S300 M3", "G0 X0 Y0 Z1", "G99 G84 Z-2 R1 F150", "G80 G0 Z5");
    assertThat(Runs.of(Event.SpindleChanged.class, events))
        .extracting(event -> event.after().spindle().value().orElseThrow())
        .containsExactly(
            Modes.Spindle.CLOCKWISE,
            Modes.Spindle.STOPPED,
            Modes.Spindle.COUNTER_CLOCKWISE,
            Modes.Spindle.STOPPED,
            Modes.Spindle.CLOCKWISE);
    List<Move> moves = Runs.of(Move.class, events);
    assertThat(moves.get(2).modes().spindle().value()).hasValue(Modes.Spindle.COUNTER_CLOCKWISE);
  }

  @Test
  void boringRestartsTheSpindleInItsDirection() {
    List<Event> events =
        Runs.events(SECONDS, "S300 M4", "G0 X0 Y0 Z1", "G99 G86 Z-2 R1 F150", "G80 G0 Z5");
    List<Move> moves = Runs.of(Move.class, events);
    assertThat(moves.get(2).modes().spindle().value()).hasValue(Modes.Spindle.STOPPED);
    assertThat(moves.get(3).modes().spindle().value()).hasValue(Modes.Spindle.COUNTER_CLOCKWISE);
    assertThat(moves.get(3).modes()).isEqualTo(moves.get(1).modes());
  }

  @Test
  void theOperatorTakesTheToolOutOfG88() {
    List<Event> events =
        Runs.events(SECONDS, "S300 M3", "G0 X0 Y0 Z1", "G99 G88 Z-2 R1 P1 F150", "G80 G0 X5");
    assertThat(Runs.only(Event.Stopped.class, events).code()).isEqualTo("G88");
    Move last = Runs.of(Move.class, events).get(3);
    assertThat(last.from().knows(Axis.Z)).isFalse();
  }

  @Test
  void aCycleThatControlsRefuseIsTold() {
    List<Event> events = Runs.events(SECONDS, "G0 X0 Y0 Z1", "G81 X1 Z-1 F10", "G80 G0 Y1");
    assertThat(Runs.only(Event.WordRefused.class, events).why()).isEqualTo("no R level was given");
    Move after = Runs.of(Move.class, events).get(1);
    assertThat(after.from().knows(Axis.X)).isFalse();
    assertThat(after.from().knows(Axis.Y)).isTrue();
    assertThat(after.from().knows(Axis.Z)).isFalse();
  }

  @Test
  void aBillionRepeatsEndWithTheBudget() {
    ControlProfile short1000 = Profiles.with(SECONDS, p -> p.stepBudget = 1000);
    List<Event> events =
        Runs.events(short1000, "G0 X0 Y0 Z1", "G91 G81 X1 Z-1 R0 L1000000000 F10", "M30");
    assertThat(Runs.of(Event.StepBudgetReached.class, events)).hasSize(1);
    assertThat(Runs.of(Event.Ended.class, events)).isEmpty();
    assertThat(Runs.of(Move.class, events)).hasSizeLessThan(1001);
  }

  @Test
  void repeatsThatAreTooManyEndBehindTheFirstThousand() {
    ControlProfile ample = Profiles.with(SECONDS, p -> p.stepBudget = 50_000_000);
    List<Event> events =
        Runs.events(ample, "G0 X0 Y0 Z1", "G91 G81 X1 Z-1 R0 L1000000000 F10", "G90 X0", "M30");
    Event.StepBudgetReached reached = Runs.only(Event.StepBudgetReached.class, events);
    assertThat(reached.budget()).isEqualTo(50_000_000);
    assertThat(reached.repeats()).hasValue(1_000_000_000);
    assertThat(reached.at().line()).isEqualTo(2);
    assertThat(events.get(events.size() - 1)).isEqualTo(reached);
    List<Move> moves = Runs.of(Move.class, events);
    // A thousand holes, 1 mm apart.
    assertThat(moves.get(moves.size() - 1).to().xPm()).isEqualTo(1_000L * 1_000_000_000L);
  }

  @Test
  void unknownLevelsStayUnknown() {
    List<Move> moves = cycleMoves("G81 X1 Y1 Z-1 R1 F10");
    // Nobody knows where Z stood, so the level to return to (G98) is unknown.
    assertThat(moves)
        .extracting(Runs::text)
        .containsExactly("RAPID X1 Y1", "RAPID X1 Y1 Z1", "LINE X1 Y1 Z-1", "RAPID X1 Y1");
  }

  @Test
  void aCycleWithTwoWordsOfALetterLosesThatAxis() {
    List<Move> moves = cycleMoves("G0 X0 Y0 Z3", "G99 G81 X1 X2 Z-1 R1 F10");
    assertThat(moves.get(moves.size() - 1).to().knows(Axis.X)).isFalse();
    assertThat(moves.get(moves.size() - 1).to().knows(Axis.Z)).isTrue();
  }

  @Test
  void columnsOfACycleBlock() {
    Move move = cycleMoves("G0 X0 Y0 Z3", "N7 G99 G81 X1 Z-1 R1 F10").get(0);
    assertThat(move.at()).isEqualTo(new Place(0, 2, new hairline.parser.Span(8, 21)));
  }
}

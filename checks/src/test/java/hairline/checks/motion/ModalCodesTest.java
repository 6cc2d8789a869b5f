package hairline.checks.motion;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.motion.ControlProfile.DwellUnit;
import hairline.checks.motion.Event.MachineCode.Meaning;
import hairline.checks.motion.Modal.Origin;
import hairline.checks.motion.Modes.Compensation;
import hairline.checks.motion.Modes.CycleReturn;
import hairline.checks.motion.Modes.Distance;
import hairline.checks.motion.Modes.FeedMode;
import hairline.checks.motion.Modes.PathMode;
import hairline.checks.motion.Modes.Plane;
import hairline.checks.motion.Modes.Spindle;
import hairline.checks.motion.Modes.Units;
import hairline.parser.Span;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ModalCodesTest {
  /** The state at the end of a program. */
  private static Modes end(String... lines) {
    return Runs.only(Event.Ended.class, lines).modes();
  }

  private static List<String> names(List<Event> events, Class<?>... kinds) {
    return events.stream()
        .filter(event -> List.of(kinds).contains(event.getClass()))
        .map(event -> event.getClass().getSimpleName())
        .toList();
  }

  @Test
  void everyModalGroupOfTheReport() {
    // NISTIR 6556 tables 4 and 5, with the ISO and trade codes.
    record Case(String code, Function<Modes, Modal<?>> item, Object value) {}
    List<Case> cases =
        List.of(
            new Case("G17", Modes::plane, Plane.XY),
            new Case("G18", Modes::plane, Plane.ZX),
            new Case("G19", Modes::plane, Plane.YZ),
            new Case("G20", Modes::units, Units.INCH),
            new Case("G21", Modes::units, Units.MM),
            new Case("G70", Modes::units, Units.INCH),
            new Case("G71", Modes::units, Units.MM),
            new Case("G40", Modes::compensation, Compensation.OFF),
            new Case("G41", Modes::compensation, Compensation.LEFT),
            new Case("G42", Modes::compensation, Compensation.RIGHT),
            new Case("G43 H3", Modes::lengthOffset, 3),
            new Case("G44 H4", Modes::lengthOffset, 4),
            new Case("G49", Modes::lengthOffset, 0),
            new Case("G54", Modes::workOffset, "G54"),
            new Case("G59", Modes::workOffset, "G59"),
            new Case("G59.1", Modes::workOffset, "G59.1"),
            new Case("G59.3", Modes::workOffset, "G59.3"),
            new Case("G61", Modes::pathMode, PathMode.EXACT_PATH),
            new Case("G61.1", Modes::pathMode, PathMode.EXACT_STOP),
            new Case("G64", Modes::pathMode, PathMode.CONTINUOUS),
            new Case("G90", Modes::distance, Distance.ABSOLUTE),
            new Case("G91", Modes::distance, Distance.INCREMENTAL),
            new Case("G90.1", Modes::arcDistance, Distance.ABSOLUTE),
            new Case("G91.1", Modes::arcDistance, Distance.INCREMENTAL),
            new Case("G93", Modes::feedMode, FeedMode.INVERSE_TIME),
            new Case("G94", Modes::feedMode, FeedMode.PER_MINUTE),
            new Case("G95", Modes::feedMode, FeedMode.PER_REVOLUTION),
            new Case("G98", Modes::cycleReturn, CycleReturn.INITIAL_LEVEL),
            new Case("G99", Modes::cycleReturn, CycleReturn.R_LEVEL),
            new Case("M3", Modes::spindle, Spindle.CLOCKWISE),
            new Case("M4", Modes::spindle, Spindle.COUNTER_CLOCKWISE),
            new Case("M5", Modes::spindle, Spindle.STOPPED),
            new Case("M13", Modes::spindle, Spindle.CLOCKWISE),
            new Case("M14", Modes::spindle, Spindle.COUNTER_CLOCKWISE),
            new Case("M19", Modes::spindle, Spindle.STOPPED),
            new Case("M7", Modes::coolant, new Modes.Coolant(true, false)),
            new Case("M8", Modes::coolant, new Modes.Coolant(false, true)),
            new Case("M13", Modes::coolant, new Modes.Coolant(false, true)),
            new Case("M9", Modes::coolant, Modes.Coolant.OFF),
            new Case("D5", Modes::compensationNumber, 5),
            new Case("G41 D6", Modes::compensationNumber, 6),
            new Case("F100", Modes::feed, 100.0),
            new Case("S20000", Modes::speedRpm, 20000.0),
            new Case("T7 M6", Modes::tool, 7));
    for (Case each : cases) {
      Modal<?> item = each.item().apply(end("", "N20 " + each.code()));
      assertThat(item.value().map(Object.class::cast)).as(each.code()).hasValue(each.value());
      assertThat(item.origin()).as(each.code()).isEqualTo(Origin.STATED);
      assertThat(item.line()).as(each.code()).isEqualTo(2);
      assertThat(Runs.of(Event.CodeUnknown.class, each.code())).as(each.code()).isEmpty();
    }
  }

  @Test
  void codesWithoutStateAreKnown() {
    for (String code :
        List.of(
            "G9", "G80", "M0", "M1", "M2", "M30", "M48", "M49", "M60", "M10", "M11", "G4 P1", "G53",
            "M99")) {
      assertThat(Runs.of(Event.CodeUnknown.class, code)).as(code).isEmpty();
      assertThat(Runs.of(Event.BecameUnknown.class, code)).as(code).isEmpty();
    }
  }

  @Test
  void startOfTheTradeIsAssumed() {
    Modes modes = end("");
    assertThat(modes.units()).isEqualTo(Modal.assumed(Units.MM));
    assertThat(modes.plane()).isEqualTo(Modal.assumed(Plane.XY));
    assertThat(modes.distance()).isEqualTo(Modal.assumed(Distance.ABSOLUTE));
    assertThat(modes.feedMode()).isEqualTo(Modal.assumed(FeedMode.PER_MINUTE));
    assertThat(modes.spindle()).isEqualTo(Modal.assumed(Spindle.STOPPED));
    assertThat(modes.tool()).isEqualTo(Modal.unset());
    assertThat(modes.workOffset()).isEqualTo(Modal.unset());
    assertThat(modes.operation()).isEqualTo(1);
  }

  @Test
  void theSheetGivesTheStart() {
    ControlProfile sheet =
        Profiles.with(
            Runs.TENTH_UM,
            p -> {
              p.units = Optional.of(Units.INCH);
              p.plane = Optional.of(Plane.ZX);
              p.distance = Optional.of(Distance.INCREMENTAL);
              p.feedMode = Optional.of(FeedMode.PER_REVOLUTION);
            });
    List<Event> events = Runs.events(sheet, "G1 X1 F1", "G2 X1 R1");
    Modes modes = Runs.only(Event.Ended.class, events).modes();
    assertThat(modes.units()).isEqualTo(Modal.fromSheet(Units.INCH));
    assertThat(modes.plane()).isEqualTo(Modal.fromSheet(Plane.ZX));
    assertThat(modes.distance()).isEqualTo(Modal.fromSheet(Distance.INCREMENTAL));
    assertThat(modes.feedMode()).isEqualTo(Modal.fromSheet(FeedMode.PER_REVOLUTION));
    assertThat(Runs.of(Event.StartAssumed.class, events)).isEmpty();
  }

  @Test
  void whatIsAssumedIsToldWhenItCounts() {
    List<Event> events =
        Runs.events(Runs.TENTH_UM, "G0 X1", "G1 X2 F10", "X3", "G2 X4 R1", "X5 R1");
    assertThat(Runs.of(Event.StartAssumed.class, events))
        .extracting(event -> event.at().line() + " " + event.item() + " " + event.assumed())
        .containsExactly(
            "1 units mm", "1 distance absolute", "2 feed mode per minute", "4 plane XY");
    assertThat(Runs.only(Event.OffsetAssumed.class, events).at().line()).isEqualTo(1);
    assertThat(
            Runs.of(Event.StartAssumed.class, "G21 G90 G94 G17 G54 G0 X1", "G1 X2 F1", "G2 X3 R1"))
        .isEmpty();
    assertThat(Runs.of(Event.OffsetAssumed.class, "G54 G0 X1")).isEmpty();
    assertThat(Runs.of(Event.OffsetAssumed.class, "G91 G28 Z0", "G91 G0 Z1")).isEmpty();
    assertThat(Runs.of(Event.OffsetAssumed.class, "G28 Z0")).hasSize(1);
    assertThat(Runs.of(Event.StartAssumed.class, "G21 G90 G41 D1"))
        .extracting(Event.StartAssumed::item)
        .containsExactly("plane");
  }

  @Test
  void aCoordinateBeforeAnyMotionCodeIsTakenAsAFeed() {
    // NISTIR 6556 §3.6.1: the motion mode is G1 after a program's end.
    List<Event> events = Runs.events(Runs.TENTH_UM, "G21 G90 G94 X1 F10", "Y1");
    assertThat(Runs.of(Move.class, events)).extracting(Move::kind).containsOnly(Move.Kind.LINE);
    assertThat(Runs.only(Event.StartAssumed.class, events).item()).isEqualTo("motion");
  }

  @Test
  void stateIsOneObjectWhileNothingChanges() {
    List<Move> moves =
        Runs.of(Move.class, "G1 X1 F100 S1000 M3", "G1 X2 F100", "G90", "X3 F100 M3");
    assertThat(moves.get(1).modes()).isSameAs(moves.get(0).modes());
    // G90 states what was assumed before.
    assertThat(moves.get(2).modes()).isNotEqualTo(moves.get(0).modes());
    assertThat(Runs.of(Event.ModesChanged.class, "G1 X1 F100", "G1 X2 F100", "X3 F200")).hasSize(2);
  }

  @Test
  void orderOfExecution() {
    // NISTIR 6556 table 8, with M5 and M9 behind the motion (common practice, no source).
    ControlProfile seconds =
        Profiles.with(
            Runs.TENTH_UM,
            p -> {
              p.dwellP = Optional.of(DwellUnit.SECONDS);
              p.codes = Map.of("M71", Meaning.WARM_UP);
            });
    List<Event> events =
        Runs.events(
            seconds,
            "M0 X1. G1 G91 G43 H2 G41 D2 G20 G4 P1 M71 M8 M3 M6 T2 S1000 F10 G54 G18",
            "M30 G90 G0 X0 M9 M5");
    assertThat(
            events.stream()
                .filter(event -> event.at().line() == 1)
                .map(event -> event.getClass().getSimpleName()))
        .containsExactly(
            "BlockStarted",
            "ToolChanged",
            "SpindleChanged",
            "MachineCode",
            "Dwelled",
            "CompensationSet",
            "LengthOffsetSet",
            "ModesChanged",
            "StartAssumed",
            "Move",
            "Stopped");
    assertThat(
            events.stream()
                .filter(event -> event.at().line() == 2)
                .map(e -> e.getClass().getSimpleName()))
        .containsExactly(
            "BlockStarted", "ModesChanged", "Move", "SpindleChanged", "ModesChanged", "Ended");
    Move first = Runs.of(Move.class, events).get(0);
    assertThat(first.modes().tool().value()).hasValue(2);
    assertThat(first.modes().turningRpm()).hasValue(1000.0);
    assertThat(first.modes().coolant().value()).hasValue(new Modes.Coolant(false, true));
    assertThat(first.feedMmPerMin()).hasValue(254);
    Move last = Runs.of(Move.class, events).get(1);
    assertThat(last.modes().spindle().is(Spindle.CLOCKWISE)).isTrue();
    assertThat(last.modes().coolant().value().orElseThrow().on()).isTrue();
    Modes end = Runs.only(Event.Ended.class, events).modes();
    assertThat(end.spindle().is(Spindle.STOPPED)).isTrue();
    assertThat(end.coolant().is(Modes.Coolant.OFF)).isTrue();
  }

  @Test
  void spindleStartsBeforeTheMotionOfItsBlock() {
    for (String code : List.of("M3", "M4", "M7", "M8")) {
      Move move = Runs.only(Move.class, "G1 X1 F1 S5 " + code);
      boolean on =
          move.modes().coolant().value().orElseThrow().on()
              || !move.modes().spindle().is(Spindle.STOPPED);
      assertThat(on).as(code).isTrue();
    }
  }

  @Test
  void spindleEventsTellChangesOfTurning() {
    List<Event> events =
        Runs.events(
            Runs.TENTH_UM,
            "S1000",
            "M3",
            "M3",
            "S1000",
            "S2000",
            "S3000 M3",
            "M4",
            "M5",
            "M5",
            "S500",
            "M5 S600");
    assertThat(Runs.of(Event.SpindleChanged.class, events))
        .extracting(event -> event.at().line())
        .containsExactly(2, 5, 6, 7, 8);
    Event.SpindleChanged second = Runs.of(Event.SpindleChanged.class, events).get(1);
    assertThat(second.before().turningRpm()).hasValue(1000.0);
    assertThat(second.after().turningRpm()).hasValue(2000.0);
    assertThat(second.at().span()).isEqualTo(new Span(1, 6));
  }

  @Test
  void aToolChangeStopsTheSpindle() {
    List<Event> events = Runs.events(Runs.TENTH_UM, "S1000 M3", "T5", "N3 M6 T4 M3 S2000", "M6");
    assertThat(names(events, Event.SpindleChanged.class, Event.ToolChanged.class))
        .containsExactly(
            "SpindleChanged",
            "SpindleChanged",
            "ToolChanged",
            "SpindleChanged",
            "SpindleChanged",
            "ToolChanged");
    Event.ToolChanged change = Runs.of(Event.ToolChanged.class, events).get(0);
    assertThat(change.before()).isEqualTo(Modal.unset());
    assertThat(change.after()).isEqualTo(Modal.stated(4, 3));
    assertThat(change.modes().spindle().is(Spindle.STOPPED)).isTrue();
    assertThat(change.at().span()).isEqualTo(new Span(4, 9));
    // "the tool most recently selected (using a T word)" (NISTIR 6556 §3.6.3).
    assertThat(Runs.of(Event.ToolChanged.class, events).get(1).after().value()).hasValue(4);
  }

  @Test
  void m6WithoutAnyToolIsUnknown() {
    Event.ToolChanged change = Runs.only(Event.ToolChanged.class, "", "M6");
    assertThat(change.after()).isEqualTo(Modal.unknown(2));
  }

  @Test
  void toolNumbersAreWholeAndNotNegative() {
    for (String word : List.of("T1.5", "T-1", "T[1/0]")) {
      List<Event> events = Runs.events(Runs.TENTH_UM, "T2", word + " M6");
      assertThat(Runs.of(Event.WordRefused.class, events)).as(word).hasSize(1);
      assertThat(Runs.only(Event.ToolChanged.class, events).after().isUnknown()).isTrue();
    }
    assertThat(Runs.only(Event.ToolChanged.class, "T3.00001 M6").after().value()).hasValue(3);
  }

  @Test
  void operationsBeginWithToolAndSpeed() {
    List<Move> moves =
        Runs.of(
            Move.class,
            "T1 M6",
            "S1000 M3",
            "G1 X1 F1",
            "S1000",
            "X2",
            "S2000",
            "X3",
            "M5",
            "M3 X4",
            "T2 M6",
            "S500 M3",
            "X5",
            "G96 S50",
            "X6");
    assertThat(moves)
        .extracting(move -> move.modes().operation())
        .containsExactly(1, 1, 2, 2, 3, 4);
  }

  @Test
  void heightIsUnknownAfterAToolChangeUntilItsNextWord() {
    List<Move> moves = Runs.of(Move.class, "G0 X0 Y0 Z5", "T1 M6", "X1", "Z1", "X2");
    assertThat(moves.get(1).to().knows(Axis.Z)).isFalse();
    assertThat(moves.get(1).to().knowsXy()).isTrue();
    assertThat(moves.get(2).to().zPm()).isEqualTo(1_000_000_000L);
    assertThat(moves.get(3).to().knowsXyz()).isTrue();
  }

  @Test
  void lengthOffsetMakesTheHeightUnknownUntilItsNextWord() {
    for (String code : List.of("G43 H1", "G44 H1", "G49")) {
      List<Move> moves =
          Runs.of(Move.class, "G0 X0 Y0 Z5", code, "X1", code, "Z1", "X2", code, "X3");
      assertThat(moves.get(1).from().knows(Axis.Z)).as(code).isFalse();
      // The same offset for the same tool changes nothing.
      assertThat(moves.get(4).from().knows(Axis.Z)).as(code).isTrue();
    }
    List<Move> moves = Runs.of(Move.class, "G0 Z5", "G43 H1 Z5", "T2 M6", "G43 H1", "X1");
    assertThat(moves.get(moves.size() - 1).to().knows(Axis.Z)).isFalse();
  }

  @Test
  void lengthOffsetNumbers() {
    assertThat(Runs.of(Event.LengthOffsetSet.class, "G43 H1", "H2", "G49", "H3", "G43 H4"))
        .extracting(Event.LengthOffsetSet::number)
        .containsExactly(1, 2, 0, 4);
    List<Event> events = Runs.events(Runs.TENTH_UM, "G43");
    assertThat(Runs.only(Event.WordRefused.class, events).why())
        .isEqualTo("an H word is due beside it");
    assertThat(Runs.only(Event.Ended.class, events).modes().lengthOffset().isUnknown()).isTrue();
    assertThat(Runs.only(Event.BecameUnknown.class, events).what()).isEqualTo("length offset");
    events = Runs.events(Runs.TENTH_UM, "G43 H1 H2");
    assertThat(Runs.of(Event.LengthOffsetSet.class, events)).isEmpty();
    assertThat(Runs.only(Event.Ended.class, events).modes().lengthOffset().isUnknown()).isTrue();
    assertThat(Runs.only(Event.LengthOffsetSet.class, "N1 G43 Z5 H1").at().span())
        .isEqualTo(new Span(4, 13));
  }

  @Test
  void aChangeOfOffsetMakesEveryAxisUnknown() {
    List<Move> moves = Runs.of(Move.class, "G54 G0 X1 Y1 Z1 A1", "G54 X2", "G55 Y2", "X3");
    assertThat(moves.get(1).to().unknown()).isEqualTo(Axis.B.bit() + Axis.C.bit());
    assertThat(moves.get(2).from()).isEqualTo(Position.UNKNOWN);
    assertThat(moves.get(3).to().knowsXy()).isTrue();
    assertThat(moves.get(3).to().knows(Axis.Z)).isFalse();
  }

  @Test
  void compensationIsToldWhenItChanges() {
    List<Event.CompensationSet> set =
        Runs.of(
            Event.CompensationSet.class, "G17 G40", "G41 D3 G1 X1 F1", "G41", "G42", "G40", "G40");
    assertThat(set)
        .extracting(event -> event.at().line() + " " + event.before() + " " + event.after())
        .containsExactly("2 OFF LEFT", "4 LEFT RIGHT", "5 RIGHT OFF");
    assertThat(set.get(0).at().span()).isEqualTo(new Span(1, 7));
    assertThat(set.get(0).modes().compensationNumber().value()).hasValue(3);
  }

  @Test
  void compensationDoesNotShiftThePath() {
    assertThat(Runs.moves("G0 X0 Y0 Z0", "G41 D1 G1 X1 F1", "Y1"))
        .containsExactly("RAPID X0 Y0 Z0", "LINE X1 Y0 Z0", "LINE X1 Y1 Z0");
  }

  @Test
  void feedModesVoidTheFeedOfAnother() {
    assertThat(end("F100", "G95").feed()).isEqualTo(Modal.unset());
    assertThat(end("F100", "G94").feed().value()).hasValue(100.0);
    assertThat(end("F100", "G95 F0.1").feed().value()).hasValue(0.1);
  }

  @Test
  void inverseTimeNeedsAFeedInEachBlock() {
    // NISTIR 6556 §3.5.19.
    List<Move> moves =
        Runs.of(Move.class, "G0 X0 Y0 Z0", "G93 G1 X1 F10", "X2", "X3 F20", "G0 X4", "G1 X5");
    assertThat(moves.get(1).feedMmPerMin()).hasValue(10);
    assertThat(moves.get(2).feedMmPerMin()).isEmpty();
    assertThat(moves.get(2).modes().feed()).isEqualTo(Modal.unset());
    assertThat(moves.get(3).feedMmPerMin()).hasValue(20);
    assertThat(moves.get(5).feedMmPerMin()).isEmpty();
  }

  @Test
  void feedAndSpeedAreNotNegative() {
    List<Event> events = Runs.events(Runs.TENTH_UM, "F-10 S-10");
    assertThat(Runs.of(Event.WordRefused.class, events))
        .extracting(Event.WordRefused::word)
        .containsExactly("F-10", "S-10");
    Modes modes = Runs.only(Event.Ended.class, events).modes();
    assertThat(modes.feed().isUnknown()).isTrue();
    assertThat(modes.speedRpm().isUnknown()).isTrue();
    assertThat(end("F0 S0").feed().value()).hasValue(0.0);
    assertThat(Runs.of(Event.WordRefused.class, "F0 S0")).isEmpty();
  }

  @Test
  void surfaceSpeed() {
    Modes modes = end("S1000 M3", "G96 S80");
    assertThat(modes.surfaceSpeed()).isTrue();
    assertThat(modes.speedRpm().value()).hasValue(80.0);
    assertThat(modes.turningRpm()).isEmpty();
    assertThat(end("G96 S80", "G97").speedRpm()).isEqualTo(Modal.unset());
    assertThat(end("G96 S80", "G97 S100").speedRpm().value()).hasValue(100.0);
    assertThat(end("S100", "G97").speedRpm().value()).hasValue(100.0);
  }

  @Test
  void coolants() {
    assertThat(end("M7", "M8").coolant().value()).hasValue(new Modes.Coolant(true, true));
    assertThat(end("M7 M8").coolant().value()).hasValue(new Modes.Coolant(true, true));
    assertThat(end("M8 M7").coolant().value()).hasValue(new Modes.Coolant(true, true));
    assertThat(Runs.of(Event.CodesConflict.class, "M7 M8")).isEmpty();
    assertThat(end("M7 M8", "M9").coolant().value()).hasValue(Modes.Coolant.OFF);
    assertThat(Runs.of(Event.CodesConflict.class, "M8 M9")).hasSize(1);
  }

  @ParameterizedTest
  @CsvSource({
    "P1.5, SECONDS, 1.5",
    "P1500, MILLISECONDS, 1.5",
    "X2, SECONDS, 2",
    "X2000, MILLISECONDS, 2"
  })
  void dwells(String word, DwellUnit unit, double seconds) {
    ControlProfile profile =
        Profiles.with(
            Runs.TENTH_UM,
            p -> {
              p.dwellP = word.startsWith("P") ? Optional.of(unit) : Optional.empty();
              p.dwellX = word.startsWith("X") ? Optional.of(unit) : Optional.empty();
            });
    List<Event> events = Runs.events(profile, "G0 X0", "G4 " + word, "G1 X1 F1");
    Event.Dwelled dwell = Runs.only(Event.Dwelled.class, events);
    assertThat(dwell.seconds()).hasValue(seconds);
    assertThat(dwell.at().span()).isEqualTo(new Span(1, 4 + word.length()));
    // The X of a dwell moves nothing.
    assertThat(Runs.of(Move.class, events)).hasSize(2);
    assertThat(Runs.of(Move.class, events).get(1).from().xPm()).isZero();
  }

  @Test
  void dwellsWithoutAKnownTime() {
    assertThat(Runs.only(Event.Dwelled.class, "G4 P1").seconds()).isEmpty();
    assertThat(Runs.only(Event.Dwelled.class, "G4").seconds()).isEmpty();
    ControlProfile seconds =
        Profiles.with(Runs.TENTH_UM, p -> p.dwellP = Optional.of(DwellUnit.SECONDS));
    List<Event> events = Runs.events(seconds, "G4 P-1");
    assertThat(Runs.only(Event.WordRefused.class, events).word()).isEqualTo("P-1");
    assertThat(Runs.only(Event.Dwelled.class, events).seconds()).isEmpty();
  }

  @Test
  void aDwellBesideAMotionComesFirst() {
    assertThat(names(Runs.events(Runs.TENTH_UM, "G1 X1 F1 G4 P1"), Event.Dwelled.class, Move.class))
        .containsExactly("Dwelled", "Move");
  }

  @Test
  void stopsAreTold() {
    assertThat(Runs.of(Event.Stopped.class, "M0", "M1", "M60"))
        .extracting(Event.Stopped::code)
        .containsExactly("M0", "M1", "M60");
  }

  @Test
  void endsAreTold() {
    assertThat(Runs.only(Event.Ended.class, "G0 X1", "M2", "G0 X2").code()).hasValue("M2");
    assertThat(Runs.moves("G0 X1", "M30", "G0 X2")).hasSize(1);
    assertThat(Runs.only(Event.Ended.class, "M30").code()).hasValue("M30");
    assertThat(Runs.only(Event.Ended.class, "M99").code()).hasValue("M99");
    assertThat(Runs.only(Event.Ended.class, "G0 X1").code()).isEmpty();
    // What stands at the end is not reset.
    assertThat(end("M3 G41", "M30").compensation().is(Compensation.LEFT)).isTrue();
  }

  @Test
  void codesOfTheSheet() {
    ControlProfile sheet =
        Profiles.with(
            Runs.TENTH_UM,
            p ->
                p.codes =
                    Map.of(
                        "M71", Meaning.WARM_UP,
                        "M72", Meaning.MEASURE_TOOL,
                        "M50", Meaning.COOLANT_ON,
                        "M7", Meaning.COOLANT_ON,
                        "M51", Meaning.COOLANT_OFF,
                        "G5.1", Meaning.IGNORE,
                        "P9001", Meaning.WARM_UP));
    List<Event> events =
        Runs.events(
            sheet,
            "G0 X0 Y0 Z0",
            "M71",
            "G1 X1 F1",
            "M72",
            "M50",
            "G5.1 Q1",
            "M98 P9001",
            "G65 P9001 A3.");
    assertThat(Runs.of(Event.MachineCode.class, events))
        .extracting(event -> event.at().line() + " " + event.code() + " " + event.meaning())
        .containsExactly(
            "2 M71 WARM_UP",
            "4 M72 MEASURE_TOOL",
            "5 M50 COOLANT_ON",
            "6 G5.1 IGNORE",
            "7 P9001 WARM_UP",
            "8 P9001 WARM_UP");
    assertThat(Runs.of(Event.CodeUnknown.class, events)).isEmpty();
    assertThat(Runs.of(Event.SubprogramMissing.class, events)).isEmpty();
    assertThat(Runs.only(Event.Ended.class, events).modes().coolant().value())
        .hasValue(new Modes.Coolant(false, true));
    events = Runs.events(sheet, "M7", "M51");
    assertThat(Runs.of(Event.MachineCode.class, events).get(0).modes().coolant().value())
        .hasValue(new Modes.Coolant(true, false));
    assertThat(Runs.only(Event.Ended.class, events).modes().coolant().value())
        .hasValue(Modes.Coolant.OFF);
  }

  @Test
  void measuringMovesTheMachine() {
    ControlProfile sheet =
        Profiles.with(Runs.TENTH_UM, p -> p.codes = Map.of("M72", Meaning.MEASURE_TOOL));
    List<Move> moves = Runs.of(Move.class, Runs.events(sheet, "G0 X0 Y0 Z0", "M72", "X1"));
    assertThat(moves.get(1).from()).isEqualTo(Position.UNKNOWN);
  }

  @Test
  void leadingZerosDoNotMatter() {
    assertThat(end("G01 G020 M03").spindle().is(Spindle.CLOCKWISE)).isTrue();
    assertThat(end("G[2*10]").units().is(Units.INCH)).isTrue();
    assertThat(end("G20.000004").units().is(Units.INCH)).isTrue();
    assertThat(end("G20.0").units().is(Units.INCH)).isTrue();
  }
}

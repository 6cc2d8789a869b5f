package hairline.checks.motion;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.parser.Span;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ShiftCodesTest {
  private static List<Event.ShiftSet> shifts(String... lines) {
    return Runs.of(Event.ShiftSet.class, lines);
  }

  @Test
  void g92GivesTheStandingPointACoordinate() {
    // X=4, G92 x7: offset -3; then G92 x9: offset -5 (NISTIR 6556 §3.5.18). A point of the part
    // keeps its coordinate here; programmed 8 is then 8 - 5 = 3.
    assertThat(Runs.moves("G0 X4 Y0 Z0", "G92 X7", "G0 X7", "X8", "G92 X9", "X9", "X10"))
        .containsExactly("RAPID X4 Y0 Z0", "RAPID X5 Y0 Z0", "RAPID X6 Y0 Z0");
  }

  @Test
  void aShiftedZeroDoesNotMoveThePart() {
    List<Move> moves = Runs.of(Move.class, "G0 X4 Y0 Z0", "G92 X0", "G91 G1 X1 F1", "G90 X0");
    assertThat(moves)
        .extracting(move -> move.to().xPm())
        .containsExactly(4_000_000_000L, 5_000_000_000L, 4_000_000_000L);
  }

  @Test
  void incrementalModeHasNoEffectOnG92() {
    // "Being in incremental distance mode has no effect on the action of G92."
    assertThat(Runs.moves("G0 X4 Y0 Z0", "G91 G92 X0", "G90 X1"))
        .containsExactly("RAPID X4 Y0 Z0", "RAPID X5 Y0 Z0");
  }

  @Test
  void g92IsTakenBackAndBroughtAgain() {
    String[] back = {"G0 X4 Y0 Z0", "G92 X0", "G92.1", "X5"};
    assertThat(Runs.moves(back)).last().isEqualTo("RAPID X5 Y0 Z0");
    String[] restored = {"G0 X4 Y0 Z0", "G92 X0", "G92.2", "G92.3", "X5"};
    assertThat(Runs.moves(restored)).last().isEqualTo("RAPID X9 Y0 Z0");
    String[] lost = {"G0 X4 Y0 Z0", "G92 X0", "G92.1", "G92.3", "X5"};
    assertThat(Runs.moves(lost)).last().isEqualTo("RAPID X5 Y0 Z0");
  }

  @Test
  void shiftsAreToldWithWhetherTheyStand() {
    assertThat(
            shifts(
                "G0 X4 Y0 Z0",
                "N2 G92 X0",
                "G92.2",
                "G92.3",
                "G92.1",
                "G92 X4",
                "G52 X1",
                "G52 X0"))
        .extracting(event -> event.code() + " " + event.active())
        .containsExactly(
            "G92 true",
            "G92.2 false",
            "G92.3 true",
            "G92.1 false",
            "G92 false",
            "G52 true",
            "G52 false");
    assertThat(shifts("G0 X4 Y0 Z0", "N2 G92 X0").get(0).at())
        .isEqualTo(new Place(0, 2, new Span(4, 10)));
  }

  @Test
  void g92BeforeAnyPlaceChoosesTheFrame() {
    List<Event> events =
        Runs.events(Runs.TENTH_UM, "G92 X0 Y0 Z10", "G0 X5", "G92.1", "X6", "G92.3", "X7");
    List<Move> moves = Runs.of(Move.class, events);
    assertThat(moves.get(0).from())
        .isEqualTo(Position.UNKNOWN.with(Axis.X, 0).with(Axis.Y, 0).with(Axis.Z, 10_000_000_000L));
    assertThat(moves.get(0).to().xPm()).isEqualTo(5_000_000_000L);
    // How that frame lies to the one of the machine is not known.
    assertThat(moves.get(1).to().knows(Axis.X)).isFalse();
    assertThat(Runs.only(Event.BecameUnknown.class, events).what())
        .isEqualTo("X: its zero is not known");
    assertThat(Runs.of(Event.ShiftSet.class, events))
        .extracting(Event.ShiftSet::active)
        .containsExactly(true, false, false);
    // G92.1 has forgotten it.
    assertThat(moves.get(2).to().knows(Axis.X)).isFalse();
  }

  @Test
  void g92ThatChoseTheFrameComesBack() {
    List<Move> moves = Runs.of(Move.class, "G92 X0 Y0 Z10", "G0 X5", "G92.2", "X6", "G92.3", "X7");
    assertThat(moves.get(2).to().xPm()).isEqualTo(7_000_000_000L);
  }

  @Test
  void g92WhereAPlaceWasLostMakesTheZeroUnknown() {
    List<Event> events =
        Runs.events(Runs.TENTH_UM, "G0 X0 Y0 Z5", "T1 M6", "G92 Z10", "G0 Z1", "G92.1", "G0 Z2 X1");
    List<Move> moves = Runs.of(Move.class, events);
    assertThat(moves.get(1).to().knows(Axis.Z)).isFalse();
    assertThat(moves.get(2).to().zPm()).isEqualTo(2_000_000_000L);
    assertThat(Runs.of(Event.BecameUnknown.class, events).get(0).what())
        .isEqualTo("Z: zero set where its place was not known");
    assertThat(Runs.of(Event.ShiftSet.class, events))
        .extracting(Event.ShiftSet::active)
        .containsExactly(true, false);
  }

  @Test
  void g92NeedsAnAxis() {
    assertThat(Runs.only(Event.WordRefused.class, "G92").word()).isEqualTo("G92");
    // With S it limits the speed: S is no speed then.
    List<Event> events = Runs.events(Runs.TENTH_UM, "S1000 M3", "G92 S2000", "G0 X1");
    assertThat(Runs.of(Event.WordRefused.class, events)).isEmpty();
    assertThat(Runs.only(Move.class, events).modes().speedRpm().value()).hasValue(1000.0);
  }

  @Test
  void g52LiesInTheWorkOffset() {
    assertThat(
            Runs.moves(
                "G0 X1 Y1 Z1", "G52 X10 Y20", "G0 X1 Y1", "G52 X11", "X1", "G52 X0 Y0", "X2 Y1"))
        .containsExactly(
            "RAPID X1 Y1 Z1", "RAPID X11 Y21 Z1", "RAPID X12 Y21 Z1", "RAPID X2 Y1 Z1");
  }

  @Test
  void g52AndG92Add() {
    assertThat(Runs.moves("G0 X4 Y0 Z0", "G52 X10", "G92 X0", "G0 X1", "G52 X0", "G0 X1"))
        .containsExactly("RAPID X4 Y0 Z0", "RAPID X5 Y0 Z0", "RAPID X-5 Y0 Z0");
  }

  @Test
  void g52NeedsAnAxis() {
    assertThat(Runs.only(Event.WordRefused.class, "G52").word()).isEqualTo("G52");
  }

  @Test
  void writtenAndStoredShiftsAreKeptApart() {
    List<Move> moves =
        Runs.of(Move.class, "G0 X1.00004 Y0 Z0", "G92 X0.00002", "G0 X1", "G92.1 X1");
    // Stored: 1 - 0 + 1; written: 1.00004 - 0.00002 + 1.
    assertThat(moves.get(1).to().xPm()).isEqualTo(2_000_000_000L);
    assertThat(moves.get(1).writtenTo().xPm()).isEqualTo(2_000_020_000L);
  }

  @Test
  void g10BeforeAnyPlaceSaysWhereTheOffsetLies() {
    List<Event> events =
        Runs.events(Runs.TENTH_UM, "G10 L2 P1 X3.5 Y17.2", "G54 G0 X1 Y1 Z1", "X2");
    assertThat(Runs.of(Event.BecameUnknown.class, events)).isEmpty();
    assertThat(Runs.of(Move.class, events))
        .extracting(Runs::text)
        .containsExactly("RAPID X1 Y1 Z1", "RAPID X2 Y1 Z1");
    Event.ShiftSet shift = Runs.only(Event.ShiftSet.class, events);
    assertThat(shift.code()).isEqualTo("G10 L2 P1");
    assertThat(shift.active()).isTrue();
  }

  @Test
  void g10MovesAKnownOriginByAKnownDistance() {
    assertThat(
            Runs.moves(
                "G10 L2 P1 X3.5 Y17.2",
                "G54 G0 X1 Y1 Z1",
                "G10 L2 P1 X4",
                "G0 X1",
                "G10 L2 P0 X3.5",
                "G0 X2"))
        .containsExactly("RAPID X1 Y1 Z1", "RAPID X1.5 Y1 Z1", "RAPID X2 Y1 Z1");
    ControlProfile sheet =
        Profiles.with(
            Runs.TENTH_UM, p -> p.offsets = Map.of("G54", Map.of(Axis.X, 3_000_000_000L)));
    assertThat(Runs.moves(sheet, "G54 G0 X1 Y1 Z1", "G10 L2 P1 X4", "G0 X1"))
        .containsExactly("RAPID X1 Y1 Z1", "RAPID X2 Y1 Z1");
  }

  @Test
  void g10MovesAnUnknownOriginByAnUnknownDistance() {
    List<Event> events =
        Runs.events(Runs.TENTH_UM, "G54 G0 X1 Y1 Z1", "G10 L2 P1 X4", "G0 X1 Y2", "G55 X1");
    List<Move> moves = Runs.of(Move.class, events);
    assertThat(moves.get(1).to().knows(Axis.X)).isFalse();
    assertThat(moves.get(1).to().yPm()).isEqualTo(2_000_000_000L);
    assertThat(moves.get(2).to().xPm()).isEqualTo(1_000_000_000L);
    assertThat(Runs.of(Event.BecameUnknown.class, events).get(0).what())
        .isEqualTo("X: its work offset was moved by an unknown distance");
  }

  @Test
  void g10OfAnotherOffsetLeavesThisOneAlone() {
    List<Event> events =
        Runs.events(
            Runs.TENTH_UM, "G55 G0 X1", "G54 G0 X1 Y1 Z1", "G10 L2 P2 X4", "G0 X2", "G55 G0 X1");
    List<Move> moves = Runs.of(Move.class, events);
    assertThat(moves.get(2).from().xPm()).isEqualTo(1_000_000_000L);
    assertThat(moves.get(2).to().xPm()).isEqualTo(2_000_000_000L);
    assertThat(moves.get(3).to().knows(Axis.X)).isFalse();
  }

  @Test
  void g10BeforeAnOffsetIsChosenMayMoveThePresentOne() {
    List<Event> events = Runs.events(Runs.TENTH_UM, "G0 X1 Y1", "G10 L2 P1 X4", "X1 Y2");
    Move move = Runs.of(Move.class, events).get(1);
    assertThat(move.to().knows(Axis.X)).isFalse();
    assertThat(move.to().yPm()).isEqualTo(2_000_000_000L);
  }

  @Test
  void everyOffsetHasItsNumber() {
    String[] names = {"G54", "G55", "G56", "G57", "G58", "G59", "G59.1", "G59.2", "G59.3"};
    for (int number = 1; number <= 9; number++) {
      List<Event> events =
          Runs.events(
              Runs.TENTH_UM,
              names[number - 1] + " G0 X1",
              number == 1 ? "G55" : "G54",
              "G10 L2 P" + number + " X4",
              names[number - 1] + " X1");
      // It had a place, so it was moved by an unknown distance: the right one was meant.
      assertThat(Runs.of(Move.class, events).get(1).to().knows(Axis.X))
          .as(names[number - 1])
          .isFalse();
    }
  }

  @Test
  void g10UnderG91IsNotGuessed() {
    List<Move> moves =
        Runs.of(Move.class, "G10 L2 P1 X3.5", "G54 G0 X1", "G91 G10 L2 P1 X1", "G90 X1");
    assertThat(moves.get(1).to().knows(Axis.X)).isFalse();
  }

  @Test
  void g10L20GivesTheStandingPointACoordinate() {
    // Common practice, no source.
    assertThat(Runs.moves("G54 G0 X4 Y0 Z0", "G10 L20 P1 X0", "G0 X1", "G92 X0", "X1"))
        .containsExactly("RAPID X4 Y0 Z0", "RAPID X5 Y0 Z0", "RAPID X6 Y0 Z0");
    List<Move> moves = Runs.of(Move.class, "G54 G0 X4", "T1 M6", "G10 L20 P1 Z0", "G0 Z1");
    assertThat(moves.get(1).to().knows(Axis.Z)).isFalse();
  }

  @Test
  void toolDataMakeTheHeightUnknownUntilItsNextWord() {
    List<Move> moves = Runs.of(Move.class, "G0 X0 Y0 Z0", "G10 L10 P1 R12.5", "G0 X1", "Z1");
    assertThat(moves.get(1).from().knows(Axis.Z)).isFalse();
    assertThat(moves.get(2).to().zPm()).isEqualTo(1_000_000_000L);
    moves = Runs.of(Move.class, "G0 X0 Y0 Z0", "G10 L12 P1 R1.5", "G0 X1");
    assertThat(moves.get(1).from().knows(Axis.Z)).isTrue();
  }

  @Test
  void g10WithoutAKnownKeyLosesEveryZero() {
    for (String block : List.of("G10 P1 X1", "G10 L99 P1 X1", "G10 L2 P10 X1", "G10 L2 P#7 X1")) {
      List<Event> events = Runs.events(Runs.TENTH_UM, "G54 G0 X0 Y0 Z0", block, "G0 X1", "G91 X1");
      assertThat(Runs.of(Move.class, events).get(1).to().unknown()).as(block).isEqualTo(0b111111);
      assertThat(Runs.of(Event.BecameUnknown.class, events)).as(block).isNotEmpty();
    }
  }

  @Test
  void g10BesideNoMotionMoves() {
    List<Event> events = Runs.events(Runs.TENTH_UM, "G54 G1 X0 Y0 Z0 F1", "G10 L2 P2 X5", "X1");
    assertThat(Runs.of(Move.class, events))
        .extracting(Runs::text)
        .containsExactly("LINE X0 Y0 Z0", "LINE X1 Y0 Z0");
  }

  @Test
  void axisWordsBelongToOneCode() {
    // "It is an error to put a G-code from group 1 and a G-code from group 0 on the same line if
    // both of them use axis words" (NISTIR 6556 §3.4).
    for (String block : List.of("G1 G92 X1 F1", "G0 G52 X1", "G1 G28 X1 F1", "G2 G10 L2 P1 X1")) {
      List<Event> events = Runs.events(Runs.TENTH_UM, "G0 X0 Y0 Z0", block, "G1 Y5 F1");
      assertThat(Runs.only(Event.CodesConflict.class, events).why())
          .isEqualTo("both take the axis words");
      List<Move> moves = Runs.of(Move.class, events);
      assertThat(moves).as(block).hasSize(2);
      assertThat(moves.get(1).from().knows(Axis.X)).isFalse();
    }
    assertThat(Runs.of(Event.CodesConflict.class, "G0 X0 Y0 Z0", "G0 G91 G28 Z0")).isEmpty();
  }

  @Test
  void conflictingShiftsLoseEveryZero() {
    List<Move> moves = Runs.of(Move.class, "G0 X0 Y0 Z0", "G92 G52 X1", "G0 X1 Y1");
    assertThat(moves.get(1).to().unknown() & 0b111).isEqualTo(0b111);
  }

  @Test
  void shiftsTooLargeAreUnknown() {
    List<Event> events =
        Runs.events(
            Runs.TENTH_UM, "G0 X9000000000 Y0 Z0", "G92 X-9000000000", "G0 X1 Y1", "G92.1", "X1");
    List<Move> moves = Runs.of(Move.class, events);
    assertThat(moves.get(1).to().knows(Axis.X)).isFalse();
    assertThat(moves.get(1).to().knows(Axis.Y)).isTrue();
    assertThat(moves.get(2).to().knows(Axis.X)).isTrue();
  }
}

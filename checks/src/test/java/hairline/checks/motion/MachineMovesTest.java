package hairline.checks.motion;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.motion.Move.Source;
import hairline.parser.Span;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class MachineMovesTest {
  @Test
  void homeByThePointThatIsWritten() {
    // NISTIR 6556 §3.5.8, but only the axes named go home (common practice, no source).
    List<Move> moves = Runs.of(Move.class, "G0 X1 Y1 Z1", "N2 G28 X5 Y6", "G1 Z2 F1");
    assertThat(moves).hasSize(4);
    assertThat(Runs.text(moves.get(1))).isEqualTo("RAPID X5 Y6 Z1");
    assertThat(Runs.text(moves.get(2))).isEqualTo("RAPID Z1");
    assertThat(moves.get(2).lengthMm()).isZero();
    assertThat(moves.get(2).from().xPm()).isEqualTo(5_000_000_000L);
    assertThat(moves.subList(1, 3))
        .allSatisfy(m -> assertThat(m.source()).isEqualTo(Source.MACHINE));
    assertThat(moves.get(1).at()).isEqualTo(new Place(0, 2, new Span(4, 13)));
    assertThat(moves.get(3).source()).isEqualTo(Source.BLOCK);
    assertThat(moves.get(3).kind()).isEqualTo(Move.Kind.LINE);
  }

  @Test
  void homeFromWhereTheToolStands() {
    List<Move> moves = Runs.of(Move.class, "G1 X1 Y1 Z1 F1", "G91 G28 Z0", "X1");
    assertThat(moves).hasSize(3);
    assertThat(Runs.text(moves.get(1))).isEqualTo("RAPID X1 Y1");
    assertThat(moves.get(1).feedMmPerMin()).isEmpty();
    assertThat(moves.get(2).kind()).isEqualTo(Move.Kind.LINE);
    assertThat(Runs.text(moves.get(2))).isEqualTo("LINE X2 Y1");
  }

  @Test
  void homeWithAllAxes() {
    for (String code : List.of("G28", "G30")) {
      List<Move> moves = Runs.of(Move.class, "G0 X1 Y1 Z1 A1", code);
      assertThat(moves).hasSize(2);
      assertThat(moves.get(1).to()).isEqualTo(Position.UNKNOWN);
      assertThat(moves.get(1).kind()).isEqualTo(Move.Kind.RAPID);
    }
  }

  @Test
  void machineCoordinatesAreNotWorkCoordinates() {
    List<Event> events =
        Runs.events(Runs.TENTH_UM, "G0 X1 Y1 Z1", "G53 Z0", "G1 G53 X5 F7 G9", "X2");
    List<Move> moves = Runs.of(Move.class, events);
    assertThat(Runs.text(moves.get(1))).isEqualTo("RAPID X1 Y1");
    assertThat(Runs.text(moves.get(2))).isEqualTo("LINE Y1");
    assertThat(moves.get(2).feedMmPerMin()).hasValue(7);
    assertThat(moves.get(2).exactStop()).isTrue();
    assertThat(moves.get(2).source()).isEqualTo(Source.MACHINE);
    assertThat(moves.get(2).at().span()).isEqualTo(new Span(1, 16));
    assertThat(Runs.text(moves.get(3))).isEqualTo("LINE X2 Y1");
  }

  @Test
  void machineCoordinatesAreKnownWhereTheOffsetIs() {
    ControlProfile sheet =
        Profiles.with(
            Runs.TENTH_UM,
            p ->
                p.offsets =
                    Map.of(
                        "G54",
                        Map.of(Axis.X, -20_000_000_000L, Axis.Y, 5_000_000_000L, Axis.Z, 0L)));
    List<Move> moves =
        Runs.of(Move.class, Runs.events(sheet, "G54 G0 G53 X0 Y0 Z0", "X1", "G92 X0", "G53 X0 Y1"));
    assertThat(Runs.text(moves.get(0))).isEqualTo("RAPID X20 Y-5");
    assertThat(Runs.text(moves.get(1))).isEqualTo("RAPID X1 Y-5");
    assertThat(Runs.text(moves.get(2))).isEqualTo("RAPID X20 Y-4");
    moves = Runs.of(Move.class, Runs.events(sheet, "G55 G0 G53 X0"));
    assertThat(moves.get(0).to().knows(Axis.X)).isFalse();
  }

  @Test
  void machineCoordinatesGoWithStraightMovesOnly() {
    // "It is an error if G53 is used without G0 or G1 being active" (NISTIR 6556 §3.5.12).
    List<Event> events = Runs.events(Runs.TENTH_UM, "G0 X0 Y0 Z0", "G2 G53 X1 R1 F1", "G0 Y1");
    Event.CodesConflict conflict = Runs.only(Event.CodesConflict.class, events);
    assertThat(conflict.first() + " " + conflict.second()).isEqualTo("G2 G53");
    assertThat(Runs.of(Move.class, events)).hasSize(2);
    assertThat(Runs.of(Move.class, events).get(1).from().knows(Axis.X)).isFalse();
  }

  @Test
  void machineMovesTellWhatTheyAssume() {
    assertThat(Runs.of(Event.StartAssumed.class, "G0 G53 Z0"))
        .extracting(Event.StartAssumed::item)
        .containsExactly("units", "distance");
    assertThat(Runs.of(Event.StartAssumed.class, "G21 G90 G1 G53 Z0 F1"))
        .extracting(Event.StartAssumed::item)
        .containsExactly("feed mode");
    assertThat(Runs.of(Event.OffsetAssumed.class, "G0 G53 Z0")).isEmpty();
    assertThat(Runs.of(Event.WordRounded.class, "G0 G53 Z0.00001")).hasSize(1);
  }

  @Test
  void twoWordsOfAnAxisBesideG53() {
    List<Move> moves = Runs.of(Move.class, "G0 X0 Y0 Z0", "G53 X1 X2 Y1", "Z1");
    assertThat(moves.get(2).from().knows(Axis.X)).isFalse();
  }

  @Test
  void probingEndsWhereOnlyTheMachineKnows() {
    // NISTIR 6556 §3.5.9: parameters 5061 to 5066 hold the place.
    List<Event> events =
        Runs.events(
            Runs.TENTH_UM, "#1=2", "G0 X0 Y0 Z0", "G38.2 X5 F20", "#2=#5061", "G0 X#2", "Y#1");
    List<Move> moves = Runs.of(Move.class, events);
    assertThat(moves.get(1).kind()).isEqualTo(Move.Kind.LINE);
    assertThat(Runs.text(moves.get(1))).isEqualTo("LINE Y0 Z0");
    assertThat(moves.get(1).exactStop()).isTrue();
    assertThat(moves.get(2).to().knows(Axis.X)).isFalse();
    assertThat(Runs.of(Event.BecameUnknown.class, events).get(0).what()).contains("parameters");
  }
}

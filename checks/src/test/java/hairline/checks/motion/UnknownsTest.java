package hairline.checks.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import hairline.parser.Span;
import java.nio.charset.StandardCharsets;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

class UnknownsTest {
  private static List<String> unknown(String... lines) {
    return Runs.of(Event.BecameUnknown.class, lines).stream()
        .map(Event.BecameUnknown::what)
        .toList();
  }

  private static Modes end(String... lines) {
    return Runs.only(Event.Ended.class, lines).modes();
  }

  @Test
  void twoCodesOfOneGroupConflict() {
    // NISTIR 6556 §3.4 and table 4.
    for (String block :
        List.of(
            "G0 G1",
            "G17 G18",
            "G90 G91",
            "G93 G94",
            "G20 G21",
            "G41 G42",
            "G43 G49 H1",
            "G98 G99",
            "G54 G55",
            "G61 G64",
            "G90.1 G91.1",
            "G96 G97",
            "G28 G92",
            "M0 M30",
            "M3 M5",
            "M8 M9",
            "M48 M49",
            "M98 M99",
            "G81 G1",
            "G20 G71")) {
      Event.CodesConflict conflict = Runs.only(Event.CodesConflict.class, "N1 " + block);
      String[] codes = block.split(" ", -1);
      assertThat(conflict.first()).as(block).isEqualTo(codes[0]);
      assertThat(conflict.second()).as(block).isEqualTo(codes[1]);
      assertThat(conflict.why()).startsWith("two codes for ");
      assertThat(conflict.at().span())
          .isEqualTo(new Span(5 + codes[0].length(), 5 + codes[0].length() + codes[1].length()));
    }
  }

  @Test
  void codesThatGoTogetherDoNot() {
    for (String block :
        List.of(
            "G0 G17 G40 G49 G80 G90 G94 G54 G64 G98",
            "G1 G1",
            "M3 M8",
            "G80 G1",
            "G9 G1",
            "G53 G0",
            "M7 M8",
            "M6 M3",
            "G28 G91",
            "G4 G1")) {
      assertThat(Runs.of(Event.CodesConflict.class, block)).as(block).isEmpty();
    }
  }

  @Test
  void aConflictMakesItsGroupUnknown() {
    assertThat(end("G17 G18").plane().isUnknown()).isTrue();
    assertThat(end("G90 G91").distance().isUnknown()).isTrue();
    assertThat(end("G20 G21").units().isUnknown()).isTrue();
    assertThat(end("G93 G94").feedMode().isUnknown()).isTrue();
    assertThat(end("G41 G42").compensation().isUnknown()).isTrue();
    assertThat(end("G43 G49 H1").lengthOffset().isUnknown()).isTrue();
    assertThat(end("G98 G99").cycleReturn().isUnknown()).isTrue();
    assertThat(end("G54 G55").workOffset().isUnknown()).isTrue();
    assertThat(end("G61 G64").pathMode().isUnknown()).isTrue();
    assertThat(end("G90.1 G91.1").arcDistance().isUnknown()).isTrue();
    assertThat(end("S5", "G96 G97").speedRpm().isUnknown()).isTrue();
    assertThat(end("M3 M5").spindle().isUnknown()).isTrue();
    assertThat(end("M8 M9").coolant().isUnknown()).isTrue();
    assertThat(unknown("G17 G18")).containsExactly("plane");
    assertThat(unknown("G20 G21", "G20 G21")).containsExactly("units");
    // The restatement cures its own item.
    assertThat(end("G17 G18", "G17").plane().is(Modes.Plane.XY)).isTrue();
  }

  @Test
  void conflictingStopsDoNotEndTheProgram() {
    assertThat(Runs.moves("M0 M30", "G0 X1")).hasSize(1);
  }

  @Test
  void conflictingMotionLosesItsAxes() {
    List<Event> events = Runs.events(Runs.TENTH_UM, "G0 X0 Y0 Z0", "G0 G1 X1", "Y1", "G1 X2 F1");
    List<Move> moves = Runs.of(Move.class, events);
    // Nobody knows how the block behind it moves either.
    assertThat(moves).hasSize(2);
    assertThat(moves.get(1).from().unknown() & 0b111).isEqualTo(Axis.X.bit() | Axis.Y.bit());
    assertThat(moves.get(1).to().knows(Axis.X)).isTrue();
  }

  @Test
  void twoWordsOfOneLetterConflict() {
    // "For all other legal letters, a line may have only one word beginning with that letter"
    // (NISTIR 6556 §3.3.5).
    List<Event> events = Runs.events(Runs.TENTH_UM, "G0 X0 Y0 Z0", "G1 X1 X2 Y3 F5 F6 S7 S8", "X3");
    assertThat(Runs.of(Event.CodesConflict.class, events))
        .extracting(event -> event.first() + " " + event.second())
        .containsExactly("X1 X2", "F5 F6", "S7 S8");
    Move move = Runs.of(Move.class, events).get(1);
    assertThat(move.to().knows(Axis.X)).isFalse();
    assertThat(move.to().yPm()).isEqualTo(3_000_000_000L);
    assertThat(move.modes().feed().isUnknown()).isTrue();
    assertThat(move.modes().speedRpm().isUnknown()).isTrue();
    assertThat(Runs.of(Move.class, events).get(2).to().knows(Axis.X)).isTrue();
  }

  @Test
  void threeWordsOfOneLetterAreNoWord() {
    List<Event> events = Runs.events(Runs.TENTH_UM, "G0 X0", "X1 X2 X3");
    assertThat(Runs.of(Move.class, events).get(1).to().knows(Axis.X)).isFalse();
  }

  @Test
  void axisWordsBesideG80Conflict() {
    // physics.md §12 of the project: controls differ.
    List<Event> events = Runs.events(Runs.TENTH_UM, "G0 X0 Y0 Z0", "G80 X1", "G1 Y1 F1");
    assertThat(Runs.only(Event.CodesConflict.class, events).first()).isEqualTo("G80");
    List<Move> moves = Runs.of(Move.class, events);
    assertThat(moves).hasSize(2);
    assertThat(moves.get(1).from().knows(Axis.X)).isFalse();
    assertThat(moves.get(1).from().knows(Axis.Y)).isTrue();
    assertThat(Runs.moves("G0 X0", "G80 G0 X1", "X2")).hasSize(3);
    assertThat(Runs.of(Event.CodesConflict.class, "G0 X0", "G80", "G92 X0", "G28 X0")).isEmpty();
  }

  /** Common practice, no source: a cycle stands beside G0 and G1, and G80 ends the cycle only. */
  @Test
  void axisWordsBehindG80GoOnWithTheStraightMotionFromBefore() {
    assertThat(Runs.moves("G0 X0 Y0 Z3", "G81 X1 Z-1 R1 F10", "G80", "X5", "G1 X6"))
        .contains("RAPID X5 Y0 Z3", "LINE X6 Y0 Z3");
    assertThat(Runs.moves("G1 X0 Y0 Z3 F10", "G80", "X5", "X6"))
        .containsExactly("LINE X0 Y0 Z3", "LINE X5 Y0 Z3", "LINE X6 Y0 Z3");
    Event.MotionNotStated none = Runs.only(Event.MotionNotStated.class, "G17 G80", "X5", "X6");
    assertThat(none.taken()).contains("G0");
    assertThat(none.cancelled().line()).isEqualTo(1);
    List<Event> arc = Runs.events(Runs.TENTH_UM, "G2 X0 Y0 R1 F10", "G80", "X5", "Y5", "G0 Z1");
    assertThat(Runs.only(Event.MotionNotStated.class, arc).taken()).isEmpty();
    List<Move> moves = Runs.of(Move.class, arc);
    assertThat(moves.get(moves.size() - 1).to().knows(Axis.X)).isFalse();
    assertThat(Runs.of(Event.MotionNotStated.class, "G0 X0", "G80", "G1 X1", "X2")).isEmpty();
  }

  @Test
  void aCycleAndItsEndConflict() {
    List<Event> events = Runs.events(Runs.TENTH_UM, "G0 X0 Y0 Z5", "G80 G81 X1 Z-1 R1 F1", "G0 Y1");
    assertThat(Runs.of(Event.CodesConflict.class, events)).hasSize(1);
    assertThat(Runs.of(Move.class, events).get(1).from().unknown() & 0b111)
        .isEqualTo(Axis.X.bit() | Axis.Z.bit());
  }

  @Test
  void unknownCodesMakeUnknownWhatTheyMayTouch() {
    List<Event> events =
        Runs.events(Runs.TENTH_UM, "G0 X0 Y0 Z0", "N2 G123 Q1", "X1", "G1 X2 F1", "M77");
    assertThat(Runs.of(Event.CodeUnknown.class, events))
        .extracting(Event.CodeUnknown::code)
        .containsExactly("G123", "M77");
    assertThat(Runs.of(Event.CodeUnknown.class, events).get(0).at().span())
        .isEqualTo(new Span(4, 8));
    assertThat(Runs.of(Event.BecameUnknown.class, events))
        .extracting(Event.BecameUnknown::what)
        .containsExactly("motion, X, Y, Z", "spindle, coolant");
    List<Move> moves = Runs.of(Move.class, events);
    assertThat(moves).hasSize(2);
    assertThat(moves.get(1).from().unknown() & 0b111).isEqualTo(0b111);
    Modes modes = Runs.only(Event.Ended.class, events).modes();
    assertThat(modes.spindle().isUnknown()).isTrue();
    assertThat(modes.coolant().isUnknown()).isTrue();
    assertThat(end("M77", "S5 M3 M8").spindle().is(Modes.Spindle.CLOCKWISE)).isTrue();
  }

  @Test
  void unknownCodesOfEveryForm() {
    for (String code :
        List.of(
            "G5.1",
            "G999.9",
            "G1000",
            "M1000",
            "G1.55",
            "G-1",
            "M-3",
            "G#5",
            "M[1/3]",
            "G99999999999999999999")) {
      assertThat(Runs.of(Event.CodeUnknown.class, code)).as(code).hasSize(1);
    }
  }

  @Test
  void theSpindleIsToldWhenItBecomesUnknown() {
    List<Event> events = Runs.events(Runs.TENTH_UM, "S1 M3", "M77");
    Event.SpindleChanged changed = Runs.of(Event.SpindleChanged.class, events).get(1);
    assertThat(changed.after().spindle().isUnknown()).isTrue();
    assertThat(changed.after().turningRpm()).isEmpty();
  }

  @Test
  void transformsMakePlacesUnknownUntilTheyAreCancelled() {
    for (String codes : List.of("G68 G69", "G51 G50", "G51.1 G50.1", "G16 G15", "G68.2 G69")) {
      String on = codes.split(" ", -1)[0];
      String off = codes.split(" ", -1)[1];
      List<Event> events = Runs.events(Runs.TENTH_UM, "G0 X0 Y0 Z0", on, "X1", "X2", off, "X3");
      List<Move> moves = Runs.of(Move.class, events);
      assertThat(moves).as(codes).hasSize(4);
      assertThat(moves.get(2).to().knows(Axis.X)).as(codes).isFalse();
      assertThat(moves.get(3).to().knows(Axis.X)).as(codes).isTrue();
      assertThat(Runs.only(Event.CodeUnknown.class, events).code()).isEqualTo(on);
      assertThat(Runs.of(Event.BecameUnknown.class, events).get(0).what())
          .startsWith("every axis, until ");
    }
    assertThat(Runs.of(Event.CodeUnknown.class, "G0 X0", "G69 G50 G15 G50.1")).isEmpty();
    List<Move> moves = Runs.of(Move.class, "G68", "G51", "G50", "G0 X1", "G69", "X2");
    assertThat(moves.get(0).to().knows(Axis.X)).isFalse();
    assertThat(moves.get(1).to().knows(Axis.X)).isTrue();
  }

  @Test
  void unknownParametersMakeTheirAxisUnknown() {
    List<Event> events = Runs.events(Runs.TENTH_UM, "G0 X0 Y0", "X#5 Y1", "X#5", "X1");
    List<Move> moves = Runs.of(Move.class, events);
    assertThat(moves.get(1).to().knows(Axis.X)).isFalse();
    assertThat(moves.get(1).to().knows(Axis.Y)).isTrue();
    assertThat(moves.get(1).lengthMm()).isZero();
    assertThat(moves.get(3).to().knows(Axis.X)).isTrue();
    assertThat(Runs.only(Event.BecameUnknown.class, events).what())
        .isEqualTo("X: #5 was never set");
  }

  @Test
  void parametersActAfterTheirBlock() {
    // "if parameter 3 has been previously set to 15 and the line #3=6 G1 x#3 is interpreted, a
    // straight move to a point where x equals 15 will occur" (NISTIR 6556 §3.3.3).
    assertThat(Runs.moves("#3=15", "#3=6 G1 x#3", "x#3")).containsExactly("LINE X15", "LINE X6");
  }

  @Test
  void refusedSettingsAreTold() {
    assertThat(Runs.only(Event.WordRefused.class, "#1=[1/0]").why()).isEqualTo("division by zero");
  }

  @Test
  void wordsThatHaveNoNumberAreRefused() {
    List<Event> events = Runs.events(Runs.TENTH_UM, "G0 X[1/0] Y1", "F[1/0] S[1/0] D1.5 H1");
    assertThat(Runs.of(Event.WordRefused.class, events))
        .extracting(Event.WordRefused::word)
        .containsExactly("X", "F", "S", "D1.5");
  }

  @Test
  void unknownUnitsOrDistanceMakeWordsUnknown() {
    List<Move> moves = Runs.of(Move.class, "G0 X0 Y0", "G20 G21", "X1 F5", "G21 X2");
    assertThat(moves.get(1).to().knows(Axis.X)).isFalse();
    assertThat(moves.get(1).modes().feed().isUnknown()).isTrue();
    assertThat(moves.get(2).to().knows(Axis.X)).isTrue();
    moves = Runs.of(Move.class, "G0 X0 Y0", "G90 G91", "X1", "G90 X2");
    assertThat(moves.get(1).to().knows(Axis.X)).isFalse();
    assertThat(moves.get(2).to().knows(Axis.X)).isTrue();
    moves = Runs.of(Move.class, "G0 X0 Y0 Z0", "G17 G18", "G2 X1 R1 F1", "G81 X1 Z1 R1");
    assertThat(moves.get(1).arc()).isEmpty();
    assertThat(moves).hasSize(2);
  }

  @Test
  void coordinatesTooLargeMakeTheirAxisUnknown() {
    // A long holds 9.2·10^18 pm, which is 9.2·10^9 mm.
    List<Event> events =
        Runs.events(
            Runs.TENTH_UM,
            "G0 X9000000000 Y0",
            "G91 X9000000000",
            "G90 X1",
            "X99999999999",
            "X2",
            "G20 X9000000000");
    List<Move> moves = Runs.of(Move.class, events);
    assertThat(moves)
        .extracting(move -> move.to().knows(Axis.X))
        .containsExactly(true, false, true, false, true, false);
    assertThat(moves).extracting(move -> move.to().knows(Axis.Y)).containsOnly(true);
    assertThat(Runs.of(Event.BecameUnknown.class, events))
        .extracting(Event.BecameUnknown::what)
        .containsExactly("X: beyond 9 000 km");
    assertThat(Runs.of(Event.BecameUnknown.class, "G0 A99999999999999999"))
        .extracting(Event.BecameUnknown::what)
        .containsExactly("A: too large an angle");
    assertThat(Runs.of(Event.ArcImpossible.class, "G0 X-9000000000 Y0", "G2 X9000000000 R1 F1"))
        .hasSize(1);
  }

  @Test
  void unreadBlocksLoseWhatTheySpeakOf() {
    List<Event> events =
        Runs.events(
            Runs.TENTH_UM, "G0 X0 Y0 Z0 F5", "G1 X1.2.3 (Z1)", "Y1", "G1 X5", "F", "S1 Q ;Z");
    List<Move> moves = Runs.of(Move.class, events);
    assertThat(moves).hasSize(2);
    assertThat(moves.get(1).from().unknown() & 0b111).isEqualTo(Axis.X.bit() | Axis.Y.bit());
    assertThat(Runs.of(Event.BecameUnknown.class, events))
        .extracting(Event.BecameUnknown::what)
        .containsExactly("motion, X", "Y", "feed", "speed");
    assertThat(Runs.of(Event.BlockProblem.class, events)).hasSize(3);
  }

  @Test
  void unreadGroupsAreLost() {
    Modes modes = end("G21 G17 M8 S1 M3 T1 M6", "G20 G18 M9 M5 T2 H2 X1.2.3", "M6");
    assertThat(modes.units().isUnknown()).isTrue();
    assertThat(modes.plane().isUnknown()).isTrue();
    assertThat(modes.coolant().isUnknown()).isTrue();
    assertThat(modes.spindle().is(Modes.Spindle.STOPPED)).isTrue();
    assertThat(modes.tool().isUnknown()).isTrue();
    assertThat(modes.lengthOffset().isUnknown()).isTrue();
    assertThat(end("G21", "G 5 9 .1 X1.2.3").workOffset().isUnknown()).isTrue();
    assertThat(end("M3", "M77 X1.2.3").spindle().isUnknown()).isTrue();
    assertThat(end("G21", "G577 Y1.2.3").units().isUnknown()).isFalse();
  }

  @Test
  void garbageLosesEveryAxisAndTheMotion() {
    List<Event> events =
        Runs.events(Runs.TENTH_UM, "G0 X0 Y0 Z0", "\"\u00a7$&", "\"\u00a7$&", "X1");
    assertThat(Runs.of(Event.BecameUnknown.class, events))
        .extracting(Event.BecameUnknown::what)
        .as("the second has nothing left to lose, and is not read all the same")
        .containsExactly("motion, X, Y, Z", "what this block does");
    assertThat(Runs.of(Move.class, events)).hasSize(1);
  }

  @Test
  void macroStatementsLoseParametersAndPlaces() {
    for (String statement : List.of("IF [#1 EQ 0] GOTO 20", "WHILE [#1 LT 5] DO1", "GOTO 5")) {
      List<Event> events =
          Runs.events(Runs.TENTH_UM, "#1=1 G0 X0 Y0 Z0", statement, "G0 X#1", "G1 Y1 F1");
      List<Move> moves = Runs.of(Move.class, events);
      assertThat(moves.get(1).to().knows(Axis.X)).as(statement).isFalse();
      assertThat(moves.get(2).from().knows(Axis.Y)).as(statement).isFalse();
      assertThat(Runs.of(Event.BecameUnknown.class, events).get(0).what())
          .as(statement)
          .contains("parameters")
          .contains("X, Y, Z");
    }
  }

  @Test
  void secondAxesLoseTheOnesTheyRunAlong() {
    List<Event> events = Runs.events(Runs.TENTH_UM, "G0 X0 Y0 Z0", "Z1 W1", "W1", "G4 U2", "V1 U1");
    assertThat(Runs.of(Event.BecameUnknown.class, events))
        .extracting(Event.BecameUnknown::what)
        .containsExactly(
            "Z: W moves along it and is not followed",
            "X: U moves along it and is not followed",
            "Y: V moves along it and is not followed");
    assertThat(Runs.moves("G0 X0 Y0 Z0", "W1", "X1")).last().isEqualTo("RAPID X1 Y0");
    assertThat(Runs.moves("G0 X0 Y0 Z0", "G4 U1", "Y1")).last().isEqualTo("RAPID X0 Y1 Z0");
  }

  @Test
  void aRadiusBesideAStraightMoveMayRoundItsCorner() {
    List<Event> events = Runs.events(Runs.TENTH_UM, "G1 X0 Y0 Z0 F1", "X1 R0.2", "Y1");
    assertThat(Runs.only(Event.BecameUnknown.class, events).what()).startsWith("axes: R beside");
    Position corner = Runs.of(Move.class, events).get(2).from();
    assertThat(corner.knows(Axis.X)).isFalse();
    assertThat(corner.knows(Axis.Y)).isTrue();
  }

  @Test
  void textOutputLosesNothing() {
    List<Event> events = Runs.events(Runs.TENTH_UM, "G0 X0 Y0 Z0", "DPRNT[X#1[42]]", "X1");
    assertThat(Runs.of(Event.BlockProblem.class, events)).hasSize(1);
    assertThat(Runs.of(Event.BecameUnknown.class, events)).isEmpty();
    assertThat(Runs.of(Move.class, events).get(1).from().knowsXyz()).isTrue();
  }

  @Test
  void corneredBlocksLoseTheirCorner() {
    List<Event> events = Runs.events(Runs.TENTH_UM, "G1 X0 Y0 Z0 F1", "X1,R0.2", "Y1");
    assertThat(Runs.of(Event.BecameUnknown.class, events))
        .extracting(Event.BecameUnknown::what)
        .containsExactly("X");
    assertThat(Runs.of(Move.class, events).get(1).from().knows(Axis.Y)).isTrue();
  }

  @Property
  void nothingEverThrows(@ForAll("programs") String program) {
    assertThatCode(
            () -> Runs.events(Runs.TENTH_UM, false, program.getBytes(StandardCharsets.UTF_8)))
        .doesNotThrowAnyException();
  }

  @Property(tries = 300)
  void everyMoveBeginsWhereTheToolStood(@ForAll("programs") String program) {
    Position stands = Position.UNKNOWN;
    for (Event event :
        Runs.events(Runs.TENTH_UM, false, program.getBytes(StandardCharsets.UTF_8))) {
      if (event instanceof Event.ArcImpossible) {
        // Its move is left out, and the axes keep their commanded end.
        stands = Position.UNKNOWN;
      }
      if (event instanceof Move move) {
        for (Axis axis : Axis.values()) {
          if (move.from().knows(axis) && stands.knows(axis)) {
            assertThat(move.from().get(axis)).isEqualTo(stands.get(axis));
          }
        }
        stands = move.to();
        assertThat(move.lengthMm()).isNotNegative().isFinite();
        assertThat(move.arc().isPresent()).isIn(false, move.kind() != Move.Kind.LINE);
      }
    }
  }

  @Provide
  static Arbitrary<String> programs() {
    Arbitrary<String> numbers =
        Arbitraries.of(
            "0",
            "1",
            "-1",
            "2.5",
            "0.00004",
            "-0.00005",
            "99999999999999",
            "9223372036.854775807",
            "#1",
            "#2",
            "[1/0]",
            "[#1+1]",
            ".",
            "1e5",
            "10000000000000000000000000000000000000",
            "sqrt[-1]",
            "54",
            "3",
            "1000");
    Arbitrary<String> codes =
        Arbitraries.of(
            "G0", "G1", "G2", "G3", "G4", "G10", "G17", "G18", "G19", "G20", "G21", "G28", "G30",
            "G38.2", "G40", "G41", "G43", "G49", "G52", "G53", "G54", "G55", "G59.3", "G61", "G64",
            "G65", "G68", "G69", "G73", "G80", "G81", "G83", "G84", "G86", "G87", "G88", "G90",
            "G91", "G90.1", "G92", "G92.1", "G92.2", "G92.3", "G93", "G94", "G95", "G96", "G98",
            "G99", "M3", "M5", "M6", "M8", "M9", "M98", "M99", "M0", "G77", "M77", "IF");
    Arbitrary<String> words =
        net.jqwik.api.Combinators.combine(
                Arbitraries.of(
                    'X', 'Y', 'Z', 'I', 'J', 'K', 'R', 'Q', 'P', 'L', 'F', 'S', 'T', 'H', 'D', 'A'),
                numbers)
            .as((letter, number) -> letter + number);
    Arbitrary<String> settings = numbers.map(number -> "#1=" + number);
    Arbitrary<String> block =
        Arbitraries.frequencyOf(
                net.jqwik.api.Tuple.of(4, words),
                net.jqwik.api.Tuple.of(3, codes),
                net.jqwik.api.Tuple.of(1, settings))
            .list()
            .ofMaxSize(6)
            .map(parts -> String.join(" ", parts));
    return block
        .list()
        .ofMaxSize(12)
        .map(blocks -> String.join("\n", blocks) + "\nO1000\nG1X1\nM99");
  }
}

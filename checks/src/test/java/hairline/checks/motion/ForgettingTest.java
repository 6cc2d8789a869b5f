package hairline.checks.motion;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a block makes unknown is told with that block, once, and nothing else. */
class ForgettingTest {
  /** What became unknown, each with its line before it. */
  private static List<String> lost(String... lines) {
    return Runs.of(Event.BecameUnknown.class, lines).stream()
        .map(event -> event.at().line() + ": " + event.what())
        .toList();
  }

  private static Modes end(String... lines) {
    return Runs.only(Event.Ended.class, lines).modes();
  }

  private static final String PLACE = "G21 G17 G90 G94 G54 G0 X0 Y0 Z0 A0 F5 S1 M3";

  /** Two codes of one group; of G28 beside G92 the zeros of the axes are lost too. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "G17 G18 | plane",
        "G90 G91 | distance mode",
        "G90.1 G91.1 | arc centre mode",
        "G93 G94 | feed mode, feed",
        "G20 G21 | units",
        "G41 G42 | radius compensation",
        "G43 G49 H1 | length offset, Z",
        "G98 G99 | cycle return",
        "G54 G55 | work offset, X, Y, Z, A",
        "G61 G64 | path mode",
        "G96 G97 | speed",
        "M3 M5 | spindle",
        "M8 M9 | coolant",
        "G28 G30 | X, Y, Z, A",
        "G28 G92 | X, Y, Z, A, zero of every axis",
        "G68 G69 | X, Y, Z, A, zero of every axis",
        "G50 G51 | X, Y, Z, A, zero of every axis",
        "G0 G1 | motion",
        "G0 G1 X1 | motion & X",
        "M0 M30 | ''",
        "M48 M49 | ''",
      })
  void aConflictLosesItsGroup(String block, String what) {
    List<String> expected =
        what.isEmpty()
            ? List.of()
            : Stream.of(what.split(" & ", -1)).map(each -> "2: " + each).toList();
    assertThat(lost(PLACE, block)).isEqualTo(expected);
    // A second time nothing more is lost, nor told late.
    assertThat(lost(PLACE, block, block).stream().filter(text -> !text.contains("zero")))
        .isEqualTo(expected.stream().filter(text -> !text.contains("zero")).toList());
  }

  @Test
  void aSpeedThatIsLostIsToldOfTheSpindle() {
    List<Event> events = Runs.events(Runs.TENTH_UM, PLACE, "G96 G97");
    List<Event.SpindleChanged> changes = Runs.of(Event.SpindleChanged.class, events);
    assertThat(changes).hasSize(2);
    assertThat(changes.get(1).at().line()).isEqualTo(2);
    assertThat(changes.get(1).before().speedRpm().value()).contains(1.0);
    assertThat(changes.get(1).after().speedRpm().isUnknown()).isTrue();
  }

  /** What was reached under a work offset that is not known is no place under another. */
  @Test
  void placesUnderAnUnknownOffsetAreItsOwn() {
    List<Move> moves = Runs.of(Move.class, PLACE, "G54 G55", "X1", "X2", "G54 X3", "X4");
    assertThat(moves.get(2).from().knows(Axis.X)).isTrue();
    assertThat(moves.get(3).from().knows(Axis.X)).isFalse();
    assertThat(moves.get(4).from().knows(Axis.X)).isTrue();
    // G54 is moved by 5 mm, so that its X6 is where X1 was; of the unknown one nothing is known.
    assertThat(Runs.moves(PLACE, "G10 L20 P1 X5", "X6")).last().asString().startsWith("RAPID X1 ");
    assertThat(Runs.moves(PLACE, "G10 L20 P1 X5", "G54 G55", "X6")).last().isEqualTo("RAPID X6");
  }

  @Test
  void aConflictThatIsNotOfMotionLetsAxesMove() {
    assertThat(Runs.moves("G0 X0 Y0 Z0", "G17 G18 X1")).last().isEqualTo("RAPID X1 Y0 Z0");
    assertThat(Runs.of(Event.MotionNotStated.class, "G0 X0 Y0 Z0", "G0 G1 X1")).isEmpty();
    assertThat(Runs.moves("G0 X0 Y0 Z0", "G0 G1 X1")).hasSize(1);
    assertThat(Runs.moves("G0 X0 Y0 Z0", "G28 G30 X1")).hasSize(1);
  }

  @Test
  void codesThatBothTakeTheAxisWordsLoseThem() {
    assertThat(lost(PLACE, "G1 G28 X1")).containsExactly("2: X");
    assertThat(lost(PLACE, "G1 G92 X1")).containsExactly("2: X, Y, Z, A, zero of every axis");
    assertThat(lost(PLACE, "G53 G2 X1 R5")).containsExactly("2: X");
    assertThat(lost(PLACE, "G2 X1 R5 G53 Y2")).containsExactly("2: X, Y");
    assertThat(lost(PLACE, "G2 X1 R5", "G80", "X5")).containsExactly("4: motion, X");
  }

  /** What a radius may round is told by its own sentence, and not again with the next loss. */
  @Test
  void aRoundedCornerIsToldOnce() {
    assertThat(lost(PLACE, "G1 X1 R.2", "G90 G91"))
        .containsExactly(
            "2: axes: R beside a straight move may round its corner", "3: distance mode");
  }

  @Test
  void twoWordsOfOneLetterLoseTheirItem() {
    assertThat(lost(PLACE, "F1 F2")).containsExactly("2: feed");
    assertThat(lost(PLACE, "S1 S2")).containsExactly("2: speed");
    assertThat(lost(PLACE, "G20 G21", "F5")).containsExactly("2: units", "3: feed");
    assertThat(end("G41 D3", "D1 D2").compensationNumber().isUnknown()).isTrue();
    assertThat(end("G41 D3", "D#9").compensationNumber().isUnknown()).isTrue();
    assertThat(end("G41 D3", "D4").compensationNumber().value()).contains(4);
  }

  // Blocks that the grammar could not read: their text tells what they speak of.

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "X1.2.3 A1 Z1 | X, A, Z",
        "x1.2.3 a1 z1 | X, A, Z",
        "g1 x1.2.3 | motion, X",
        "X1.2.3 (Z1) Y1 | X, Y",
        "X1.2.3 (Z1 | X",
        "X1.2.3 ;Z1 | X",
        "Q1.2.3 | motion, X, Y, Z, A",
        "G90.1 X1.2.3 | arc centre mode, X",
        "G90. X1.2.3 | distance mode, X",
        "G 9 0 X1.2.3 | distance mode, X",
        "G577 Y1.2.3 | motion, X, Y, Z, A",
        "M577 X1.2.3 | spindle, coolant, X",
        "M6 X1.2.3 | tool change, Z, X",
        "T1 X1.2.3 | tool selected, X",
        "H1 X1.2.3 | length offset, Z, X",
        "G54 X1.2.3 | work offset, X, Y, Z, A",
        "X1,R0.2 | X",
        "G1 X[FOO[3]] Y2 | motion, X, Y, parameters",
        "RETURN | parameters, motion, X, Y, Z, A, feed, speed, spindle, coolant, length offset",
      })
  void anUnreadBlockLosesWhatItSpeaksOf(String block, String what) {
    assertThat(lost(PLACE, block)).containsExactly("2: " + what);
  }

  @Test
  void theNumberOfACompensationIsLostToo() {
    assertThat(end("G41 D3", "D1 X1.2.3").compensationNumber().isUnknown()).isTrue();
    assertThat(end("G41 D3", "X1.2.3").compensationNumber().isUnknown()).isFalse();
    assertThat(end("T3 M6", "M6 X1.2.3").tool().isUnknown()).isTrue();
  }

  @Test
  void aConditionLosesWhatStandsBehindIt() {
    assertThat(lost(PLACE, "IF [#1 EQ 0] S5").get(0)).contains("speed", "parameters", "X, Y, Z, A");
    assertThat(lost(PLACE, "IF [#1 EQ 0] G20").get(0)).contains("units");
  }

  @Test
  void whyItIsLostIsSaid() {
    assertThat(Runs.only(Event.BecameUnknown.class, "G0 X0", "GOTO 5").cause())
        .isEqualTo(Event.BecameUnknown.Cause.MACRO);
    assertThat(Runs.only(Event.BecameUnknown.class, "G0 X0", "X1.2.3").cause())
        .isEqualTo(Event.BecameUnknown.Cause.NOT_UNDERSTOOD);
  }

  // Shifts.

  @Test
  void settingDataWithoutSayingWhichLosesEveryZero() {
    Event.WordRefused refused = Runs.only(Event.WordRefused.class, PLACE, "G10");
    assertThat(refused.word()).isEqualTo("G10");
    assertThat(refused.why()).isEqualTo("an L word is due beside it");
    for (String block : List.of("G10", "G10 L3", "G10 L2 P10 X0")) {
      assertThat(lost(PLACE, block)).containsExactly("2: X, Y, Z, A, zero of every axis");
    }
    assertThat(lost(PLACE, "G10 L2 P#9 X0"))
        .containsExactly("2: P: #9 was never set", "2: X, Y, Z, A, zero of every axis");
  }

  /** Of nine work offsets, G54 to G59.3 (NISTIR 6556 §3.5.13), the tenth is none. */
  @Test
  void workOffsetsAreOneToNine() {
    assertThat(lost(PLACE, "G10 L2 P9 X0")).isEmpty();
    assertThat(Runs.of(Event.WordRefused.class, PLACE, "G10 L2 P9 X0")).isEmpty();
    Event.WordRefused refused = Runs.only(Event.WordRefused.class, PLACE, "G10 L2 P10 X0");
    assertThat(refused.word()).isEqualTo("P10");
    assertThat(refused.why()).isEqualTo("work offsets are 1 to 9");
    // A number that is not known is no number beyond nine.
    assertThat(Runs.of(Event.WordRefused.class, PLACE, "G10 L2 P#9 X0")).isEmpty();
  }

  @Test
  void anOffsetMovedByAnUnknownLengthLosesItsAxisWhereItIsInForce() {
    assertThat(lost(PLACE, "G10 L20 P1 X5")).isEmpty();
    assertThat(lost(PLACE, "G10 L2 P1 X1 X2"))
        .containsExactly("2: X: its work offset was moved by an unknown distance");
    List<Move> moves = Runs.of(Move.class, PLACE, "G10 L2 P1 X1 X2", "Y1");
    assertThat(moves.get(1).from().knows(Axis.X)).isFalse();
    assertThat(moves.get(1).from().knows(Axis.Z)).isTrue();
    // Under G54 the second offset loses nothing that stands.
    moves = Runs.of(Move.class, PLACE, "G10 L2 P2 X#9", "Y1");
    assertThat(moves.get(1).from().knows(Axis.X)).isTrue();
  }

  // Cycles.

  @Test
  void aCycleInAnUnknownPlaneLosesEveryAxis() {
    assertThat(lost(PLACE, "G17 G18", "G81 X1 Z-1 R1 F1"))
        .containsExactly("2: plane", "3: X, Y, Z, A");
  }

  @Test
  void aCycleThatIsRefusedLosesItsAxesAndItsDepth() {
    assertThat(lost(PLACE, "G81 X1 Z-1 F1")).containsExactly("2: X, Z");
    assertThat(lost(PLACE, "G81 Y1 R1 F1")).containsExactly("2: Y, Z");
  }

  @Test
  void aRotaryWordBesideACycleIsNotFollowedAndThatIsTold() {
    assertThat(lost(PLACE, "G81 X1 A9 Z-1 R1 F1")).containsExactly("2: A");
    List<Move> moves = Runs.of(Move.class, PLACE, "G81 X1 A9 Z-1 R1 F1", "G80", "G0 Y2");
    assertThat(moves.get(moves.size() - 1).from().knows(Axis.A)).isFalse();
    assertThat(moves.get(moves.size() - 1).from().knowsXyz()).isTrue();
  }

  @Test
  void whatACycleWasGivenEndsWithIt() {
    for (String between : List.of("G80", "G0 X5")) {
      assertThat(Runs.of(Event.WordRefused.class, PLACE, "G81 X1 Z-1 R1 F1", between, "G81 X2"))
          .extracting(Event.WordRefused::why)
          .containsExactly("no R level was given", "no depth was given");
    }
  }

  @Test
  void numbersOfACycleThatAreTooLargeAreTold() {
    assertThat(lost(PLACE, "G81 X99999999999 Z-1 R1 F1")).containsExactly("2: X: beyond 9 000 km");
  }

  @Test
  void twoTimesOfADwellInACycleAreNone() {
    assertThat(Runs.only(Event.Dwelled.class, PLACE, "G82 X1 Z-1 R1 P1 P2 F1").seconds()).isEmpty();
  }

  // Words.

  @Test
  void anExponentIsAWordOfItsOwn() {
    Event.WordRefused refused = Runs.only(Event.WordRefused.class, PLACE, "G0 X1E5");
    assertThat(refused.word()).isEqualTo("E5");
    assertThat(refused.why()).isEqualTo("no exponent, but a word of its own, of an unknown letter");
    assertThat(Runs.of(Event.WordRefused.class, PLACE, "G0 X1 E5")).isEmpty();
  }

  @Test
  void codesMayBeWorkedOut() {
    assertThat(Runs.moves("G[1-1] X1")).containsExactly("RAPID X1");
    assertThat(Runs.moves("G[2-1] X1 F1")).containsExactly("LINE X1");
    assertThat(Runs.only(Event.CodeUnknown.class, "G[0-1]").code()).isEqualTo("G[...]");
    assertThat(Runs.only(Event.CodeUnknown.class, "G[214748365]").code()).isEqualTo("G214748365");
  }

  @Test
  void aTransformLosesThePlaceAtOnce() {
    for (String code : List.of("G68", "G51", "G51.1", "G16")) {
      List<Move> moves = Runs.of(Move.class, PLACE, code, "Y1");
      assertThat(moves.get(1).from().unknown() & 0b111).as(code).isEqualTo(0b111);
    }
  }

  @Test
  void underInverseTimeAFeedHoldsForItsBlock() {
    List<Move> moves = Runs.of(Move.class, PLACE, "G93 G1 X1 F2", "X2 S5", "X3 F4", "X4");
    assertThat(moves)
        .extracting(move -> move.modes().feed().value().isPresent())
        .containsExactly(true, true, false, true, false);
  }

  @Test
  void aLengthOffsetWithoutItsNumberIsRefusedByItsCode() {
    assertThat(Runs.only(Event.WordRefused.class, PLACE, "G43").word()).isEqualTo("G43");
    assertThat(lost(PLACE, "G43")).containsExactly("2: length offset, Z");
  }
}

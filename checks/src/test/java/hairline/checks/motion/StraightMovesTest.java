package hairline.checks.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.parser.Span;
import org.junit.jupiter.api.Test;

class StraightMovesTest {
  @Test
  void rapidAndFeedMovesGoWhereTheirWordsSay() {
    assertThat(Runs.moves("G21 G90 G0 X1 Y2 Z3", "G1 X1.5 F100", "Y-2.25 Z0"))
        .containsExactly("RAPID X1 Y2 Z3", "LINE X1.5 Y2 Z3", "LINE X1.5 Y-2.25 Z0");
  }

  @Test
  void spacesInsideNumbersAreRead() {
    // "The line g0x +0. 12 34y 7 is equivalent to g0 x+0.1234 y7" (NISTIR 6556 §3.3).
    assertThat(Runs.moves("g0x +0. 12 34y 7")).containsExactly("RAPID X0.1234 Y7");
  }

  @Test
  void incrementsAddToWhereTheAxisStands() {
    assertThat(Runs.moves("G90 G0 X1 Y1 Z1", "G91 G1 X0.5 Z-1", "X0.5", "G90 X0"))
        .containsExactly("RAPID X1 Y1 Z1", "LINE X1.5 Y1 Z0", "LINE X2 Y1 Z0", "LINE X0 Y1 Z0");
  }

  @Test
  void anIncrementFromAnUnknownPlaceStaysUnknown() {
    Move move = Runs.only(Move.class, "G91 G1 X1 F10");
    assertThat(move.to().knows(Axis.X)).isFalse();
    assertThat(move.lengthMm()).isZero();
  }

  @Test
  void anInchIsExactly25Point4Millimetres() {
    assertThat(Runs.moves("G20 G0 X1 Y0.1", "G21 X1", "G70 X-2", "G71 X-2"))
        .containsExactly(
            "RAPID X25.4 Y2.54", "RAPID X1 Y2.54", "RAPID X-50.8 Y2.54", "RAPID X-2 Y2.54");
  }

  @Test
  void lengthIsTheDistanceBetweenTheEnds() {
    // 3-4-5 and 2-3-6-7 by Pythagoras.
    Move flat = Runs.of(Move.class, "G0 X0 Y0 Z0", "G1 X3 Y4 F10").get(1);
    assertThat(flat.lengthMm()).isCloseTo(5, within(1e-12));
    Move steep = Runs.of(Move.class, "G0 X0 Y0 Z0", "G1 X2 Y3 Z-6 F10").get(1);
    assertThat(steep.lengthMm()).isCloseTo(7, within(1e-12));
  }

  @Test
  void lengthCountsTheAxesThatMoveWhereAnotherIsUnknown() {
    Move move = Runs.of(Move.class, "G0 X0 Y0", "G1 X3 Y4 F10").get(1);
    assertThat(move.lengthMm()).isCloseTo(5, within(1e-12));
    assertThat(move.to().knows(Axis.Z)).isFalse();
  }

  @Test
  void feedIsInTheUnitsOfItsOwnBlock() {
    assertThat(Runs.only(Move.class, "G20 G1 X1 F2").feedMmPerMin()).hasValue(50.8);
    assertThat(Runs.of(Move.class, "G1 X1 F100", "G20 X2").get(1).feedMmPerMin()).hasValue(100);
  }

  @Test
  void rapidsHaveNoFeed() {
    assertThat(Runs.only(Move.class, "G0 X1 F100").feedMmPerMin()).isEmpty();
  }

  @Test
  void feedPerRevolutionNeedsATurningSpindle() {
    assertThat(Runs.only(Move.class, "G95 S20000 M3 G1 X1 F0.01").feedMmPerMin()).hasValue(200);
    assertThat(Runs.only(Move.class, "G95 M3 G1 X1 F0.01").feedMmPerMin()).isEmpty();
  }

  @Test
  void inverseTimeIsOneOverMinutes() {
    // "if the F number is 2.0, the move should be completed in half a minute" (NISTIR 6556
    // §3.5.19).
    Move move = Runs.of(Move.class, "G0 X0 Y0 Z0", "G93 G1 X10 F2").get(1);
    assertThat(move.feedMmPerMin().getAsDouble()).isCloseTo(20, within(1e-9));
  }

  @Test
  void aMoveKnowsItsPlace() {
    Move move = Runs.only(Move.class, "", "N20 G1 X1.5 Y2 F100 (cut)");
    assertThat(move.at()).isEqualTo(new Place(0, 2, new Span(5, 15)));
  }

  @Test
  void aMoveThatGoesNowhereIsNone() {
    assertThat(Runs.moves("G0 X1", "G1 X1 F10", "X1.0")).containsExactly("RAPID X1");
  }

  @Test
  void eachMoveBeginsWhereTheLastOneEnded() {
    var moves = Runs.of(Move.class, "G0 X0 Y0 Z5", "G1 Z0 F10", "X1", "Y1");
    for (int i = 1; i < moves.size(); i++) {
      assertThat(moves.get(i).from()).isSameAs(moves.get(i - 1).to());
      assertThat(moves.get(i).modes()).isSameAs(moves.get(1).modes());
    }
  }

  @Test
  void exactStopIsForOneBlockOrAMode() {
    assertThat(Runs.of(Move.class, "G1 G9 X1 F1", "X2", "G61 X3", "X4", "G64 X5", "G61.1 X6"))
        .extracting(Move::exactStop)
        .containsExactly(true, false, true, true, false, true);
  }

  @Test
  void aFourthAxisIsCarried() {
    Move move = Runs.only(Move.class, "G0 X1 A90.5");
    assertThat(move.to().get(Axis.A)).isEqualTo(90_500_000);
  }

  @Test
  void blockDeleteLeavesBlocksOut() {
    String[] program = {"G0 X1", "/X2", "X3"};
    assertThat(Runs.of(Move.class, Runs.events(Runs.TENTH_UM, false, program))).hasSize(3);
    assertThat(Runs.of(Move.class, Runs.events(Runs.TENTH_UM, true, program))).hasSize(2);
  }
}

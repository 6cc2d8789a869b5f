package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.motion.Modal;
import hairline.checks.motion.Modes;
import hairline.checks.setup.ToolShape;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Width of cut, slot, side: from where a pass takes its material. */
class EngagementTest {
  private static final double EXACT_MM = 1e-9;

  private static void isSlot(Cut cut) {
    assertThat(cut.slot()).isTrue();
    assertThat(cut.radialMm()).hasValue(0.4);
    assertThat(cut.materialSide()).isEmpty();
    assertThat(cut.climb()).isEmpty();
  }

  private static void takes(Cut cut, double widthMm, Side side) {
    assertThat(cut.contact()).isEqualTo(Contact.YES);
    assertThat(cut.spring()).isFalse();
    assertThat(cut.slot()).isFalse();
    assertThat(cut.radialMm()).isPresent();
    assertThat(cut.radialMm().getAsDouble()).isCloseTo(widthMm, within(EXACT_MM));
    assertThat(cut.materialSide()).contains(side);
  }

  @Test
  void theFirstPassInSolidStockIsASlot() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50).g1(0, 0, -4).g1(1000, 0, -4);
    isSlot(bench.last());
    bench.g0(0, 0, 50).g0(0, 1000, 50).g1(0, 1000, -4).g1(700, 1900, -4);
    isSlot(bench.last());
  }

  @ParameterizedTest
  @ValueSource(doubles = {3, 8, 12.5, 25, 60, 133.7, 200, 250, 320, 399})
  void aParallelPassTakesItsDistanceFromTheOneBefore(double stepover) {
    // Zigzag: there along +X, back along -X, a stepover farther in +Y.
    Bench bench = Bench.flat().stock().g0(0, 0, 50).g1(0, 0, -4).g1(3000, 0, -4);
    bench.g1(3000, stepover, -4).g1(0, stepover, -4);
    // Travelling -X, +Y lies to the right.
    takes(bench.last(), stepover / 1000, Side.RIGHT);
    assertThat(bench.last().climb()).contains(true);
    assertThat(Bench.um(bench.last())).containsExactly(4.0);
    bench.g1(0, 2 * stepover, -4).g1(3000, 2 * stepover, -4);
    takes(bench.last(), stepover / 1000, Side.LEFT);
    assertThat(bench.last().climb()).contains(false);
    assertThat(bench.steps()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(doubles = {8, 30, 100, 330})
  void oneWayPassesKeepTheirSide(double stepover) {
    Bench bench = Bench.flat().stock();
    for (int k = 0; k < 4; k++) {
      bench.g0(0, -stepover * k, 50).g1(0, -stepover * k, -4).g1(3000, -stepover * k, -4);
      if (k > 0) {
        takes(bench.last(), stepover / 1000, Side.RIGHT);
      }
      bench.g0(3000, 0, 50);
    }
    assertThat(bench.levels()).hasSize(4).extracting(LevelReached::levelId).containsOnly(1);
    assertThat(bench.levels())
        .extracting(LevelReached::again)
        .containsExactly(false, true, true, true);
  }

  @Test
  void theDirectionOfTheSpindleDecidesBetweenClimbAndConventional() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50).g1(0, 0, -4).g1(3000, 0, -4);
    bench.modes(Bench.spindle(bench.modes(), Modal.stated(Modes.Spindle.COUNTER_CLOCKWISE, 1)));
    bench.g1(3000, 50, -4).g1(0, 50, -4);
    assertThat(bench.last().materialSide()).contains(Side.RIGHT);
    assertThat(bench.last().climb()).contains(false);
    bench.modes(Bench.spindle(bench.modes(), Modal.unknown(9)));
    bench.g1(0, 100, -4).g1(3000, 100, -4);
    assertThat(bench.last().climb()).isEmpty();
  }

  @Test
  void slantedPassesMeetAtTheirPerpendicularDistance() {
    // Direction (3, 4)/5; offset 50 µm along (-4, 3)/5.
    Bench bench = Bench.flat().stock().g0(0, 0, 50).g1(0, 0, -4).g1(1800, 2400, -4);
    bench.g0(-40, 30, 50).g1(-40, 30, -4).g1(1760, 2430, -4);
    takes(bench.last(), 0.05, Side.LEFT);
  }

  @Test
  void anotherToolBesideReachesAsFarAsItsRadius() {
    // Left by a 600 µm tool at Y0: its floor ends at Y300. A 400 µm tool at Y150 reaches Y350.
    Bench bench =
        new Bench()
            .tool(1, ToolShape.FLAT, 400, 0, 1.5)
            .tool(2, ToolShape.FLAT, 600, 0, 1.5)
            .stock()
            .change(2);
    bench.g0(0, 0, 50).g1(-1000, 0, -4).g1(3000, 0, -4).change(1);
    bench.g0(0, 150, 50).g1(0, 150, -4).g1(2000, 150, -4);
    takes(bench.last(), 0.05, Side.LEFT);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-150, -60, 0, 60, 150})
  void alongAnEdgeOfTheStockTheWidthIsWhatOverlaps(double y) {
    // The stock begins at Y-4000; travelling +X it stands to the left.
    Bench bench = Bench.flat().stock().g0(0, -4000 + y, 50).g1(0, -4000 + y, -4);
    bench.g1(3000, -4000 + y, -4);
    takes(bench.last(), (200 + y) / 1000, Side.LEFT);
    bench.g0(0, 4000 - y, 50).g1(0, 4000 - y, -4).g1(3000, 4000 - y, -4);
    takes(bench.last(), (200 + y) / 1000, Side.RIGHT);
    bench.g0(-6000 + y, 0, 50).g1(-6000 + y, 0, -4).g1(-6000 + y, 2000, -4);
    takes(bench.last(), (200 + y) / 1000, Side.RIGHT);
    bench.g0(6000 - y, 0, 50).g1(6000 - y, 0, -4).g1(6000 - y, 2000, -4);
    takes(bench.last(), (200 + y) / 1000, Side.LEFT);
    bench.g0(6000 - y, -2000, 50).g1(6000 - y, -2000, -4).g1(6000 - y, -3000, -4);
    takes(bench.last(), (200 + y) / 1000, Side.RIGHT);
  }

  @ParameterizedTest
  @ValueSource(doubles = {6, 40, 150})
  void concentricArcsMeetAtTheDifferenceOfTheirRadii(double stepover) {
    Bench bench = Bench.flat().stock().g0(1000, 0, 50).g1(1000, 0, -4).arc(0, 0, 360, -4);
    isSlot(bench.last());
    double r = 1000 + stepover;
    bench.g0(r, 0, 50).g1(r, 0, -4).arc(0, 0, 360, -4);
    // Counter-clockwise: the outside is to the right.
    takes(bench.last(), stepover / 1000, Side.RIGHT);
    r = 1000 - stepover;
    bench.g0(r, 0, 50).g1(r, 0, -4).arc(0, 0, -360, -4);
    takes(bench.last(), stepover / 1000, Side.RIGHT);
    assertThat(Bench.um(bench.last())).containsExactly(4.0);
  }

  @Test
  void shortMovesAlongACurveAreInContactAllTheWay() {
    // Chords of some 5 µm along a circle: a slot, then a ring 30 µm farther out.
    Bench bench = Bench.flat().stock();
    for (double r : new double[] {1000, 1030}) {
      bench.g0(r, 0, 50).g1(r, 0, -4);
      int first = bench.line() + 1;
      for (int k = 1; k <= 1200; k++) {
        double angle = 2 * Math.PI * k / 1200;
        bench.g1(r * StrictMath.cos(angle), r * StrictMath.sin(angle), -4);
      }
      // But for the end, where the ring closes on itself.
      for (Cut cut : bench.cuts()) {
        if (cut.at().line() >= first + 5 && cut.at().line() < first + 1100) {
          assertThat(cut.contact()).as("line %d", cut.at().line()).isEqualTo(Contact.YES);
          assertThat(Bench.um(cut)).containsExactly(4.0);
          if (r == 1000) {
            isSlot(cut);
          } else {
            assertThat(cut.materialSide()).contains(Side.RIGHT);
            assertThat(cut.radialMm().orElse(Double.NaN)).isCloseTo(0.03, within(1e-5));
          }
        }
      }
      bench.g0(0, 0, 50);
    }
    assertThat(bench.all(PassEnded.class)).filteredOn(p -> p.levelId() > 0).hasSize(2);
  }

  @Test
  void aPassBetweenTwoOthersHasNoSide() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50).g1(0, 0, -4).g1(3000, 0, -4);
    bench.g0(0, 600, 50).g1(0, 600, -4).g1(3000, 600, -4);
    bench.g0(0, 300, 50).g1(0, 300, -4).g1(3000, 300, -4);
    assertThat(bench.last().inContact()).isTrue();
    assertThat(bench.last().slot()).isFalse();
    assertThat(bench.last().radialMm()).isEmpty();
    assertThat(bench.last().materialSide()).isEmpty();
  }

  @Test
  void aPassThatIsSlotAndSideInTurnCountsAsSlot() {
    // The pass before is half as long: beyond its end the full width engages.
    Bench bench = Bench.flat().stock().g0(0, 0, 50).g1(0, 0, -4).g1(1500, 0, -4);
    bench.g0(0, 50, 50).g1(0, 50, -4).g1(3000, 50, -4);
    isSlot(bench.last());
  }

  @Test
  void theSidesAreUnknownWhereNoParallelPathExplainsThem() {
    // Beside a wedge: the width changes along the pass.
    Bench bench = Bench.flat().stock().g0(0, 0, 50).g1(0, 0, -4).g1(3000, 0, -4);
    bench.g0(0, 50, 50).g1(0, 50, -4).g1(3000, 250, -4);
    assertThat(bench.last().inContact()).isTrue();
    assertThat(bench.last().radialMm()).isEmpty();
    assertThat(bench.last().materialSide()).contains(Side.LEFT);
  }

  @Test
  void inAnOpenPocketNothingIsTouched() {
    Bench bench = Bench.flat().stock();
    for (int k = 0; k < 6; k++) {
      bench.g0(0, 150 * k, 50).g1(0, 150 * k, -4).g1(3000, 150 * k, -4);
    }
    bench.g0(1500, 200, 50).g1(1500, 200, -4);
    assertThat(bench.last().contact()).isEqualTo(Contact.NO);
    bench.g1(1500, 500, -4);
    assertThat(bench.last().contact()).isEqualTo(Contact.NO);
    assertThat(bench.last().runsAtLevel()).isTrue();
    assertThat(bench.last().passId()).isZero();
    // Chords of 5 µm in the open, and along the wall that the first pass left.
    for (int k = 1; k < 40; k++) {
      bench.g1(1500 + 5 * k, 500, -4);
      assertThat(bench.last().contact()).isEqualTo(Contact.NO);
    }
    bench.g1(1500, 0, -4);
    for (int k = 1; k < 40; k++) {
      bench.g1(1500 + 5 * k, 0.5 * (k % 2), -4);
      assertThat(bench.last().stepDowns()).isEmpty();
    }
  }

  @Test
  void aBallPassTakesItsDistanceFromTheOneBefore() {
    Bench bench = new Bench().tool(1, ToolShape.BALL, 400, 200, 1.5).stock().change(1).g0(0, 0, 50);
    bench.g1(0, 0, -20).g1(3000, 0, -20);
    assertThat(bench.last().slot()).isFalse();
    assertThat(bench.last().radialMm()).isEmpty();
    bench.g0(0, 30, 50).g1(0, 30, -20).g1(3000, 30, -20);
    takes(bench.last(), 0.03, Side.LEFT);
    assertThat(bench.last().levelId()).isPositive();
    // Z varies: the distance seen from above.
    bench.g0(0, 1000, 50).g1(0, 1000, -20).g1(3000, 1000, -60);
    bench.g0(0, 1020, 50).g1(0, 1020, -20).g1(3000, 1020, -60);
    takes(bench.last(), 0.02, Side.LEFT);
    assertThat(bench.last().levelId()).isEqualTo(Cut.NO_LEVEL);
  }

  @Test
  void aFullBallSlotIsASlot() {
    Bench bench = new Bench().tool(1, ToolShape.BALL, 400, 200, 1.5).stock().change(1).g0(0, 0, 50);
    bench.g1(0, 0, -250).g1(3000, 0, -250);
    isSlot(bench.last());
  }

  @Test
  void climbNeedsASide() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50).g1(0, 0, -4).g1(3000, 0, -4);
    assertThat(bench.last().climb()).isEqualTo(Optional.empty());
  }
}

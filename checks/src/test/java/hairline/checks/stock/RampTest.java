package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.motion.Arc;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.setup.ToolShape;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Ramps, helices, plunges, and tools whose end is not flat. */
class RampTest {

  private static Cut at(Bench bench, int line) {
    return bench.cuts().stream().filter(c -> c.at().line() == line).findFirst().orElseThrow();
  }

  @Test
  void aPlungeTakesItsDepthOverWhatStoodThere() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50).g1(0, 0, -30);
    int first = bench.line();
    bench.g1(0, 0, -45);
    int second = bench.line();
    bench.g1(0, 0, 50);
    int up = bench.line();
    bench.end();
    assertThat(Bench.um(at(bench, first))).containsExactly(30.0);
    assertThat(at(bench, first).stepDowns().get(0).exact()).isTrue();
    assertThat(at(bench, first).writtenStepDownPm()).hasValue(Bench.pm(30));
    assertThat(at(bench, first).runsAtLevel()).isFalse();
    assertThat(at(bench, first).levelId()).isEqualTo(Cut.NO_LEVEL);
    // One uninterrupted entry: it counts from where it began.
    assertThat(Bench.um(at(bench, second))).containsExactly(45.0);
    assertThat(at(bench, up).contact()).isEqualTo(Contact.NO);
    assertThat(bench.levels()).isEmpty();
    assertThat(bench.steps()).isEmpty();
  }

  @Test
  void anotherPlungeIntoTheHoleTakesOnlyTheRest() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50).g1(0, 0, -30).g0(0, 0, 50).g1(0, 0, -45);
    int line = bench.line();
    bench.end();
    assertThat(Bench.um(at(bench, line))).containsExactly(15.0);
    assertThat(at(bench, line).stepDowns().get(0).exact()).isFalse();
    assertThat(at(bench, line).stepDowns().get(0).overLevelId()).isEqualTo(Cut.NO_LEVEL);
    assertThat(at(bench, line).writtenStepDownPm()).isEmpty();
  }

  @Test
  void aPlungeThroughALevelCountsFromTheLevel() {
    Bench bench = Bench.flat().stock().written(0.01).g0(0, 0, 50);
    bench.g1(0, 0, -4).g1(900, 0, -4).written(-0.01).g1(900, 0, -10);
    int line = bench.line();
    bench.g0(0, 0, 50).end();
    assertThat(Bench.um(at(bench, line))).containsExactly(6.0);
    assertThat(at(bench, line).writtenStepDownPm()).hasValue(6_020_000);
    assertThat(at(bench, line).stepDowns().get(0).overLevelId()).isEqualTo(1);
  }

  @Test
  void aRampTakesItsWholeDepthAtItsEnd() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50).g1(0, 0, 0).g1(2000, 0, -10);
    int down = bench.line();
    bench.g1(0, 0, -10);
    int back = bench.line();
    bench.g1(0, 100, -10).g1(2000, 100, -10);
    int beside = bench.line();
    bench.end();
    assertThat(Bench.um(at(bench, down))).containsExactly(10.0);
    assertThat(at(bench, down).stepDowns().get(0).exact()).isTrue();
    assertThat(at(bench, down).writtenStepDownPm()).hasValue(Bench.pm(10));
    assertThat(at(bench, down).feature()).isEmpty();
    // The wedge that the ramp left is what the level takes, but its step-down is the whole.
    assertThat(Bench.um(at(bench, back))).containsExactly(10.0);
    assertThat(bench.levels().get(0).stepDownPm()).hasValue(Bench.pm(10));
    assertThat(Bench.um(at(bench, beside))).containsExactly(10.0);
    assertThat(bench.stepWords()).containsExactly("10.0 at " + back);
  }

  @Test
  void theFloorOfARampLiesWhereTheTipWasLowest() {
    Surface surface =
        new Surface("G54", Bench.flat().stock().model(), new HeightGrid.TileBudget(99));
    Bench bench = Bench.flat().stock().g0(0, 0, 0).g1(2000, 0, -10);
    bench.end();
    Move move = bench.all(Cut.class).get(1).move();
    Removed found = new Removed(Bench.pm(25));
    surface.cut(Path.of(move), new Cutter(ToolShape.FLAT, Bench.pm(200), 0, 0), -16, -16, found);
    // Over x = 1012.5 (cell 40) the tip is last at 1012.5 + √(200² - 12.5²) = 1212.10899 µm,
    // where it is 10 · 1212.10899 / 2000 = 6.060545 µm deep.
    assertThat(surface.grid.height(40, 0)).isEqualTo(-6_060_545);
    // From 1800 µm on it is as deep as the end.
    assertThat(surface.grid.height(80, 0)).isEqualTo(-10_000_000);
    assertThat(surface.grid.id(80, 0)).isEqualTo(-16);
  }

  @Test
  void aHelixTakesItsDepthAndTheLevelTheWhole() {
    Bench bench = Bench.flat().stock().g0(100, 0, 50).g1(100, 0, 0);
    for (int k = 1; k <= 3; k++) {
      bench.arc(0, 0, 360, -5 * k);
      assertThat(bench.levels()).isEmpty();
    }
    int helix = bench.line();
    bench.arc(0, 0, 360, -15);
    int level = bench.line();
    bench.end();
    assertThat(Bench.um(at(bench, helix))).containsExactly(15.0);
    assertThat(at(bench, helix).stepDowns().get(0).exact()).isTrue();
    assertThat(Bench.um(at(bench, level))).containsExactly(15.0);
    assertThat(bench.levels().get(0).stepDownPm()).hasValue(Bench.pm(15));
    assertThat(bench.stepWords()).containsExactly("15.0 at " + level);
  }

  @Test
  void aSecondRampCountsFromTheLevelThatTheFirstLedTo() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50).g1(0, 0, 0);
    bench.g1(2000, 0, -10).g1(0, 0, -10).g1(2000, 0, -16).g1(0, 0, -16);
    bench.end();
    assertThat(bench.levels())
        .extracting(l -> l.stepDownPm().getAsLong() / 1e6)
        .containsExactly(10.0, 6.0);
    assertThat(bench.stepWords()).containsExactly("16.0 at " + bench.line(-1));
  }

  @Test
  void aRampLeftAtRapidIsASurfaceLikeAnyOther() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50).g1(0, 0, 0).g1(2000, 0, -10);
    bench.g0(0, 0, 50).g1(0, 0, -10).g1(2000, 0, -10);
    Cut cut = bench.last();
    // Between nothing and 10 µm, less what the tool's round leaves: some 9 µm, and no exact height.
    assertThat(cut.stepDowns()).hasSize(1);
    assertThat(cut.stepDowns().get(0).exact()).isFalse();
    assertThat(cut.stepDownPm().getAsLong()).isBetween(Bench.pm(8), Bench.pm(10));
  }

  @Test
  void withoutStockARampIsUnknownAndSoIsItsLevel() {
    Bench bench = Bench.flat().g0(0, 0, 0).g1(2000, 0, -10).g1(0, 0, -10);
    bench.end();
    assertThat(bench.cuts()).filteredOn(Cut::inContact).hasSize(2);
    assertThat(bench.cuts()).allMatch(c -> c.stepDowns().isEmpty());
    assertThat(bench.levels().get(0).stepDownPm()).isEmpty();
  }

  @Test
  void aBallLeavesNoTerraceAndItsDepthIsThatOfItsTip() {
    Bench bench = new Bench().tool(1, ToolShape.BALL, 400, 200, 1.5).stock().change(1).g0(0, 0, 50);
    bench.g1(0, 0, -20).g1(3000, 0, -20);
    assertThat(Bench.um(bench.last())).containsExactly(20.0);
    assertThat(bench.last().stepDowns().get(0).exact()).isTrue();
    assertThat(bench.last().runsAtLevel()).isTrue();
    assertThat(bench.last().levelId()).isEqualTo(1);
    bench.end();
    assertThat(bench.steps()).isEmpty();
    // A ball of radius 200 leaves, 12.5 µm off its path, 200 - √(200² - 12.5²) = 0.391006 µm more.
    assertThat(bench.levels()).hasSize(1);
  }

  @Test
  void aBallMakesALevelOnceItHasComeADiameterFar() {
    Bench bench = new Bench().tool(1, ToolShape.BALL, 400, 200, 1.5).stock().change(1).g0(0, 0, 50);
    bench.g1(0, 0, -20);
    for (int k = 1; k <= 7; k++) {
      bench.g1(50 * k, 0, -20);
      assertThat(bench.last().levelId()).isEqualTo(Cut.NO_LEVEL);
    }
    bench.g1(400, 0, -20);
    assertThat(bench.last().levelId()).isEqualTo(1);
    assertThat(bench.levels()).hasSize(1);
    bench.g1(450, 0, -21);
    assertThat(bench.last().levelId()).isEqualTo(Cut.NO_LEVEL);
    bench.g1(500, 0, -21);
    assertThat(bench.last().levelId()).isEqualTo(Cut.NO_LEVEL);
  }

  @Test
  void aCornerRadiusLeavesItsFloorAtItsZ() {
    Bench bench = new Bench().tool(1, ToolShape.BULL, 400, 50, 1.5).stock().change(1).g0(0, 0, 50);
    bench.g1(0, 0, -8).g1(3000, 0, -8).g0(0, 0, 50).g1(0, 0, -14).g1(3000, 0, -14);
    Cut second = bench.last();
    assertThat(second.stepDownPm()).hasValue(Bench.pm(6));
    bench.end();
    assertThat(bench.levels())
        .extracting(LevelReached::storedZPm)
        .containsExactly(Bench.pm(-8), Bench.pm(-14));
    // The foot of the wall, 50 µm wide, is looked across.
    assertThat(bench.stepWords()).containsExactly("14.0 at " + bench.levels().get(1).at().line());
  }

  @Test
  void anArcInAVerticalPlaneIsCutAlongItsCurve() {
    // G18, half a circle of radius 300 about X0 Z300 - 40 from X-300 to X300: 340 deep at most.
    Bench bench =
        new Bench().tool(1, ToolShape.BALL, 400, 200, 1.5).stock().change(1).g0(-300, 0, 260);
    Modes flat = bench.modes();
    bench.modes(Bench.plane(flat, Modes.Plane.ZX));
    // In ZX the first axis is Z: from (260, -300) through (-40, 0) to (260, 300).
    Arc arc = new Arc(0.260, 0, 0.3, 0.3, -Math.PI, false);
    bench.move(Move.Kind.ARC_CW, 300, 0, 260, Optional.of(arc));
    Cut cut = bench.last();
    assertThat(cut.contact()).isEqualTo(Contact.YES);
    assertThat(cut.stepDownPm().getAsLong() / 1e6).isCloseTo(40, within(0.5));
    assertThat(cut.runsAtLevel()).isFalse();
    bench.end();
    assertThat(bench.levels()).isEmpty();
  }

  @Test
  void anArcWhoseRadiiDifferIsCutInChords() {
    // 2 µm between the radii: a spiral.
    Bench bench = Bench.flat().stock().g0(1000, 0, 50).g1(1000, 0, -4);
    Arc arc = new Arc(0, 0, 1.000, 1.002, Math.PI, false);
    bench.move(Move.Kind.ARC_CCW, -1002, 0, -4, Optional.of(arc));
    assertThat(Bench.um(bench.last())).containsExactly(4.0);
    assertThat(bench.last().slot()).isTrue();
    bench.end();
    assertThat(bench.stepWords()).containsExactly("4.0 at 4");
  }
}

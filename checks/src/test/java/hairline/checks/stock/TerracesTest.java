package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.setup.ToolShape;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Terraces and pockets: which levels there are, what they take, which steps the part has. */
class TerracesTest {

  /** A terrace of 1 mm in X, cut by zigzag passes along Y, open at both sides. */
  private static void terrace(Bench bench, double x, double z) {
    bench.g0(x, -2500, 50).g1(x, -2500, z);
    double y = 2500;
    for (int k = 0; k <= 8; k++) {
      bench.g1(x + 100 * k, y, z);
      if (k < 8) {
        bench.g1(x + 100 * (k + 1), y, z);
      }
      y = -y;
    }
    bench.g0(x + 800, y, 50);
  }

  @Test
  void aStaircaseHasTheStepsOfTheDrawing() {
    // Levels -4, -8, -14: the drawing asks for steps of 4, 4 and 6.
    Bench bench = Bench.flat().stock(-6000, 6000, -2000, 2000, 0, -3000).g0(0, 0, 50);
    terrace(bench, -1800, -4);
    int second = bench.line() + 2;
    terrace(bench, -700, -8);
    int third = bench.line() + 2;
    terrace(bench, 400, -14);
    bench.end();

    assertThat(bench.steps())
        .extracting(s -> s.upper().storedZPm() / 1e6, s -> s.lower().storedZPm() / 1e6)
        .containsExactlyInAnyOrder(
            org.assertj.core.groups.Tuple.tuple(0.0, -4.0),
            org.assertj.core.groups.Tuple.tuple(-4.0, -8.0),
            org.assertj.core.groups.Tuple.tuple(-8.0, -14.0),
            org.assertj.core.groups.Tuple.tuple(0.0, -14.0));
    assertThat(bench.stepWords()).contains("4.0 at " + (second + 1), "6.0 at " + (third + 1));
  }

  @Test
  void whatEachLevelTakesIsTheHeightOverTheOneBefore() {
    // Nested: the whole field at -4, the right two thirds at -8, the right third at -14.
    Bench bench = Bench.flat().stock(-1500, 1500, -2000, 2000, 0, -3000).g0(0, 0, 50);
    int[] lines = new int[3];
    double[] levels = {-4, -8, -14};
    double[] starts = {-1600, -700, 400};
    for (int k = 0; k < 3; k++) {
      lines[k] = bench.line() + 3;
      double y = 2500;
      bench.g0(starts[k], -y, 50).g1(starts[k], -y, levels[k]);
      for (double x = starts[k]; x <= 1800; x += 100) {
        bench.g1(x, y, levels[k]).g1(x + 100, y, levels[k]);
        y = -y;
      }
      bench.g0(1800, y, 50);
    }
    bench.end();
    assertThat(bench.levels())
        .extracting(LevelReached::at)
        .extracting(p -> p.line())
        .containsExactly(lines[0], lines[1], lines[2]);
    assertThat(bench.levels())
        .extracting(l -> l.stepDownPm().getAsLong() / 1e6)
        .containsExactly(4.0, 4.0, 6.0);
    assertThat(bench.stepWords()).containsExactly("4.0 at " + lines[1], "6.0 at " + lines[2]);
    assertThat(bench.steps().get(1).upper().levelId()).isEqualTo(2);
    assertThat(bench.steps().get(1).lower().first().orElseThrow().line()).isEqualTo(lines[2]);
    // The border runs across the whole field of 4 mm.
    assertThat(bench.steps().get(1).borderMm()).isBetween(3.9, 4.1);
  }

  @Test
  void aPocketCutInSeveralStepDownsHasOneStep() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50);
    for (double z : List.of(-5.0, -10.0, -15.0)) {
      bench.g0(-1000, -500, 50).g1(-1000, -500, z);
      bench.g1(1000, -500, z).g1(1000, -300, z).g1(-1000, -300, z);
      bench.g1(-1000, -100, z).g1(1000, -100, z);
      bench.g0(0, 0, 50);
    }
    bench.end();
    assertThat(bench.levels())
        .extracting(l -> l.stepDownPm().getAsLong() / 1e6)
        .containsExactly(5.0, 5.0, 5.0);
    assertThat(bench.stepWords()).containsExactly("15.0 at " + bench.levels().get(2).at().line());
    assertThat(bench.steps().get(0).upper().uncut()).isTrue();
  }

  @Test
  void equalLevelsElsewhereAreNoStep() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50);
    for (double x : List.of(-2000.0, 2000.0)) {
      bench.g0(x, -500, 50).g1(x, -500, -4).g1(x, 500, -4).g0(x, 500, 50);
    }
    bench.end();
    assertThat(bench.levels()).extracting(LevelReached::levelId).containsExactly(1, 2);
    assertThat(bench.steps()).extracting(StepFound::heightPm).containsOnly(4 * Bench.UM);
    assertThat(bench.steps()).hasSize(2).allMatch(s -> s.upper().uncut());
  }

  @Test
  void withoutStockTheFirstSurfaceIsUnknownAndTheNextKnown() {
    Bench bench = Bench.flat().g0(0, 0, 50);
    bench.g1(0, 0, -4).g1(2000, 0, -4);
    int first = bench.line();
    bench.g0(0, 0, 50).g1(0, 0, -7).g1(2000, 0, -7);
    int second = bench.line();
    bench.end();
    assertThat(bench.cut(first).contact()).isEqualTo(Contact.YES);
    assertThat(bench.cut(first).contactBy()).isEqualTo(ContactBasis.LOWEST_RAPID_Z);
    assertThat(bench.cut(first).stepDowns()).isEmpty();
    assertThat(bench.cut(first).surfacePartlyUnknown()).isTrue();
    assertThat(bench.cut(first).fineUndecided()).isTrue();
    assertThat(bench.cut(second).stepDownPm()).hasValue(3 * Bench.UM);
    assertThat(bench.cut(second).surfacePartlyUnknown()).isFalse();
    assertThat(bench.cut(second).fine()).isTrue();
    assertThat(bench.steps()).isEmpty();
  }

  @Test
  void aCutAcrossStepsTakesLessOnEachUntilItRunsOut() {
    // Common practice, no source: a cut of 5 µm crossing steps of 2 µm is 5 µm deep before the
    // first, then 3 µm, then 1 µm, then nothing.
    Bench bench = Bench.flat().stock(-500, 4500, -2000, 2000, 0, -3000).g0(0, 0, 50);
    for (int k = 1; k <= 3; k++) {
      double y = 2500;
      bench.g0(1200 * k, -y, 50).g1(1200 * k, -y, -2 * k);
      for (double x = 1200 * k; x <= 4800; x += 300) {
        bench.g1(x, y, -2 * k).g1(x + 300, y, -2 * k);
        y = -y;
      }
    }
    bench.g0(-1000, 0, 50).g1(-1000, 0, -5).g1(5000, 0, -5);
    int across = bench.line();
    bench.end();
    assertThat(Bench.um(bench.cut(across))).containsExactly(5.0, 3.0, 1.0);
    assertThat(bench.cut(across).stepDowns()).allMatch(StepDown::exact);
    // The lengths: terraces begin a radius before their first centre line.
    assertThat(bench.cut(across).stepDowns().get(1).lengthMm()).isBetween(1.15, 1.25);
  }

  @Test
  void aDeeperCrossingOfBroaderStepsDoesTheSame() {
    // Common practice, no source: 7 µm across steps of 3 µm: 4, 1, nothing.
    Bench bench = Bench.flat().stock(0, 3000, -2000, 2000, -3, -3000).g0(0, 0, 50);
    for (int k = 2; k <= 3; k++) {
      double y = 2500;
      bench.g0(1000 * (k - 1), -y, 50).g1(1000 * (k - 1), -y, -3 * k);
      for (double x = 1000 * (k - 1); x <= 3300; x += 300) {
        bench.g1(x, y, -3 * k).g1(x + 300, y, -3 * k);
        y = -y;
      }
    }
    bench.g0(-500, 0, 50).g1(-500, 0, -7).g1(3500, 0, -7);
    assertThat(Bench.um(bench.last())).containsExactly(4.0, 1.0);
  }

  @Test
  void writtenHeightsAreKeptBesideStoredOnes() {
    // Stored -4 and -8, written -3.96 and -8.04: 4 as stored, 4.08 as written.
    Bench bench = Bench.flat().stock().written(0.04).g0(0, 0, 50);
    bench.g0(-2000, 0, 50).g1(-2000, 0, -4).g1(2000, 0, -4).g0(0, 0, 50);
    bench.written(-0.04).g1(0, 0, -8).g1(2000, 0, -8);
    Cut second = bench.last();
    bench.end();
    assertThat(second.stepDownPm()).hasValue(4_000_000);
    assertThat(second.writtenStepDownPm()).hasValue(4_080_000);
    StepFound step =
        bench.steps().stream().filter(s -> !s.upper().uncut()).findFirst().orElseThrow();
    assertThat(step.heightPm()).isEqualTo(4_000_000);
    assertThat(step.writtenHeightPm()).isEqualTo(4_080_000);
    assertThat(bench.levels().get(1).writtenStepDownPm()).hasValue(4_080_000);
    assertThat(bench.levels().get(0).writtenStepDownPm()).hasValue(3_960_000);
  }

  @Test
  void twoToolsOnOneStepAreBothNamed() {
    Bench bench = Bench.flat().tool(2, ToolShape.FLAT, 600, 0, 2).stock().g0(0, 0, 50);
    bench.g0(-2000, 0, 50).g1(-2000, 0, -4).g1(2000, 0, -4).g0(2000, 0, 50);
    bench.change(2).g0(0, 0, 50).g1(0, 0, -9).g1(2000, 0, -9).g0(0, 0, 50).end();
    StepFound step =
        bench.steps().stream().filter(s -> !s.upper().uncut()).findFirst().orElseThrow();
    assertThat(step.heightPm()).isEqualTo(5 * Bench.UM);
    assertThat(step.byTwoTools()).isTrue();
    assertThat(step.upper().tool().orElseThrow().number()).isEqualTo(1);
    assertThat(step.lower().firstOperation()).isEqualTo(step.upper().firstOperation() + 1);
    assertThat(step.later()).isEqualTo(step.lower());
    assertThat(bench.steps().stream().filter(s -> s.upper().uncut()))
        .noneMatch(StepFound::byTwoTools);
  }
}

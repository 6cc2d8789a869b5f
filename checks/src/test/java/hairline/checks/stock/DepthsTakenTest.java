package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The depths along a pass that crosses others. */
class DepthsTakenTest {
  private static final double CELL_MM = 0.004;

  /** A flight of three steps of 2 µm from, each a millimetre wide, going down. */
  private static Bench flight() {
    Bench bench = Bench.flat().cell(4).stock().depths();
    for (int step = 1; step <= 3; step++) {
      double left = -1500 + 1000.0 * (step - 1);
      for (double x = left + 200; x <= left + 800; x += 150) {
        bench.g0(x, -900, 100).g1(x, -900, -2 * step).g1(x, 900, -2 * step).g0(x, 900, 100);
      }
    }
    return bench;
  }

  private static String words(List<DepthStretch> stretches) {
    StringBuilder words = new StringBuilder();
    for (DepthStretch s : stretches) {
      words.append(s.depthPm().isPresent() ? s.depthPm().getAsLong() / 1e6 : "?").append(' ');
    }
    return words.toString().strip();
  }

  private static List<DepthStretch> last(Bench bench) {
    List<DepthsTaken> all = bench.all(DepthsTaken.class);
    return all.get(all.size() - 1).stretches();
  }

  /**
   * A cut of 5 µm across steps of 2 µm takes 3 µm, then 1 µm, then nothing (common practice, no
   * source).
   */
  @Test
  void aChannelAcrossStepsTakesLessOnEach() {
    Bench bench = flight().g0(-1000, 0, 100).g1(-1000, 0, -5).g1(1300, 0, -5);
    List<DepthStretch> stretches = last(bench);
    assertThat(words(stretches)).isEqualTo("3.0 1.0 0.0");
    assertThat(stretches.get(0).fromMm()).isZero();
    assertThat(stretches.get(0).toMm()).isCloseTo(0.5, within(CELL_MM));
    assertThat(stretches.get(1).toMm()).isCloseTo(1.5, within(CELL_MM));
    assertThat(stretches.get(2).toMm()).isEqualTo(2.3);
  }

  @Test
  void goingUpTheStepsIsTheSameBackwards() {
    Bench bench = flight().g0(1300, 0, 100).g1(1300, 0, -5).g1(-1000, 0, -5);
    List<DepthStretch> stretches = last(bench);
    assertThat(words(stretches)).isEqualTo("0.0 1.0 3.0");
    assertThat(stretches.get(0).toMm()).isCloseTo(0.8, within(CELL_MM));
    assertThat(stretches.get(1).toMm()).isCloseTo(1.8, within(CELL_MM));
  }

  @ParameterizedTest
  @ValueSource(doubles = {10, 37, 250})
  void shortMovesTellWhatTheWholeTells(double stepUm) {
    Bench bench = flight().g0(1300, 0, 100).g1(1300, 0, -5);
    int before = bench.line();
    for (double x = 1300 - stepUm; x > -1000; x -= stepUm) {
      bench.g1(x, 0, -5);
    }
    List<String> changes = new ArrayList<>();
    for (DepthsTaken taken : bench.all(DepthsTaken.class)) {
      for (DepthStretch s : taken.stretches()) {
        if (taken.at().line() <= before) {
          continue;
        }
        double x = 1300 - (taken.at().line() - before - 1) * stepUm - s.fromMm() * 1000;
        String depth = s.depthPm().getAsLong() / 1e6 + "";
        if (changes.isEmpty() || !changes.get(changes.size() - 1).startsWith(depth + " ")) {
          changes.add(depth + " from " + Math.round(x / 10) * 10);
        }
      }
    }
    assertThat(changes).filteredOn(c -> !c.startsWith("0.0")).hasSize(2);
    assertThat(changes.toString()).contains("1.0 from 500").contains("3.0 from -500");
  }

  @Test
  void arcsCrossSlotsToo() {
    Bench bench = Bench.flat().cell(4).stock().depths();
    bench.g0(0, -3000, 100).g1(0, -3000, -2).g1(0, 3000, -2);
    bench.g0(1000, 0, 100).g1(1000, 0, -3).arc(0, 0, 180, -3);
    List<DepthStretch> stretches = last(bench);
    assertThat(words(stretches)).isEqualTo("3.0 1.0 3.0");
    // The slot of 0.4 mm is met on the arc of 1 mm where its inner or outer border is.
    double middle = (stretches.get(1).fromMm() + stretches.get(1).toMm()) / 2;
    assertThat(middle).isCloseTo(Math.PI / 2, within(2 * CELL_MM));
  }

  @Test
  void aRampTellsItsLargestDepth() {
    Bench bench = Bench.flat().cell(4).stock().depths();
    bench.g0(0, 0, 100).g1(0, 0, 0).g1(1000, 0, -10).end();
    List<DepthStretch> stretches = last(bench);
    assertThat(stretches).hasSize(1);
    assertThat(stretches.get(0).toMm()).isCloseTo(StrictMath.hypot(1, 0.01), within(1e-9));
    // A flat tool is as deep below its rear as below its centre.
    assertThat(stretches.get(0).depthPm().getAsLong() / 1e6).isCloseTo(10, within(0.05));
  }

  @Test
  void withoutStockTheTopIsNotKnown() {
    Bench bench = Bench.flat().cell(4).depths();
    bench.g0(0, 0, 0).g1(0, 0, -10).g1(500, 0, -10);
    assertThat(words(last(bench))).isEqualTo("?");
  }

  @Test
  void nobodyAskedNothingTold() {
    Bench bench = Bench.flat().stock().g0(0, 0, 100).g1(0, 0, -10).g1(500, 0, -10);
    assertThat(bench.all(DepthsTaken.class)).isEmpty();
  }
}

package hairline.checks.cutting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RunoutTest {

  // f_z sin φ ± 2ρ for two teeth, the reading being 2ρ; a tooth never takes more than 2 f_z sin φ.
  @ParameterizedTest
  @CsvSource({"4, 2, 6, 2", "2, 3, 4, 0", "2, 2, 4, 0", "2, 0, 2, 2"})
  void longAndShortToothOfTwo(double feed, double reading, double longTooth, double shortTooth) {
    assertThat(Runout.mostLoadedChipUm(feed, reading, 2)).isEqualTo(longTooth);
    assertThat(Runout.leastLoadedChipUm(feed, reading, 2)).isEqualTo(shortTooth);
  }

  @ParameterizedTest
  @CsvSource({
    "2, 1.99, NOT_SHOWN, 2",
    "2, 2, CERTAIN, 2",
    "2, 5, NOT_SHOWN, 1",
    "2, 2.3, NOT_SHOWN, 3", // sin 60° · 2.3 = 1.992
    "2, 2.31, CERTAIN, 3", // 2.0005
    "2, 2.82, NOT_SHOWN, 4", // sin 45° · 2.82 = 1.994
    "2, 2.83, CERTAIN, 4" // 2.001
  })
  void whenAToothIsIdle(double feed, double reading, Certainty expected, int flutes) {
    assertThat(Runout.leavesToothIdle(feed, Band.ofExact(reading), flutes)).isEqualTo(expected);
  }

  @Test
  void idleToothOverABandOfReadings() {
    assertThat(Runout.leavesToothIdle(2, new Band(1, 2, 3), 2)).isEqualTo(Certainty.LIKELY);
    assertThat(Runout.leavesToothIdle(2, new Band(1, 1.9, 3), 2)).isEqualTo(Certainty.NOT_SHOWN);
    assertThat(Runout.leavesToothIdle(2, new Band(2, 2.1, 3), 2)).isEqualTo(Certainty.CERTAIN);
  }

  @Test
  void oneToothKnowsNoRunout() {
    assertThat(Runout.mostLoadedChipUm(2, 5, 1)).isEqualTo(2);
    assertThat(Runout.leastLoadedChipUm(2, 5, 1)).isEqualTo(2);
    assertThat(Runout.neighbourStepUm(5, 1)).isEqualTo(0);
  }

  @Test
  void refusesWhatNoToolHas() {
    assertThatIllegalArgumentException().isThrownBy(() -> Runout.mostLoadedChipUm(-1, 1, 2));
    assertThatIllegalArgumentException().isThrownBy(() -> Runout.mostLoadedChipUm(1, -1, 2));
    assertThatIllegalArgumentException().isThrownBy(() -> Runout.leastLoadedChipUm(1, 1, 0));
    assertThatIllegalArgumentException().isThrownBy(() -> Runout.radialFeedForChipUm(-1, 1, 2));
    assertThatIllegalArgumentException().isThrownBy(() -> Runout.neighbourStepUm(-1, 2));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Runout.leavesToothIdle(0, Band.ofExact(1), 2));
  }

  /**
   * Independent of the closed form: the teeth cut one after the other, each takes what those before
   * it left (from memory: Kline and DeVor 1983), the eccentricity in every direction.
   */
  @Property(tries = 300)
  void noToothOfAnEccentricToolLeavesTheBounds(
      @ForAll @Scale(6) @DoubleRange(min = 0, max = 5) double feed,
      @ForAll @Scale(6) @DoubleRange(min = 0, max = 8) double reading,
      @ForAll @IntRange(min = 1, max = 8) int flutes,
      @ForAll @Scale(6) @DoubleRange(min = 0, max = 6.28) double direction) {
    double[] chips = simulatedChipsUm(feed, reading, flutes, direction);
    double most = Runout.mostLoadedChipUm(feed, reading, flutes);
    double least = Runout.leastLoadedChipUm(feed, reading, flutes);
    double sum = 0;
    for (double chip : chips) {
      assertThat(chip).isBetween(least - 1e-9, most + 1e-9);
      sum += chip;
    }
    // All that is fed is cut by some tooth.
    assertThat(sum).isCloseTo(flutes * feed, within(1e-9));
  }

  @Property(tries = 100)
  void theBoundsAreReachedByTwoTeeth(
      @ForAll @Scale(6) @DoubleRange(min = 0, max = 5) double feed,
      @ForAll @Scale(6) @DoubleRange(min = 0, max = 8) double reading) {
    double[] chips = simulatedChipsUm(feed, reading, 2, 0);
    assertThat(Math.max(chips[0], chips[1]))
        .isCloseTo(Runout.mostLoadedChipUm(feed, reading, 2), within(1e-9));
    assertThat(Math.min(chips[0], chips[1]))
        .isCloseTo(Runout.leastLoadedChipUm(feed, reading, 2), within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"3", "4", "5", "6"})
  void theIdleThresholdIsReachedInTheWorstDirection(int flutes) {
    double feed = 2;
    double reading = feed / StrictMath.sin(Math.PI / flutes);
    double worst = Double.MAX_VALUE;
    for (int i = 0; i < 20_000; i++) {
      for (double chip : simulatedChipsUm(feed, reading, flutes, 2 * Math.PI * i / 20_000)) {
        worst = Math.min(worst, chip);
      }
    }
    assertThat(worst).isCloseTo(0, within(1e-6));
  }

  private static double[] simulatedChipsUm(
      double feed, double reading, int flutes, double direction) {
    double[] surface = new double[flutes * 20];
    double left = Double.NEGATIVE_INFINITY;
    double[] chips = new double[flutes];
    for (int i = 0; i < surface.length; i++) {
      double radius = reading / 2 * StrictMath.cos(direction + 2 * Math.PI * i / flutes);
      double reach = i * feed + radius;
      chips[i % flutes] = Math.max(0, reach - left);
      left = Math.max(left, reach);
    }
    return chips;
  }
}

package hairline.checks.warmth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.cutting.Band;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Growth as a first-order lag, δ∞ + (δ₀ − δ∞) e^(−t/τ): values computed independently from the
 * formula, with 18 µm in the end at 30000 rpm and a time constant of 12 min.
 */
class SpindleGrowthTest {
  private static final double TAU_S = 12 * 60;
  private static final GrowthFigures PROPORTIONAL = figures(1);

  private static GrowthFigures figures(double exponent) {
    return GrowthFigures.ofTest(
        30_000, Band.ofExact(18), Band.ofExact(TAU_S), Band.ofExact(exponent), 0);
  }

  @ParameterizedTest
  @CsvSource({"5, 6.1337", "24, 15.5640", "0, 0", "12, 11.3782"})
  void growsTowardsItsEnd(double minutes, double um) {
    SpindleGrowth growth = SpindleGrowth.cold(PROPORTIONAL).after(30_000, minutes * 60);
    assertThat(growth.um()).isEqualTo(Band.ofExact(growth.um().typical()));
    assertThat(growth.um().typical()).isCloseTo(um, within(5e-5));
    assertThat(growth.toComeUm(30_000).typical()).isCloseTo(18 - um, within(5e-5));
  }

  @Test
  void goesOnFromWhereItIs() {
    // 50000 of 30000 rpm with exponent 1: 30 µm in the end.
    SpindleGrowth faster = SpindleGrowth.warm(PROPORTIONAL, 30_000).after(50_000, 6 * 60);
    assertThat(faster.um().typical()).isCloseTo(22.7216, within(5e-5));
    assertThat(faster.after(0, 10 * 60).um().typical()).isCloseTo(9.8748, within(5e-5));
  }

  @ParameterizedTest
  @CsvSource({"1, 30.0", "1.5, 38.73", "0, 18"})
  void theEndGoesWithAPowerOfSpeed(double exponent, double um) {
    assertThat(SpindleGrowth.warm(figures(exponent), 50_000).um().typical())
        .isCloseTo(um, within(5e-3));
  }

  @Test
  void aStandingSpindleGrowsNothingWhateverTheExponent() {
    assertThat(SpindleGrowth.warm(figures(0), 30_000).after(0, 1e9).um().typical())
        .isCloseTo(0, within(1e-12));
  }

  @Test
  void growthMayGoAwayFromThePart() {
    GrowthFigures away =
        GrowthFigures.ofTest(30_000, Band.ofExact(-18), Band.ofExact(TAU_S), Band.ofExact(1), 0);
    assertThat(SpindleGrowth.cold(away).after(30_000, 300).um().typical())
        .isCloseTo(-6.1337, within(5e-5));
  }

  @Test
  void aBandOfTheAmountIsABandOfGrowth() {
    GrowthFigures figures =
        GrowthFigures.ofTest(30_000, new Band(12, 18, 20), Band.ofExact(TAU_S), Band.ofExact(1), 0);
    Band um = SpindleGrowth.cold(figures).after(30_000, 300).um();
    assertThat(um.low()).isCloseTo(6.1337 * 12 / 18, within(5e-5));
    assertThat(um.typical()).isCloseTo(6.1337, within(5e-5));
    assertThat(um.high()).isCloseTo(6.1337 * 20 / 18, within(5e-5));
  }

  @Test
  void betweenTwoTimesTheLargestGrowthLiesWithinTheBandOfTheTimeConstant() {
    // e^(-t1/τ) - e^(-t2/τ) from 300 to 900 s is largest at τ = 600 / ln 3 = 546.14 s: 2/(3√3).
    GrowthFigures figures =
        GrowthFigures.ofTest(
            30_000, Band.ofExact(18), new Band(240, 720, 1200), Band.ofExact(1), 0);
    GrowthFollower follower = GrowthFollowerTest.follower(figures);
    GrowthFollowerTest.turn(follower, 30_000, 300);
    GrowthPoint early = GrowthFollowerTest.turning(follower, 30_000);
    GrowthFollowerTest.turn(follower, 30_000, 600);
    Band drift =
        Drift.between(early, GrowthFollowerTest.turning(follower, 30_000)).um().orElseThrow();
    double largest = 18 * 2 / (3 * StrictMath.sqrt(3));
    assertThat(drift.high()).isBetween(largest * 0.99, largest * (1 + 1e-12));
    assertThat(drift.low()).isCloseTo(18 * Math.min(fall(240), fall(1200)), within(1e-9));
    assertThat(drift.typical()).isCloseTo(18 * fall(720), within(1e-9));
  }

  private static double fall(double tauS) {
    return StrictMath.exp(-300 / tauS) - StrictMath.exp(-900 / tauS);
  }

  @Test
  void whatIsNotKnownLeavesBounds() {
    SpindleGrowth warm = SpindleGrowth.warm(PROPORTIONAL, 30_000);
    assertThat(warm.isKnown()).isTrue();
    SpindleGrowth stopped = warm.after(Speeds.of(0), 60, 600);
    assertThat(stopped.isKnown()).isFalse();
    assertThat(stopped.highUm(0)).isCloseTo(18 * StrictMath.exp(-1.0 / 12), within(1e-9));
    assertThat(stopped.lowUm(0)).isCloseTo(18 * StrictMath.exp(-10.0 / 12), within(1e-9));
    SpindleGrowth anySpeed = warm.after(new Speeds(0, 50_000), 60, 60);
    assertThat(anySpeed.lowUm(0)).isCloseTo(18 * StrictMath.exp(-1.0 / 12), within(1e-9));
    assertThat(anySpeed.highUm(0)).isCloseTo(30 - 12 * StrictMath.exp(-1.0 / 12), within(1e-9));
    assertThat(warm.after(new Speeds(0, Double.POSITIVE_INFINITY), 1, 1).unbounded()).isTrue();
  }

  @Test
  void whatDoesNotMatterAnyMoreIsKnown() {
    SpindleGrowth stopped =
        SpindleGrowth.warm(PROPORTIONAL, 30_000).after(Speeds.of(0), 0, Double.POSITIVE_INFINITY);
    assertThat(stopped.after(30_000, 10 * TAU_S).isKnown()).isFalse();
    SpindleGrowth again = stopped.after(30_000, 17 * TAU_S);
    assertThat(again.isKnown()).isTrue();
    assertThat(again.um().typical()).isCloseTo(18, within(1e-5));
  }

  @Test
  void aSpindleWarmedBeforeTheProgramStartsAtItsEndValue() {
    GrowthFigures before =
        new GrowthFigures(
            30_000,
            Band.ofExact(18),
            Band.ofExact(TAU_S),
            Band.ofExact(1),
            0,
            0,
            OptionalDouble.empty(),
            true,
            OptionalDouble.of(20_000),
            OptionalDouble.empty());
    assertThat(SpindleGrowth.atStart(before).um().typical()).isCloseTo(12, within(1e-12));
  }
}

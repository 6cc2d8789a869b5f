package hairline.checks.warmth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.cutting.Band;
import hairline.checks.setup.Feature;
import hairline.checks.setup.JobKeys;
import hairline.checks.setup.Key;
import hairline.checks.setup.Length;
import hairline.checks.setup.LengthBand;
import hairline.checks.setup.LimitKeys;
import hairline.checks.setup.Setup;
import hairline.checks.setup.SpindleKeys;
import hairline.checks.setup.Tolerance;
import hairline.checks.setup.WarmUpPlace;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** What a sheet says of growth. */
class GrowthFiguresTest {
  private static final LengthBand AMOUNT =
      new LengthBand(Length.ofUm("15"), Length.ofUm("18"), Length.ofUm("24"));

  private static Setup.Builder needed() {
    return Setup.builder()
        .with(SpindleKeys.GROWTH_AT_RPM, 30_000.0)
        .with(SpindleKeys.GROWTH_AMOUNT, AMOUNT)
        .with(SpindleKeys.GROWTH_TIME_CONSTANT_S, new Band(600, 720, 840));
  }

  @Test
  void allOfIt() {
    Setup setup =
        needed()
            .with(SpindleKeys.GROWTH_EXPONENT, new Band(1, 1.2, 1.5))
            .with(SpindleKeys.GROWTH_INSTANT, Length.ofUm("-3"))
            .with(SpindleKeys.MIN_SPEED_RPM, 4000.0)
            .with(SpindleKeys.MAX_SPEED_RPM, 50_000.0)
            .with(SpindleKeys.WARM_UP_WHERE, WarmUpPlace.BEFORE)
            .with(SpindleKeys.WARM_UP_SPEED_RPM, 25_000.0)
            .with(SpindleKeys.WARM_UP_MIN_SPEED_RPM, 20_000.0)
            .with(LimitKeys.GROWTH_SHARE, 0.25)
            .with(JobKeys.TOLERANCE, Tolerance.plusMinus(Length.ofUm("2")))
            .build();
    assertThat(GrowthFigures.of(setup))
        .contains(
            new GrowthFigures(
                30_000,
                new Band(15, 18, 24),
                new Band(600, 720, 840),
                new Band(1, 1.2, 1.5),
                -3,
                4000,
                OptionalDouble.of(50_000),
                true,
                OptionalDouble.of(25_000),
                // A quarter of ±2 µm.
                OptionalDouble.of(0.5)));
  }

  @Test
  void nothingButWhatIsNeeded() {
    GrowthFigures figures = GrowthFigures.of(needed().build()).orElseThrow();
    assertThat(figures.instantUm()).isZero();
    assertThat(figures.slowestRpm()).isZero();
    assertThat(figures.fastestRpm()).isEmpty();
    assertThat(figures.before()).isFalse();
    assertThat(figures.warmUpRpm()).isEmpty();
    assertThat(figures.warmWithinUm()).isEmpty();
  }

  @Test
  void withoutOneOfWhatIsNeededThereIsNothing() {
    for (Key<?> left : GrowthFigures.NEEDED) {
      Setup.Builder sheet = Setup.builder();
      if (left != SpindleKeys.GROWTH_AT_RPM) {
        sheet.with(SpindleKeys.GROWTH_AT_RPM, 30_000.0);
      }
      if (left != SpindleKeys.GROWTH_AMOUNT) {
        sheet.with(SpindleKeys.GROWTH_AMOUNT, AMOUNT);
      }
      if (left != SpindleKeys.GROWTH_TIME_CONSTANT_S) {
        sheet.with(SpindleKeys.GROWTH_TIME_CONSTANT_S, Band.ofExact(720));
      }
      assertThat(GrowthFigures.of(sheet.build())).as(left.path()).isEmpty();
    }
  }

  @Test
  void withoutAWarmUpSpeedTheSlowestThatWarmsUpCounts() {
    Setup setup = needed().with(SpindleKeys.WARM_UP_MIN_SPEED_RPM, 20_000.0).build();
    assertThat(GrowthFigures.of(setup).orElseThrow().warmUpRpm())
        .isEqualTo(OptionalDouble.of(20_000));
  }

  /** Half the width: ±2 µm of the job, +1 −2 µm of the feature, of which 0.2 is 0.3 µm. */
  @Test
  void theTightestToleranceDecidesHowNearIsWarm() {
    Tolerance tight = new Tolerance(Length.ofUm("-2"), Length.ofUm("1"));
    Feature feature =
        new Feature(
            "mixer",
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            List.of(),
            Optional.of(tight));
    Setup setup =
        needed()
            .with(LimitKeys.GROWTH_SHARE, 0.2)
            .with(JobKeys.TOLERANCE, Tolerance.plusMinus(Length.ofUm("2")))
            .feature(feature)
            .build();
    assertThat(GrowthFigures.of(setup).orElseThrow().warmWithinUm().orElseThrow())
        .isCloseTo(0.3, within(1e-12));
  }

  /** The shift of the bearings goes with the square of speed: at a third, a ninth. */
  @Test
  void bearingsShiftWithTheSquareOfSpeed() {
    GrowthFigures figures =
        GrowthFigures.ofTest(30_000, Band.ofExact(18), Band.ofExact(720), Band.ofExact(1), 9);
    assertThat(figures.instantUmAt(10_000)).isCloseTo(1, within(1e-12));
    assertThat(figures.instantUmAt(0)).isZero();
  }
}

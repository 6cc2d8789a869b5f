package hairline.checks.warmth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.cutting.Band;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;

/** What must hold of growth whatever the figures, the speeds and the times. */
class SpindleGrowthProperties {
  private static final double NEAR_UM = 1e-9;

  record Stretch(double rpm, double seconds) {}

  @Provide
  Arbitrary<List<Stretch>> stretches() {
    return Combinators.combine(
            Arbitraries.of(0.0, 4_000.0, 12_000.0, 30_000.0, 60_000.0),
            Arbitraries.doubles().between(0, 2_000).ofScale(3))
        .as(Stretch::new)
        .list()
        .ofMaxSize(12);
  }

  @Provide
  Arbitrary<GrowthFigures> exact() {
    return Combinators.combine(
            Arbitraries.doubles().between(-20, 20).ofScale(2),
            Arbitraries.doubles().between(30, 3_000).ofScale(1),
            Arbitraries.doubles().between(0, 4).ofScale(2))
        .as(
            (amount, tau, exponent) ->
                GrowthFigures.ofTest(
                    50_000, Band.ofExact(amount), Band.ofExact(tau), Band.ofExact(exponent), 0));
  }

  @Provide
  Arbitrary<GrowthFigures> banded() {
    return Combinators.combine(bands(-20, 20), bands(30, 3_000), bands(0, 4))
        .as((amount, tau, exponent) -> GrowthFigures.ofTest(50_000, amount, tau, exponent, 0));
  }

  private static Arbitrary<Band> bands(double from, double to) {
    return Arbitraries.doubles()
        .between(from, to)
        .ofScale(2)
        .list()
        .ofSize(3)
        .map(values -> values.stream().sorted().toList())
        .map(sorted -> new Band(sorted.get(0), sorted.get(1), sorted.get(2)));
  }

  private static SpindleGrowth run(GrowthFigures figures, List<Stretch> stretches) {
    SpindleGrowth growth = SpindleGrowth.cold(figures);
    for (Stretch stretch : stretches) {
      growth = growth.after(stretch.rpm(), stretch.seconds());
    }
    return growth;
  }

  @Property
  void goesTowardsItsEndAndNeverPast(
      @ForAll("exact") GrowthFigures figures,
      @ForAll("stretches") List<Stretch> stretches,
      @ForAll @DoubleRange(min = 0, max = 60_000) double rpm,
      @ForAll @DoubleRange(min = 0, max = 5_000) double seconds) {
    SpindleGrowth growth = run(figures, stretches);
    double before = growth.toComeUm(rpm).typical();
    double after = growth.after(rpm, seconds).toComeUm(rpm).typical();
    assertThat(Math.abs(after)).isLessThanOrEqualTo(Math.abs(before) + NEAR_UM);
    assertThat(after * before).isGreaterThanOrEqualTo(-NEAR_UM);
  }

  @Property
  void twoIntervalsAreOne(
      @ForAll("banded") GrowthFigures figures,
      @ForAll("stretches") List<Stretch> stretches,
      @ForAll @DoubleRange(min = 0, max = 60_000) double rpm,
      @ForAll @DoubleRange(min = 0, max = 5_000) double first,
      @ForAll @DoubleRange(min = 0, max = 5_000) double second) {
    SpindleGrowth growth = run(figures, stretches);
    Band inTwo = growth.after(rpm, first).after(rpm, second).um();
    Band inOne = growth.after(rpm, first + second).um();
    assertThat(inTwo.low()).isCloseTo(inOne.low(), within(NEAR_UM));
    assertThat(inTwo.typical()).isCloseTo(inOne.typical(), within(NEAR_UM));
    assertThat(inTwo.high()).isCloseTo(inOne.high(), within(NEAR_UM));
  }

  @Property
  void theBandHoldsWhatItsEndsGive(
      @ForAll("banded") GrowthFigures figures, @ForAll("stretches") List<Stretch> stretches) {
    Band band = run(figures, stretches).um();
    for (double amount : List.of(figures.amountUm().low(), figures.amountUm().high())) {
      for (double tau : List.of(figures.timeConstantS().low(), figures.timeConstantS().high())) {
        for (double exponent : List.of(figures.exponent().low(), figures.exponent().high())) {
          GrowthFigures corner =
              GrowthFigures.ofTest(
                  50_000, Band.ofExact(amount), Band.ofExact(tau), Band.ofExact(exponent), 0);
          assertThat(run(corner, stretches).um().typical())
              .isBetween(band.low() - NEAR_UM, band.high() + NEAR_UM);
        }
      }
    }
  }

  @Property
  void boundsHoldEveryTimeAndSpeedWithin(
      @ForAll("exact") GrowthFigures figures,
      @ForAll("stretches") List<Stretch> stretches,
      @ForAll @DoubleRange(min = 0, max = 60_000) double rpm,
      @ForAll @DoubleRange(min = 0, max = 5_000) double seconds,
      @ForAll @DoubleRange(min = 0, max = 1) double part) {
    SpindleGrowth growth = run(figures, stretches);
    SpindleGrowth bounds =
        growth.after(new Speeds(rpm / 2, rpm), seconds / 2, seconds).after(20_000, 100);
    double um =
        growth
            .after(rpm / 2 * (1 + part), seconds / 2 * (2 - part))
            .after(20_000, 100)
            .um()
            .typical();
    // Bounds nearer than a picometre become one.
    assertThat(um).isBetween(bounds.lowUm(0) - 1e-6, bounds.highUm(0) + 1e-6);
  }

  /** Integrates dδ/dt = (δ∞ − δ)/τ in small steps (Heun), knowing nothing of exponentials. */
  @Property(tries = 100)
  void agreesWithSmallSteps(
      @ForAll("exact") GrowthFigures figures, @ForAll("stretches") List<Stretch> stretches) {
    double tauS = figures.timeConstantS().typical();
    double um = 0;
    for (Stretch stretch : stretches) {
      double end =
          stretch.rpm() == 0
              ? 0
              : figures.amountUm().typical()
                  * StrictMath.pow(stretch.rpm() / figures.atRpm(), figures.exponent().typical());
      int steps = 1 + (int) Math.ceil(stretch.seconds() / (tauS / 200));
      double step = stretch.seconds() / steps;
      for (int i = 0; i < steps; i++) {
        double slope = (end - um) / tauS;
        double ahead = um + slope * step;
        um += (slope + (end - ahead) / tauS) / 2 * step;
      }
    }
    assertThat(run(figures, stretches).um().typical()).isCloseTo(um, within(1e-3));
  }
}

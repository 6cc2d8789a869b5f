package hairline.checks.cutting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Chip geometry of peripheral milling; the formulas are exact for a circular tooth path. */
class ChipGeometryTest {

  @Test
  void feedPerToothAndSurfaceSpeed() {
    // Recomputed by hand: 320 / (40000 · 2) mm; π · 0.5 mm · 40000 / min.
    assertThat(FeedPerTooth.um(320, 40000, 2)).isEqualTo(4.0);
    assertThat(FeedPerTooth.feedMmPerMin(4, 40000, 2)).isEqualTo(320.0);
    assertThat(SurfaceSpeed.mPerMin(0.5, 40000)).isCloseTo(62.832, within(5e-4));
    assertThat(SurfaceSpeed.rpm(62.831853, 0.5)).isCloseTo(40000, within(1e-3));
  }

  @ParameterizedTest
  @CsvSource({"72,30000,2,1.2", "90,30000,2,1.5", "18,30000,2,0.3", "27,60000,1,0.45"})
  void feedPerToothIsTheNearestDoubleToTheDecimal(double feed, double rpm, int z, double um) {
    assertThat(FeedPerTooth.um(feed, rpm, z)).isEqualTo(um);
  }

  @Property
  void feedIsFoundBackFromFeedPerTooth(
      @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 5000) double feed,
      @ForAll @Scale(6) @DoubleRange(min = 100, max = 200_000) double rpm,
      @ForAll @IntRange(min = 1, max = 12) int flutes) {
    double um = FeedPerTooth.um(feed, rpm, flutes);
    assertThat(FeedPerTooth.feedMmPerMin(um, rpm, flutes)).isCloseTo(feed, within(feed * 1e-14));
  }

  @Test
  void refusesWhatNoMachineHas() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> FeedPerTooth.um(100, 0, 2))
        .withMessage("spindle speed is 0.0, it must be above zero");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> FeedPerTooth.um(-1, 100, 2))
        .withMessage("feed is -1.0, it must not be below zero");
    assertThatIllegalArgumentException().isThrownBy(() -> FeedPerTooth.um(1, 100, 0));
    assertThatIllegalArgumentException().isThrownBy(() -> FeedPerTooth.um(Double.NaN, 100, 2));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> FeedPerTooth.um(Double.POSITIVE_INFINITY, 100, 2));
    assertThatIllegalArgumentException().isThrownBy(() -> FeedPerTooth.feedMmPerMin(-1, 100, 2));
    assertThatIllegalArgumentException().isThrownBy(() -> SurfaceSpeed.mPerMin(0, 100));
    assertThatIllegalArgumentException().isThrownBy(() -> SurfaceSpeed.mPerMin(1, 0));
    assertThatIllegalArgumentException().isThrownBy(() -> SurfaceSpeed.rpm(0, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> SurfaceSpeed.rpm(1, 0));
    assertThatIllegalArgumentException().isThrownBy(() -> Engagement.besideWall(0, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> Engagement.besideWall(1, 0));
    assertThatIllegalArgumentException().isThrownBy(() -> new Engagement(1, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> new Engagement(-0.1, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> new Engagement(0, 3.2));
    assertThatIllegalArgumentException().isThrownBy(() -> Engagement.slot().maxChipUm(-1, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> Engagement.slot().maxChipUm(1, 0));
    assertThatIllegalArgumentException().isThrownBy(() -> Engagement.slot().meanChipUm(1, 1.01));
  }

  // Recomputed independently from φ = arccos(1 − 2 a_e/D), f_z sin φ and f_z (2 a_e/D)/φ.
  @ParameterizedTest
  @CsvSource({
    "0.5, 0.05, 4, 36.8699, 2.4000, 1.24320",
    "0.5, 0.5, 4, 180, 4.0000, 2.54648",
    "0.5, 0.7, 4, 180, 4.0000, 2.54648",
    "3, 0.15, 20, 25.8419, 8.7178, 4.43433"
  })
  void workedExamples(
      double diameter, double stepover, double feed, double angle, double largest, double mean) {
    Engagement engagement = Engagement.besideWall(stepover, diameter);
    assertThat(engagement.angleDeg()).isCloseTo(angle, within(5e-5));
    assertThat(engagement.maxChipUm(feed, 1)).isCloseTo(largest, within(5e-5));
    assertThat(engagement.meanChipUm(feed, 1)).isCloseTo(mean, within(5e-6));
  }

  @Test
  void aStripOfHalfTheDiameterAndMoreReachesTheFullFeed() {
    assertThat(Engagement.besideWall(0.25, 0.5).maxSine()).isEqualTo(1);
    assertThat(Engagement.besideWall(0.26, 0.5).maxSine()).isEqualTo(1);
    assertThat(Engagement.besideWall(0.24, 0.5).maxSine()).isLessThan(1);
    // The shortcut 2 √(r(1 − r)), r = a_e/D, would give 0 here.
    assertThat(Engagement.besideWall(0.5, 0.5).maxSine()).isEqualTo(1);
    assertThat(Engagement.slot().isSlot()).isTrue();
    assertThat(Engagement.besideWall(0.4, 0.5).isSlot()).isFalse();
    assertThat(new Engagement(0.1, Math.PI).isSlot()).isFalse();
  }

  @Test
  void aFlatterEdgeMakesAThinnerChip() {
    // sin κ 0.6: 4 µm · 0.6, and 2/π of it on the mean.
    assertThat(Engagement.slot().maxChipUm(4, 0.6)).isCloseTo(2.4, within(1e-12));
    assertThat(Engagement.slot().meanChipUm(4, 0.6)).isCloseTo(4.8 / Math.PI, within(1e-12));
  }

  @Test
  void aStripOfAPicometreStillHasAnArc() {
    // φ ≈ 2 √(a_e/D) for a fine strip.
    assertThat(Engagement.besideWall(1e-9, 50).angleRad())
        .isCloseTo(2 * StrictMath.sqrt(2e-11), within(1e-15));
  }

  @Test
  void anArcThatEndsBeforeTheFrontIsThickestAtItsEnd() {
    assertThat(new Engagement(0.2, 0.9).maxSine()).isEqualTo(StrictMath.sin(0.9));
    assertThat(new Engagement(2.0, 3.0).maxSine()).isEqualTo(StrictMath.sin(2.0));
  }

  /** Independent of the closed form: sin φ averaged over the arc by the midpoint rule. */
  @Property(tries = 200)
  void meanChipIsTheNumericAverage(
      @ForAll @Scale(6) @DoubleRange(min = 0, max = 3) double in,
      @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 3.14) double length) {
    Assume.that(in + length <= Math.PI);
    Engagement engagement = new Engagement(in, in + length);
    int n = 20_000;
    double sum = 0;
    double largest = Math.max(StrictMath.sin(in), StrictMath.sin(in + length));
    for (int i = 0; i < n; i++) {
      double sine = StrictMath.sin(in + length * (i + 0.5) / n);
      sum += sine;
      largest = Math.max(largest, sine);
    }
    assertThat(engagement.meanSine()).isCloseTo(sum / n, within(1e-7));
    assertThat(engagement.maxSine()).isCloseTo(largest, within(1e-7));
  }

  /** Climb and conventional milling take the same chips in mirrored order. */
  @Property
  void mirroredArcsHaveTheSameChips(
      @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 1) double stepover) {
    Engagement arc = Engagement.besideWall(stepover, 1);
    Engagement mirrored = new Engagement(Math.PI - arc.outRad(), Math.PI - arc.inRad());
    assertThat(mirrored.maxChipUm(3, 0.7)).isCloseTo(arc.maxChipUm(3, 0.7), within(1e-12));
    assertThat(mirrored.meanChipUm(3, 0.7)).isCloseTo(arc.meanChipUm(3, 0.7), within(1e-12));
  }

  @Property
  void onlyTheRatioOfStepoverAndDiameterCounts(
      @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 1.2) double stepover,
      @ForAll @Scale(6) @DoubleRange(min = 0.01, max = 50) double diameter) {
    assertThat(Engagement.besideWall(stepover * diameter, diameter).angleRad())
        .isCloseTo(Engagement.besideWall(stepover, 1).angleRad(), within(1e-7));
  }

  @Property
  void aWiderStripHasAThickerChip(
      @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 0.998) double stepover,
      @ForAll @Scale(6) @DoubleRange(min = 0.0005, max = 0.001) double more) {
    Engagement narrow = Engagement.besideWall(stepover, 1);
    Engagement wide = Engagement.besideWall(stepover + more, 1);
    assertThat(wide.angleRad()).isGreaterThan(narrow.angleRad());
    assertThat(wide.maxSine()).isGreaterThanOrEqualTo(narrow.maxSine());
  }

  /**
   * Against the exact trochoid: a tooth on a circle of radius r moves f_z further while the next
   * one comes round. Chip as the distance along the radius to the path of the tooth before. From
   * memory: Bao and Tansel 2000, part I, give 1.05659 µm by their formula for r 0.1 mm, f_z 3 µm,
   * two teeth at 20°; the exact trochoid has 1.05597 µm. The circular path gives f_z sin φ, which
   * must agree within the second-order terms f_z²/r.
   */
  @ParameterizedTest
  @ValueSource(doubles = {5, 20, 45, 90, 120, 160})
  void circularPathIsCloseToTheExactTrochoid(double deg) {
    double r = 100;
    double feed = 3;
    int z = 2;
    double exact = Trochoid.exactChipUm(r, feed, z, StrictMath.toRadians(deg));
    double circular = feed * StrictMath.sin(StrictMath.toRadians(deg));
    assertThat(exact).isCloseTo(circular, within(feed * feed / r * (0.5 + z / (2 * Math.PI))));
    assertThat(Trochoid.formulaChipUm(r, feed, z, StrictMath.toRadians(deg)))
        .isCloseTo(exact, within(0.01));
  }

  @Test
  void trochoidOracleGivesItsOwnWorkedValues() {
    double angle = StrictMath.toRadians(20);
    assertThat(Trochoid.exactChipUm(100, 3, 2, angle)).isCloseTo(1.05597, within(5e-6));
    assertThat(Trochoid.formulaChipUm(100, 3, 2, angle)).isCloseTo(1.05659, within(5e-6));
  }
}

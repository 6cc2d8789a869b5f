package hairline.checks.cutting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EffectiveDiameterTest {

  // Recomputed independently: D_eff = 2√(a_p(D − a_p)), cos κ = 1 − 2a_p/D;
  // bull D − 2r + 2√(a_p(2r − a_p)), cos κ = 1 − a_p/r.
  @ParameterizedTest
  @CsvSource({
    "0.5, 0.25, 0.02, 0.19596, 23.07",
    "1, 0.5, 0.05, 0.43589, 25.84",
    "1, 0.1, 0.02, 0.92000, 36.87"
  })
  void workedExamples(
      double diameter, double corner, double depth, double effective, double kappaDeg) {
    assertThat(EffectiveDiameter.mm(diameter, corner, depth)).isCloseTo(effective, within(5e-6));
    double kappa = CuttingEdgeAngle.rad(corner, depth);
    assertThat(StrictMath.toDegrees(kappa)).isCloseTo(kappaDeg, within(5e-3));
    assertThat(CuttingEdgeAngle.sine(corner, depth))
        .isCloseTo(StrictMath.sin(kappa), within(1e-12));
  }

  @Test
  void speedOfABallAtItsDepth() {
    // π · 0.19596 mm · 30000 / min, recomputed by hand.
    double effective = EffectiveDiameter.mm(0.5, 0.25, 0.02);
    assertThat(SurfaceSpeed.mPerMin(effective, 30000)).isCloseTo(18.469, within(5e-4));
  }

  @Test
  void aCutBelowTheCornerOfAFlatToolIsThinner() {
    // Corner as sharp as the edge, 5 µm; a_p 1 µm: cos κ = 0.8, sin κ = 0.60.
    assertThat(CuttingEdgeAngle.sine(0.005, 0.001)).isCloseTo(0.60, within(1e-12));
    assertThat(CuttingEdgeAngle.sine(0.005, 0.005)).isEqualTo(1);
    assertThat(CuttingEdgeAngle.sine(0.005, 0.02)).isEqualTo(1);
    assertThat(CuttingEdgeAngle.sine(0, 0.02)).isEqualTo(1);
    assertThat(CuttingEdgeAngle.rad(0, 0.02)).isEqualTo(Math.PI / 2);
    assertThat(CuttingEdgeAngle.rad(0.02, 0.02)).isEqualTo(Math.PI / 2);
  }

  @Test
  void beyondTheRoundingTheFullDiameterCuts() {
    assertThat(EffectiveDiameter.mm(1, 0.1, 0.1)).isEqualTo(1);
    assertThat(EffectiveDiameter.mm(1, 0.1, 0.5)).isEqualTo(1);
    assertThat(EffectiveDiameter.mm(1, 0, 0.001)).isEqualTo(1);
    assertThat(EffectiveDiameter.mm(1, 0.5, 3)).isEqualTo(1);
    assertThat(EffectiveDiameter.ballOnSlopeMm(1, 0.5, 0)).isEqualTo(1);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> EffectiveDiameter.ballOnSlopeMm(1, 0.1, 1.5708));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> EffectiveDiameter.ballOnSlopeMm(1, 0.1, -0.0001));
    assertThat(EffectiveDiameter.ballOnSlopeMm(1, 0.05, Math.PI / 2)).isEqualTo(1);
  }

  /**
   * By hand: a ball of 2 mm, 0.5 mm deep, touches up to arccos(0.5) = 60°; on a slope of 15° up to
   * 75°: 2 sin 75° = 1.93185.
   */
  @Test
  void ballOnASlopeByHand() {
    assertThat(EffectiveDiameter.ballOnSlopeMm(2, 0.5, StrictMath.toRadians(15)))
        .isCloseTo(1.93185, within(5e-6));
    assertThat(EffectiveDiameter.ballOnSlopeMm(2, 0.5, StrictMath.toRadians(31))).isEqualTo(2);
    assertThat(EffectiveDiameter.ballOnSlopeMm(2, 0.9, 0)).isLessThan(2);
  }

  @Test
  void refusesWhatNoToolHas() {
    assertThatIllegalArgumentException().isThrownBy(() -> EffectiveDiameter.mm(0, 0, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> EffectiveDiameter.mm(1, 0.51, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> EffectiveDiameter.mm(1, -0.1, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> EffectiveDiameter.mm(1, 0.1, 0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> EffectiveDiameter.ballOnSlopeMm(0, 0.1, 0));
    assertThatIllegalArgumentException().isThrownBy(() -> EffectiveDiameter.ballOnSlopeMm(1, 0, 0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> EffectiveDiameter.ballOnSlopeMm(1, 0.1, -0.1));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> EffectiveDiameter.ballOnSlopeMm(1, 0.1, 1.6))
        .withMessageContaining("slope");
    assertThatIllegalArgumentException().isThrownBy(() -> CuttingEdgeAngle.rad(-1, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> CuttingEdgeAngle.sine(1, 0));
  }

  /** The point at the top of the cut lies on the circle of the rounding. */
  @Property
  void topOfTheCutLiesOnTheRounding(
      @ForAll @Scale(6) @DoubleRange(min = 0.01, max = 1) double share,
      @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 1) double depthShare) {
    double diameter = 2;
    double corner = share * diameter / 2;
    double depth = depthShare * corner;
    double fromCentre = EffectiveDiameter.mm(diameter, corner, depth) / 2 - (diameter / 2 - corner);
    double above = corner - depth;
    assertThat(StrictMath.hypot(fromCentre, above)).isCloseTo(corner, within(1e-12));
    // The tangent there is inclined by κ.
    assertThat(CuttingEdgeAngle.sine(corner, depth)).isCloseTo(fromCentre / corner, within(1e-9));
  }

  @Property
  void onNoSlopeABallIsABall(
      @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 0.499) double depth) {
    assertThat(EffectiveDiameter.ballOnSlopeMm(1, depth, 0))
        .isCloseTo(EffectiveDiameter.mm(1, 0.5, depth), within(1e-9));
  }

  @Property
  void aSteeperSlopeCutsFurtherOut(
      @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 0.4) double depth,
      @ForAll @Scale(6) @DoubleRange(min = 0, max = 1.5) double slope) {
    assertThat(EffectiveDiameter.ballOnSlopeMm(1, depth, slope + 0.05))
        .isGreaterThanOrEqualTo(EffectiveDiameter.ballOnSlopeMm(1, depth, slope))
        .isLessThanOrEqualTo(1);
  }
}

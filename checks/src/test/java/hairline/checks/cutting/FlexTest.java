package hairline.checks.cutting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.cutting.ToolBody.Neck;
import hairline.checks.cutting.ToolBody.Shank;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class FlexTest {

  private static final ToolBeam BEAM =
      new ToolBody(0.5, 1, Optional.of(new Neck(0.47, 4)), 5.5, new Shank(3, 10.5)).beam();
  private static final CuttingForce.Cutting FORCE = force(new Band(0.5, 1, 2));

  private static CuttingForce.Cutting force(Band tangentialN) {
    return new CuttingForce.Cutting(
        Band.ofExact(4),
        tangentialN,
        tangentialN.times(Kienzle.AXIAL_SHARE),
        Kienzle.Range.SIZE_EFFECT);
  }

  private static Flex flex(double youngsModulusGPa) {
    return new Flex(BEAM, Band.ofExact(youngsModulusGPa), 0);
  }

  /** 21.602 µm for 1 N at the tip, recomputed independently (see ToolBeamTest). */
  @Test
  void sidewaysFlexIsForceTimesCompliance() {
    Band um = flex(580).sidewaysUm(FORCE);
    assertThat(um.low()).isCloseTo(21.602 / 2, within(5e-4));
    assertThat(um.typical()).isCloseTo(21.602, within(5e-4));
    assertThat(um.high()).isCloseTo(21.602 * 2, within(1e-3));
  }

  @Test
  void aBandOfStiffnessWidensTheFlex() {
    Flex flex = new Flex(BEAM, new Band(290, 580, 1160), 0);
    Band um = flex.sidewaysUm(FORCE);
    assertThat(um.low()).isCloseTo(21.602 / 4, within(5e-4));
    assertThat(um.typical()).isCloseTo(21.602, within(5e-4));
    assertThat(um.high()).isCloseTo(21.602 * 4, within(2e-3));
  }

  @Test
  void forceAtHalfTheDepthBendsLess() {
    Flex deep = new Flex(BEAM, Band.ofExact(580), 0.25);
    assertThat(deep.sidewaysUm(FORCE).typical())
        .isEqualTo(BEAM.deflectionUmPerN(0.25, 580))
        .isLessThan(flex(580).sidewaysUm(FORCE).typical());
    assertThat(deep.stressMPa(FORCE).typical()).isCloseTo(392.4 * 3.75 / 4, within(0.05));
  }

  /** What was asked for last is kept: another force, or end face, is reckoned anew. */
  @Test
  void forcesAskedForInTurnAreNotTakenForOneAnother() {
    Flex flex = flex(580);
    CuttingForce.Cutting twice = force(new Band(1, 2, 4));
    for (int k = 0; k < 2; k++) {
      assertThat(flex.sidewaysUm(twice)).isEqualTo(flex(580).sidewaysUm(twice));
      assertThat(flex.sidewaysUm(FORCE)).isEqualTo(flex(580).sidewaysUm(FORCE));
      assertThat(flex.stressMPa(twice).typical())
          .isCloseTo(2 * flex.stressMPa(FORCE).typical(), within(1e-9));
      FloorError error = flex.floorError(FORCE, 0.25);
      assertThat(flex.floorError(FORCE, 0.5).digsUm().typical())
          .isCloseTo(2 * error.digsUm().typical(), within(1e-12));
      assertThat(flex.floorError(twice, 0.25).typicalUm())
          .isEqualTo(flex.floorError(twice, 0.25).deeperUm().typical())
          .isCloseTo(2 * error.deeperUm().typical(), within(1e-12));
    }
  }

  /** 392.4 MPa for 1 N at the root of the neck, recomputed independently. */
  @Test
  void stressIsForceTimesStressOfOneNewton() {
    Band mPa = flex(580).stressMPa(FORCE);
    assertThat(mPa.low()).isCloseTo(392.4 / 2, within(0.05));
    assertThat(mPa.typical()).isCloseTo(392.4, within(0.05));
    assertThat(mPa.high()).isCloseTo(392.4 * 2, within(0.1));
  }

  /**
   * A plain cylinder, by hand: D 1 counts as 0.8, L 3, E 580: slope of 1 N = 64 · 9/(2 · 580000 · π
   * · 0.4096) = 3.8589e-4 rad, times 0.5 mm = 0.19294 µm; axial give 0.3 N · 4 · 3/(580 · π · 0.64)
   * = 0.003087 µm.
   */
  @Test
  void floorErrorByHand() {
    ToolBeam beam = new ToolBody(1, 3, Optional.empty(), 0, new Shank(1, 0)).beam();
    FloorError error = new Flex(beam, Band.ofExact(580), 0).floorError(force(Band.ofExact(1)), 0.5);
    assertThat(error.digsUm().typical()).isCloseTo(0.19294, within(5e-6));
    assertThat(error.liftsUm().typical()).isCloseTo(0.003087, within(5e-7));
    assertThat(error.deeperUm().typical()).isCloseTo(0.18986, within(1e-5));
  }

  @Test
  void aBallDigsNothing() {
    FloorError error = flex(580).floorError(FORCE, 0);
    assertThat(error.digsUm()).isEqualTo(Band.ofExact(0));
    assertThat(error.deeperUm().high()).isNegative();
    assertThatIllegalArgumentException().isThrownBy(() -> flex(580).floorError(FORCE, -0.1));
  }

  @Test
  void equalPassesShiftBothFloorsAlike() {
    FloorError error = flex(580).floorError(FORCE, 0.25);
    assertThat(FloorError.ofStepUm(error, Optional.of(error))).isEqualTo(Band.ofExact(0));
  }

  @Test
  void anUncutUpperLevelHasNoError() {
    FloorError error = flex(580).floorError(FORCE, 0.25);
    assertThat(FloorError.ofStepUm(error, Optional.empty())).isEqualTo(error.deeperUm());
  }

  @Test
  void theStepSeesTheDifferenceAtTheSameEnd() {
    FloorError lower = new FloorError(new Band(1, 2, 5), new Band(0.1, 0.2, 0.3));
    FloorError upper = new FloorError(new Band(0.5, 1, 2.5), new Band(0.1, 0.1, 0.1));
    Band step = FloorError.ofStepUm(lower, Optional.of(upper));
    assertThat(step.low()).isCloseTo(0.5, within(1e-12));
    assertThat(step.typical()).isCloseTo(0.9, within(1e-12));
    assertThat(step.high()).isCloseTo(2.3, within(1e-12));
    // It does not matter which of the levels is the lower one, but for the sign.
    assertThat(FloorError.ofStepUm(upper, Optional.of(lower))).isEqualTo(step);
    assertThat(FloorError.heightOfStepUm(lower, Optional.of(upper))).isEqualTo(step);
    Band turned = FloorError.heightOfStepUm(upper, Optional.of(lower));
    assertThat(turned.low()).isCloseTo(-2.3, within(1e-12));
    assertThat(turned.typical()).isCloseTo(-0.9, within(1e-12));
    assertThat(turned.high()).isCloseTo(-0.5, within(1e-12));
    assertThat(FloorError.heightOfStepUm(lower, Optional.empty())).isEqualTo(lower.deeperUm());
  }

  @Test
  void thrustAloneLiftsTheTool() {
    FloorError error = new FloorError(new Band(0, 0, 0), new Band(0.1, 0.2, 0.3));
    assertThat(error.deeperUm()).isEqualTo(new Band(-0.3, -0.2, -0.1));
    assertThat(FloorError.ofStepUm(error, Optional.empty())).isEqualTo(new Band(0.1, 0.2, 0.3));
  }
}

package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.finding.Finding;
import org.junit.jupiter.api.Test;

/** The figures of the step rules, re-derived by hand from the sheets of their programs. */
class StepRulesTest {

  @Test
  void aStepDownIsTheDifferenceOfTwoLevelsAndNeedsTwoSmallestSteps() {
    Finding finding = Programs.findings("step-below-smallest", "speaks.nc").get(0);
    assertThat(Programs.figure(finding, "height")).isCloseTo(20.5 - 20.0, within(1e-9));
    assertThat(Programs.figure(finding, "limit")).isCloseTo(2 * 0.3, within(1e-12));
    assertThat(20.6 - 20.0).isGreaterThanOrEqualTo(2 * 0.3);
    assertThat(Programs.findings("step-below-smallest", "silent.nc")).isEmpty();
  }

  @Test
  void aStepOfTwiceTheRepeatabilityMayNotBeThere() {
    Finding finding = Programs.findings("step-within-repeatability", "speaks.nc").get(0);
    assertThat(Programs.figure(finding, "step")).isCloseTo(20.8 - 20.0, within(1e-9));
    assertThat(2 * Programs.figure(finding, "repeatability")).isCloseTo(0.8, within(1e-12));
    assertThat(Programs.findings("step-within-repeatability", "silent.nc")).isEmpty();
  }

  @Test
  void depthsAgainstEdgeRadiusMinimumChipAndCuttingLength() {
    Finding edge = Programs.findings("depth-below-edge-radius", "speaks.nc").get(0);
    assertThat(Programs.figure(edge, "depth")).isCloseTo(1.4, within(1e-12));
    assertThat(Programs.figure(edge, "edgeRadius")).isCloseTo(1.5, within(1e-12));
    Finding minimum = Programs.findings("depth-below-minimum", "speaks.nc").get(0);
    assertThat(Programs.figure(minimum, "minimum")).isCloseTo(0.30 * 1.5, within(1e-12));
    assertThat(Programs.figure(minimum, "depth")).isCloseTo(0.4, within(1e-12));
    Finding length = Programs.findings("depth-beyond-cutting-length", "speaks.nc").get(0);
    assertThat(Programs.figure(length, "depth")).isCloseTo(0.6001, within(1e-12));
  }

  @Test
  void aPitchThatIsNoWholeNumberOfIncrementsComesOutUneven() {
    Finding finding = Programs.findings("step-uneven-after-rounding", "speaks.nc").get(0);
    // 2.05 µm rounds to 2.1 µm (ties away from zero), 4.1 µm stays: 2.1, then 2.0
    assertThat(Programs.figure(finding, "storedBefore")).isCloseTo(2.1, within(1e-12));
    assertThat(Programs.figure(finding, "stored")).isCloseTo(4.1 - 2.1, within(1e-9));
  }

  @Test
  void terracesSideBySideComeOutUnevenInWhateverOrderTheyWereCut() {
    // -2.05 µm is stored as -2.1 µm (half away from zero), -4.1 µm as it is
    Finding finding = Programs.findings("step-uneven-after-rounding", "speaks-terraces.nc").get(0);
    assertThat(Programs.figure(finding, "pitch")).isCloseTo(4.1 - 2.05, within(1e-9));
    assertThat(Programs.figure(finding, "storedBefore")).isCloseTo(2.1, within(1e-9));
    assertThat(Programs.figure(finding, "stored")).isCloseTo(4.1 - 2.1, within(1e-9));
    assertThat(Programs.findings("step-uneven-after-rounding", "silent-terraces.nc")).isEmpty();
  }

  @Test
  void stepsOfHalfAnIncrementVanishEverySecondTime() {
    // Halves round away from zero: 0.05, 0.1, 0.15, 0.2 µm become 1, 1, 2, 2 increments of 0.1 µm.
    Finding down = Programs.findings("step-uneven-after-rounding", "speaks-vanishing.nc").get(0);
    assertThat(Programs.figure(down, "pitch")).isCloseTo(0.05, within(1e-12));
    assertThat(Programs.figure(down, "storedBefore")).isCloseTo(0.1, within(1e-12));
    assertThat(Programs.figure(down, "stored")).isZero();
    assertThat(down.count()).isEqualTo(3);
    Finding beside =
        Programs.findings("step-uneven-after-rounding", "speaks-vanishing-terraces.nc").get(0);
    assertThat(Programs.figure(beside, "storedBefore")).isZero();
    assertThat(Programs.figure(beside, "stored")).isCloseTo(0.1, within(1e-12));
    // Digits cut off: 0.05 µm is nothing, 0.1 µm stays.
    Finding cutOff = Programs.findings("step-uneven-after-rounding", "speaks-truncated.nc").get(0);
    assertThat(Programs.figure(cutOff, "storedBefore")).isZero();
    assertThat(Programs.figure(cutOff, "stored")).isCloseTo(0.1, within(1e-12));
    assertThat(Programs.findings("step-uneven-after-rounding", "silent-vanishing.nc")).isEmpty();
  }

  @Test
  void theToolReachesAsFarAsItIsNoWiderThanItsEnd() {
    Finding neck = Programs.findings("reach-exceeded", "speaks.nc").get(0);
    assertThat(Programs.figure(neck, "depth")).isCloseTo(0.5001, within(1e-12));
    assertThat(Programs.figure(neck, "reach")).isCloseTo(0.5, within(1e-12));
    assertThat(Programs.findings("reach-exceeded", "silent.nc")).isEmpty();
    // Without a neck the cone begins at 0.8 D / 2 = 0.16 and grows to 2 over 1 mm: at the walls of
    // its slot, 0.2 from the axis, it is 0.5 + 0.04 / 1.84 above the tip (exact).
    double cone = 0.5 + (0.2 - 0.8 * 0.2) / (2 - 0.8 * 0.2);
    assertThat(cone).isBetween(0.52, 0.55);
    assertThat(Programs.findings("reach-exceeded", "silent-cone.nc")).isEmpty();
    assertThat(Programs.findings("reach-exceeded", "speaks-cone.nc")).hasSize(1);
    // The pocket's wall stands 0.5 from its middle: the shank of 0.3 passes it from 0.1, not from
    // 0.25.
    assertThat(0.1 + 0.3).isLessThan(0.5);
    assertThat(0.25 + 0.3).isGreaterThan(0.5);
    assertThat(Programs.findings("reach-exceeded", "silent-wide.nc")).isEmpty();
    assertThat(Programs.findings("reach-exceeded", "speaks-wall.nc")).hasSize(1);
  }

  @Test
  void aTerraceIsOffByItsHeightLessTheDeclaredOne() {
    Finding level = Programs.findings("step-differs", "speaks.nc").get(0);
    assertThat(Programs.figure(level, "off")).isCloseTo(8.5 - 8.0, within(1e-9));
    assertThat(8.5 - 8.0).isGreaterThan(0.4);
    assertThat(Programs.findings("step-differs", "silent.nc")).isEmpty();
    // The uncut top is 4.4 above the first terrace, and that is 4.5 above the second.
    Finding step = Programs.findings("step-differs", "speaks-step.nc").get(0);
    assertThat(Programs.figure(step, "step")).isCloseTo(8.9 - 4.4, within(1e-9));
    assertThat(8.9 - 4.4 - 4.0).isGreaterThan(0.4);
    assertThat(4.4 - 4.0).isCloseTo(0.4, within(1e-9));
    assertThat(Programs.findings("step-differs", "silent-step.nc")).isEmpty();
    Finding missing = Programs.findings("step-differs", "speaks-step-missing.nc").get(0);
    assertThat(Programs.figure(missing, "step")).isCloseTo(2 * 4.0, within(1e-9));
  }

  @Test
  void aPassOverAHoleTakesItsStepDownLessTheHole() {
    Finding finding = Programs.findings("depth-uneven", "speaks.nc").get(0);
    assertThat(Programs.figure(finding, "depth")).isCloseTo(8.0 - 4.1, within(1e-9));
    assertThat(Programs.figure(finding, "stepDown")).isCloseTo(8.0, within(1e-9));
    assertThat(8.0 - 4.1).isLessThan(8.0 / 2);
    assertThat(8.0 - 4.0).isGreaterThanOrEqualTo(8.0 / 2);
    assertThat(Programs.findings("depth-uneven", "silent.nc")).isEmpty();
    // The ramp falls 4 µm in 1 mm; the rim of the tool, 0.2 from its tip, leaves at x what the tip
    // has 0.2 further on: at -0.6 - 0.2 that is the ramp's height at -0.6, 1.6 below the top.
    double standing = 8 - 4 * (1 - 0.6);
    double cell = 0.4 / 16;
    assertThat(Programs.figure(Programs.findings("depth-uneven", "speaks-ramp.nc").get(0), "depth"))
        .isCloseTo(standing, within(4 * cell))
        .isGreaterThan(1.5 * 4);
    // Cusps of passes 0.16 apart: R − √(R² − 0.08²) above their grooves at 30 µm, and the floor
    // lies 0.2 µm below these; on the average they stand a third of their height (parabola).
    double cusp = 1000 * (0.25 - Math.sqrt(0.25 * 0.25 - 0.08 * 0.08));
    Finding cusps = Programs.findings("depth-uneven", "speaks-cusps.nc").get(0);
    assertThat(Programs.figure(cusps, "stepDown")).isBetween(0.2 + 0.8 * cusp, 0.2 + cusp);
    assertThat(Programs.figure(cusps, "depth")).isCloseTo(0.2 + cusp / 3, within(1.0));
    assertThat(0.2 + cusp / 3).isLessThan((0.2 + 0.8 * cusp) / 2);
    assertThat(6.5 + cusp / 3).isGreaterThan((6.5 + cusp) / 2);
    assertThat(Programs.findings("depth-uneven", "silent-cusps.nc")).isEmpty();
  }

  /** Down to what counts as fine: 20 µm by default, or any height in a declared feature. */
  @Test
  void twoToolsOnAStepOfJustTheFineHeightAreTold() {
    Finding finding = Programs.findings("tools-share-step", "speaks-just-fine.nc").get(0);
    assertThat(Programs.figure(finding, "step")).isCloseTo(40 - 20, within(1e-9));
    Finding declared = Programs.findings("tools-share-step", "speaks-feature.nc").get(0);
    assertThat(Programs.figure(declared, "step")).isCloseTo(40.1 - 20, within(1e-9));
    assertThat(Programs.findings("tools-share-step", "silent-rough.nc")).isEmpty();
  }
}

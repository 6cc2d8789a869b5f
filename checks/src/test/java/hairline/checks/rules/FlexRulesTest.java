package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.finding.Finding;
import org.junit.jupiter.api.Test;

/**
 * Force, tilt, flex and stress of the sheet's slender tool, re-derived step by step: flutes and
 * neck of 0.3 mm to 6 mm from the tip, a shank of 4 mm to 16 mm, carbide of 580 GPa, full slot at
 * 30000 rpm with two flutes, kc1.1 2800 N/mm², mc 0.25. Beam and Kienzle formulas are textbook
 * (exact; Kienzle from memory).
 */
class FlexRulesTest {
  private static final double[][] PARTS = {{0, 6, 0.3}, {6, 16, 4}};
  private static final double MODULUS_N_PER_MM2 = 580_000;

  private static double inertia(double diameterMm) {
    return Math.PI * Math.pow(diameterMm, 4) / 64;
  }

  /** Simpson's rule over each part, an independent way to the integrals. */
  private static double integral(double fromMm, boolean deflection) {
    double sum = 0;
    for (double[] part : PARTS) {
      double lo = Math.max(part[0], fromMm);
      int n = 2000;
      double h = (part[1] - lo) / n;
      for (int i = 0; i <= n; i++) {
        double x = lo + i * h;
        double weight = i == 0 || i == n ? 1 : i % 2 == 1 ? 4 : 2;
        double moment = x - fromMm;
        sum += weight * h / 3 * moment * (deflection ? x : 1) / inertia(part[2]);
      }
    }
    return sum / MODULUS_N_PER_MM2;
  }

  private static double forceN(double feedMmPerMin, double depthMm, double band) {
    double chipMm = feedMmPerMin / (30_000 * 2);
    return band * 2800 * depthMm * Math.pow(chipMm, 1 - 0.25);
  }

  private static double stepErrorUm(double feedMmPerMin, double band, double axialShare) {
    double forceN = forceN(feedMmPerMin, 0.004, band);
    double axialMmPerN = 0;
    for (double[] part : PARTS) {
      axialMmPerN += (part[1] - part[0]) / (Math.PI * part[2] * part[2] / 4) / MODULUS_N_PER_MM2;
    }
    return (integral(0.002, false) * 0.2 - axialMmPerN * axialShare) * forceN * 1000;
  }

  private static double feed(String file) {
    return Double.parseDouble(
        Programs.text("flex-exceeds-step", file).replaceAll("(?s).*G1 X3\\. F([0-9.]+).*", "$1"));
  }

  @Test
  void theTiltOfAFloorBesideTheUncutTopIsAllOfTheStepsError() {
    // a third of 4 µm; the band below 0.01 mm of chip is 1, 1.6, 2.5; axial share 0.2, 0.3, 0.5
    double allowedUm = 0.33 * 4;
    Finding error = Programs.findings("flex-exceeds-step", "speaks.nc").get(0);
    assertThat(Programs.figure(error, "flexLow"))
        .isCloseTo(stepErrorUm(feed("speaks.nc"), 1, 0.2), within(1e-6))
        .isGreaterThan(allowedUm);
    assertThat(stepErrorUm(feed("speaks-likely.nc"), 1, 0.2)).isLessThan(allowedUm);
    assertThat(feed("speaks.nc") - feed("speaks-likely.nc")).isCloseTo(0.1, within(1e-9));
    Finding warning = Programs.findings("flex-exceeds-step", "speaks-typical.nc").get(0);
    assertThat(Programs.figure(warning, "flex"))
        .isCloseTo(stepErrorUm(feed("speaks-typical.nc"), 1.6, 0.3), within(1e-6))
        .isGreaterThan(allowedUm);
    assertThat(stepErrorUm(feed("silent.nc"), 1.6, 0.3)).isLessThan(allowedUm);
    assertThat(feed("speaks-typical.nc") - feed("silent.nc")).isCloseTo(0.1, within(1e-9));
    assertThat(Programs.findings("flex-exceeds-step", "silent.nc")).isEmpty();
  }

  @Test
  void theWallMovesByTheDeflectionAtTheTip() {
    Finding finding = Programs.findings("flex-exceeds-wall", "speaks.nc").get(0);
    double forceN = Programs.figure(finding, "force");
    assertThat(Programs.figure(finding, "flex"))
        .isCloseTo(integral(0.002, true) * forceN * 1000, within(1e-6));
    assertThat(Programs.figure(finding, "allowed")).isCloseTo(0.33 * 10, within(1e-12));
  }

  @Test
  void theNeckBearsTheLargestStressAtItsRoot() {
    Finding finding = Programs.findings("tool-overstressed", "speaks.nc").get(0);
    double forceN = Programs.figure(finding, "force");
    // 32 F L / (π d³), from half the depth of 0.1 mm to the root of the neck
    assertThat(Programs.figure(finding, "stress"))
        .isCloseTo(32 * forceN * (6 - 0.05) / (Math.PI * Math.pow(0.3, 3)), within(1e-6));
    assertThat(Programs.figure(finding, "allowed")).isCloseTo(300 / 2.0, within(1e-12));
  }

  /** In the corner the chip reaches the feed per tooth, as in a slot; before it, sin φ of it. */
  @Test
  void aCornerLoadsTheToolMoreThanTheStepoverBeforeIt() {
    Finding finding = Programs.findings("tool-overstressed", "speaks-corner.nc").get(0);
    double chipMm = 0.7 / (30000 * 2);
    double kienzleN = 2800 * 0.1 * StrictMath.pow(chipMm, 1 - 0.25);
    assertThat(Programs.figure(finding, "force")).isCloseTo(1.6 * kienzleN, within(1e-9));
    double sine = StrictMath.sin(StrictMath.acos(1 - 2 * 0.05 / 0.4));
    double before = 1.6 * kienzleN * StrictMath.pow(sine, 1 - 0.25);
    assertThat(32 * before * (6 - 0.05) / (Math.PI * Math.pow(0.3, 3))).isLessThan(150);
  }
}

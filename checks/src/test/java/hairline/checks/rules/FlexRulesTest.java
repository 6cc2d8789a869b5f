package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import hairline.checks.finding.Finding;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

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
    return feed("flex-exceeds-step", file);
  }

  private static double feed(String rule, String file) {
    return Double.parseDouble(
        Programs.text(rule, file).replaceAll("(?s).*G1 X3\\. F([0-9.]+).*", "$1"));
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
    String rule = "flex-exceeds-wall";
    double allowedUm = 0.33 * 10;
    Finding error = Programs.findings(rule, "speaks.nc").get(0);
    assertThat(Programs.figure(error, "allowed")).isCloseTo(allowedUm, within(1e-12));
    assertThat(Programs.figure(error, "flex"))
        .isCloseTo(wallErrorUm(feed(rule, "speaks.nc"), 1.6), within(1e-6));
    assertThat(Programs.figure(error, "flexLow"))
        .isCloseTo(wallErrorUm(feed(rule, "speaks.nc"), 1), within(1e-6))
        .isGreaterThan(allowedUm);
    assertThat(wallErrorUm(feed(rule, "speaks-likely.nc"), 1)).isLessThan(allowedUm);
    assertThat(feed(rule, "speaks.nc") - feed(rule, "speaks-likely.nc"))
        .isCloseTo(0.1, within(1e-9));
    assertThat(wallErrorUm(feed(rule, "speaks-typical.nc"), 1.6)).isGreaterThan(allowedUm);
    assertThat(wallErrorUm(feed(rule, "silent.nc"), 1.6)).isLessThan(allowedUm);
    assertThat(feed(rule, "speaks-typical.nc") - feed(rule, "silent.nc"))
        .isCloseTo(0.1, within(1e-9));
    assertThat(Programs.findings(rule, "silent.nc")).isEmpty();
  }

  /** The tip of the tool, pushed sideways at half the depth of 4 µm. */
  private static double wallErrorUm(double feedMmPerMin, double band) {
    return integral(0.002, true) * forceN(feedMmPerMin, 0.004, band) * 1000;
  }

  @Test
  void theNeckBearsTheLargestStressAtItsRoot() {
    String rule = "tool-overstressed";
    double allowedMPa = 300 / 2.0;
    Finding error = Programs.findings(rule, "speaks.nc").get(0);
    assertThat(Programs.figure(error, "allowed")).isCloseTo(allowedMPa, within(1e-12));
    assertThat(Programs.figure(error, "stress"))
        .isCloseTo(stressMPa(feed(rule, "speaks.nc"), 1.6), within(1e-6));
    assertThat(stressMPa(feed(rule, "speaks.nc"), 1)).isGreaterThan(allowedMPa);
    assertThat(stressMPa(feed(rule, "speaks-likely.nc"), 1)).isLessThan(allowedMPa);
    assertThat(feed(rule, "speaks.nc") - feed(rule, "speaks-likely.nc"))
        .isCloseTo(0.1, within(1e-9));
    assertThat(stressMPa(feed(rule, "speaks-typical.nc"), 1.6)).isGreaterThan(allowedMPa);
    assertThat(stressMPa(feed(rule, "silent.nc"), 1.6)).isLessThan(allowedMPa);
    assertThat(feed(rule, "speaks-typical.nc") - feed(rule, "silent.nc"))
        .isCloseTo(0.1, within(1e-9));
    assertThat(Programs.findings(rule, "silent.nc")).isEmpty();
  }

  /** 32 F L / (π d³), from half the depth of 0.1 mm to the root of the neck. */
  private static double stressMPa(double feedMmPerMin, double band) {
    return 32 * forceN(feedMmPerMin, 0.1, band) * (6 - 0.05) / (Math.PI * Math.pow(0.3, 3));
  }

  private static final Pattern SUM =
      Pattern.compile(
          "largest chip ([0-9.]+) µm.* × chip width ([0-9.]+) mm × specific force ([0-9.]+) MPa"
              + " × ([0-9.]+) = force ([0-9.]+) N");

  /** The figures shown multiply to the force shown; each has four digits. */
  @ParameterizedTest
  @ValueSource(strings = {"tool-overstressed", "flex-exceeds-step", "flex-exceeds-wall"})
  void theForceCanBeReckonedFromTheFacts(String rule) {
    Finding finding = Programs.findings(rule, "speaks.nc").get(0);
    String facts = String.join("\n", finding.first().facts());
    Matcher sum = SUM.matcher(facts);
    assertThat(sum.find()).as(facts).isTrue();
    double product = 1;
    for (int factor = 1; factor <= 4; factor++) {
      product *= Double.parseDouble(sum.group(factor));
    }
    assertThat(product / 1000).isCloseTo(Double.parseDouble(sum.group(5)), withinPercentage(0.2));
    assertThat(facts).contains("× 1, typically 1.6, at most 2.5 (our choice, no source)");
  }

  @Test
  void ofTwoFloorsThatAreCutTheirDifferenceCounts() {
    // F200 below, F20 above, and the other way round; by equal cuts the step is true
    double deeperUm = stepErrorUm(200, 1.6, 0.3) - stepErrorUm(20, 1.6, 0.3);
    for (String file :
        List.of(
            "speaks-both-cut.nc",
            "speaks-upper.nc",
            "speaks-two-tools.nc",
            "speaks-upper-tool.nc")) {
      Finding finding = Programs.findings("flex-exceeds-step", file).get(0);
      assertThat(Programs.figure(finding, "flex")).isCloseTo(deeperUm, within(1e-6));
      assertThat(Programs.figure(finding, "allowed")).isCloseTo(0.33 * 4, within(1e-9));
    }
    assertThat(Programs.findings("flex-exceeds-step", "silent-both-cut.nc")).isEmpty();
  }

  @Test
  void ofTheCutsOfALevelTheHeaviestCounts() {
    for (String file : List.of("speaks-worst-of-level.nc", "speaks-worst-second.nc")) {
      Finding finding = Programs.findings("flex-exceeds-step", file).get(0);
      assertThat(Programs.figure(finding, "flex"))
          .isCloseTo(stepErrorUm(89.2, 1.6, 0.3), within(1e-6))
          .isGreaterThan(stepErrorUm(20, 1.6, 0.3));
      assertThat(Programs.figure(finding, "step")).isCloseTo(4, within(1e-9));
    }
  }
}

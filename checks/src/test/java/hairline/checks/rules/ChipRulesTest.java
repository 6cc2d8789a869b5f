package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.finding.Finding;
import org.junit.jupiter.api.Test;

/** The figures of the chip rules, re-derived by hand from the sheets of their programs. */
class ChipRulesTest {
  /** f_z = v_f / (n z), physics of every handbook (exact): 30000 rpm, two flutes. */
  private static double feedPerToothUm(double feedMmPerMin) {
    return feedMmPerMin / (30_000 * 2) * 1000;
  }

  @Test
  void feedBelowEdgeRadius() {
    Finding finding = Programs.findings("feed-below-edge-radius", "speaks.nc").get(0);
    assertThat(Programs.figure(finding, "feedPerTooth"))
        .isCloseTo(feedPerToothUm(89.9), within(1e-9))
        .isLessThan(1.5);
    assertThat(Programs.figure(finding, "feedThatWouldDo")).isEqualTo(90);
    assertThat(feedPerToothUm(90)).isCloseTo(1.5, within(1e-12));
    assertThat(Programs.findings("feed-below-edge-radius", "silent.nc")).isEmpty();
  }

  @Test
  void chipAboveLimit() {
    Finding finding = Programs.findings("chip-above-limit", "speaks.nc").get(0);
    assertThat(Programs.figure(finding, "feedPerTooth"))
        .isCloseTo(feedPerToothUm(720.1), within(1e-9))
        .isGreaterThan(12);
    assertThat(Programs.figure(finding, "feedThatWouldDo")).isEqualTo(720);
    assertThat(Programs.findings("chip-above-limit", "silent.nc")).isEmpty();
  }

  @Test
  void runoutExceedsFeed() {
    Finding finding = Programs.findings("runout-exceeds-feed", "speaks.nc").get(0);
    // full slot, two teeth: reading ≥ f_z
    assertThat(Programs.figure(finding, "advance")).isCloseTo(feedPerToothUm(48), within(1e-9));
    assertThat(feedPerToothUm(48)).isCloseTo(0.8, within(1e-12));
    assertThat(feedPerToothUm(48.1)).isGreaterThan(0.8);
    assertThat(Programs.findings("runout-exceeds-feed", "silent.nc")).isEmpty();
  }

  @Test
  void chipBelowMinimum() {
    Finding finding = Programs.findings("chip-below-minimum", "speaks.nc").get(0);
    assertThat(Programs.figure(finding, "minimum")).isCloseTo(0.30 * 1.5, within(1e-12));
    // full slot, no runout, the cut deeper than the corner: the chip reaches the feed per tooth
    assertThat(Programs.figure(finding, "chip"))
        .isCloseTo(feedPerToothUm(26.9), within(1e-9))
        .isLessThan(0.45);
    assertThat(Programs.figure(finding, "feedThatWouldDo")).isEqualTo(27);
    assertThat(Programs.findings("chip-below-minimum", "silent.nc")).isEmpty();
  }

  @Test
  void aToolLastsForTheLengthItIsInContact() {
    Finding finding = Programs.findings("tool-life-exceeded", "speaks.nc").get(0);
    assertThat(Programs.figure(finding, "length"))
        .isCloseTo(0.02 + 5 + 0.9801, within(1e-9))
        .isGreaterThan(Programs.figure(finding, "life"));
    assertThat(0.02 + 5 + 0.98).isCloseTo(6, within(1e-9));
    assertThat(Programs.findings("tool-life-exceeded", "silent.nc")).isEmpty();
    Finding later = Programs.findings("tool-life-exceeded", "speaks-later.nc").get(0);
    assertThat(Programs.figure(later, "length"))
        .isCloseTo(0.02 + 6 + 1 + 0.02 + 1.98, within(1e-9));
    assertThat(later.at().line()).isEqualTo(10);
  }

  @Test
  void theLargestChipBesideAWallIsThatOfTheArcOfEngagement() {
    // largest chip f_z · 2 √(a_e/D − (a_e/D)²), handbooks of milling, from memory; 0.02 of 0.4 mm
    double share = 0.02 / 0.4;
    double chipUm = 60 / (30_000.0 * 2) * 1000 * 2 * Math.sqrt(share - share * share);
    assertChip("speaks-side.nc", chipUm);
  }

  @Test
  void aBallCutsAThinChipAtAShallowDepth() {
    // sin κ of a ball of 0.2 mm radius at 4 µm depth: √(1 − (1 − a_p/R)²)
    double cosine = 1 - 0.004 / 0.2;
    assertChip("speaks-ball.nc", 134 / (30_000.0 * 2) * 1000 * Math.sqrt(1 - cosine * cosine));
  }

  @Test
  void runoutGivesOneOfTwoTeethItsReadingMore() {
    double perToothUm = 14.9 / (30_000.0 * 2) * 1000;
    assertChip("speaks-runout.nc", Math.min(perToothUm + 0.2, 2 * perToothUm));
    assertThat(15 / (30_000.0 * 2) * 1000 + 0.2).isGreaterThanOrEqualTo(0.45);
    assertThat(Programs.findings("chip-below-minimum", "enough-with-runout.nc")).isEmpty();
  }

  private static void assertChip(String file, double chipUm) {
    Finding finding = Programs.findings("chip-below-minimum", file).get(0);
    assertThat(Programs.figure(finding, "chip")).isCloseTo(chipUm, within(1e-9)).isLessThan(0.45);
  }

  @Test
  void aSurfaceSpeedIsThatOfTheDiameterThatCuts() {
    // v = π d n; a ball of 0.4 mm at 20 µm cuts on 2 √(a_p (D − a_p))
    double acrossMm = 2 * Math.sqrt(0.02 * (0.4 - 0.02));
    assertSurfaceSpeed("speaks-ball-depth.nc", Math.PI * acrossMm * 73025 / 1000);
    assertThat(Math.PI * acrossMm * 73026 / 1000).isGreaterThan(40);
    assertSurfaceSpeed("speaks-fast.nc", Math.PI * 0.4 * 127324 / 1000);
    assertThat(Math.PI * 0.4 * 127323 / 1000).isLessThan(160);
  }

  private static void assertSurfaceSpeed(String file, double mPerMin) {
    Finding finding = Programs.findings("surface-speed-off", file).get(0);
    assertThat(Programs.figure(finding, "surfaceSpeed")).isCloseTo(mPerMin, within(1e-9));
  }

  @Test
  void neighboursOfFourTeethDifferByTheChordOfAQuarter() {
    // a reading of 0.8 µm is an eccentricity of 0.4 µm; teeth 90° apart: 0.4 µm × √2
    double neighboursUm = 0.4 * Math.sqrt(2);
    assertThat(67.8 / (30_000.0 * 4) * 1000).isLessThan(neighboursUm);
    assertThat(67.9 / (30_000.0 * 4) * 1000).isGreaterThan(neighboursUm);
    assertThat(Programs.findings("runout-exceeds-feed", "speaks-four.nc")).hasSize(1);
    assertThat(Programs.findings("runout-exceeds-feed", "silent-four.nc")).isEmpty();
  }
}

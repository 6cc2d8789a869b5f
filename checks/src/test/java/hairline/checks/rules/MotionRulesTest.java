package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.finding.Finding;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The figures of the motion rules, re-derived by hand from the sheets of their programs. */
class MotionRulesTest {

  @Test
  void aPlungeMayTakeATenthOfTheDiameter() {
    Finding finding = Programs.findings("straight-plunge", "speaks.nc").get(0);
    assertThat(Programs.figure(finding, "depth")).isCloseTo(40.1, within(1e-9));
    assertThat(Programs.figure(finding, "allowed")).isCloseTo(400 / 10.0, within(1e-9));
    assertThat(Programs.findings("straight-plunge", "silent.nc")).isEmpty();
  }

  @Test
  void theAngleOfARampIsThatOfItsFallOverItsLengthFromAbove() {
    Finding finding = Programs.findings("ramp-too-steep", "speaks.nc").get(0);
    assertThat(Programs.figure(finding, "angle"))
        .isCloseTo(Math.toDegrees(Math.atan(0.0525 / 1)), within(1e-6))
        .isGreaterThan(3);
    assertThat(Math.toDegrees(Math.atan(0.0524 / 1))).isLessThan(3);
    assertThat(Programs.findings("ramp-too-steep", "silent.nc")).isEmpty();
  }

  @Test
  void theFeedHeldIsTheLengthOverTheTimeOfABlock() {
    // v = L / T (exact): 2.9 µm in 0.4 ms
    Finding finding = Programs.findings("blocks-starve", "speaks-none-ahead.nc").get(0);
    assertThat(Programs.figure(finding, "feedHeld"))
        .isCloseTo(0.0029 / 0.0004 * 60, within(1e-6))
        .isLessThan(450);
    assertThat(Programs.figure(finding, "wait"))
        .isCloseTo(0.4 - 0.0029 / 450 * 60_000, within(1e-9));
    assertThat(0.003 / 0.0004 * 60).isCloseTo(450, within(1e-9));
    assertThat(Programs.findings("blocks-starve", "silent-none-ahead.nc")).isEmpty();
  }

  @Test
  void shortBlocksUseUpWhatIsReadyAhead() {
    // N blocks ahead, each block leaves 1 - d/T fewer: 3 - 6 · 1/2 = 0, and one more is too many
    double lossOfOne = 1 - 0.0015 / 450 * 60_000 / 0.4;
    assertThat(3 - 6 * lossOfOne).isCloseTo(0, within(1e-9));
    Finding finding = Programs.findings("blocks-starve", "speaks.nc").get(0);
    assertThat(Programs.figure(finding, "wait")).isCloseTo(0.4 * lossOfOne, within(1e-9));
    assertThat(Programs.figure(finding, "starved")).isEqualTo(1);
    assertThat(Programs.findings("blocks-starve", "silent.nc")).isEmpty();
  }

  @Test
  void surfaceSpeedIsTheCircumferenceTimesTheSpeed() {
    // v_c = π D n (exact)
    Finding finding = Programs.findings("surface-speed-off", "speaks.nc").get(0);
    assertThat(Programs.figure(finding, "surfaceSpeed"))
        .isCloseTo(Math.PI * 0.4e-3 * 31_830, within(1e-9))
        .isLessThan(40);
    assertThat(Math.PI * 0.4e-3 * 31_831).isGreaterThan(40);
    assertThat(Programs.findings("surface-speed-off", "silent.nc")).isEmpty();
  }

  @Test
  void levelsFromBothSidesDifferByTheReversal() {
    Finding finding = Programs.findings("approach-mixed", "speaks.nc").get(0);
    assertThat(Programs.figure(finding, "step")).isCloseTo(8 - 6.1, within(1e-9));
    assertThat(4 * Programs.figure(finding, "reversal")).isGreaterThan(8 - 6.1);
    assertThat(Programs.findings("approach-mixed", "silent.nc")).isEmpty();
  }

  @Test
  void aLeadInIsAsLongAsTheRadius() {
    Finding finding = Programs.findings("compensation-lead-in-short", "speaks.nc").get(0);
    assertThat(Programs.figure(finding, "length")).isCloseTo(0.1999, within(1e-9));
    assertThat(Programs.figure(finding, "radius")).isCloseTo(0.4 / 2, within(1e-12));
    assertThat(Programs.findings("compensation-lead-in-short", "silent.nc")).isEmpty();
  }

  @Test
  void theMachineReachesWorkPlusOffsetAndInZPlusTheToolsLength() {
    var findings = Programs.findings("outside-travel", "speaks.nc");
    assertThat(Programs.figure(findings.get(0), "reached"))
        .isCloseTo(170.0001 - 20, within(1e-9))
        .isGreaterThan(150);
    assertThat(Programs.figure(findings.get(1), "reached"))
        .isCloseTo(45.0001 - 60 + 20, within(1e-9))
        .isGreaterThan(5);
    // a half circle of radius 1 about (1, 104.5), with G54 at Y 5
    Finding arc = Programs.findings("outside-travel", "speaks-arc.nc").get(0);
    assertThat(Programs.figure(arc, "reached")).isCloseTo(104.5 + 1 + 5, within(1e-6));
    assertThat(Programs.findings("outside-travel", "silent.nc")).isEmpty();
  }

  @Test
  void aQuarterOfAStepBearsThePathTolerance() {
    Finding finding = Programs.findings("blend-exceeds-step", "speaks.nc").get(0);
    assertThat(Programs.figure(finding, "step")).isCloseTo(3.9, within(1e-9));
    assertThat(Programs.figure(finding, "tolerance")).isGreaterThan(3.9 / 4);
    assertThat(4.0 / 4).isGreaterThanOrEqualTo(1);
    assertThat(Programs.findings("blend-exceeds-step", "silent.nc")).isEmpty();
  }

  @Test
  void aRapidGoesAsDeepAsTheSurfaceStandsAboveTheToolsEnd() {
    Finding floor = Programs.findings("rapid-into-stock", "speaks.nc").get(0);
    assertThat(Programs.figure(floor, "depth")).isCloseTo(0.1001 - 0.1, within(1e-12));
    // From X3 the tool of 0.4 reaches the edge of the stock at X2 when it stands at X2.2; less a
    // cell of a hundredth of the diameter, and half of one for the first centre.
    assertThat(Programs.figure(floor, "x")).isCloseTo(2 + 0.2, within(3 * 0.004));
    assertThat(Programs.findings("rapid-into-stock", "silent.nc")).isEmpty();
  }

  @Test
  void aRapidOutOfASlotAslantGoesInAsDeepAsTheSlotLessItsRise() {
    // It rises as much as it goes sideways: a cell until it counts as meeting the wall.
    Finding finding = Programs.findings("rapid-into-stock", "speaks-leave.nc").get(0);
    assertThat(Programs.figure(finding, "depth")).isCloseTo(0.1, within(2 * 0.004));
    assertThat(Programs.figure(finding, "depth")).isLessThanOrEqualTo(0.1);
  }

  @Test
  void aBallBesideItsTroughGoesInDeepestAtTheTroughsBorder() {
    // Trough of radius R 0.2 and depth 0.02: its border lies y = sqrt(R² − 0.18²) from the middle.
    // The ball, shifted by 0.05, is there at −0.02 + R − sqrt(R² − (y − 0.05)²) (exact).
    double y = Math.sqrt(0.04 - 0.18 * 0.18);
    double end = -0.02 + 0.2 - Math.sqrt(0.04 - (y - 0.05) * (y - 0.05));
    Finding finding = Programs.findings("rapid-into-stock", "speaks-ball.nc").get(0);
    // A cell of 4 µm, on a trough that is there as steep as y / 0.18.
    assertThat(Programs.figure(finding, "depth")).isCloseTo(-end, within(0.004 * y / 0.18));
  }

  @Test
  void aDwellTouchesWhatStandsAtTheRimOrUnderTheEnd() {
    // Below the top of the stock in all of them; what differs is what stands there.
    assertThat(Programs.findings("dwell-in-cut", "speaks-floor.nc")).hasSize(1);
    assertThat(Programs.findings("dwell-in-cut", "speaks-wall.nc")).hasSize(1);
    assertThat(Programs.findings("dwell-in-cut", "silent-pocket.nc")).isEmpty();
  }

  @Test
  void theShareOfAirIsALengthOverALength() {
    // Down 0.02 and along 4 in contact; up 0.01, back 4 and up 0.0101 in air.
    Finding finding = Programs.findings("cuts-air", "speaks.nc").get(0);
    assertThat(Programs.figure(finding, "air")).isCloseTo(0.01 + 4 + 0.0101, within(1e-9));
    assertThat(Programs.figure(finding, "total")).isCloseTo(4.0201 + 4.02, within(1e-9));
    assertThat(Programs.figure(finding, "share")).isGreaterThan(0.5);
    assertThat(0.01 + 4 + 0.01).isCloseTo(0.02 + 4, within(1e-9));
    assertThat(Programs.findings("cuts-air", "silent.nc")).isEmpty();
  }

  /** Machine coordinate = work coordinate + offset, in Z + tool length (exact; axes of ISO 841). */
  @Test
  void theFarthestOfEachEndOfATravelIsTheWorst() {
    List<Finding> findings = Programs.findings("outside-travel", "speaks-twice.nc");
    assertThat(findings).hasSize(2);
    assertThat(worst(findings.get(0), "reached")).isCloseTo(170.0003 - 20, within(1e-9));
    assertThat(worst(findings.get(1), "reached")).isCloseTo(-130.0004 - 20, within(1e-9));
    Finding bare = Programs.findings("outside-travel", "speaks-no-length.nc").get(0);
    assertThat(Programs.figure(bare, "reached")).isCloseTo(65.0001 - 60, within(1e-9));
    Finding applied = Programs.findings("outside-travel", "speaks-automatic.nc").get(0);
    assertThat(Programs.figure(applied, "reached")).isCloseTo(45.0001 - 60 + 20, within(1e-9));
  }

  private static double worst(Finding finding, String name) {
    return finding.worst().figures().stream()
        .filter(figure -> figure.name().equals(name))
        .findFirst()
        .orElseThrow()
        .value();
  }

  /** Down to rest and up again at a steady acceleration: 2 v/a (exact mechanics). */
  @Test
  void aStopInContactRubsForAsLongAsTheAxesTake() {
    Finding finding = Programs.findings("feed-not-reached", "speaks.nc").get(0);
    double neededMmPerMin = 0.45 / 1000 * 2 * 30000;
    assertThat(Programs.figure(finding, "feedNeeded")).isCloseTo(neededMmPerMin, within(1e-9));
    double seconds = 2 * neededMmPerMin / 60 / 449.9;
    assertThat(Programs.figure(finding, "revolutions"))
        .isCloseTo(seconds * 30000 / 60, within(1e-9));
    assertThat(2 * neededMmPerMin / 60 / 450 * 30000 / 60).isCloseTo(1, within(1e-12));
  }

  /**
   * From rest to a feed takes v²/2a (exact mechanics); at both ends of a block it is gone twice.
   */
  @Test
  void stopsThatRubOnMoreThanATenthOfTheWaySpeak() {
    double neededMmPerS = 27.0 / 60;
    double rubsMm = 2 * neededMmPerS * neededMmPerS / (2 * 450);
    assertThat(rubsMm / 0.0045).isCloseTo(0.1, within(1e-12));
    Finding finding = Programs.findings("feed-not-reached", "speaks-share.nc").get(0);
    assertThat(Programs.figure(finding, "share")).isCloseTo(rubsMm / 0.0044, within(1e-9));
    assertThat(Programs.figure(finding, "revolutions")).isCloseTo(1, within(1e-9));
    assertThat(Programs.findings("feed-not-reached", "silent-share.nc")).isEmpty();
  }

  /**
   * The largest chip is f_z sin κ sin φ: on a strip of 0.05 mm beside a wall cos φ is 1 − 2 · 0.05
   * / 0.4, at 0.02 mm deep on a ball of 0.2 mm cos κ is 1 − 0.02 / 0.2 (geometry).
   */
  @Test
  void theFeedThatAChipNeedsCountsWidthAndDepth() {
    double slotMmPerMin = 0.30 * 1.5 / 1000 * 2 * 30000;
    double beside = slotMmPerMin / Math.sin(Math.acos(1 - 2 * 0.05 / 0.4));
    double ball = slotMmPerMin / Math.sin(Math.acos(1 - 0.02 / 0.2));
    assertNeeded("speaks-beside.nc", beside, 449.9);
    assertNeeded("speaks-ball.nc", ball, 449.9);
    // Where Z varies the depth is not asked: deeper than the ball is high.
    assertNeeded("speaks-ball-ramp.nc", slotMmPerMin, 200);
  }

  private static void assertNeeded(String file, double neededMmPerMin, double mmPerS2) {
    Finding finding = Programs.findings("feed-not-reached", file).get(0);
    assertThat(Programs.figure(finding, "feedNeeded")).isCloseTo(neededMmPerMin, within(1e-6));
    assertThat(Programs.figure(finding, "revolutions"))
        .isCloseTo(2 * neededMmPerMin / 60 / mmPerS2 * 500, within(1e-6));
  }

  /**
   * The programmed feed makes chips, the one that the control can hold rubs: 600 mm/min over 2
   * flutes at 30000 rpm is 10 µm a tooth; blocks of 2 µm in 5 ms each (v = L / T) are 24 mm/min,
   * 0.4 µm a tooth, below 0.30 of an edge radius of 1.5 µm. Blocks of 3 µm make 0.6 µm.
   */
  @Test
  void theProgrammedFeedMakesChipsAndThePlannedOneRubs() {
    double smallestChipUm = 0.30 * 1.5;
    double plannedMmPerMin = 0.002 / 0.005 * 60;
    double teethPerMin = 2 * 30000;
    assertThat(600 / teethPerMin * 1000).isGreaterThan(smallestChipUm);
    assertThat(plannedMmPerMin / teethPerMin * 1000).isLessThan(smallestChipUm);
    Finding finding = Programs.findings("feed-not-reached", "speaks-short-blocks.nc").get(0);
    assertThat(Programs.figure(finding, "plannedFeed")).isCloseTo(plannedMmPerMin, within(1e-9));
    assertThat(0.003 / 0.005 * 60 / teethPerMin * 1000).isGreaterThan(smallestChipUm);
    assertThat(Programs.findings("feed-not-reached", "silent-longer-blocks.nc")).isEmpty();
  }

  @Test
  void clockwiseWithMaterialOnTheRightIsClimb() {
    // To X-3 (travel along -X) Y-0.1 has its wall on the left, Y0.1 on the right; M3 turns
    // clockwise seen from above.
    Finding finding = Programs.findings("cut-direction-mixed", "speaks.nc").get(0);
    assertThat(Programs.figure(finding, "climb")).isEqualTo(1);
    assertThat(Programs.figure(finding, "conventional")).isEqualTo(1);
    assertThat(finding.at().line()).isEqualTo(17);
    assertThat(Programs.findings("cut-direction-mixed", "silent.nc")).isEmpty();
  }

  @Test
  void aCuspIsWhatTwoCirclesLeaveBetweenThem() {
    // h = R − √(R² − (s/2)²), R 0.25: 0.02 apart leaves 0.20008 µm, 0.0199 leaves less than 0.2.
    double cuspUm = 1000 * (0.25 - Math.sqrt(0.25 * 0.25 - 0.01 * 0.01));
    Finding finding = Programs.findings("cusp-above-limit", "speaks.nc").get(0);
    assertThat(Programs.figure(finding, "cusp")).isCloseTo(cuspUm, within(1e-9));
    assertThat(cuspUm).isCloseTo(0.20008, within(1e-5)).isGreaterThan(0.2);
    double enoughMm = 2 * Math.sqrt(2 * 0.25 * 0.0002 - 0.0002 * 0.0002);
    assertThat(enoughMm).isBetween(0.0199, 0.02);
    assertThat(Programs.findings("cusp-above-limit", "silent.nc")).isEmpty();
    // Down 45°, 0.0142 apart from above is 0.0142 √2 along the surface, 0.0141 √2 is near enough.
    Finding slope = Programs.findings("cusp-above-limit", "speaks-slope.nc").get(0);
    assertThat(Programs.figure(slope, "stepover")).isCloseTo(0.0142 * Math.sqrt(2), within(1e-9));
    assertThat(0.0142 * Math.sqrt(2)).isGreaterThan(enoughMm);
    assertThat(0.0141 * Math.sqrt(2)).isLessThan(enoughMm);
    assertThat(Programs.findings("cusp-above-limit", "silent-slope.nc")).isEmpty();
  }

  @Test
  void aSliverIsAsWideAsThePassesAreApartLessTheTool() {
    double cellUm = 400.0 / 100;
    Finding finding = Programs.findings("wall-left", "speaks.nc").get(0);
    assertThat(Programs.figure(finding, "width")).isCloseTo(436.0 - 400, within(cellUm));
    assertThat(Programs.figure(finding, "tenthOfTool")).isCloseTo(400.0 / 10, within(1e-9));
    assertThat(Programs.findings("wall-left", "silent.nc")).isEmpty();
    // Along the diagonal: y = x + 0.2 and y = x + 0.8 are 0.6/√2 apart.
    Finding oblique = Programs.findings("wall-left", "speaks-oblique.nc").get(0);
    assertThat(Programs.figure(oblique, "width"))
        .isCloseTo(1000 * (0.6 / Math.sqrt(2) - 0.4), within(cellUm));
  }
}

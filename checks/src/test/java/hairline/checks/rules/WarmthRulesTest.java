package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.finding.Finding;
import org.junit.jupiter.api.Test;

/**
 * The times of the warmth rules, re-derived by hand from the sheets of their programs: run-up 1.5
 * s, a warm-up of 12 min at 20000 rpm, stops of 60 s, measuring every 45 min. That a spindle is
 * warmed up before it cuts a few microns, since warm-up changes tool height and radius by as much,
 * is common practice, no source.
 */
class WarmthRulesTest {
  private static final double RUN_UP_S = 1.5;

  private static Finding speaks(String rule) {
    return Programs.findings(rule, "speaks.nc").get(0);
  }

  @Test
  void aWarmUpIsRunUpAndDwellAtSpeed() {
    Finding missing = speaks("warm-up-missing");
    assertThat(Programs.figure(missing, "run"))
        .isCloseTo(RUN_UP_S + 718.4, within(1e-9))
        .isLessThan(12 * 60);
    assertThat(Programs.figure(missing, "asked")).isEqualTo(12 * 60);
    assertThat(RUN_UP_S + 718.5).isEqualTo(12 * 60);
    assertThat(Programs.findings("warm-up-missing", "silent.nc")).isEmpty();
    assertThat(Programs.findings("warm-up-short", "speaks.nc")).hasSize(1);
    assertThat(Programs.findings("warm-up-short", "silent.nc")).isEmpty();
  }

  @Test
  void aStopMayLastAMinute() {
    assertThat(speaks("spindle-idle").first().message()).contains("60.001 s").contains("60 s");
    assertThat(Programs.findings("spindle-idle", "silent.nc")).isEmpty();
  }

  @Test
  void measuringHoldsForThreeQuartersOfAnHour() {
    // 2700 s of dwell, then 1.02 mm down at 15 m/min
    double downS = 1.02 / (15_000 / 60.0);
    assertThat(speaks("measuring-overdue").first().message())
        .contains((2700 + Math.round(downS * 1000) / 1000.0) + " s")
        .contains(45 * 60 + " s allowed");
    assertThat(Programs.findings("measuring-overdue", "silent.nc")).isEmpty();
  }

  @Test
  void aSpeedIsReachedAfterItsRunUp() {
    assertThat(speaks("spindle-not-up-to-speed").first().message())
        .contains("1.4 s")
        .contains(RUN_UP_S + " s");
    assertThat(Programs.findings("spindle-not-up-to-speed", "silent.nc")).isEmpty();
  }

  // Growth: 9 µm in the end at 50000 rpm, to the power 1.5 of speed, 6 min; first-order lag.

  private static final double TAU_S = 360;
  private static final double WORKING_UM = 9;
  private static final double ALLOWED_UM = 0.33;

  /** The longest that the first move after measuring can take: 2 m at 15 m/min. */
  private static final double PLACE_UNKNOWN_S = 8;

  private static double lag(double fromUm, double endUm, double seconds) {
    return endUm + (fromUm - endUm) * StrictMath.exp(-seconds / TAU_S);
  }

  /** 12 min at 20000 rpm, 4 s standing, then run-up and measuring at 50000 rpm. */
  private static double atMeasuringUm() {
    double warm = lag(0, WORKING_UM * StrictMath.pow(0.4, 1.5), 720);
    return lag(lag(warm, 0, 4), WORKING_UM, RUN_UP_S + 12);
  }

  private static double rapidS(double mm) {
    return mm / (15_000 / 60.0);
  }

  @Test
  void growthBetweenTwoLevelsTakesAThirdOfTheTolerance() {
    // 1.008 mm down; three passes of 6 mm and two of 0.3 mm at F400; up, dwell, over and down
    // again;
    // 0.112 mm at F60 and 2 mm at F170. Growth is least where the first move takes longest.
    double soonest = lag(atMeasuringUm(), WORKING_UM, rapidS(1.008));
    double latest = lag(soonest, WORKING_UM, PLACE_UNKNOWN_S);
    double over = rapidS(StrictMath.hypot(4, 0.3)) + rapidS(0.9);
    double seconds = 18.6 / 400 * 60 + rapidS(1.008) + over + 0.112 + 2 / 170.0 * 60;
    double speaks = lag(latest, WORKING_UM, seconds + 15) - latest;
    double silent = lag(soonest, WORKING_UM, seconds + 14) - soonest;
    assertThat(speaks).isGreaterThan(ALLOWED_UM);
    assertThat(silent).isLessThan(ALLOWED_UM);
    Finding finding = speaks("growth-exceeds-share");
    assertThat(Programs.figure(finding, "growth")).isCloseTo(speaks, within(1e-4));
    assertThat(Programs.figure(finding, "allowed")).isCloseTo(ALLOWED_UM, within(1e-12));
    assertThat(Programs.findings("growth-exceeds-share", "silent.nc")).isEmpty();
  }

  @Test
  void theCureOfGrowthIsWorkedOut() {
    // So many time constants as the drift is above its share, in tenths of a minute; the most it
    // can be, without the time to reach the part.
    Finding finding = speaks("growth-exceeds-share");
    double most = Programs.figure(finding, "growth") * StrictMath.exp(PLACE_UNKNOWN_S / TAU_S);
    double minutes = TAU_S / 60 * StrictMath.log(most / ALLOWED_UM);
    assertThat(finding.first().cure().orElseThrow())
        .startsWith(StrictMath.ceil(minutes * 10) / 10 + " min more of warm-up at 50000 rpm");
    assertThat(Programs.findings("growth-exceeds-share", "silent-working-speed.nc")).isEmpty();
    assertThat(Programs.findings("growth-exceeds-share", "silent-measured-again.nc")).isEmpty();
  }

  @Test
  void growthSinceMeasuringCountsFromUncutStock() {
    double seconds = rapidS(1.008) + 18.6 / 400 * 60;
    double speaks = lag(atMeasuringUm(), WORKING_UM, seconds + 15.2) - atMeasuringUm();
    assertThat(speaks).isGreaterThan(ALLOWED_UM);
    assertThat(lag(atMeasuringUm(), WORKING_UM, seconds + 15.1) - atMeasuringUm())
        .isLessThan(ALLOWED_UM);
    Finding finding = Programs.findings("growth-exceeds-share", "speaks-since-measuring.nc").get(0);
    assertThat(Programs.figure(finding, "growth")).isCloseTo(speaks, within(1e-4));
  }

  @Test
  void anotherSpeedThanAtMeasuringGrowsOn() {
    double at20k = WORKING_UM * StrictMath.pow(0.4, 1.5);
    double measured = lag(lag(lag(0, at20k, 720), 0, 4), at20k, RUN_UP_S + 12);
    double down = rapidS(1.005);
    double speaks = lag(measured, WORKING_UM, RUN_UP_S + 16 + down) - measured;
    assertThat(speaks).isGreaterThan(ALLOWED_UM);
    assertThat(lag(measured, WORKING_UM, RUN_UP_S + 6 + down + PLACE_UNKNOWN_S) - measured)
        .isLessThan(ALLOWED_UM);
    Finding finding = speaks("speed-changed-since-measuring");
    assertThat(Programs.figure(finding, "growth")).isCloseTo(speaks, within(1e-4));
    assertThat(Programs.findings("speed-changed-since-measuring", "silent.nc")).isEmpty();
  }

  @Test
  void bearingsShiftWithTheSquareOfSpeed() {
    assertThat(1 - 0.8184 * 0.8184).isGreaterThan(ALLOWED_UM);
    assertThat(1 - 0.8186 * 0.8186).isLessThan(ALLOWED_UM);
    Finding finding =
        Programs.findings("speed-changed-since-measuring", "speaks-instant.nc").get(0);
    assertThat(Programs.figure(finding, "growth")).isCloseTo(1 - 0.8184 * 0.8184, within(1e-3));
    assertThat(Programs.findings("speed-changed-since-measuring", "silent-instant.nc")).isEmpty();
  }

  /** 9 µm at 50000 rpm, 2 min: 3 min at 10000 rpm, 2 at 15000, then 20000. */
  private static double ladderToComeUm(double lastDwellS) {
    double um = 0;
    double[][] rungs = {{0.2, 180}, {0.3, 120}, {0.4, lastDwellS}};
    for (double[] rung : rungs) {
      double end = WORKING_UM * StrictMath.pow(rung[0], 1.5);
      um = end + (um - end) * StrictMath.exp(-(RUN_UP_S + rung[1]) / 120);
    }
    return WORKING_UM * StrictMath.pow(0.4, 1.5) - um;
  }

  @Test
  void aLadderMustComeNearItsEnd() {
    assertThat(ladderToComeUm(143.7)).isGreaterThan(ALLOWED_UM);
    assertThat(ladderToComeUm(143.8)).isLessThan(ALLOWED_UM);
    Finding finding = Programs.findings("warm-up-short", "speaks-ladder.nc").get(0);
    assertThat(Programs.figure(finding, "toCome")).isCloseTo(ladderToComeUm(143.7), within(1e-9));
    assertThat(Programs.figure(finding, "near")).isCloseTo(ALLOWED_UM, within(1e-12));
    assertThat(Programs.findings("warm-up-short", "silent-ladder.nc")).isEmpty();
  }

  @Test
  void aMissingWarmUpExplainsGrowthAway() {
    assertThat(Programs.findings("warm-up-missing", "speaks-hides-growth.nc")).hasSize(1);
  }
}

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
}

package hairline.checks.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.setup.Setup;
import hairline.checks.setup.SheetException;
import hairline.checks.setup.SheetReader;
import org.junit.jupiter.api.Test;

class TimeTableTest {
  private static final String TRAVEL =
      "travel: {X: [0 mm, 30 mm], Y: [-40 mm, 0 mm], Z: [-100 mm, 20 mm]}";

  private static TimeTable table(String machine) throws SheetException {
    Setup setup = new SheetReader().parse("machine: {" + machine + "}", "sheet");
    return TimeTable.of(setup);
  }

  /** 30, 40 and 120 mm are 130 mm across: 1 s at 7.8 m/min, and ramps of 0.1 and 0.1 s. */
  @Test
  void theLongestRapidGoesAcrossTheTravelFromRestToRest() throws SheetException {
    assertThat(
            table(TRAVEL + ", rapid: 7.8 m/min, acceleration: 1.3 m/s^2, jerk: 13 m/s^3")
                .longestRapidSeconds()
                .orElseThrow())
        .isCloseTo(1.2, within(1e-12));
    assertThat(
            table(TRAVEL + ", rapid: 7.8 m/min, acceleration: 1.3 m/s^2")
                .longestRapidSeconds()
                .orElseThrow())
        .isCloseTo(1.1, within(1e-12));
    assertThat(
            table(
                    TRAVEL
                        + ", rapid: {X: 20 m/min, Y: 20 m/min, Z: 7.8 m/min}"
                        + ", acceleration: 1.3 m/s^2")
                .longestRapidSeconds()
                .orElseThrow())
        .isCloseTo(1.1, within(1e-12));
  }

  @Test
  void withoutTravelRateOrAccelerationItIsNotKnown() throws SheetException {
    assertThat(table("rapid: 7.8 m/min, acceleration: 1.3 m/s^2").longestRapidSeconds()).isEmpty();
    assertThat(table(TRAVEL + ", acceleration: 1.3 m/s^2").longestRapidSeconds()).isEmpty();
    assertThat(table(TRAVEL + ", rapid: 7.8 m/min").longestRapidSeconds()).isEmpty();
    assertThat(
            table(TRAVEL + ", rapid: {X: 20 m/min}, acceleration: 1.3 m/s^2").longestRapidSeconds())
        .isEmpty();
  }
}

package hairline.checks.warmth;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.setup.CodeKeys;
import hairline.checks.setup.CodeWord;
import hairline.checks.setup.LimitKeys;
import hairline.checks.setup.Setup;
import hairline.checks.setup.SpindleKeys;
import hairline.checks.setup.WarmUpPlace;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** What a sheet asks of a warm-up. */
class WarmUpDemandTest {
  @Test
  void allOfIt() {
    Setup setup =
        Setup.builder()
            .with(SpindleKeys.WARM_UP_TIME_S, 720.0)
            .with(SpindleKeys.WARM_UP_MIN_SPEED_RPM, 20000.0)
            .with(SpindleKeys.WARM_UP_SPEED_RPM, 30000.0)
            .with(SpindleKeys.WARM_UP_VALID_FOR_S, 1200.0)
            .with(SpindleKeys.WARM_UP_WHERE, WarmUpPlace.BEFORE)
            .with(LimitKeys.IDLE_TIME_S, 90.0)
            .with(CodeKeys.WARM_UP, List.of(CodeWord.of('M', 71)))
            .build();
    assertThat(WarmUpDemand.of(setup))
        .isEqualTo(
            new WarmUpDemand(
                OptionalDouble.of(720),
                OptionalDouble.of(20000),
                OptionalDouble.of(30000),
                OptionalDouble.of(1200),
                90,
                true,
                true));
  }

  @Test
  void nothingButDefaults() {
    assertThat(WarmUpDemand.of(Setup.builder().build()))
        .isEqualTo(
            new WarmUpDemand(
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                60,
                false,
                false));
  }

  @Test
  void aCodeThatMeasuresIsNoWarmUpCode() {
    Setup setup =
        Setup.builder().with(CodeKeys.MEASURE_TOOL, List.of(CodeWord.of('M', 72))).build();
    assertThat(WarmUpDemand.of(setup).codesNamed()).isFalse();
  }
}

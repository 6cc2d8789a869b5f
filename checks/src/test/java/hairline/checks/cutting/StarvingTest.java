package hairline.checks.cutting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class StarvingTest {

  /** T 1 ms, L 5 µm: 300 mm/min. F300 in blocks of 2 µm: 2500 blocks a second. By hand. */
  @Test
  void workedExamples() {
    assertThat(Starving.feedHeldMmPerMin(0.005, 1)).isCloseTo(300, within(1e-9));
    // 10 µm in blocks of 0.4 ms: 25 µm a ms.
    assertThat(Starving.feedHeldMmPerMin(0.01, 0.4)).isCloseTo(1500, within(1e-9));
    assertThat(1000 / Starving.blockLastsMs(0.002, 300)).isCloseTo(2500, within(1e-9));
    assertThat(Starving.blockLastsMs(0.005, 300)).isCloseTo(1, within(1e-12));
  }

  @Test
  void refusesWhatCannotBe() {
    assertThatIllegalArgumentException().isThrownBy(() -> Starving.feedHeldMmPerMin(-1, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> Starving.feedHeldMmPerMin(1, 0));
    assertThatIllegalArgumentException().isThrownBy(() -> Starving.blockLastsMs(-1, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> Starving.blockLastsMs(1, 0));
  }
}

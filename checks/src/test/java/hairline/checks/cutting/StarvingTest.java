package hairline.checks.cutting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
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

  /** By hand: of seven blocks of 0.2 ms three are ready ahead, and four need 0.4 ms each. */
  @Test
  void theFactorAtWhichTheControlKeepsUp() {
    double[] seven = {0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2};
    assertThat(Starving.factorHeld(seven, 7, 3, 0.4)).isCloseTo(1.4 / 1.6, within(1e-12));
    assertThat(Starving.factorHeld(seven, 6, 3, 0.4)).isCloseTo(1, within(1e-12));
    assertThat(Starving.factorHeld(seven, 1, 0, 0.4)).isCloseTo(0.5, within(1e-12));
    assertThat(Starving.factorHeld(seven, 0, 3, 0.4)).isEqualTo(1);
  }

  /** Against the queue itself, run again at each factor. */
  @Property(tries = 300)
  void atTheFactorTheQueueIsSilentAndAboveItSpeaks(
      @ForAll @Size(min = 1, max = 60) List<@IntRange(min = 1, max = 900) Integer> micros,
      @ForAll @IntRange(min = 0, max = 6) int ahead) {
    double[] lastMs = micros.stream().mapToDouble(us -> us / 1000.0).toArray();
    double factor = Starving.factorHeld(lastMs, lastMs.length, ahead, 0.4);
    assertThat(waits(lastMs, ahead, factor)).isFalse();
    if (factor < 1) {
      assertThat(waits(lastMs, ahead, factor * 1.0001)).isTrue();
    }
  }

  private static boolean waits(double[] lastMs, int ahead, double factor) {
    BlockQueue queue = new BlockQueue(ahead, 0.4);
    boolean waits = false;
    for (double ms : lastMs) {
      waits |= queue.run(ms / factor) > 0;
    }
    return waits;
  }
}

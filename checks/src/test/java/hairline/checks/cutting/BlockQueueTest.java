package hairline.checks.cutting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** The queue of blocks against the clock of tool and control, kept block by block. */
class BlockQueueTest {
  @Test
  void theWaitsAreThoseOfTheClocksOfToolAndControl() {
    Random random = new Random(7);
    for (int run = 0; run < 200; run++) {
      int most = random.nextInt(6);
      double needMs = 0.2 + random.nextDouble();
      double[] lastsMs = random.doubles(100, 0, 2 * needMs).toArray();
      BlockQueue queue = new BlockQueue(most, needMs);
      // When each block is ready and begins, with as many ready at the start as are kept; the
      // control begins with a block when its place in the queue comes free.
      double[] beginsMs = new double[lastsMs.length + 1];
      double[] readyMs = new double[lastsMs.length + 1];
      for (int i = 1; i <= lastsMs.length; i++) {
        double endsMs = beginsMs[i - 1] + lastsMs[i - 1];
        int frees = i - 1 - most;
        readyMs[i] = frees < 0 ? 0 : Math.max(beginsMs[frees], readyMs[i - 1]) + needMs;
        beginsMs[i] = Math.max(endsMs, readyMs[i]);
        assertThat(queue.run(lastsMs[i - 1]))
            .isCloseTo(beginsMs[i] - endsMs, within(2e-6 * needMs));
      }
    }
  }

  @Test
  void equalTimesNeverWaitAndAFilledQueueIsFull() {
    BlockQueue queue = new BlockQueue(0, 0.4);
    for (int i = 0; i < 100_000; i++) {
      assertThat(queue.run(0.003 / 450 * 60_000)).isZero();
    }
    BlockQueue three = new BlockQueue(3, 0.4);
    three.run(0);
    assertThat(three.readyBlocks()).isEqualTo(2);
    three.fill();
    assertThat(three.readyBlocks()).isEqualTo(3);
  }

  @Test
  void refusesWhatIsOutOfRange() {
    assertThatIllegalArgumentException().isThrownBy(() -> new BlockQueue(-1, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> new BlockQueue(1, 0));
    assertThatIllegalArgumentException().isThrownBy(() -> new BlockQueue(1, 1).run(-1));
  }
}

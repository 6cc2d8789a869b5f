package hairline.checks.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/**
 * How much of a move is below a feed, under a steady acceleration of 1000 mm/s²: v² = v0² + 2 a s
 * and t = Δv/a (exact).
 */
class PlannedMoveTest {
  private static final Offset<Double> CLOSE = within(1e-9);

  /**
   * 1 mm from rest to 10 mm/s and back to rest: 0.05 mm and 10 ms at either end, and 0.9 mm in 90
   * ms.
   */
  private static final PlannedMove FROM_REST_TO_REST =
      new PlannedMove(0.11, 0, 0, 0, 600, 60 / 0.11, 0, 0.05, 0.95);

  /**
   * 1 mm from 4 mm/s down to 2, up to 10, steady, and down to 6: 0.006, 0.048 and 0.032 mm; 2, 8
   * and 4 ms; 0.914 mm steady in 91.4 ms.
   */
  private static final PlannedMove DIP_FIRST =
      new PlannedMove(0.1054, 240, 360, 120, 600, 60 / 0.1054, 0.006, 0.054, 0.968);

  /** The same backwards: from 6 up to 10, steady, down to 2 and up to 4. */
  private static final PlannedMove DIP_LAST =
      new PlannedMove(0.1054, 360, 240, 120, 600, 60 / 0.1054, 0.994, 0.032, 0.946);

  /** Half of the feed is reached after a quarter of the way up, in half of its time. */
  @Test
  void fromRestToRest() {
    assertThat(FROM_REST_TO_REST.shareBelow(300)).isCloseTo(0.025, CLOSE);
    assertThat(FROM_REST_TO_REST.secondsBelowAtStart(300)).isCloseTo(0.005, CLOSE);
    assertThat(FROM_REST_TO_REST.secondsBelowAtEnd(300)).isCloseTo(0.005, CLOSE);
    assertThat(FROM_REST_TO_REST.secondsBelow(300)).isCloseTo(0.010, CLOSE);
    assertThat(FROM_REST_TO_REST.shareBelow(0)).isZero();
    assertThat(FROM_REST_TO_REST.secondsBelow(0)).isZero();
  }

  /** The steady part is not below its own feed, but it is below any higher one. */
  @Test
  void theHighestFeedItselfIsNotBelow() {
    assertThat(FROM_REST_TO_REST.shareBelow(600)).isCloseTo(0.1, CLOSE);
    assertThat(FROM_REST_TO_REST.secondsBelow(600)).isCloseTo(0.020, CLOSE);
    assertThat(FROM_REST_TO_REST.secondsBelowAtStart(600)).isCloseTo(0.010, CLOSE);
    assertThat(FROM_REST_TO_REST.secondsBelowAtEnd(600)).isCloseTo(0.010, CLOSE);
    assertThat(FROM_REST_TO_REST.shareBelow(600.1)).isEqualTo(1);
    assertThat(FROM_REST_TO_REST.secondsBelow(600.1)).isEqualTo(0.11);
    assertThat(FROM_REST_TO_REST.secondsBelowAtStart(600.1)).isEqualTo(0.11);
    assertThat(FROM_REST_TO_REST.secondsBelowAtEnd(600.1)).isEqualTo(0.11);
  }

  /** Below 8 mm/s: 0.006 + 0.030 + 0.014 mm. Below 5: all of the first, 0.0105, none at the end. */
  @Test
  void aDipBehindTheStart() {
    assertThat(DIP_FIRST.shareBelow(480)).isCloseTo(0.006 + 0.030 + 0.014, CLOSE);
    assertThat(DIP_FIRST.secondsBelowAtStart(480)).isCloseTo(0.002 + 0.006, CLOSE);
    assertThat(DIP_FIRST.secondsBelowAtEnd(480)).isCloseTo(0.002, CLOSE);
    assertThat(DIP_FIRST.secondsBelow(480)).isCloseTo(0.010, CLOSE);
    assertThat(DIP_FIRST.shareBelow(300)).isCloseTo(0.006 + 0.0105, CLOSE);
    assertThat(DIP_FIRST.secondsBelow(300)).isCloseTo(0.002 + 0.003, CLOSE);
    assertThat(DIP_FIRST.shareBelow(180)).isCloseTo(0.0025 + 0.0025, CLOSE);
    assertThat(DIP_FIRST.shareBelow(120)).isZero();
  }

  @Test
  void aDipBeforeTheEnd() {
    assertThat(DIP_LAST.shareBelow(480)).isCloseTo(0.006 + 0.030 + 0.014, CLOSE);
    assertThat(DIP_LAST.secondsBelowAtStart(480)).isCloseTo(0.002, CLOSE);
    assertThat(DIP_LAST.secondsBelowAtEnd(480)).isCloseTo(0.006 + 0.002, CLOSE);
    assertThat(DIP_LAST.secondsBelow(480)).isCloseTo(0.010, CLOSE);
    assertThat(DIP_LAST.shareBelow(300)).isCloseTo(0.006 + 0.0105, CLOSE);
    assertThat(DIP_LAST.secondsBelow(300)).isCloseTo(0.002 + 0.003, CLOSE);
  }

  /** 2 mm at 10 mm/s all the way. */
  @Test
  void aSteadyMoveIsBelowHigherFeedsOnly() {
    PlannedMove steady = new PlannedMove(0.2, 600, 600, 600, 600, 600, 0, 0, 1);
    assertThat(steady.shareBelow(600)).isZero();
    assertThat(steady.secondsBelow(600)).isZero();
    assertThat(steady.shareBelow(601)).isEqualTo(1);
    assertThat(steady.secondsBelow(601)).isEqualTo(0.2);
    assertThat(steady.shareBelow(599)).isZero();
    assertThat(PlannedMove.NONE.secondsBelow(0)).isZero();
  }

  /** 0.5 mm at 1000 mm/s² gain √(2 a s) = 31.62 mm/s; up all the way, nothing else. */
  @Test
  void aMoveThatOnlyGainsSpeed() {
    double end = StrictMath.sqrt(1000) * 60;
    double seconds = StrictMath.sqrt(0.001);
    PlannedMove up = new PlannedMove(seconds, 0, end, 0, end, 0.5 / seconds * 60, 0, 1, 1);
    assertThat(up.shareBelow(end / 2)).isCloseTo(0.25, CLOSE);
    assertThat(up.secondsBelow(end / 2)).isCloseTo(seconds / 2, CLOSE);
    assertThat(up.secondsBelowAtEnd(end / 2)).isZero();
    PlannedMove down = new PlannedMove(seconds, end, 0, 0, end, 0.5 / seconds * 60, 1, 0, 0);
    assertThat(down.shareBelow(end / 2)).isCloseTo(0.25, CLOSE);
    assertThat(down.secondsBelowAtEnd(end / 2)).isCloseTo(seconds / 2, CLOSE);
    assertThat(down.secondsBelowAtStart(end / 2)).isZero();
  }
}

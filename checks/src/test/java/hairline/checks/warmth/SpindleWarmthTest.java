package hairline.checks.warmth;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.timing.Answer;
import org.junit.jupiter.api.Test;

/**
 * The terms of a warm-up on hand-computed times: 720 s at 20000 rpm, valid for a stop of 1200 s.
 */
class SpindleWarmthTest {
  private final Shop shop = new Shop();

  @Test
  void aWarmUpOfTheTimeAskedCounts() {
    shop.program().m3(20000).dwell(720).end();
    assertThat(shop.warmth().warmUp().valid()).isEqualTo(Answer.YES);
    assertThat(shop.warmth().warmUp().since()).map(place -> place.line()).hasValue(2);
  }

  @Test
  void aWarmUpOneSecondShortDoesNot() {
    shop.program().m3(20000).dwell(719).end();
    assertThat(shop.warmth().warmUp().valid()).isEqualTo(Answer.NO);
  }
}

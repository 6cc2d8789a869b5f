package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.setup.ToolShape;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Rapids and what stands in their way. */
class RapidTest {
  private static List<RapidMeetsStock> meets(Bench bench) {
    return bench.events.stream()
        .filter(RapidMeetsStock.class::isInstance)
        .map(RapidMeetsStock.class::cast)
        .toList();
  }

  private static Bench bench() {
    return Bench.flat().stock();
  }

  @Test
  void exactTouchIsNoEntering() {
    assertThat(meets(bench().g0(0, 0, 1000).g0(0, 0, 0))).isEmpty();
    assertThat(meets(bench().g0(0, 0, 1000).g0(0, 0, -0.1)))
        .singleElement()
        .extracting(RapidMeetsStock::depthPm)
        .isEqualTo(100_000L);
  }

  @Test
  void theWayIsCutSoThatItIsToldOnce() {
    Bench bench = bench().g0(0, 0, 1000).g0(0, 0, -10).g0(0, 0, 1000).g0(0, 0, -10);
    assertThat(meets(bench)).hasSize(1);
  }

  @Test
  void outsideOfTheStockThereIsNothing() {
    assertThat(meets(bench().g0(-7000, 0, 1000).g0(-7000, 0, -500).g0(-6200, 0, -500))).isEmpty();
  }

  @Test
  void edgeOfTheStockMayBeTouchedToACell() {
    // The tool of 200 µm radius stands with its rim on the edge, then a cell of 25 µm further in,
    // then two.
    assertThat(meets(bench().g0(-6200, 0, 1000).g0(-6200, 0, -500))).isEmpty();
    assertThat(meets(bench().g0(-6175, 0, 1000).g0(-6175, 0, -500))).isEmpty();
    assertThat(meets(bench().g0(-6150, 0, 1000).g0(-6150, 0, -500))).hasSize(1);
  }

  @Test
  void wayThroughTheStockMeetsItFirstAtItsEdge() {
    RapidMeetsStock met = meets(bench().g0(-7000, 0, -50).g0(7000, 0, -50)).get(0);
    assertThat(met.depthPm()).isEqualTo(50 * Bench.UM);
    assertThat(met.xPm()).isBetween(-6200 * Bench.UM, -6150 * Bench.UM);
    assertThat(met.yPm()).isZero();
    assertThat(met.zPm()).isEqualTo(-50 * Bench.UM);
  }

  @Test
  void unknownStartIsLookedAtWhereItEnds() {
    assertThat(meets(bench().g0(0, 0, -50))).hasSize(1);
  }

  @Test
  void throughHoleIsNoFloor() {
    // Stock 3 mm thick, cut through to −3.1 mm: a rapid to −3.2 meets nothing.
    Bench bench =
        bench().g0(-7000, 0, 1000).g0(-7000, 0, -3100).g1(0, 0, -3100).g0(-7000, 0, -3100);
    assertThat(meets(bench.g0(-7000, 0, -3200).g0(0, 0, -3200))).isEmpty();
  }

  @Test
  void ballMeetsLessAsideThanInTheMiddle() {
    Bench ball = new Bench().tool(2, ToolShape.BALL, 400, 0, 1.5).change(2).stock();
    // A groove by the ball at −100, then the same ball 10 µm higher and 25 µm aside: it stays
    // above the groove's side, which is less steep than 10 in 25 near its middle.
    ball.g0(-7000, 0, -100).g1(7000, 0, -100);
    assertThat(meets(ball.g0(-7000, 0, -100))).isEmpty();
    assertThat(meets(ball.g0(-7000, 25, -60).g0(7000, 25, -60))).isEmpty();
    assertThat(meets(ball.g0(7000, 25, -99).g0(-7000, 25, -99))).hasSize(1);
  }

  @Test
  void lostSurfaceIsNotGuessedAt() {
    Bench bench = bench().g0(-7000, 0, 1000).g0(-7000, 0, -100);
    bench.modes(bench.modes()).change(9).g0(-7000, 0, -100).g1(0, 0, -100);
    assertThat(meets(bench.change(1).g0(0, 0, 1000).g0(0, 0, -500))).isEmpty();
  }
}

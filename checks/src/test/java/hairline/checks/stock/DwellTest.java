package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.motion.Event;
import hairline.checks.setup.ToolShape;
import hairline.checks.stock.DwelledAt.Touch;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** What a tool touches while it stands. */
class DwellTest {
  private static Optional<Touch> touch(Bench bench) {
    bench.send(new Event.Dwelled(bench.place(), OptionalDouble.of(0.5), bench.modes()));
    return bench.events.stream()
        .filter(DwelledAt.class::isInstance)
        .map(event -> ((DwelledAt) event).touch())
        .reduce((a, b) -> b)
        .orElseThrow();
  }

  private static Bench pocket() {
    return Bench.flat()
        .stock()
        .g0(-7000, -300, -20)
        .g1(7000, -300, -20)
        .g1(7000, 0, -20)
        .g1(-7000, 0, -20)
        .g1(-7000, 300, -20)
        .g1(7000, 300, -20);
  }

  @Test
  void floorIsTouchedAtItsHeightOnly() {
    assertThat(touch(pocket().g0(0, 0, -20))).contains(Touch.FLOOR);
    assertThat(touch(pocket().g0(0, 0, -19.9))).contains(Touch.NOTHING);
    assertThat(touch(pocket().g0(0, 0, 1000))).contains(Touch.NOTHING);
  }

  @Test
  void wallIsTouchedToACell() {
    // The wall stands 200 beyond the last pass; cells are 25 wide.
    assertThat(touch(pocket().g0(0, 300, -10))).contains(Touch.WALL);
    assertThat(touch(pocket().g0(0, 240, -10))).contains(Touch.NOTHING);
  }

  @Test
  void uncutTopIsAFloor() {
    assertThat(touch(Bench.flat().stock().g0(0, 0, 0))).contains(Touch.FLOOR);
    assertThat(touch(Bench.flat().stock().g0(-7000, 0, 0))).contains(Touch.NOTHING);
  }

  @Test
  void ballStandsInItsTrough() {
    Bench ball = new Bench().tool(2, ToolShape.BALL, 400, 0, 1.5).change(2).stock();
    ball.g0(-7000, 0, -20).g1(0, 0, -20);
    assertThat(touch(ball)).contains(Touch.FLOOR);
    assertThat(touch(ball.g1(0, 0, -10))).contains(Touch.NOTHING);
  }

  @Test
  void withoutStockOrAfterAToolChangeItIsNotKnown() {
    assertThat(touch(Bench.flat().g0(0, 0, 100))).isEmpty();
    assertThat(touch(pocket().change(1))).isEmpty();
  }
}

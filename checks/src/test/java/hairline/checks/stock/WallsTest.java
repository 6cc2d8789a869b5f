package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.motion.Event;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Which moves left a wall. Lengths in micrometres; the tool has a diameter of 400. */
class WallsTest {
  private static List<Integer> lines(Bench bench) {
    bench.send(new Event.Ended(bench.place(), Optional.of("M30"), bench.modes()));
    return bench.events.stream()
        .filter(WallCut.class::isInstance)
        .map(event -> event.at().line())
        .toList();
  }

  private static Bench slot() {
    return Bench.flat()
        .stock()
        .feature("all", -6000, 6000, -4000, 4000, 0)
        .g0(-3000, 0, 1000)
        .g0(-3000, 0, 0)
        .g1(-3000, 0, -100)
        .g1(3000, 0, -100);
  }

  private static int line(Bench bench) {
    return bench.place().line();
  }

  @Test
  void slotHasNoSideAndTheLinkBesideItIsTooShort() {
    assertThat(lines(slot().g1(3000, 150, -100))).isEmpty();
  }

  @Test
  void stripThatTheNextPassTakesIsNoWall() {
    Bench bench = slot().g1(3000, 150, -100).g1(-3000, 150, -100).g1(-3000, 300, -100);
    bench.g1(3000, 300, -100);
    assertThat(lines(bench)).containsExactly(line(bench));
  }

  @Test
  void finishingPassLessThanACellFurtherTellsTheWall() {
    // Cells are 25 wide: the field does not show these 4.
    Bench bench = slot().g1(3000, 150, -100).g1(-3000, 150, -100).g1(-3000, 154, -100);
    bench.g1(3000, 154, -100);
    assertThat(lines(bench)).containsExactly(line(bench));
  }

  @Test
  void deeperPassAlongTheSameWallLeavesBothParts() {
    Bench bench = slot().g1(3000, 150, -100).g1(-3000, 150, -100);
    int upper = line(bench);
    bench.g1(-3000, 0, -100).g1(-3000, 0, -200).g1(3000, 0, -200).g1(3000, 150, -200);
    bench.g1(-3000, 150, -200);
    assertThat(lines(bench)).containsExactly(upper, line(bench));
  }

  @Test
  void shortMovesThatGoOnCountAsOne() {
    Bench bench = slot().g1(3000, 150, -100);
    for (int k = 1; k <= 60; k++) {
      bench.g1(3000 - 100 * k, 150, -100);
    }
    assertThat(lines(bench)).hasSizeGreaterThan(50);
  }
}

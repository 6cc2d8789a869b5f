package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Strips that stand between lanes of a flat tool of 400 µm; width and length done in the head, to a
 * cell of 25 µm.
 */
class SliverFinderTest {

  private static Bench lane(Bench bench, double x0, double y0, double x1, double y1, double z) {
    return bench.g0(x0, y0, 1000).g0(x0, y0, 5).g1(x0, y0, z).g1(x1, y1, z).g0(x1, y1, 1000);
  }

  private static List<Sliver> slivers(Bench bench, double widestUm, double shortestUm) {
    SurfaceLeft surface = bench.end().all(PartLeft.class).get(0).surfaces().get(0);
    List<Sliver> found = new ArrayList<>();
    assertThat(
            surface.slivers(
                id -> widestUm * 1e6, id -> shortestUm * 1e6, widestUm * 1e6, found::add))
        .isTrue();
    return found;
  }

  /** Two lanes along X, so far apart that a strip of this width stands between them. */
  private static Bench alongX(double widthUm, double z0, double z1) {
    Bench bench = lane(Bench.flat().stock(), 0, 0, 2000, 0, z0);
    return lane(bench, 0, 400 + widthUm, 2000, 400 + widthUm, z1);
  }

  @Test
  void aStripBetweenTwoLanesIsAsWideAsTheirDistanceLeaves() {
    for (double width : new double[] {50, 75, 100}) {
      List<Sliver> found = slivers(alongX(width, -5, -8), 150, 1000);
      assertThat(found).hasSize(1);
      Sliver sliver = found.get(0);
      assertThat(sliver.widthPm() / 1e6).isCloseTo(width, within(1e-6));
      assertThat(sliver.lengthPm() / 1e6).isBetween(1900.0, 2500.0);
      assertThat(sliver.heightPm()).isZero();
      assertThat(sliver.yPm() / 1e6).isBetween(200.0, 200 + width);
      assertThat(sliver.xPm() / 1e6).isBetween(800.0, 1200.0);
    }
  }

  @Test
  void alongYItIsTheSame() {
    Bench bench = lane(Bench.flat().stock(), 0, 0, 0, 2000, -5);
    List<Sliver> found = slivers(lane(bench, 475, 0, 475, 2000, -5), 150, 1000);
    assertThat(found).hasSize(1);
    assertThat(found.get(0).widthPm() / 1e6).isCloseTo(75, within(1e-6));
    assertThat(found.get(0).xPm() / 1e6).isBetween(200.0, 275.0);
    assertThat(found.get(0).yPm() / 1e6).isBetween(800.0, 1200.0);
  }

  @Test
  void aSlantedStripIsMeasuredAcross() {
    // Lanes 475 µm apart across their direction leave 75 µm.
    for (double degrees : new double[] {10, 30, 40, 44, 45, 46, 50, 60, 80, 100, 135, 150}) {
      double a = StrictMath.toRadians(degrees);
      double x = 2000 * StrictMath.cos(a);
      double y = 2000 * StrictMath.sin(a);
      double dx = -475 * StrictMath.sin(a);
      double dy = 475 * StrictMath.cos(a);
      Bench bench = lane(Bench.flat().cell(5).stock(), 0, 0, x, y, -5);
      List<Sliver> found = slivers(lane(bench, dx, dy, x + dx, y + dy, -5), 150, 1000);
      assertThat(found).as("at %s°", degrees).hasSize(1);
      assertThat(found.get(0).widthPm() / 1e6).isCloseTo(75, within(8.0));
      assertThat(found.get(0).lengthPm() / 1e6).isBetween(1900.0, 2600.0);
    }
  }

  @Test
  void eachOfSeveralDiagonalsIsToldOnce() {
    double d = 475 / Math.sqrt(2);
    for (int slope : new int[] {1, -1}) {
      Bench bench = Bench.flat().cell(5).stock();
      for (int k = 0; k < 4; k++) {
        lane(bench, k * d, -slope * k * d, 1500 + k * d, slope * (1500 - k * d), -5);
      }
      assertThat(slivers(bench, 150, 1000)).hasSize(3);
    }
  }

  @Test
  void wideShortAndNarrowOnesAreNone() {
    assertThat(slivers(alongX(100, -5, -5), 100, 1000)).as("not narrower").isEmpty();
    assertThat(slivers(alongX(100, -5, -5), 101, 1000)).hasSize(1);
    assertThat(slivers(alongX(75, -5, -5), 150, 2600)).as("shorter").isEmpty();
    assertThat(slivers(alongX(25, -5, -5), 150, 1000)).as("one cell").isEmpty();
    assertThat(slivers(alongX(0, -5, -5), 150, 1000)).as("nothing stands").isEmpty();
  }

  @Test
  void aStripOfALevelStandsBetweenLowerOnesOnly() {
    // The whole field at -5, then two lanes at -8 beside each other: a strip at -5 is left.
    Bench bench = Bench.flat().stock();
    for (double y = -1000; y <= 1000; y += 250) {
      lane(bench, -1000, y, 3000, y, -5);
    }
    lane(bench, 0, 0, 2000, 0, -8);
    List<Sliver> found = slivers(lane(bench, 0, 475, 2000, 475, -8), 150, 1000);
    assertThat(found).hasSize(1);
    assertThat(found.get(0).heightPm()).isEqualTo(-5_000_000);
    // A step down only on one side is a terrace, however narrow.
    Bench stairs = Bench.flat().stock();
    lane(stairs, 0, 0, 2000, 0, -5);
    lane(stairs, 0, 75, 2000, 75, -8);
    assertThat(slivers(lane(stairs, 0, 150, 2000, 150, -11), 150, 1000)).isEmpty();
  }

  @Test
  void aWedgeIsNone() {
    Bench bench = lane(Bench.flat().stock(), 0, 0, 2000, 0, -5);
    assertThat(slivers(lane(bench, 0, 425, 2000, 600, -5), 250, 500)).isEmpty();
  }
}

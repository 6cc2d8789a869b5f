package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.motion.Move;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Finding the paths that run beside a path; lengths in units of a square's side, 10. */
class PathIndexTest {

  private static Path path(double x0, double y0, double x1, double y1, double z) {
    Bench bench = Bench.flat().g0(x0, y0, z).g1(x1, y1, z);
    Move move = bench.last().move();
    return Path.of(move);
  }

  private static PathIndex.Station station(double x, double y, double ux, double uy, double z) {
    return new PathIndex.Station(pm(x), pm(y), ux, uy, pm(5), Bench.pm(z), true);
  }

  private static PathIndex with(Path... paths) {
    PathIndex index = new PathIndex(pm(10), 1000);
    for (Path path : paths) {
      index.add(path, pm(5), true);
    }
    return index;
  }

  private static double pm(double um) {
    return (double) Bench.pm(um);
  }

  private static double um(double pm) {
    return pm / Bench.UM;
  }

  private static double width(PathIndex index, PathIndex.Station at, int side) {
    return um(index.width(at, side, pm(0.5), pm(9)));
  }

  @Test
  void findsTheNarrowestWithinTheLimitsAndOnTheSideAsked() {
    PathIndex index =
        with(path(0, 3, 100, 3, -4), path(0, 7, 100, 7, -4), path(0, -4, 100, -4, -4));
    PathIndex.Station at = station(50, 0, 1, 0, -4);
    assertThat(width(index, at, 1)).isEqualTo(3);
    assertThat(width(index, at, -1)).isEqualTo(4);
    assertThat(um(index.width(at, 1, pm(3.5), pm(9)))).isEqualTo(7);
    assertThat(um(index.width(at, 1, pm(3), pm(3)))).isEqualTo(3);
    assertThat(um(index.width(at, 1, pm(7.5), pm(9)))).isNaN();
    // Travelling the other way left and right change places.
    PathIndex.Station back = station(50, 0, -1, 0, -4);
    assertThat(width(index, back, -1)).isEqualTo(3);
    assertThat(width(index, back, 1)).isEqualTo(4);
  }

  @ParameterizedTest
  @CsvSource({"-4, true", "-4.000001, true", "-3.999999, false", "-50, true"})
  void aPathCountsAtThisHeightOrDeeper(double z, boolean found) {
    PathIndex index = with(path(0, 3, 100, 3, z));
    assertThat(Double.isNaN(width(index, station(50, 0, 1, 0, -4), 1))).isEqualTo(!found);
  }

  @ParameterizedTest
  @CsvSource({"0, true", "100, true", "-0.001, false", "100.001, false", "37.7, true"})
  void aPathCountsOnlyBesideItself(double x, boolean found) {
    PathIndex index = with(path(0, 3, 100, 3, -4));
    assertThat(Double.isNaN(width(index, station(x, 0, 1, 0, -4), 1))).isEqualTo(!found);
    assertThat(index.repeats(station(x, 3, 1, 0, -4), 1)).isEqualTo(found);
  }

  @ParameterizedTest
  @CsvSource({"1, true", "1.9, true", "2.1, false", "-1.9, true", "-2.1, false", "90, false"})
  void aPathCountsOnlyWhereItIsParallel(double rise, boolean found) {
    // Two in a hundred.
    PathIndex index = with(path(0, 3 - rise / 2, 100, 3 + rise / 2, -4));
    assertThat(Double.isNaN(width(index, station(50, 0, 1, 0, -4), 1))).isEqualTo(!found);
    assertThat(index.repeats(station(50, 3, 1, 0, -4), 1)).isEqualTo(found);
  }

  @Test
  void anotherRadiusShiftsTheBorder() {
    PathIndex index = new PathIndex(pm(10), 1000);
    index.add(path(0, 6, 100, 6, -4), pm(8), true);
    // The other tool has cleared down to 6 - 8 = -2; this one reaches to -5: 3 wide.
    assertThat(width(index, station(50, 0, 1, 0, -4), 1)).isEqualTo(3);
    assertThat(index.repeats(station(50, 6, 1, 0, -4), 1)).isFalse();
    index.add(path(0, 3, 100, 3, -4), pm(2), true);
    assertThat(um(index.width(station(50, 0, 1, 0, -4), 1, pm(5), pm(9)))).isEqualTo(6);
  }

  @ParameterizedTest
  @CsvSource({"0, 1, true", "3, 3, true", "3, 2.999, false", "-3, 3, true", "-3, 2.999, false"})
  void aRepeatLiesWithinTheOffset(double y, double offset, boolean found) {
    PathIndex index = with(path(0, y, 100, y, -4));
    assertThat(index.repeats(station(50, 0, 1, 0, -4), pm(offset))).isEqualTo(found);
    assertThat(index.repeats(station(50, 0, -1, 0, -4), pm(offset))).isEqualTo(found);
    assertThat(index.repeats(station(50, 0, 1, 0, -4.000001), pm(offset))).isFalse();
    assertThat(index.repeats(station(50, 0, 1, 0, -3.999999), pm(offset))).isFalse();
  }

  @Test
  void contoursAreKeptApartFromLevels() {
    PathIndex index = new PathIndex(pm(10), 1000);
    index.add(path(0, 3, 100, 3, -4), pm(5), false);
    PathIndex.Station level = station(50, 0, 1, 0, -4);
    PathIndex.Station contour =
        new PathIndex.Station(level.x(), level.y(), 1, 0, level.radius(), 0, false);
    assertThat(width(index, level, 1)).isNaN();
    assertThat(width(index, contour, 1)).isEqualTo(3);
    assertThat(index.repeats(level, pm(4))).isFalse();
  }

  private static Path arc(double x, double sweep) {
    Bench bench = Bench.flat().g0(x, 0, -4).arc(0, 0, sweep, -4);
    return Path.of(bench.last().move());
  }

  @Test
  void arcsAreFoundFromInsideOutsideAndOnlyWithinTheirSweep() {
    PathIndex index = with(arc(100, 90));
    double c = StrictMath.sqrt(0.5);
    // On a ring 3 farther in, counter-clockwise: the arc is to the right.
    PathIndex.Station inside = station(97 * c, 97 * c, -c, c, -4);
    assertThat(width(index, inside, -1)).isCloseTo(3, within(1e-5));
    assertThat(width(index, inside, 1)).isNaN();
    PathIndex.Station outside = station(104 * c, 104 * c, -c, c, -4);
    assertThat(width(index, outside, 1)).isCloseTo(4, within(1e-5));
    assertThat(width(index, outside, -1)).isNaN();
    PathIndex.Station beyond = station(-97 * c, 97 * c, -c, -c, -4);
    assertThat(width(index, beyond, -1)).isNaN();
    assertThat(index.repeats(station(100 * c, 100 * c, c, -c, -4), pm(0.001))).isTrue();
    assertThat(index.repeats(station(-100 * c, 100 * c, c, c, -4), pm(0.001))).isFalse();
    // Not where it is crossed.
    assertThat(index.repeats(station(100 * c, 100 * c, c, c, -4), pm(1))).isFalse();
    assertThat(width(with(arc(100, -270)), inside, -1)).isNaN();
    assertThat(width(with(arc(100, 360)), beyond, -1)).isCloseTo(3, within(1e-5));
  }

  @Test
  void ofManyPathsThroughASquareTheLatestAreFound() {
    PathIndex index = with(path(0, 3, 100, 3, -4));
    for (int k = 0; k < PathIndex.PER_SQUARE - 1; k++) {
      index.add(path(0, 9, 100, 9, -4), pm(5), true);
    }
    assertThat(width(index, station(50, 0, 1, 0, -4), 1)).isEqualTo(3);
    index.add(path(0, 9, 100, 9, -4), pm(5), true);
    assertThat(width(index, station(50, 0, 1, 0, -4), 1)).isEqualTo(9);
  }

  @Test
  void whenSquaresRunOutTheLatestPathsStay() {
    PathIndex index = new PathIndex(pm(10), 64);
    for (int k = 0; k < 200; k++) {
      index.add(path(0, 100 * k, 80, 100 * k, -4), pm(5), true);
      for (int back = 0; back < 3 && back <= k; back++) {
        int y = 100 * (k - back);
        assertThat(width(index, station(40, y - 3, 1, 0, -4), 1))
            .as("%d, %d", k, back)
            .isEqualTo(3);
      }
    }
    assertThat(width(index, station(40, -3, 1, 0, -4), 1)).isNaN();
    // A path that alone needs more than there are doesn't break it.
    index.add(path(0, 5, 5000, 5, -4), pm(5), true);
    index.add(path(0, 9005, 50, 9005, -4), pm(5), true);
    assertThat(width(index, station(40, 9002, 1, 0, -4), 1)).isEqualTo(3);
  }

  @Test
  void aPathIsFoundFromEverySquareItCrosses() {
    Random random = new Random(5);
    for (int k = 0; k < 300; k++) {
      double x0 = random.nextDouble() * 400 - 200;
      double y0 = random.nextDouble() * 400 - 200;
      double x1 = random.nextDouble() * 400 - 200;
      double y1 = random.nextDouble() * 400 - 200;
      PathIndex index = with(path(x0, y0, x1, y1, -4));
      double length = StrictMath.hypot(x1 - x0, y1 - y0);
      double ux = (x1 - x0) / length;
      double uy = (y1 - y0) / length;
      for (int m = 1; m < 40; m++) {
        double f = m / 40.0;
        double x = x0 + f * (x1 - x0);
        double y = y0 + f * (y1 - y0);
        // Seen from 4 to its right it lies to the left.
        assertThat(width(index, station(x + 4 * uy, y - 4 * ux, ux, uy, -4), 1))
            .isCloseTo(4, within(1e-5));
        assertThat(index.repeats(station(x, y, -ux, -uy, -4), 2)).isTrue();
      }
    }
  }
}

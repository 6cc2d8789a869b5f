package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.stock.HeightGridProperties.Line;
import hairline.checks.stock.HeightGridProperties.Round;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** Paths seen from above, by plane geometry and against very many points on them; in pm. */
class PathTest {
  private static final double MM = 1e9;
  private static final Offset<Double> CLOSE = within(5.0);

  private static Path line(double x0, double y0, double x1, double y1) {
    return HeightGridProperties.path(new Line(pm(x0), pm(y0), 0, pm(x1), pm(y1), 0));
  }

  private static long pm(double mm) {
    return Math.round(mm * MM);
  }

  private static Path arc(double cx, double cy, double r, double startDegrees, double degrees) {
    return HeightGridProperties.path(
        new Round(
            cx * MM, cy * MM, r * MM, Math.toRadians(startDegrees), Math.toRadians(degrees), 0));
  }

  /** The line from (1, 2) to (4, 6) is 5 long; (1 − 0.8, 2 + 0.6) is 1 beside its start. */
  @Test
  void distancesFromALine() {
    Path path = line(1, 2, 4, 6);
    assertThat(path.planLength()).isCloseTo(5 * MM, CLOSE);
    assertThat(path.planDistance((1 - 0.8) * MM, (2 + 0.6) * MM)).isCloseTo(MM, CLOSE);
    assertThat(path.planDistance((4 + 0.8) * MM, (6 - 0.6) * MM)).isCloseTo(MM, CLOSE);
    assertThat(path.planDistance((2.5 + 1.6) * MM, (4 - 1.2) * MM)).isCloseTo(2 * MM, CLOSE);
    // Beyond its ends it is the distance from them.
    assertThat(path.planDistance((1 - 3) * MM, (2 - 4) * MM)).isCloseTo(5 * MM, CLOSE);
    assertThat(path.planDistance((4 + 0.6) * MM, (6 + 0.8) * MM)).isCloseTo(MM, CLOSE);
    assertThat(path.direction(0.5)[0]).isCloseTo(0.6, within(1e-12));
    assertThat(path.direction(0.5)[1]).isCloseTo(0.8, within(1e-12));
    Path still = line(1, 2, 1, 2);
    assertThat(still.planDistance(4 * MM, 6 * MM)).isCloseTo(5 * MM, CLOSE);
    assertThat(still.direction(0)).containsExactly(0, 0);
    assertThat(still.movesInPlan()).isFalse();
  }

  /** Three quarters of a turn about (3, 4) from 0° on, r 2: what lies at 315° is next to an end. */
  @Test
  void distancesFromAnArc() {
    Path path = arc(3, 4, 2, 0, 270);
    assertThat(path.planLength()).isCloseTo(3 * Math.PI * MM, CLOSE);
    assertThat(path.planDistance(3 * MM, 7 * MM)).isCloseTo(MM, CLOSE);
    assertThat(path.planDistance(2 * MM, 4 * MM)).isCloseTo(MM, CLOSE);
    double half = StrictMath.sqrt(0.5) * 2;
    double toEnd = StrictMath.hypot(2 - half, half);
    assertThat(path.planDistance((3 + half) * MM, (4 - half) * MM)).isCloseTo(toEnd * MM, CLOSE);
    assertThat(path.planDistance(5 * MM, 3 * MM)).isCloseTo(MM, CLOSE);
    assertThat(path.planDistance(4 * MM, 2 * MM)).isCloseTo(MM, CLOSE);
    assertThat(path.direction(0)[1]).isCloseTo(1, within(1e-8));
    assertThat(path.direction(1)[0]).isCloseTo(1, within(1e-8));
    assertThat(arc(3, 4, 2, 0, -270).direction(0)[1]).isCloseTo(-1, within(1e-8));
  }

  /** Distances and bounds of arcs of any sweep as those of 20,000 points on them. */
  @Test
  void arcsAreAsTheirPoints() {
    Random random = new Random(71);
    for (int k = 0; k < 60; k++) {
      double r = 0.2 + random.nextDouble();
      double start = 360 * random.nextDouble() - 180;
      double sweep = (random.nextBoolean() ? 1 : -1) * (1 + 358 * random.nextDouble());
      Path path = arc(0.3, -0.4, r, start, sweep);
      double[] bounds = Spans.bounds(path, r * MM);
      double px = (4 * random.nextDouble() - 2) * MM;
      double py = (4 * random.nextDouble() - 2) * MM;
      double[] found = {1e18, -1e18, 1e18, -1e18};
      double nearest = 1e18;
      for (int n = 0; n <= 20_000; n++) {
        double angle = Math.toRadians(start + sweep * n / 20_000);
        double x = (0.3 + r * StrictMath.cos(angle)) * MM;
        double y = (-0.4 + r * StrictMath.sin(angle)) * MM;
        found[0] = Math.min(found[0], x);
        found[1] = Math.max(found[1], x);
        found[2] = Math.min(found[2], y);
        found[3] = Math.max(found[3], y);
        nearest = Math.min(nearest, StrictMath.hypot(px - x, py - y));
      }
      // Points are 0.4 µm apart at most, so they miss a bound by 100 pm at most.
      for (int n = 0; n < 4; n++) {
        assertThat(bounds[n]).isCloseTo(found[n], within(100.0));
      }
      assertThat(path.planDistance(px, py)).isCloseTo(nearest, within(2e5));
    }
  }

  /** The whole circle has all of its bounds, wherever it begins. */
  @Test
  void aWholeTurnIsAllAround() {
    Path path = arc(1, 1, 0.5, 30, 360);
    double[] bounds = Spans.bounds(path, 0.5 * MM);
    assertThat(bounds[0]).isCloseTo(0.5 * MM, CLOSE);
    assertThat(bounds[1]).isCloseTo(1.5 * MM, CLOSE);
    assertThat(bounds[2]).isCloseTo(0.5 * MM, CLOSE);
    assertThat(bounds[3]).isCloseTo(1.5 * MM, CLOSE);
    assertThat(path.planDistance(MM, 1.75 * MM)).isCloseTo(0.25 * MM, CLOSE);
  }

  /**
   * A chord that turns by α leaves its circle by r (1 − cos α/2): for r 1 mm and 1 µm that is
   * 5.13°, so a quarter takes 18 chords.
   */
  @Test
  void chordsKeepWithinTheirError() {
    assertThat(line(0, 0, 1, 0).chords(1e6)).isEqualTo(1);
    assertThat(arc(0, 0, 1, 0, 90).chords(1e6)).isEqualTo(18);
    assertThat(arc(0, 0, 1, 0, -90).chords(1e6)).isEqualTo(18);
    assertThat(arc(0, 0, 1, 0, 1).chords(1e6)).isEqualTo(1);
    assertThat(arc(0, 0, 1, 0, 360).chords(1e-3)).isEqualTo(Path.MOST_CHORDS);
    // An arc that is smaller than the error is still cut into four.
    assertThat(arc(0, 0, 0.0001, 0, 180).chords(1e6)).isEqualTo(4);
  }
}

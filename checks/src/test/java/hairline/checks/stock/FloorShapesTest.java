package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.setup.ToolShape;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * The height that a tool's end leaves over a point, against its definition: the lowest that the end
 * comes over it while the tip goes its way, searched anew for each point. The end of a tool is flat
 * up to R − RE and a quarter of a circle of RE beyond (ISO 13399: RE the corner radius).
 */
class FloorShapesTest {
  private static final double RADIUS = 2e8;

  private static Cutter cutter(ToolShape shape) {
    double corner =
        switch (shape) {
          case FLAT -> 0;
          case BULL -> 6e7;
          case BALL -> RADIUS;
        };
    return new Cutter(shape, RADIUS, corner, 0);
  }

  private static Surface.Piece piece(
      double x0, double y0, double z0, double x1, double y1, double z1) {
    return new Surface.Piece(x0, y0, z0, x1, y1, z1, 0, false);
  }

  private static double end(Cutter cutter, double distance) {
    double out = Math.min(cutter.cornerPm(), Math.max(0, distance - RADIUS + cutter.cornerPm()));
    return cutter.cornerPm() - StrictMath.sqrt(cutter.cornerPm() * cutter.cornerPm() - out * out);
  }

  /** The lowest over the part of the way on which the tool covers the point; it is convex there. */
  private static double searched(Surface.Piece p, Cutter cutter, double x, double y) {
    double runX = p.x1() - p.x0();
    double runY = p.y1() - p.y0();
    double length = StrictMath.hypot(runX, runY);
    double along = length == 0 ? 0 : ((x - p.x0()) * runX + (y - p.y0()) * runY) / length;
    double across2 = (x - p.x0()) * (x - p.x0()) + (y - p.y0()) * (y - p.y0()) - along * along;
    double half = StrictMath.sqrt(Math.max(0, RADIUS * RADIUS - across2));
    double low = Math.max(0, along - half);
    double high = Math.min(length, along + half);
    if (length == 0) {
      return p.z0() + end(cutter, StrictMath.sqrt(across2));
    }
    double slope = (p.z1() - p.z0()) / length;
    double best = Double.POSITIVE_INFINITY;
    for (int n = 0; n < 100; n++) {
      double a = low + (high - low) / 3;
      double b = high - (high - low) / 3;
      double first = heightAt(p, cutter, slope, a, along, across2);
      double second = heightAt(p, cutter, slope, b, along, across2);
      best = Math.min(best, Math.min(first, second));
      if (first <= second) {
        high = b;
      } else {
        low = a;
      }
    }
    return Math.min(best, heightAt(p, cutter, slope, (low + high) / 2, along, across2));
  }

  private static double heightAt(
      Surface.Piece p, Cutter cutter, double slope, double place, double along, double across2) {
    double distance2 = (place - along) * (place - along) + across2;
    return p.z0() + slope * place + end(cutter, Math.min(RADIUS, StrictMath.sqrt(distance2)));
  }

  private static Surface.Piece random(Random random) {
    double length = 1e6 * StrictMath.exp(7 * random.nextDouble());
    double angle = random.nextInt(4) == 0 ? 0 : 2 * Math.PI * random.nextDouble();
    double x = 1e8 * random.nextDouble();
    double z = -1e8 * random.nextDouble();
    double fall =
        switch (random.nextInt(4)) {
          case 0 -> 0;
          case 1 -> 0.02 * length;
          default -> (random.nextDouble() - 0.5) * 2 * Math.min(length, 1e8);
        };
    return piece(
        x,
        -x,
        Math.rint(z),
        x + length * StrictMath.cos(angle),
        -x + length * StrictMath.sin(angle),
        Math.rint(z + fall));
  }

  /** A point within the radius of the way. */
  private static double[] point(Random random, Surface.Piece p) {
    while (true) {
      double t = random.nextDouble();
      double reach = RADIUS * StrictMath.sqrt(random.nextDouble());
      double angle = 2 * Math.PI * random.nextDouble();
      double x = p.x0() + t * (p.x1() - p.x0()) + reach * StrictMath.cos(angle);
      double y = p.y0() + t * (p.y1() - p.y0()) + reach * StrictMath.sin(angle);
      if (reach < 0.999 * RADIUS) {
        return new double[] {x, y};
      }
    }
  }

  /** Flat and ball to rounding; with a corner radius 12 nm too deep and 1 µm too high at most. */
  @ParameterizedTest
  @EnumSource(ToolShape.class)
  void aStraightWayLeavesTheLowestOfTheEnd(ToolShape shape) {
    Cutter cutter = cutter(shape);
    Random random = new Random(61);
    for (int k = 0; k < 300; k++) {
      Surface.Piece p = random(random);
      HeightGrid.Floor floor = Floors.straight(p, cutter);
      for (int n = 0; n < 12; n++) {
        double[] at = point(random, p);
        double searched = searched(p, cutter, at[0], at[1]);
        double found = floor.at(at[0], at[1]);
        if (shape == ToolShape.BULL && p.z0() != p.z1()) {
          assertThat(found - searched).as("%s", p).isBetween(-12_000.0, 1_000_000.0);
        } else {
          assertThat(found).as("%s", p).isCloseTo(searched, within(200.0));
        }
      }
    }
  }

  /** Down at 45° a ball's lowest is R below its centre, square to the way: R (1 − √2) below it. */
  @Test
  void aBallOnASlopeOf45Degrees() {
    HeightGrid.Floor floor = Floors.straight(piece(0, 0, 0, 1e9, 0, -1e9), cutter(ToolShape.BALL));
    double over = -5e8 + RADIUS * (1 - StrictMath.sqrt(2));
    assertThat((double) floor.at(5e8, 0)).isCloseTo(over, within(2.0));
    // Behind the start the ball has left what it left there.
    assertThat((double) floor.at(-1.9e8, 0))
        .isCloseTo(end(cutter(ToolShape.BALL), 1.9e8), within(1.0));
    // The tip beside a point, and at the ends.
    assertThat(floor.tip(5e8, 1e8, 7)).isEqualTo(-500_000_000);
    assertThat(floor.tip(-1e8, 0, 7)).isZero();
    assertThat(floor.tip(1.1e9, 0, 7)).isEqualTo(-1_000_000_000);
    // A tool with a flat measures from its floor.
    assertThat(Floors.straight(piece(0, 0, 0, 1e9, 0, -1e9), cutter(ToolShape.BULL)).tip(5e8, 0, 7))
        .isEqualTo(7);
    HeightGrid.Floor still = Floors.straight(piece(0, 0, -5, 0, 0, -5), cutter(ToolShape.BALL));
    assertThat(still.tip(1e8, 0, 7)).isEqualTo(-5);
    assertThat(still.at(1e8, 0)).isEqualTo(-5 + Math.round(end(cutter(ToolShape.BALL), 1e8)));
  }

  /** What is spared is never lowered, and most of what is not lowered is spared. */
  @ParameterizedTest
  @EnumSource(ToolShape.class)
  void whatIsSparedIsNotLowered(ToolShape shape) {
    Cutter cutter = cutter(shape);
    Random random = new Random(62);
    int left = 0;
    int spared = 0;
    for (int k = 0; k < 400; k++) {
      Surface.Piece p = random(random);
      HeightGrid.Floor floor = Floors.straight(p, cutter);
      double lowest = Math.min(p.z0(), p.z1());
      for (int n = 0; n < 10; n++) {
        double[] at = point(random, p);
        double half = random.nextBoolean() ? 0 : 2e7 * random.nextDouble();
        long height = Math.round(lowest + (random.nextDouble() - 0.1) * RADIUS);
        boolean lowers = false;
        for (int i = 0; i < 9; i++) {
          double x = at[0] + (i % 3 - 1) * half;
          double y = at[1] + (i / 3 - 1) * half;
          boolean covered = covered(p, x, y);
          lowers |= covered && searched(p, cutter, x, y) < height - 200;
        }
        boolean is = floor.spares(height, at[0], at[1], half);
        if (lowers) {
          assertThat(is).as("%s", p).isFalse();
        } else if (p.z0() == p.z1() && half == 0) {
          left++;
          spared += is ? 1 : 0;
        }
      }
      double far = RADIUS * 1.001 + 10;
      double length = StrictMath.hypot(p.x1() - p.x0(), p.y1() - p.y0());
      double sideX = -(p.y1() - p.y0()) / length * far;
      double sideY = (p.x1() - p.x0()) / length * far;
      assertThat(floor.spares(0, p.x0() + sideX, p.y0() + sideY, 0)).isTrue();
      assertThat(floor.spares(0, p.x1() - sideX, p.y1() - sideY, 0)).isTrue();
      assertThat(floor.spares(0, p.x1() + sideY, p.y1() - sideX, 0)).isTrue();
      assertThat(floor.spares(0, p.x0() - sideY, p.y0() + sideX, 0)).isTrue();
      assertThat(floor.spares((long) lowest, p.x0(), p.y0(), 1e9)).isTrue();
    }
    assertThat(spared).isGreaterThan(left * 9 / 10);
  }

  private static boolean covered(Surface.Piece p, double x, double y) {
    double runX = p.x1() - p.x0();
    double runY = p.y1() - p.y0();
    double t = ((x - p.x0()) * runX + (y - p.y0()) * runY) / (runX * runX + runY * runY);
    double f = Math.max(0, Math.min(1, t));
    return StrictMath.hypot(x - p.x0() - f * runX, y - p.y0() - f * runY) < RADIUS;
  }

  /** Along a level arc it is the end's height at the distance from the arc, or from its ends. */
  @ParameterizedTest
  @EnumSource(ToolShape.class)
  void aLevelArcLeavesTheEndAtItsDistance(ToolShape shape) {
    Cutter cutter = cutter(shape);
    Random random = new Random(63);
    for (int k = 0; k < 100; k++) {
      double r = 3e8 + 7e8 * random.nextDouble();
      double start = 6 * random.nextDouble() - 3;
      double sweep = (random.nextBoolean() ? 1 : -1) * (0.1 + 6 * random.nextDouble());
      Path path =
          HeightGridProperties.path(
              new HeightGridProperties.Round(2e8, -3e8, r, start, sweep, -100_000_000));
      HeightGrid.Floor floor =
          Floors.of(
              path,
              new Surface.Piece(path.x0, path.y0, path.z0, path.x1, path.y1, path.z1, 0, true),
              cutter);
      for (int n = 0; n < 20; n++) {
        double angle = start + sweep * (1.2 * random.nextDouble() - 0.1);
        double off = r + (2 * random.nextDouble() - 1) * RADIUS;
        double x = 2e8 + off * StrictMath.cos(angle);
        double y = -3e8 + off * StrictMath.sin(angle);
        double nearest = Double.POSITIVE_INFINITY;
        for (int m = 0; m <= 2000; m++) {
          double on = start + sweep * m / 2000;
          nearest =
              Math.min(
                  nearest,
                  StrictMath.hypot(
                      x - 2e8 - r * StrictMath.cos(on), y + 3e8 - r * StrictMath.sin(on)));
        }
        // Points are 3 µm apart at most.
        if (nearest < 0.99 * RADIUS) {
          double expected = -1e8 + end(cutter, nearest);
          assertThat((double) floor.at(x, y)).isCloseTo(expected, within(3e5));
          assertThat(floor.spares(Math.round(expected + 1e6), x, y, 0)).isFalse();
          if (expected < -1e6) {
            assertThat(floor.spares(0, x, y, 0)).isFalse();
          }
        }
        assertThat(floor.spares(-100_000_000, x, y, 1e8)).isTrue();
        assertThat(floor.tip(x, y, -7)).isEqualTo(shape == ToolShape.BALL ? -100_000_000 : -7);
      }
      double far = r + RADIUS * 1.01;
      assertThat(
              floor.spares(
                  0, 2e8 + far * StrictMath.cos(start), -3e8 + far * StrictMath.sin(start), 0))
          .isTrue();
    }
  }

  /** A circle of radius R cuts a chord of half √(R² − (R − h)²) at the height h. */
  @Test
  void howFarFromItsAxisAnEndReachesBelowAHeight() {
    double h = 5e7;
    double half = StrictMath.sqrt(RADIUS * RADIUS - (RADIUS - h) * (RADIUS - h));
    assertThat(Floors.reach(cutter(ToolShape.BALL), h)).isBetween(half, half * 1.0001);
    assertThat(Floors.reach(cutter(ToolShape.BALL), 0)).isBetween(0.0, 1e6);
    assertThat(Floors.reach(cutter(ToolShape.BALL), -1e9)).isBetween(0.0, 1e6);
    assertThat(Floors.reach(cutter(ToolShape.BALL), RADIUS)).isEqualTo(RADIUS);
    double bull = 1.4e8 + StrictMath.sqrt(6e7 * 6e7 - 1e7 * 1e7);
    assertThat(Floors.reach(cutter(ToolShape.BULL), h)).isBetween(bull, bull * 1.0001);
    assertThat(Floors.reach(cutter(ToolShape.FLAT), 0)).isEqualTo(RADIUS);
  }

  @Test
  void heightsAreRoundedHalvesUpwards() {
    assertThat(Floors.round(2.5)).isEqualTo(3);
    assertThat(Floors.round(-2.5)).isEqualTo(-2);
    assertThat(Floors.round(2.4)).isEqualTo(2);
  }

  /**
   * Where a ball goes on from its own cut at 45°, it lowers nothing more than R sin 45° behind the
   * start; where it does not, anything it covers.
   */
  @Test
  void aBallThatGoesOnLowersNothingBehind() {
    Path path = Path.at(0, 0, 0);
    Surface.Piece down = piece(0, 0, 0, 1e9, 0, -1e9);
    HeightGrid.Floor goesOn = Floors.of(path, down, cutter(ToolShape.BALL), 5e8);
    double behind = -RADIUS * StrictMath.sqrt(0.5);
    assertThat(goesOn.begins()).isCloseTo(behind, within(RADIUS * 2e-3));
    assertThat(goesOn.spares(100_000_000, -1.6e8, 0, 0)).isTrue();
    assertThat(goesOn.spares(100_000_000, -1.2e8, 0, 0)).isFalse();
    HeightGrid.Floor begins = Floors.of(path, down, cutter(ToolShape.BALL), 2e9);
    assertThat(begins.begins()).isEqualTo(Double.NEGATIVE_INFINITY);
    assertThat(begins.spares(100_000_000, -1.6e8, 0, 0)).isFalse();
    assertThat(Floors.of(path, down, cutter(ToolShape.BULL), 5e8).begins())
        .isEqualTo(Double.NEGATIVE_INFINITY);
  }
}

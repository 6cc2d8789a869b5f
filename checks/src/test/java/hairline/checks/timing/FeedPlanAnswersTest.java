package hairline.checks.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What a plan tells of each move, by worked values of exact mechanics, and by cutting moves in two
 * where it says that something happens. Lengths in mm, feeds given in mm/s.
 */
class FeedPlanAnswersTest {
  private static final double FREE = Double.POSITIVE_INFINITY;

  private record Block(double lengthMm, double cap, double corner) {}

  private static List<PlannedMove> plan(
      List<Block> blocks, double acceleration, double jerk, int lookAhead) {
    List<PlannedMove> planned = new ArrayList<>();
    FeedPlan plan = new FeedPlan(lookAhead);
    assertThat(plan.isEmpty()).isTrue();
    for (Block b : blocks) {
      plan.add(b.lengthMm, b.cap, acceleration, jerk, b.corner, due -> planned.add(due.planned()));
      assertThat(plan.isEmpty()).isFalse();
      assertThat(planned.size()).isLessThan(blocks.size());
    }
    plan.rest(due -> planned.add(due.planned()));
    assertThat(plan.isEmpty()).isTrue();
    assertThat(planned).hasSameSizeAs(blocks);
    return planned;
  }

  private static double seconds(List<PlannedMove> planned) {
    return planned.stream().mapToDouble(PlannedMove::seconds).sum();
  }

  /**
   * 3 mm from rest to rest at 20 mm/s, 1000 mm/s² and 100 000 mm/s³: jerk acts 10 ms, steady
   * acceleration 10 ms more, so a ramp takes 30 ms and 0.3 mm. The borders are where acceleration
   * is steady (J t³/6 = 1/60 mm, 5 mm/s), where half of the speed is reached 5 ms later (1/60 +
   * 0.025 + 0.0125 mm), amid the way, and as far before the end.
   */
  @ParameterizedTest
  @ValueSource(ints = {3, 5, 1000})
  void aLineInSixPieces(int lookAhead) {
    double first = 1.0 / 60;
    double amid = first + 0.0375;
    double[] borders = {0, first, amid, 1.5, 3 - amid, 3 - first, 3};
    double[] seconds = {0.010, 0.005, 0.075, 0.075, 0.005, 0.010};
    double[] feeds = {0, 5, 10, 20, 10, 5, 0};
    List<Block> blocks = new ArrayList<>();
    for (int k = 0; k < 6; k++) {
      blocks.add(new Block(borders[k + 1] - borders[k], 20, FREE));
    }
    List<PlannedMove> planned = plan(blocks, 1000, 100_000, lookAhead);
    Offset<Double> close = within(1e-4);
    for (int k = 0; k < 6; k++) {
      PlannedMove move = planned.get(k);
      double length = borders[k + 1] - borders[k];
      assertThat(move.seconds()).isCloseTo(seconds[k], within(1e-8));
      assertThat(move.entryMmPerMin()).isCloseTo(feeds[k] * 60, close);
      assertThat(move.exitMmPerMin()).isCloseTo(feeds[k + 1] * 60, close);
      assertThat(move.lowestMmPerMin()).isCloseTo(Math.min(feeds[k], feeds[k + 1]) * 60, close);
      assertThat(move.peakMmPerMin()).isCloseTo(Math.max(feeds[k], feeds[k + 1]) * 60, close);
      assertThat(move.meanMmPerMin()).isCloseTo(length / seconds[k] * 60, close);
      assertThat(move.lowestShare()).isEqualTo(k < 3 ? 0 : 1);
      double from = k < 2 ? 1 : k == 2 ? (0.3 - amid) / length : 0;
      double to = k < 3 ? 1 : k == 3 ? (2.7 - 1.5) / length : 0;
      assertThat(move.peakFromShare()).isCloseTo(from, within(1e-9));
      assertThat(move.peakToShare()).isCloseTo(to, within(1e-9));
    }
  }

  /** 1 mm at 10 mm/s and 1000 mm/s² from rest to rest: 10 ms and 0.05 mm up and down (exact). */
  @Test
  void oneLineAlone() {
    PlannedMove move = plan(List.of(new Block(1, 10, 0)), 1000, FREE, 0).get(0);
    assertThat(move.seconds()).isCloseTo(0.11, within(1e-12));
    assertThat(move.peakMmPerMin()).isEqualTo(600);
    assertThat(move.peakFromShare()).isCloseTo(0.05, within(1e-12));
    assertThat(move.peakToShare()).isCloseTo(0.95, within(1e-12));
    assertThat(move.lowestMmPerMin()).isZero();
    assertThat(move.meanMmPerMin()).isCloseTo(60 / 0.11, within(1e-9));
  }

  /**
   * A slower line between two faster ones, and a corner of 4 mm/s behind it. v² changes by 2 a s:
   * (100 − 25)/2000 mm up to 10 from 5 mm/s; from 5 to 4 it is 0.0045 mm.
   */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 1000})
  void slowerLinesAndCornersAreBrakedForInTime(int lookAhead) {
    List<PlannedMove> planned =
        plan(
            List.of(new Block(1, 10, 0), new Block(1, 5, FREE), new Block(1, 10, 4)),
            1000,
            FREE,
            lookAhead);
    assertThat(planned.get(0).exitMmPerMin()).isCloseTo(300, within(1e-9));
    assertThat(planned.get(0).peakFromShare()).isCloseTo(0.05, within(1e-9));
    assertThat(planned.get(0).peakToShare()).isCloseTo(1 - 0.0375, within(1e-9));
    assertThat(planned.get(0).seconds())
        .isCloseTo(0.010 + (1 - 0.05 - 0.0375) / 10 + 0.005, within(1e-9));
    assertThat(planned.get(1).peakMmPerMin()).isEqualTo(300);
    assertThat(planned.get(1).peakFromShare()).isZero();
    assertThat(planned.get(1).peakToShare()).isCloseTo(1 - 0.0045, within(1e-9));
    assertThat(planned.get(1).exitMmPerMin()).isCloseTo(240, within(1e-9));
    assertThat(planned.get(1).seconds()).isCloseTo((1 - 0.0045) / 5 + 0.001, within(1e-9));
    assertThat(planned.get(2).peakFromShare()).isCloseTo(0.042, within(1e-9));
    assertThat(planned.get(2).seconds())
        .isCloseTo(0.006 + (1 - 0.042 - 0.05) / 10 + 0.010, within(1e-9));
  }

  /**
   * v² = 2 a s of what is seen (exact): blind, it stops behind each block; with one, two lengths.
   */
  @Test
  void withoutLookAheadEachBlockEndsAtRest() {
    List<Block> blocks = new ArrayList<>();
    for (int k = 0; k < 50; k++) {
      blocks.add(new Block(0.01, 100, FREE));
    }
    List<PlannedMove> blind = plan(blocks, 1000, FREE, 0);
    for (PlannedMove move : blind) {
      assertThat(move.exitMmPerMin()).isZero();
      assertThat(move.peakMmPerMin()).isCloseTo(StrictMath.sqrt(10) * 60, within(1e-9));
    }
    for (int ahead : new int[] {1, 2, 5, 10}) {
      List<PlannedMove> planned = plan(blocks, 1000, FREE, ahead);
      double most = StrictMath.sqrt(2 * 1000 * 0.01 * ahead) * 60;
      double highest = planned.stream().mapToDouble(PlannedMove::exitMmPerMin).max().orElse(0);
      assertThat(highest).isBetween(most * 0.85, most * (1 + 1e-9));
    }
  }

  // Random programs, the same each time.

  private static List<Block> random(Random random, double shortestMm, double longestMm, int count) {
    List<Block> blocks = new ArrayList<>();
    for (int k = 0; k < count; k++) {
      double length = shortestMm + random.nextDouble() * (longestMm - shortestMm);
      double corner =
          switch (random.nextInt(8)) {
            case 0 -> 0;
            case 1, 2, 3 -> FREE;
            default -> random.nextDouble() * 5;
          };
      blocks.add(new Block(length, random.nextInt(3) == 0 ? 2 : 5, corner));
    }
    return blocks;
  }

  private static List<Block> cut(List<Block> blocks, int block, double share) {
    List<Block> pieces = new ArrayList<>(blocks);
    Block b = blocks.get(block);
    pieces.set(block, new Block(b.lengthMm * share, b.cap, b.corner));
    pieces.add(block + 1, new Block(b.lengthMm * (1 - share), b.cap, FREE));
    return pieces;
  }

  /**
   * Without a jerk limit the fastest plan is known in closed form: the speed at a border is the
   * highest from which all that follows can be braked for, v² ≤ u² + 2 a s, and that can be reached
   * from before; between borders it goes up to √(a s + (v² + u²)/2) or to the feed.
   */
  @Test
  void withoutJerkEachMoveIsTheFastest() {
    Random random = new Random(53);
    for (int k = 0; k < 150; k++) {
      List<Block> blocks = random(random, 0.0005, k % 3 == 0 ? 0.003 : 0.05, 40);
      double[] accelerations = new double[blocks.size()];
      for (int j = 0; j < accelerations.length; j++) {
        accelerations[j] = k % 2 == 0 || random.nextBoolean() ? 2000 : 700;
      }
      List<PlannedMove> planned = plan(blocks, accelerations, 1000);
      double[] speeds = fastest(blocks, accelerations);
      // Braking from 5 mm/s takes 18 µm at 700 mm/s²; so many blocks are seen.
      List<PlannedMove> near = plan(blocks, accelerations, 37);
      for (int j = 0; j < blocks.size(); j++) {
        double a = accelerations[j];
        double v = speeds[j];
        double u = speeds[j + 1];
        double length = blocks.get(j).lengthMm;
        double peak =
            Math.min(blocks.get(j).cap, StrictMath.sqrt(a * length + (v * v + u * u) / 2));
        double ramps = (2 * peak * peak - v * v - u * u) / (2 * a);
        double seconds = (2 * peak - v - u) / a + (length - ramps) / peak;
        PlannedMove move = planned.get(j);
        assertThat(move.entryMmPerMin()).isCloseTo(v * 60, within(1e-6));
        assertThat(move.exitMmPerMin()).isCloseTo(u * 60, within(1e-6));
        assertThat(move.peakMmPerMin()).isCloseTo(peak * 60, within(1e-6));
        assertThat(move.seconds()).isCloseTo(seconds, within(1e-9));
        assertThat(near.get(j).seconds()).isCloseTo(seconds, within(1e-9));
      }
    }
  }

  private static List<PlannedMove> plan(List<Block> blocks, double[] accelerations, int lookAhead) {
    List<PlannedMove> planned = new ArrayList<>();
    FeedPlan plan = new FeedPlan(lookAhead);
    for (int j = 0; j < accelerations.length; j++) {
      Block b = blocks.get(j);
      plan.add(
          b.lengthMm, b.cap, accelerations[j], FREE, b.corner, due -> planned.add(due.planned()));
    }
    plan.rest(due -> planned.add(due.planned()));
    return planned;
  }

  private static double[] fastest(List<Block> blocks, double[] accelerations) {
    int n = blocks.size();
    double[] speeds = new double[n + 1];
    for (int j = n - 1; j > 0; j--) {
      Block b = blocks.get(j);
      double limit = Math.min(b.corner, Math.min(b.cap, blocks.get(j - 1).cap));
      double room = 2 * accelerations[j] * b.lengthMm;
      speeds[j] = Math.min(limit, StrictMath.sqrt(speeds[j + 1] * speeds[j + 1] + room));
    }
    for (int j = 1; j < n; j++) {
      double room = 2 * accelerations[j - 1] * blocks.get(j - 1).lengthMm;
      speeds[j] = Math.min(speeds[j], StrictMath.sqrt(speeds[j - 1] * speeds[j - 1] + room));
    }
    return speeds;
  }

  /** As much as a control sees it can go at: v² = 2 a s of what lies ahead of it (exact). */
  @ParameterizedTest
  @ValueSource(ints = {4, 8, 20, 60})
  void whatIsSeenIsUsed(int lookAhead) {
    List<Block> blocks = new ArrayList<>();
    for (int k = 0; k < 400; k++) {
      blocks.add(new Block(0.001, 100, FREE));
    }
    List<PlannedMove> planned = plan(blocks, 2000, FREE, lookAhead);
    double most = StrictMath.sqrt(2 * 2000 * 0.001 * (lookAhead + 1)) * 60;
    double mean = 0;
    for (PlannedMove move : planned.subList(100, 300)) {
      assertThat(move.peakMmPerMin()).isLessThanOrEqualTo(most * (1 + 1e-9));
      mean += move.meanMmPerMin() / 200;
    }
    assertThat(mean).isGreaterThan(0.8 * most);
  }

  /** A cut where nothing changes changes nothing, so it shows the feed at any place of a move. */
  @Test
  void thePeakAndTheDipAreWhereThePlanTellsThem() {
    Random random = new Random(41);
    int dips = 0;
    int peaks = 0;
    for (int k = 0; k < 60; k++) {
      List<Block> blocks = random(random, 0.005, 0.1, 6);
      List<PlannedMove> planned = plan(blocks, 2000, 50_000, 1000);
      for (int i = 0; i < blocks.size(); i++) {
        PlannedMove move = planned.get(i);
        double ends = Math.min(move.entryMmPerMin(), move.exitMmPerMin());
        if (move.lowestMmPerMin() < ends * 0.999) {
          dips++;
          PlannedMove before = plan(cut(blocks, i, move.lowestShare()), 2000, 50_000, 1000).get(i);
          assertThat(before.exitMmPerMin())
              .isCloseTo(move.lowestMmPerMin(), within(0.002 * move.lowestMmPerMin()));
        }
        // Nowhere on the way is it slower or faster than that.
        for (double share = 0.08; share < 1; share += 0.12) {
          double there = plan(cut(blocks, i, share), 2000, 50_000, 1000).get(i).exitMmPerMin();
          assertThat(there).isBetween(0.998 * move.lowestMmPerMin(), 1.002 * move.peakMmPerMin());
        }
        for (double share : new double[] {move.peakFromShare(), move.peakToShare()}) {
          if (share > 0.001 && share < 0.999) {
            peaks++;
            PlannedMove before = plan(cut(blocks, i, share), 2000, 50_000, 1000).get(i);
            assertThat(before.exitMmPerMin())
                .isCloseTo(move.peakMmPerMin(), within(0.002 * move.peakMmPerMin()));
          }
        }
      }
    }
    assertThat(dips).isGreaterThan(10);
    assertThat(peaks).isGreaterThan(100);
  }

  /**
   * Braking from 5 mm/s takes 6.25 µm at 2000 mm/s² and 50 µm at 50 000 mm/s³ (exact): whoever sees
   * a few times that loses nothing.
   */
  @Test
  void seeingFartherThanBrakingTakesGainsNothing() {
    Random random = new Random(43);
    for (int k = 0; k < 40; k++) {
      List<Block> blocks = random(random, 0.02, 0.06, 60);
      for (double jerk : new double[] {FREE, 50_000}) {
        double all = seconds(plan(blocks, 2000, jerk, 1000));
        assertThat(seconds(plan(blocks, 2000, jerk, 12))).isLessThan(all * 1.0005);
      }
    }
  }

  /** What is planned after a rest is what it would be alone. */
  @Test
  void aRestEndsAProgram() {
    List<Block> blocks = random(new Random(47), 0.005, 0.1, 30);
    List<PlannedMove> alone = plan(blocks, 2000, 50_000, 8);
    List<PlannedMove> planned = new ArrayList<>();
    FeedPlan plan = new FeedPlan(8);
    for (int k = 0; k < 3; k++) {
      planned.clear();
      for (Block b : blocks) {
        plan.add(b.lengthMm, b.cap, 2000, 50_000, b.corner, due -> planned.add(due.planned()));
      }
      plan.rest(due -> planned.add(due.planned()));
      assertThat(planned).isEqualTo(alone);
    }
    plan.rest(due -> planned.add(due.planned()));
    assertThat(planned).isEqualTo(alone);
  }
}

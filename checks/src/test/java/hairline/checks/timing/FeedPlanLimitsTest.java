package hairline.checks.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * That a plan keeps all limits however few blocks are seen ahead, on random programs that are the
 * same each time: each feed, each corner, acceleration, and that a move takes the time in which its
 * length is covered at the feeds it is said to have. The last is how a jerk limit that is exceeded
 * shows: two feeds that no motion within the limits joins on that length.
 */
class FeedPlanLimitsTest {
  private static final double FREE = Double.POSITIVE_INFINITY;

  private record Block(
      double lengthMm, double cap, double corner, double acceleration, double jerk) {}

  private static List<PlannedMove> plan(List<Block> blocks, int lookAhead) {
    List<PlannedMove> planned = new ArrayList<>();
    FeedPlan plan = new FeedPlan(lookAhead);
    for (Block b : blocks) {
      plan.add(
          b.lengthMm, b.cap, b.acceleration, b.jerk, b.corner, due -> planned.add(due.planned()));
    }
    plan.rest(due -> planned.add(due.planned()));
    assertThat(planned).hasSameSizeAs(blocks);
    return planned;
  }

  private static void keepsAllLimits(List<Block> blocks, int lookAhead) {
    List<PlannedMove> planned = plan(blocks, lookAhead);
    double before = 0;
    for (int k = 0; k < blocks.size(); k++) {
      PlannedMove move = planned.get(k);
      Block b = blocks.get(k);
      assertThat(move.entryMmPerMin()).isCloseTo(before, within(1e-6 * before + 1e-9));
      assertThat(move.peakMmPerMin()).isLessThanOrEqualTo(b.cap * 60 * (1 + 1e-8));
      if (k > 0) {
        assertThat(move.entryMmPerMin()).isLessThanOrEqualTo(b.corner * 60 * (1 + 1e-8));
      }
      double v0 = move.entryMmPerMin() / 60;
      double v1 = move.exitMmPerMin() / 60;
      assertThat(Math.abs(v1 * v1 - v0 * v0))
          .isLessThanOrEqualTo(2 * b.acceleration * b.lengthMm * (1 + 1e-6) + 1e-9);
      assertThat(move.meanMmPerMin())
          .isCloseTo(b.lengthMm / move.seconds() * 60, within(1e-9 * move.meanMmPerMin()))
          .isGreaterThanOrEqualTo(move.lowestMmPerMin() * (1 - 1e-6))
          .isLessThanOrEqualTo(move.peakMmPerMin() * (1 + 1e-6));
      before = move.exitMmPerMin();
    }
    assertThat(before).isZero();
  }

  /** Lengths, feeds and corners at random, in a quarter of the programs limits as well. */
  private static List<Block> random(Random random, double shortestMm, double longestMm) {
    double[][] limits = {{2000, 50_000}, {200, 50_000}, {2000, 1e6}, {8000, 4e5}};
    double[] limit = limits[random.nextInt(limits.length)];
    boolean mixed = random.nextInt(4) == 0;
    boolean partlyWithoutJerk = mixed && random.nextInt(3) == 0;
    List<Block> blocks = new ArrayList<>();
    int n = 2 + random.nextInt(random.nextInt(4) == 0 ? 60 : 20);
    for (int k = 0; k < n; k++) {
      double length = shortestMm + random.nextDouble() * (longestMm - shortestMm);
      double cap = random.nextInt(3) == 0 ? 2 : 5;
      double corner =
          switch (random.nextInt(12)) {
            case 0 -> 0;
            case 1, 2, 3, 4 -> FREE;
            default -> random.nextDouble() * 5;
          };
      boolean weaker = mixed && random.nextBoolean();
      double jerk = partlyWithoutJerk && random.nextInt(3) == 0 ? FREE : limit[1];
      blocks.add(
          new Block(length, cap, corner, limit[0] * (weaker ? 0.7 : 1), jerk * (weaker ? 0.7 : 1)));
    }
    return blocks;
  }

  @ParameterizedTest
  @CsvSource({"0.0005, 0.01", "0.002, 0.03", "0.01, 0.05", "0.02, 0.1", "0.002, 0.3", "0.05, 1"})
  void limitsAreKeptHoweverFewBlocksAreSeen(double shortestMm, double longestMm) {
    Random random = new Random(17);
    for (int k = 0; k < 400; k++) {
      List<Block> blocks = random(random, shortestMm, longestMm);
      for (int lookAhead : new int[] {1, 2, 3, 5, 8, 12, 20, 1000}) {
        keepsAllLimits(blocks, lookAhead);
      }
    }
  }

  /** Blocks of unlike axes, of which some know no jerk limit: the kept knots stay. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 1000})
  void whatIsPlannedAnewBeginsBehindWhatIsKept(int lookAhead) {
    List<Block> blocks =
        List.of(
            new Block(0.004586143362326742, 2, 0, 5600, 280_000),
            new Block(0.0032003322801891503, 2, 1.8388654023795847, 8000, 400_000),
            new Block(0.004828593498007535, 5, 0.7325475227061606, 8000, 400_000),
            new Block(0.002448874601456621, 10, 3.9298847821662166, 5600, 280_000),
            new Block(0.0020605615032286747, 10, 4.375706999369452, 5600, 280_000),
            new Block(0.004691439429805299, 5, FREE, 8000, 400_000),
            new Block(8.539357057285702E-4, 5, 2.1225553294967927, 8000, 400_000),
            new Block(0.0013573385490629137, 5, 2.6124409193729443, 5600, FREE),
            new Block(0.004520780448305107, 2, 3.3235780941961006, 5600, 280_000),
            new Block(0.003387956291123744, 2, 0, 8000, 400_000),
            new Block(0.0011523078235542634, 2, FREE, 8000, 400_000),
            new Block(0.003241864983554043, 5.3857261774813106, 0.6203193244513289, 8000, 400_000),
            new Block(7.356235291030607E-4, 2, 1.4060158120531714, 5600, FREE),
            new Block(8.185454574675679E-4, 5, 4.618839549700025, 8000, 400_000),
            new Block(0.0024732424908869262, 5, 3.777047394335921, 8000, 400_000),
            new Block(0.002629386516379723, 2, 0.2544478093488939, 5600, FREE));
    keepsAllLimits(blocks, lookAhead);
  }

  private static double seconds(List<Block> blocks, int lookAhead) {
    return plan(blocks, lookAhead).stream().mapToDouble(PlannedMove::seconds).sum();
  }

  /** Where nothing changes at a border, it is no border to the plan. */
  @ParameterizedTest
  @CsvSource({"0.0005, 0.01", "0.002, 0.03", "0.01, 0.05", "0.02, 0.1", "0.05, 1"})
  void linesInTwoPiecesTakeNoLonger(double shortestMm, double longestMm) {
    Random random = new Random(29);
    int slower = 0;
    for (int k = 0; k < 200; k++) {
      List<Block> blocks = random(random, shortestMm, longestMm);
      List<Block> pieces = new ArrayList<>();
      for (Block b : blocks) {
        pieces.add(new Block(b.lengthMm / 3, b.cap, b.corner, b.acceleration, b.jerk));
        pieces.add(new Block(b.lengthMm * 2 / 3, b.cap, FREE, b.acceleration, b.jerk));
      }
      double whole = seconds(blocks, 1000);
      double split = seconds(pieces, 1000);
      assertThat(split).isLessThanOrEqualTo(whole * 1.01);
      slower += split > whole * (1 + 1e-6) ? 1 : 0;
    }
    assertThat(slower).isLessThanOrEqualTo(4);
  }

  /** The axes of the first block are weak; the plan may not go on as weakly behind it. */
  @Test
  void oneWeakBlockDoesNotSlowDownThoseBehind() {
    Block weak = new Block(0.0132, 5, FREE, 140, 35_000);
    List<Block> blocks =
        List.of(
            weak,
            new Block(0.0316, 10, FREE, 200, 50_000),
            new Block(0.0437, 5, FREE, 200, 50_000));
    assertThat(seconds(blocks, 1000)).isLessThanOrEqualTo(seconds(blocks, 1) * (1 + 1e-6));
    List<Block> allWeak =
        blocks.stream().map(b -> new Block(b.lengthMm, b.cap, FREE, 140, 35_000)).toList();
    List<Block> allStrong =
        blocks.stream().map(b -> new Block(b.lengthMm, b.cap, FREE, 200, 50_000)).toList();
    assertThat(seconds(blocks, 1000))
        .isLessThan(0.95 * seconds(allWeak, 1000))
        .isGreaterThan(seconds(allStrong, 1000));
  }

  /**
   * By jerk alone (v + u) √((v − u)/J) of length is braked on from v to u (exact), most for u =
   * v/3. So the plan to rest behind 1 µm goes too fast to brake to 60 mm/min there, once the next
   * block is seen.
   */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 1000})
  void whatCouldStopMayBeTooFastToSlowDown(int lookAhead) {
    List<Block> blocks =
        List.of(
            new Block(0.028, 5, FREE, 2000, 50_000),
            new Block(0.017, 5, FREE, 2000, 50_000),
            new Block(0.001, 5, FREE, 2000, 50_000),
            new Block(0.022, 5, 1, 2000, 50_000));
    keepsAllLimits(blocks, lookAhead);
  }
}

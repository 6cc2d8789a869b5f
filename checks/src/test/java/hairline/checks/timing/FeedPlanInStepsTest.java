package hairline.checks.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Plans under a jerk limit against brute force, on random programs that are the same each time:
 * what a search over touched borders and accelerations finds, and what a search through all motions
 * in steps of time finds. Both give motions that keep the limits, so a plan may be faster than
 * either; that it keeps the limits itself, {@link FeedPlannerTest} tells.
 *
 * <p>Braking from 5 mm/s takes 50 µm at 50 000 mm/s³.
 */
class FeedPlanInStepsTest {
  private static final double ACCELERATION = 2000;
  private static final double JERK = 50_000;

  /** A program: lengths in mm, speeds in mm/s. */
  private static final class Blocks {
    private final double[] lengths;
    private final double[] caps;
    private final double[] corners;

    Blocks(int count) {
      lengths = new double[count];
      caps = new double[count];
      corners = new double[count];
    }

    static Blocks random(Random random, double shortestMm, double longestMm, int most) {
      int n = 2 + random.nextInt(most - 1);
      Blocks blocks = new Blocks(n);
      for (int k = 0; k < n; k++) {
        blocks.lengths[k] = shortestMm + random.nextDouble() * (longestMm - shortestMm);
        blocks.caps[k] = random.nextInt(3) == 0 ? 2 : 5;
        blocks.corners[k] =
            switch (random.nextInt(12)) {
              case 0 -> 0;
              case 1, 2, 3, 4 -> Double.POSITIVE_INFINITY;
              default -> random.nextDouble() * 5;
            };
      }
      return blocks;
    }

    double planned(double acceleration, double jerk) {
      double[] seconds = {0};
      FeedPlan plan = new FeedPlan(1000);
      FeedPlan.Taker taker = move -> seconds[0] += move.seconds();
      for (int k = 0; k < lengths.length; k++) {
        plan.add(lengths[k], caps[k], acceleration, jerk, corners[k], taker);
      }
      plan.rest(taker);
      return seconds[0];
    }
  }

  /** L 10 µm from rest to rest by jerk alone: 18.566 ms (exact). */
  @Test
  void theSearchesKnowRestToRest() {
    double unit = SteppedSearch.unitMm(JERK, 0.0005);
    double length = Math.round(0.01 / unit) * unit;
    double[] lengths = {length};
    double[] caps = {5};
    double[] corners = {0};
    double stepped = new SteppedSearch(lengths, caps, corners, 2000, JERK, 0.0005).seconds();
    assertThat(stepped).isCloseTo(18.566e-3, within(2 * 0.0005));
    lengths[0] = 0.01;
    double touching = new TouchSearch(lengths, caps, corners, 2000, JERK).seconds(4, 600, 2);
    assertThat(touching).isCloseTo(18.566e-3, within(5e-7));
  }

  /** The grids are fine enough: half as many accelerations hardly lose. */
  @Test
  void theSearchHardlyDependsOnItsGrid() {
    Random random = new Random(7);
    for (int k = 0; k < 6; k++) {
      Blocks blocks = Blocks.random(random, 0.005, 0.06, 8);
      TouchSearch search =
          new TouchSearch(blocks.lengths, blocks.caps, blocks.corners, ACCELERATION, JERK);
      double fine = search.seconds(12, 600, 8);
      double coarse = search.seconds(6, 600, 7);
      assertThat(coarse).isCloseTo(fine, within(0.005 * fine));
    }
  }

  /** Programs of one kind, and the shortest times that the search finds for them. */
  private record Searched(
      double acceleration, double jerk, List<Blocks> programs, List<Double> best) {
    static Searched of(double shortestMm, double longestMm, double acceleration, double jerk) {
      Random random = new Random(11);
      List<Blocks> programs = new ArrayList<>();
      List<Double> best = new ArrayList<>();
      double highest = Math.min(acceleration, Math.sqrt(jerk * 7));
      for (int k = 0; k < 12; k++) {
        Blocks blocks = Blocks.random(random, shortestMm, longestMm, 9);
        programs.add(blocks);
        best.add(
            new TouchSearch(blocks.lengths, blocks.caps, blocks.corners, acceleration, jerk)
                .seconds(8, highest, 6));
      }
      return new Searched(acceleration, jerk, programs, best);
    }
  }

  /** From far shorter blocks than braking takes to those it fits into. */
  private static final List<Searched> SEARCHED =
      List.of(
          Searched.of(0.0005, 0.01, 2000, 50_000),
          Searched.of(0.002, 0.03, 2000, 50_000),
          Searched.of(0.01, 0.05, 2000, 50_000),
          Searched.of(0.02, 0.1, 2000, 50_000),
          Searched.of(0.002, 0.03, 200, 50_000),
          Searched.of(0.002, 0.03, 2000, 1_000_000),
          Searched.of(0.0005, 0.005, 8000, 400_000));

  /** And a tenth of that on the mean, for programs of each kind. */
  @Test
  void aPlanTakesOnePerCentMoreThanTheFastestAtMost() {
    for (Searched searched : SEARCHED) {
      double sum = 0;
      for (int k = 0; k < searched.best.size(); k++) {
        double planned = searched.programs.get(k).planned(searched.acceleration, searched.jerk);
        assertThat(planned).isLessThan(1.01 * searched.best.get(k));
        sum += planned / searched.best.get(k);
      }
      assertThat(sum / searched.best.size()).isLessThan(1.001);
    }
  }

  /** A search that knows nothing of touched borders, of steps of 1.5 ms, finds nothing faster. */
  @ParameterizedTest
  @CsvSource({"0.002, 0.03, 12", "0.03, 0.12, 5"})
  void noMotionInStepsOfTimeIsFaster(double shortestMm, double longestMm, int most) {
    Random random = new Random(3);
    double stepS = 0.0015;
    double unit = SteppedSearch.unitMm(JERK, stepS);
    for (int k = 0; k < 15; k++) {
      Blocks blocks = Blocks.random(random, shortestMm, longestMm, most);
      for (int i = 0; i < blocks.lengths.length; i++) {
        blocks.lengths[i] = Math.max(1, Math.round(blocks.lengths[i] / unit)) * unit;
      }
      double searched =
          new SteppedSearch(blocks.lengths, blocks.caps, blocks.corners, ACCELERATION, JERK, stepS)
              .seconds();
      if (!Double.isNaN(searched)) {
        assertThat(blocks.planned(ACCELERATION, JERK)).isLessThan(1.01 * searched);
      }
    }
  }
}

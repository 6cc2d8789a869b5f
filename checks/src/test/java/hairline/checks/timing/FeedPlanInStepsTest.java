package hairline.checks.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Plans under a jerk limit against a search through all motions in small steps of time, on random
 * programs that are the same each time. Braking from 5 mm/s takes 50 µm here.
 */
class FeedPlanInStepsTest {
  private static final double ACCELERATION = 2000;
  private static final double JERK = 50_000;
  private static final double STEP_S = 0.0015;

  /** What the search is wrong by: two steps. */
  private static final double SLACK_S = 2 * STEP_S;

  private record Times(double planned, double searched) {}

  private static Times times(Random random, double shortestMm, double longestMm, int mostBlocks) {
    while (true) {
      int n = 1 + random.nextInt(mostBlocks);
      double[] lengths = new double[n];
      double[] caps = new double[n];
      double[] corners = new double[n];
      double unit = SteppedSearch.unitMm(JERK, STEP_S);
      for (int k = 0; k < n; k++) {
        double length = shortestMm + random.nextDouble() * (longestMm - shortestMm);
        lengths[k] = Math.max(1, Math.round(length / unit)) * unit;
        caps[k] = random.nextInt(3) == 0 ? 2 : 5;
        corners[k] = random.nextInt(3) == 0 ? Double.POSITIVE_INFINITY : random.nextDouble() * 5;
      }
      double searched =
          new SteppedSearch(lengths, caps, corners, ACCELERATION, JERK, STEP_S).seconds();
      if (!Double.isNaN(searched)) {
        return new Times(planned(lengths, caps, corners), searched);
      }
    }
  }

  private static double planned(double[] lengths, double[] caps, double[] corners) {
    double[] seconds = {0};
    FeedPlan plan = new FeedPlan(1000);
    FeedPlan.Taker taker = move -> seconds[0] += move.seconds();
    for (int k = 0; k < lengths.length; k++) {
      plan.add(lengths[k], caps[k], ACCELERATION, JERK, corners[k], taker);
    }
    plan.rest(taker);
    return seconds[0];
  }

  /** L 10 µm from rest to rest by jerk alone: 18.566 ms (exact). */
  @Test
  void theSearchKnowsRestToRest() {
    double unit = SteppedSearch.unitMm(JERK, 0.0005);
    double length = Math.round(0.01 / unit) * unit;
    double searched =
        new SteppedSearch(
                new double[] {length}, new double[] {5}, new double[] {0}, 2000, JERK, 0.0005)
            .seconds();
    assertThat(searched).isCloseTo(18.566e-3, within(2 * 0.0005));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void blocksThatBrakingFitsIntoTakeAsLongAsTheFastest(long seed) {
    Random random = new Random(seed);
    double planned = 0;
    double searched = 0;
    for (int k = 0; k < 5; k++) {
      Times times = times(random, 0.03, 0.12, 5);
      assertThat(times.planned).isLessThan(1.01 * times.searched + SLACK_S);
      planned += times.planned;
      searched += times.searched;
    }
    assertThat(planned).isCloseTo(searched, within(0.01 * searched + 5 * SLACK_S));
  }

  /** Here acceleration might run on past a corner, and the plan takes it back. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void farShorterBlocksTakeFivePerCentMoreAtMost(long seed) {
    Random random = new Random(seed);
    for (int k = 0; k < 5; k++) {
      Times times = times(random, 0.002, 0.03, 12);
      assertThat(times.planned).isLessThan(1.05 * times.searched + SLACK_S);
      assertThat(times.planned).isGreaterThan(0.95 * times.searched - SLACK_S);
    }
  }
}

package hairline.viewer.draw;

import java.util.Arrays;
import java.util.TreeSet;

/**
 * From heights to places along the height axis and back; a place is a number that grows with the
 * height. True to scale a place is the height in micrometres. By levels, each step from one level
 * to the next takes one unit, however small it is, so that a micron beside half a millimetre is
 * seen at a glance; that is not in proportion, and whoever draws it says so.
 */
public final class HeightScale {
  private static final double PM_PER_UM = 1e6;

  private final long[] knots;

  private HeightScale(long[] knots) {
    this.knots = knots;
  }

  /** True to scale. */
  public static final HeightScale TRUE = new HeightScale(new long[0]);

  /** By levels; true to scale where there are fewer than two. */
  public static HeightScale byLevels(Iterable<Long> levelsPm) {
    TreeSet<Long> distinct = new TreeSet<>();
    levelsPm.forEach(distinct::add);
    return distinct.size() < 2
        ? TRUE
        : new HeightScale(distinct.stream().mapToLong(Long::longValue).toArray());
  }

  /** Whether heights are in proportion. */
  public boolean isTrue() {
    return knots.length == 0;
  }

  /** The levels, from the lowest on; none where it is true to scale. */
  public long[] knots() {
    return knots.clone();
  }

  /** The place of a height. Beyond the outermost levels a unit is the whole span of levels. */
  public double place(double pm) {
    if (isTrue()) {
      return pm / PM_PER_UM;
    }
    int last = knots.length - 1;
    double span = knots[last] - (double) knots[0];
    if (pm <= knots[0]) {
      return (pm - knots[0]) / span;
    }
    if (pm >= knots[last]) {
      return last + (pm - knots[last]) / span;
    }
    int found = Arrays.binarySearch(knots, (long) Math.floor(pm));
    int k = found >= 0 ? found : -found - 2;
    k = Math.max(0, Math.min(last - 1, k));
    return k + (pm - knots[k]) / (knots[k + 1] - (double) knots[k]);
  }

  /** The height at a place, in picometres. */
  public double pm(double place) {
    if (isTrue()) {
      return place * PM_PER_UM;
    }
    int last = knots.length - 1;
    double span = knots[last] - (double) knots[0];
    if (place <= 0) {
      return knots[0] + place * span;
    }
    if (place >= last) {
      return knots[last] + (place - last) * span;
    }
    int k = Math.min(last - 1, (int) place);
    return knots[k] + (place - k) * (knots[k + 1] - (double) knots[k]);
  }
}

package hairline.checks.timing;

import java.util.Arrays;

/**
 * The fastest way along blocks that a search through all motions in steps of time finds: in each
 * step acceleration rises, stays or falls by jerk times the step. Steps are integrated exactly, so
 * that places, speeds and accelerations lie on a lattice and each needs to be visited once, when
 * first reached. A plain search, as different from planning as can be.
 *
 * <p>It is generous by half a unit of speed at corners and by a unit of everything at the end, so
 * it may be a step or two too fast; and as much too slow, because time is in whole steps.
 */
final class SteppedSearch {
  private static final int MOST_STEPS = 5000;

  private final double stepS;
  private final double mmPerUnit;
  private final double mmPerSPerUnit;
  private final double[] caps;
  private final double[] corners;
  private final int[] borders;
  private final int[] blockAt;
  private final int end;
  private final int speeds;
  private final int most;
  private final long[] seen;

  /**
   * A search.
   *
   * @param lengths of the blocks in mm; whole units of the lattice, see {@link #unitMm}
   * @param caps highest speeds along them in mm/s
   * @param corners highest speeds at their starts
   */
  SteppedSearch(
      double[] lengths,
      double[] caps,
      double[] corners,
      double acceleration,
      double jerk,
      double stepS) {
    this.caps = caps;
    this.corners = corners;
    this.stepS = stepS;
    this.mmPerUnit = unitMm(jerk, stepS);
    this.mmPerSPerUnit = jerk * stepS * stepS / 2;
    borders = new int[lengths.length + 1];
    for (int k = 0; k < lengths.length; k++) {
      borders[k + 1] = borders[k] + (int) Math.round(lengths[k] / mmPerUnit);
    }
    end = borders[lengths.length];
    blockAt = new int[end + 1];
    for (int k = 0; k < lengths.length; k++) {
      Arrays.fill(blockAt, borders[k], borders[k + 1], k);
    }
    blockAt[end] = lengths.length - 1;
    speeds = (int) (Arrays.stream(caps).max().orElseThrow() / mmPerSPerUnit) + 1;
    most = (int) (acceleration / (jerk * stepS));
    seen = new long[(int) ((long) (end + 1) * speeds * (2 * most + 1) / Long.SIZE) + 1];
  }

  /** The unit of length: J t³/6. */
  static double unitMm(double jerk, double stepS) {
    return jerk * stepS * stepS * stepS / 6;
  }

  /** The shortest time in seconds; NaN where the lattice has no way to the end. */
  double seconds() {
    int[] present = {id(0, 0, 0)};
    int count = 1;
    for (int step = 1; step < MOST_STEPS && count > 0; step++) {
      int[] next = new int[3 * count];
      int found = 0;
      for (int k = 0; k < count; k++) {
        int a = present[k] % (2 * most + 1) - most;
        int v = present[k] / (2 * most + 1) % speeds;
        int s = present[k] / (2 * most + 1) / speeds;
        for (int jerk = -1; jerk <= 1; jerk++) {
          int toA = a + jerk;
          int toV = v + 2 * a + jerk;
          int toS = s + 3 * v + 3 * a + jerk;
          if (Math.abs(toA) > most || !allowed(s, v, toS, toV)) {
            continue;
          }
          if (toS >= end - 1 - toV && toV <= 1 && Math.abs(toA) <= 1) {
            return step * stepS;
          }
          int id = id(toS, toV, toA);
          if ((seen[id / Long.SIZE] >>> (id % Long.SIZE) & 1) == 0) {
            seen[id / Long.SIZE] |= 1L << (id % Long.SIZE);
            next[found++] = id;
          }
        }
      }
      present = next;
      count = found;
    }
    return Double.NaN;
  }

  private int id(int s, int v, int a) {
    return (s * speeds + v) * (2 * most + 1) + a + most;
  }

  private boolean allowed(int s, int v, int toS, int toV) {
    if (toV < 0 || toV >= speeds || toS < s || toS > end) {
      return false;
    }
    if (toV * mmPerSPerUnit > caps[blockAt[toS]] * (1 + 1e-9)) {
      return false;
    }
    for (int border = blockAt[s] + 1; border <= blockAt[toS]; border++) {
      double part = (borders[border] - s) / (double) (toS - s);
      double speed = (v + (toV - v) * part) * mmPerSPerUnit;
      double limit = Math.min(corners[border], Math.min(caps[border - 1], caps[border]));
      if (speed > limit + mmPerSPerUnit / 2) {
        return false;
      }
    }
    return true;
  }
}

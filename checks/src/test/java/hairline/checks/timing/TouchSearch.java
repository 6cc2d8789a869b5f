package hairline.checks.timing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The fastest motion along blocks under a jerk limit, by brute force over what a fastest motion may
 * touch: by the maximum principle it has full jerk, none at a limit, and between two borders at
 * which it touches their limits it is the fastest motion from state to state. So all sets of
 * touched borders are tried, and at each border a grid of accelerations, by dynamic programming
 * over (border, acceleration); then finer grids around the best. Each way from state to state is
 * integrated in steps of time, and left out where it exceeds a speed.
 *
 * <p>What is found is a motion that keeps all limits but for what falls between two steps, so it is
 * no faster than the fastest by more than that; how far from the fastest the grids leave it, tests
 * tell by halving them.
 */
final class TouchSearch {
  private static final int STEPS = 150;
  private static final double NEVER = 1e99;
  private static final double ROUNDING = 1e-6;

  private final double[] caps;
  private final double[] limits;
  private final double[] places;
  private final double[] distinctCaps;
  private final StateToState motion;
  private final double most;
  private final int blocks;

  private double[][] grid = new double[0][];
  private int[] touched = new int[0];
  private double[] withAcceleration = new double[0];

  TouchSearch(double[] lengths, double[] caps, double[] corners, double acceleration, double jerk) {
    this.caps = caps;
    blocks = lengths.length;
    most = acceleration;
    motion = new StateToState(acceleration, jerk);
    limits = new double[blocks + 1];
    places = new double[blocks + 1];
    for (int k = 0; k < blocks; k++) {
      places[k + 1] = places[k] + lengths[k];
    }
    for (int k = 1; k < blocks; k++) {
      limits[k] = Math.min(corners[k], Math.min(caps[k - 1], caps[k]));
    }
    distinctCaps = Arrays.stream(caps).distinct().sorted().toArray();
  }

  /**
   * The shortest time found, in seconds.
   *
   * @param half how many accelerations to either side of zero
   * @param highest the highest of them
   * @param rounds how many times the grids are made finer
   */
  double seconds(int half, double highest, int rounds) {
    grid = new double[blocks + 1][];
    for (int k = 0; k <= blocks; k++) {
      boolean end = k == 0 || k == blocks;
      grid[k] = new double[end ? 1 : 2 * half + 1];
      for (int i = -half; !end && i <= half; i++) {
        double part = Math.pow(Math.abs(i) / (double) half, 1.5);
        grid[k][i + half] = Math.copySign(Math.min(most, part * highest), i);
      }
    }
    double best = best();
    double step = highest / half / 2;
    for (int round = 0; round < rounds && best < NEVER; round++) {
      for (int k = 0; k + 1 < touched.length; k++) {
        double[] finer = new double[7];
        for (int i = -3; i <= 3; i++) {
          finer[i + 3] = Math.max(-most, Math.min(most, withAcceleration[k] + i * step));
        }
        grid[touched[k]] = finer;
      }
      best = best();
      step /= 2;
    }
    return best;
  }

  private double best() {
    double[][] times = new double[blocks + 1][];
    int[][] fromBorder = new int[blocks + 1][];
    int[][] fromIndex = new int[blocks + 1][];
    for (int k = 0; k <= blocks; k++) {
      times[k] = new double[grid[k].length];
      Arrays.fill(times[k], k == 0 ? 0 : NEVER);
      fromBorder[k] = new int[grid[k].length];
      fromIndex[k] = new int[grid[k].length];
    }
    for (int from = 0; from < blocks; from++) {
      double atLeast = 0;
      for (int to = from + 1; to <= blocks; to++) {
        atLeast += (places[to] - places[to - 1]) / caps[to - 1];
        for (int i = 0; i < grid[from].length; i++) {
          for (int j = 0; j < grid[to].length; j++) {
            double left = times[to][j] - times[from][i];
            if (times[from][i] < NEVER && atLeast < left) {
              double way = way(from, grid[from][i], to, grid[to][j], left);
              if (way < left) {
                times[to][j] = times[from][i] + way;
                fromBorder[to][j] = from;
                fromIndex[to][j] = i;
              }
            }
          }
        }
      }
    }
    if (times[blocks][0] < NEVER) {
      trace(fromBorder, fromIndex);
    }
    return times[blocks][0];
  }

  private void trace(int[][] fromBorder, int[][] fromIndex) {
    List<Integer> borders = new ArrayList<>();
    List<Double> accelerations = new ArrayList<>();
    int border = blocks;
    int index = 0;
    while (border > 0) {
      borders.add(0, border);
      accelerations.add(0, grid[border][index]);
      int before = fromBorder[border][index];
      index = fromIndex[border][index];
      border = before;
    }
    touched = borders.stream().mapToInt(b -> b).toArray();
    withAcceleration = accelerations.stream().mapToDouble(a -> a).toArray();
  }

  /** The time from one border to another if it is below a value and all speeds are kept. */
  private double way(int from, double a0, int to, double a1, double below) {
    double best = below;
    for (double cap : distinctCaps) {
      boolean there = false;
      for (int k = from; k < to; k++) {
        there |= caps[k] == cap;
      }
      if (there
          && motion.find(limits[from], a0, limits[to], a1, places[to] - places[from], cap)
          && motion.seconds() < best
          && (to == from + 1 || keeps(from, to))) {
        best = motion.seconds();
      }
    }
    return best;
  }

  private boolean keeps(int from, int to) {
    double[] states = motion.stepped(STEPS);
    int block = from;
    double before = 0;
    double speedBefore = limits[from];
    for (int k = 0; k < states.length; k += 3) {
      double place = states[k];
      double speed = states[k + 1];
      while (block + 1 < to && place > places[block + 1] - places[from]) {
        block++;
        double part = (places[block] - places[from] - before) / (place - before);
        double there = speedBefore + (speed - speedBefore) * part;
        if (there > limits[block] * (1 + ROUNDING)) {
          return false;
        }
      }
      if (speed > caps[block] * (1 + ROUNDING)) {
        return false;
      }
      before = place;
      speedBefore = speed;
    }
    return true;
  }
}

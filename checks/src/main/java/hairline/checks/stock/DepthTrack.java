package hairline.checks.stock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;

/**
 * Tells the depths that moves take, place by place along their paths. Cells that a move takes with
 * the front of the tool, beyond its end, belong to the move that goes on from there, and so do
 * those that it takes straight down: a way cut into short moves has the depths of the whole, and
 * begins with the depth of the plunge.
 */
final class DepthTrack {
  /** Most stations along one move. */
  static final int MOST = 4096;

  private static final long UNTOUCHED = -1;
  private static final long NOT_KNOWN = Long.MAX_VALUE;

  private final double cell;
  private final long[] depths = new long[MOST];
  private @Nullable Path path;
  private int count = 1;
  private double length;

  // Cells taken beyond the end of the move.
  private double[] aheadX = new double[64];
  private double[] aheadY = new double[64];
  private long[] aheadDepth = new long[64];
  private int ahead;

  DepthTrack(double cellPm) {
    this.cell = cellPm;
  }

  /** Begins a move. */
  void begin(Path next) {
    boolean goesOn = path != null && path.x1 == next.x0 && path.y1 == next.y0 && path.z1 == next.z0;
    if (!goesOn) {
      ahead = 0;
    }
    path = next;
    length = next.planLength();
    count = (int) Math.max(1, Math.min(MOST, Math.floor(length / cell)));
    Arrays.fill(depths, 0, count, UNTOUCHED);
    int before = ahead;
    ahead = 0;
    for (int k = 0; k < before; k++) {
      double along = along(aheadX[k], aheadY[k]);
      if (along >= 0) {
        take(along, aheadX[k], aheadY[k], aheadDepth[k]);
      }
    }
  }

  /**
   * Takes a cell.
   *
   * @param x place of its centre
   * @param y place of its centre
   * @param depth how much of it is taken off
   * @param topKnown whether that is known
   */
  void cell(double x, double y, long depth, boolean topKnown) {
    take(along(x, y), x, y, topKnown ? depth : NOT_KNOWN);
  }

  private void take(double along, double x, double y, long depth) {
    if (along > length || length == 0) {
      keep(x, y, depth);
    } else if (along >= 0) {
      int k = (int) Math.min(count - 1, along / length * count);
      depths[k] = Math.max(depths[k], depth);
    }
  }

  private void keep(double x, double y, long depth) {
    if (ahead == aheadX.length) {
      aheadX = Arrays.copyOf(aheadX, 2 * ahead);
      aheadY = Arrays.copyOf(aheadY, 2 * ahead);
      aheadDepth = Arrays.copyOf(aheadDepth, 2 * ahead);
    }
    aheadX[ahead] = x;
    aheadY[ahead] = y;
    aheadDepth[ahead] = depth;
    ahead++;
  }

  /** How far along the path a point lies; below zero before its start, beyond its length after. */
  private double along(double x, double y) {
    if (path == null) {
      return -1;
    }
    if (path.arcInPlan()) {
      return alongArc(path, length, x, y);
    }
    double[] u = path.direction(0);
    return (x - path.x0) * u[0] + (y - path.y0) * u[1];
  }

  private static double alongArc(Path path, double length, double x, double y) {
    double turn = Math.signum(path.sweep());
    double angle =
        turn * (StrictMath.atan2(y - path.centreY(), x - path.centreX()) - path.startAngle());
    double whole = 2 * Math.PI;
    angle -= whole * Math.floor(angle / whole);
    // What is nearer to the start than to the end lies before it, unless the arc is closed.
    double rest = whole - Math.abs(path.sweep());
    if (angle > Math.abs(path.sweep()) + rest / 2) {
      angle -= whole;
    }
    return angle * length / Math.abs(path.sweep());
  }

  /**
   * The stretches of the move; empty where it takes nothing.
   *
   * @param lengthMm length of its path
   */
  List<DepthStretch> stretches(double lengthMm) {
    List<DepthStretch> stretches = new ArrayList<>();
    int from = 0;
    boolean any = false;
    for (int k = 1; k <= count; k++) {
      if (k < count && depths[k] == depths[from]) {
        continue;
      }
      any |= depths[from] != UNTOUCHED;
      stretches.add(
          new DepthStretch(lengthMm * from / count, lengthMm * k / count, depth(depths[from])));
      from = k;
    }
    return any ? stretches : List.of();
  }

  /**
   * One stretch with the largest depth, for a move whose depth has no steps; empty where it takes
   * nothing.
   *
   * @param lengthMm length of its path
   */
  List<DepthStretch> largest(double lengthMm) {
    long largest = UNTOUCHED;
    for (int k = 0; k < count; k++) {
      largest = Math.max(largest, depths[k]);
    }
    return largest == UNTOUCHED
        ? List.of()
        : List.of(new DepthStretch(0, lengthMm, depth(largest)));
  }

  private static OptionalLong depth(long told) {
    return told == NOT_KNOWN ? OptionalLong.empty() : OptionalLong.of(Math.max(0, told));
  }
}

package hairline.checks.stock;

import java.util.Map;
import java.util.TreeMap;

/**
 * The surface as anybody would compute it who has time: every cell of a square field is asked for
 * every move. Slow, plain, and without anything in common with the grid but the rule that a cell
 * belongs to the tool when its centre does.
 */
final class NaiveSurface {
  final int side;
  private final long cell;
  final long[][] heights;
  final int[][] ids;

  /** Cells so near a border that rounding may decide; they are not compared. */
  final boolean[][] doubtful;

  /** A field of uncut stock with its top at 0, from minus to plus half of its side. */
  NaiveSurface(int side, long cell) {
    this.side = side;
    this.cell = cell;
    this.heights = new long[side][side];
    this.ids = new int[side][side];
    this.doubtful = new boolean[side][side];
  }

  double centre(int k) {
    return (k - side / 2 + 0.5) * cell;
  }

  /** Lowers every cell; gives how many cells of which surface were lowered. */
  Map<Integer, Integer> cut(
      long x0,
      long y0,
      long z0,
      long x1,
      long y1,
      long z1,
      double radius,
      double corner,
      int id,
      int otherId) {
    Map<Integer, Integer> lowered = new TreeMap<>();
    for (int j = 0; j < side; j++) {
      for (int i = 0; i < side; i++) {
        double px = centre(i) - x0;
        double py = centre(j) - y0;
        double dx = x1 - x0;
        double dy = y1 - y0;
        double length2 = dx * dx + dy * dy;
        double t = length2 == 0 ? 0 : Math.max(0, Math.min(1, (px * dx + py * dy) / length2));
        double distance = StrictMath.hypot(px - t * dx, py - t * dy);
        if (Math.abs(distance - radius) < 1) {
          doubtful[j][i] = true;
        }
        if (distance > radius) {
          continue;
        }
        double low;
        if (z0 == z1) {
          low = z0 + profile(distance, radius, corner);
        } else {
          // The lowest over many places along the way.
          low = Double.POSITIVE_INFINITY;
          for (int k = 0; k <= 2000; k++) {
            double f = k / 2000.0;
            double away = StrictMath.hypot(px - f * dx, py - f * dy);
            if (away <= radius) {
              low = Math.min(low, z0 + f * (z1 - z0) + profile(away, radius, corner));
            }
          }
          if (low == Double.POSITIVE_INFINITY) {
            // Only just touched between two of the places.
            low = z0 + t * (z1 - z0) + profile(distance, radius, corner);
          }
        }
        lower(i, j, Math.round(low), (double) Math.min(z0, z1), id, otherId, lowered);
      }
    }
    return lowered;
  }

  /** The same for an arc at constant Z, as the nearest of very many points on it. */
  Map<Integer, Integer> arc(
      double cx, double cy, double r, double start, double sweep, double z, double radius, int id) {
    Map<Integer, Integer> lowered = new TreeMap<>();
    for (int j = 0; j < side; j++) {
      for (int i = 0; i < side; i++) {
        double dx = centre(i) - cx;
        double dy = centre(j) - cy;
        double angle = StrictMath.atan2(dy, dx);
        double nearest = Double.POSITIVE_INFINITY;
        for (int turn = -2; turn <= 2; turn++) {
          double along = angle + turn * 2 * Math.PI - start;
          double clamped =
              sweep > 0 ? Math.max(0, Math.min(sweep, along)) : Math.min(0, Math.max(sweep, along));
          double x = r * StrictMath.cos(start + clamped);
          double y = r * StrictMath.sin(start + clamped);
          nearest = Math.min(nearest, StrictMath.hypot(dx - x, dy - y));
        }
        for (double end : new double[] {start, start + sweep}) {
          double x = r * StrictMath.cos(end);
          double y = r * StrictMath.sin(end);
          nearest = Math.min(nearest, StrictMath.hypot(dx - x, dy - y));
        }
        if (Math.abs(nearest - radius) < 2000) {
          doubtful[j][i] = true;
        }
        if (nearest <= radius) {
          lower(i, j, Math.round(z), z, id, id, lowered);
        }
      }
    }
    return lowered;
  }

  private void lower(
      int i, int j, long low, double z, int id, int otherId, Map<Integer, Integer> lowered) {
    if (heights[j][i] > low) {
      if (!doubtful[j][i]) {
        lowered.merge(ids[j][i], 1, Integer::sum);
      }
      heights[j][i] = low;
      ids[j][i] = low == Math.round(z) ? id : otherId;
    }
  }

  private static double profile(double distance, double radius, double corner) {
    double out = Math.min(corner, Math.max(0, distance - (radius - corner)));
    return corner - Math.sqrt(corner * corner - out * out);
  }
}

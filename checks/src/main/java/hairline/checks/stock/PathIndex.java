package hairline.checks.stock;

import java.util.Arrays;

/**
 * The paths cut so far under one offset, to find from where a pass takes its width, and what it
 * repeats. Bounded: it keeps the latest moves, and for each square the latest that crossed it, so
 * what lies long behind is not found, and the width then is not known.
 */
final class PathIndex {
  /** Moves kept for each square. */
  static final int PER_SQUARE = 32;

  private static final double MOST_CROSSING = 0.02;

  /** Paths nearer than this are one: arc centres are good to a nanometre. */
  private static final double BEYOND_PM = 2000;

  private final double side;
  private final int cap;

  // The latest moves, by their number modulo the cap.
  private int next;
  private double[] ax = new double[64];
  private double[] ay = new double[64];
  private double[] bx = new double[64];
  private double[] by = new double[64];
  private long[] z = new long[64];
  private boolean[] level = new boolean[64];
  private double[] cutterRadius = new double[64];
  private double[] arcRadius = new double[64];
  private double[] centreX = new double[64];
  private double[] centreY = new double[64];
  private double[] sweep = new double[64];

  // Squares by open addressing; a slot holds the numbers of the moves, newest last, from 1.
  private final int squareCap;
  private long[] keys = new long[64];
  private int[] slots = new int[64];
  private int squares;
  private int[] moves = new int[64 * PER_SQUARE];
  private int[] written = new int[64];
  private boolean full;

  private double mostRadius;
  private double leastRadius = Double.POSITIVE_INFINITY;

  /**
   * An empty index.
   *
   * @param sidePm side of a square
   * @param cap moves kept
   */
  PathIndex(double sidePm, int cap) {
    this.side = sidePm;
    this.cap = cap;
    this.squareCap = cap;
  }

  /** Keeps the path of a cut. */
  void add(Path path, double radius, boolean isLevel) {
    int k = next % cap;
    if (k >= ax.length) {
      grow();
    }
    ax[k] = path.x0;
    ay[k] = path.y0;
    bx[k] = path.x1;
    by[k] = path.y1;
    z[k] = path.z0;
    level[k] = isLevel;
    cutterRadius[k] = radius;
    arcRadius[k] = 0;
    if (path.arcInPlan()) {
      arcRadius[k] = (path.startRadius() + path.endRadius()) / 2;
      centreX[k] = path.centreX();
      centreY[k] = path.centreY();
      sweep[k] = path.sweep();
    }
    mostRadius = Math.max(mostRadius, radius);
    leastRadius = Math.min(leastRadius, radius);
    next++;
    register(next);
    if (full) {
      forgetOld();
    }
  }

  private void grow() {
    int size = Math.min(cap, 2 * ax.length);
    ax = Arrays.copyOf(ax, size);
    ay = Arrays.copyOf(ay, size);
    bx = Arrays.copyOf(bx, size);
    by = Arrays.copyOf(by, size);
    z = Arrays.copyOf(z, size);
    level = Arrays.copyOf(level, size);
    cutterRadius = Arrays.copyOf(cutterRadius, size);
    arcRadius = Arrays.copyOf(arcRadius, size);
    centreX = Arrays.copyOf(centreX, size);
    centreY = Arrays.copyOf(centreY, size);
    sweep = Arrays.copyOf(sweep, size);
  }

  /** Enters a kept move into the squares that it crosses. */
  private void register(int number) {
    int k = (number - 1) % cap;
    if (arcRadius[k] == 0) {
      note(number, ax[k], ay[k], bx[k], by[k]);
      return;
    }
    // Chords that leave the arc by a 64th of a square at most, joined end to end.
    double r = arcRadius[k];
    double largest = r <= side / 64 ? 1 : 2 * StrictMath.acos(1 - side / 64 / r);
    int chords = (int) Math.max(1, Math.min(Path.MOST_CHORDS, Math.abs(sweep[k]) / largest + 1));
    double start = StrictMath.atan2(ay[k] - centreY[k], ax[k] - centreX[k]);
    double x = ax[k];
    double y = ay[k];
    for (int m = 1; m <= chords; m++) {
      double angle = start + sweep[k] * m / chords;
      double x2 = centreX[k] + r * StrictMath.cos(angle);
      double y2 = centreY[k] + r * StrictMath.sin(angle);
      note(number, x, y, x2, y2);
      x = x2;
      y = y2;
    }
  }

  private void note(int number, double x0, double y0, double x1, double y1) {
    Squares walk = new Squares(x0, y0, x1, y1, side);
    do {
      note(number, walk.column, walk.row);
    } while (walk.next());
  }

  /** Forgets all squares but those of the latest moves, as many as take half of the cap. */
  private void forgetOld() {
    clearSquares();
    int number = next + 1;
    while (number > Math.max(1, next - cap + 1) && squares < squareCap / 2 && !full) {
      number--;
      register(number);
    }
    if (full) {
      number = Math.min(number + 1, next);
    }
    // Once more in their order, as a square keeps those entered last.
    clearSquares();
    for (; number <= next; number++) {
      register(number);
    }
  }

  private void clearSquares() {
    squares = 0;
    full = false;
    Arrays.fill(slots, 0);
    Arrays.fill(written, 0);
  }

  private void note(int number, int column, int row) {
    int slot = slot(column, row, true);
    if (slot < 0) {
      return;
    }
    int last = written[slot];
    if (last > 0 && moves[slot * PER_SQUARE + (last - 1) % PER_SQUARE] == number) {
      return;
    }
    moves[slot * PER_SQUARE + last % PER_SQUARE] = number;
    written[slot]++;
  }

  private int slot(int column, int row, boolean make) {
    long key = ((long) column << 32) | (row & 0xFFFF_FFFFL);
    int h = hash(key) & (keys.length - 1);
    while (slots[h] != 0) {
      if (keys[h] == key) {
        return slots[h] - 1;
      }
      h = (h + 1) & (keys.length - 1);
    }
    if (!make) {
      return -1;
    }
    if (squares == squareCap) {
      full = true;
      return -1;
    }
    if (2 * (squares + 1) > keys.length) {
      rehash();
      h = hash(key) & (keys.length - 1);
      while (slots[h] != 0) {
        h = (h + 1) & (keys.length - 1);
      }
    }
    if (squares == written.length) {
      written = Arrays.copyOf(written, 2 * squares);
      moves = Arrays.copyOf(moves, 2 * squares * PER_SQUARE);
    }
    keys[h] = key;
    slots[h] = ++squares;
    return squares - 1;
  }

  private void rehash() {
    long[] oldKeys = keys;
    int[] oldSlots = slots;
    keys = new long[2 * oldKeys.length];
    slots = new int[2 * oldKeys.length];
    for (int k = 0; k < oldKeys.length; k++) {
      if (oldSlots[k] != 0) {
        int h = hash(oldKeys[k]) & (keys.length - 1);
        while (slots[h] != 0) {
          h = (h + 1) & (keys.length - 1);
        }
        keys[h] = oldKeys[k];
        slots[h] = oldSlots[k];
      }
    }
  }

  private static int hash(long key) {
    long h = key * 0x9E3779B97F4A7C15L;
    return (int) (h >>> 32);
  }

  /**
   * What a search looks for.
   *
   * @param x a point of the path now cut
   * @param y the same
   * @param ux its direction of travel there
   * @param uy the same
   * @param radius its tool's radius
   * @param z its Z
   * @param level whether Z stands still along it
   */
  record Station(double x, double y, double ux, double uy, double radius, long z, boolean level) {}

  /**
   * The narrowest width of cut, within limits, that an earlier parallel path leaves to this one;
   * NaN without such a path. At constant Z only paths at this Z or deeper count, else only paths
   * that vary in Z as well.
   *
   * @param side 1: the path lies to the left, -1: to the right
   * @param low smallest width looked for
   * @param high largest width looked for
   */
  double width(Station at, int side, double low, double high) {
    double near = Math.max(0, low - at.radius() + leastRadius);
    double reach = high - at.radius() + mostRadius;
    if (next == 0 || reach < near) {
      return Double.NaN;
    }
    double best = Double.NaN;
    double nx = -side * at.uy();
    double ny = side * at.ux();
    Squares walk =
        new Squares(
            at.x() + nx * near,
            at.y() + ny * near,
            at.x() + nx * reach,
            at.y() + ny * reach,
            this.side);
    do {
      int slot = slot(walk.column, walk.row, false);
      if (slot < 0) {
        continue;
      }
      int kept = Math.min(written[slot], PER_SQUARE);
      for (int m = 0; m < kept; m++) {
        int k = held(moves[slot * PER_SQUARE + m]);
        if (k < 0 || level[k] != at.level() || (at.level() && z[k] > at.z())) {
          continue;
        }
        double distance = distance(k, at, nx, ny, near, reach);
        double width = at.radius() + distance - cutterRadius[k];
        if (width >= low && width <= high && !(width >= best)) {
          best = width;
        }
      }
    } while (walk.next());
    return best;
  }

  /** Whether an earlier path at this very Z, of an equal tool, passes this near in parallel. */
  boolean repeats(Station at, double offset) {
    double nx = -at.uy();
    double ny = at.ux();
    Squares walk =
        new Squares(
            at.x() - nx * offset,
            at.y() - ny * offset,
            at.x() + nx * offset,
            at.y() + ny * offset,
            side);
    do {
      int slot = slot(walk.column, walk.row, false);
      if (slot < 0) {
        continue;
      }
      int kept = Math.min(written[slot], PER_SQUARE);
      for (int m = 0; m < kept; m++) {
        int k = held(moves[slot * PER_SQUARE + m]);
        if (k >= 0
            && level[k]
            && z[k] == at.z()
            && Math.abs(cutterRadius[k] - at.radius()) <= 1
            && !Double.isNaN(distance(k, at, nx, ny, -offset, offset))) {
          return true;
        }
      }
    } while (walk.next());
    return false;
  }

  /**
   * Whether a kept path at this Z or deeper runs in parallel so that its tool reaches further to a
   * side than the tool at the station does, by this much at most.
   *
   * @param side 1: to the left, -1: to the right
   */
  boolean reachesBeyond(Station at, int side, double most) {
    double nx = -side * at.uy();
    double ny = side * at.ux();
    double near = BEYOND_PM + at.radius() - mostRadius;
    double far = most + at.radius() - leastRadius;
    Squares walk =
        new Squares(
            at.x() + nx * near,
            at.y() + ny * near,
            at.x() + nx * far,
            at.y() + ny * far,
            this.side);
    do {
      int slot = slot(walk.column, walk.row, false);
      int kept = slot < 0 ? 0 : Math.min(written[slot], PER_SQUARE);
      for (int m = 0; m < kept; m++) {
        int k = held(moves[slot * PER_SQUARE + m]);
        if (k >= 0 && level[k] && z[k] <= at.z()) {
          double beyond = distance(k, at, nx, ny, near, far) + cutterRadius[k] - at.radius();
          if (beyond >= BEYOND_PM && beyond <= most) {
            return true;
          }
        }
      }
    } while (walk.next());
    return false;
  }

  private int held(int number) {
    return number > next - cap ? (number - 1) % cap : -1;
  }

  /**
   * How far from the station, along a normal of its path, the kept path runs in parallel; NaN where
   * it doesn't between the limits.
   */
  private double distance(int k, Station at, double nx, double ny, double low, double high) {
    if (arcRadius[k] > 0) {
      return arcDistance(k, at, nx, ny, low, high);
    }
    double wx = bx[k] - ax[k];
    double wy = by[k] - ay[k];
    double length = Math.sqrt(wx * wx + wy * wy);
    if (length == 0 || Math.abs(wx * at.uy() - wy * at.ux()) > MOST_CROSSING * length) {
      return Double.NaN;
    }
    double px = at.x() - ax[k];
    double py = at.y() - ay[k];
    double distance = (wx * py - wy * px) / (wy * nx - wx * ny);
    double along = ((px + distance * nx) * wx + (py + distance * ny) * wy) / (length * length);
    return along >= 0 && along <= 1 && distance >= low && distance <= high ? distance : Double.NaN;
  }

  private double arcDistance(int k, Station at, double nx, double ny, double low, double high) {
    double px = at.x() - centreX[k];
    double py = at.y() - centreY[k];
    double b = px * nx + py * ny;
    double root = b * b - (px * px + py * py - arcRadius[k] * arcRadius[k]);
    if (root < 0) {
      return Double.NaN;
    }
    double best = Double.NaN;
    for (int sign = -1; sign <= 1; sign += 2) {
      double distance = -b + sign * Math.sqrt(root);
      double qx = px + distance * nx;
      double qy = py + distance * ny;
      boolean parallel = Math.abs(qx * at.ux() + qy * at.uy()) <= MOST_CROSSING * arcRadius[k];
      if (parallel
          && distance >= low
          && distance <= high
          && Spans.inSector(
              qx,
              qy,
              sweep[k],
              ax[k] - centreX[k],
              ay[k] - centreY[k],
              bx[k] - centreX[k],
              by[k] - centreY[k])
          && !(Math.abs(distance) >= Math.abs(best))) {
        best = distance;
      }
    }
    return best;
  }

  /** Walks the squares that a segment crosses, end squares included. */
  private static final class Squares {
    int column;
    int row;
    private final int lastColumn;
    private final int lastRow;
    private final int stepX;
    private final int stepY;
    private double nextX;
    private double nextY;
    private final double deltaX;
    private final double deltaY;

    Squares(double x0, double y0, double x1, double y1, double side) {
      column = (int) Math.floor(x0 / side);
      row = (int) Math.floor(y0 / side);
      lastColumn = (int) Math.floor(x1 / side);
      lastRow = (int) Math.floor(y1 / side);
      stepX = Integer.signum(lastColumn - column);
      stepY = Integer.signum(lastRow - row);
      double dx = Math.abs(x1 - x0);
      double dy = Math.abs(y1 - y0);
      deltaX = side / dx;
      deltaY = side / dy;
      nextX = stepX == 0 ? Double.POSITIVE_INFINITY : edge(x0, column, stepX, side) / dx;
      nextY = stepY == 0 ? Double.POSITIVE_INFINITY : edge(y0, row, stepY, side) / dy;
    }

    private static double edge(double from, int index, int step, double side) {
      return step > 0 ? (index + 1) * side - from : from - index * side;
    }

    boolean next() {
      if (column == lastColumn && row == lastRow) {
        return false;
      }
      if (row == lastRow || (column != lastColumn && nextX <= nextY)) {
        column += stepX;
        nextX += deltaX;
      } else {
        row += stepY;
        nextY += deltaY;
      }
      return true;
    }
  }
}

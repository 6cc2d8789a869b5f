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

  /** Squares along a block of them. */
  private static final int BLOCK_SHIFT = 2;

  private static final int MASK = (1 << BLOCK_SHIFT) - 1;
  private static final int SQUARES = 1 << (2 * BLOCK_SHIFT);

  private static final double MOST_CROSSING = 0.02;

  /** Paths nearer than this are one: arc centres are good to a nanometre. */
  private static final double BEYOND_PM = 2000;

  private final double side;
  private final int cap;

  // The latest moves, by their number modulo the cap: what one is asked for lies together.
  private static final int AX = 0;
  private static final int AY = 1;
  private static final int BX = 2;
  private static final int BY = 3;
  private static final int Z = 4;
  private static final int CUTTER_RADIUS = 5;
  private static final int ARC_RADIUS = 6;
  private static final int LEVEL = 7;
  private static final int FIGURES = 8;
  private int next;
  private double[] kept = new double[64 * FIGURES];
  private double[] centreX = new double[64];
  private double[] centreY = new double[64];
  private double[] sweep = new double[64];

  // Blocks of squares by open addressing; their squares, counted from 1, 0: none yet; of each
  // square the numbers of the moves, newest last, from 1.
  private final int squareCap;
  private long[] keys = new long[64];
  private int[] places = new int[64];
  private int blocks;
  private int[] slots = new int[64 * SQUARES];
  private long lastKey;
  private int lastBlock = -1;
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
    if (k >= sweep.length) {
      grow();
    }
    int m = k * FIGURES;
    kept[m + AX] = path.x0;
    kept[m + AY] = path.y0;
    kept[m + BX] = path.x1;
    kept[m + BY] = path.y1;
    kept[m + Z] = path.z0;
    kept[m + LEVEL] = isLevel ? 1 : 0;
    kept[m + CUTTER_RADIUS] = radius;
    kept[m + ARC_RADIUS] = 0;
    if (path.arcInPlan()) {
      kept[m + ARC_RADIUS] = (path.startRadius() + path.endRadius()) / 2;
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
    int size = Math.min(cap, 2 * sweep.length);
    kept = Arrays.copyOf(kept, size * FIGURES);
    centreX = Arrays.copyOf(centreX, size);
    centreY = Arrays.copyOf(centreY, size);
    sweep = Arrays.copyOf(sweep, size);
  }

  /** Enters a kept move into the squares that it crosses. */
  private void register(int number) {
    int k = (number - 1) % cap;
    int m = k * FIGURES;
    double x = kept[m + AX];
    double y = kept[m + AY];
    double r = kept[m + ARC_RADIUS];
    if (r == 0) {
      note(number, x, y, kept[m + BX], kept[m + BY]);
      return;
    }
    // Chords that leave the arc by a 64th of a square at most, joined end to end.
    double largest = r <= side / 64 ? 1 : 2 * StrictMath.acos(1 - side / 64 / r);
    int chords = (int) Math.max(1, Math.min(Path.MOST_CHORDS, Math.abs(sweep[k]) / largest + 1));
    double start = StrictMath.atan2(y - centreY[k], x - centreX[k]);
    for (int n = 1; n <= chords; n++) {
      double angle = start + sweep[k] * n / chords;
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
    blocks = 0;
    lastBlock = -1;
    full = false;
    Arrays.fill(places, 0);
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
    int block = block(column >> BLOCK_SHIFT, row >> BLOCK_SHIFT, make);
    if (block < 0) {
      return -1;
    }
    int place = block * SQUARES + ((row & MASK) << BLOCK_SHIFT | (column & MASK));
    if (slots[place] != 0 || !make) {
      return slots[place] - 1;
    }
    if (squares == squareCap) {
      full = true;
      return -1;
    }
    if (squares == written.length) {
      written = Arrays.copyOf(written, 2 * squares);
      moves = Arrays.copyOf(moves, 2 * squares * PER_SQUARE);
    }
    slots[place] = ++squares;
    return squares - 1;
  }

  private int block(int column, int row, boolean make) {
    long key = ((long) column << 32) | (row & 0xFFFF_FFFFL);
    if (key == lastKey && lastBlock >= 0) {
      return lastBlock;
    }
    int h = hash(key) & (keys.length - 1);
    while (places[h] != 0) {
      if (keys[h] == key) {
        lastKey = key;
        lastBlock = places[h] - 1;
        return lastBlock;
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
    if (2 * (blocks + 1) > keys.length) {
      rehash();
      h = hash(key) & (keys.length - 1);
      while (places[h] != 0) {
        h = (h + 1) & (keys.length - 1);
      }
    }
    if ((blocks + 1) * SQUARES > slots.length) {
      slots = Arrays.copyOf(slots, 2 * slots.length);
    }
    Arrays.fill(slots, blocks * SQUARES, (blocks + 1) * SQUARES, 0);
    keys[h] = key;
    places[h] = ++blocks;
    lastKey = key;
    lastBlock = blocks - 1;
    return lastBlock;
  }

  private void rehash() {
    long[] oldKeys = keys;
    int[] oldPlaces = places;
    keys = new long[2 * oldKeys.length];
    places = new int[2 * oldKeys.length];
    for (int k = 0; k < oldKeys.length; k++) {
      if (oldPlaces[k] != 0) {
        int h = hash(oldKeys[k]) & (keys.length - 1);
        while (places[h] != 0) {
          h = (h + 1) & (keys.length - 1);
        }
        keys[h] = oldKeys[k];
        places[h] = oldPlaces[k];
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
      // What crosses the normal farther out than this leaves no narrower width.
      if (best <= at.radius() + near + walk.entered * (reach - near) - mostRadius - BEYOND_PM) {
        return best;
      }
      int slot = slot(walk.column, walk.row, false);
      if (slot < 0) {
        continue;
      }
      int count = Math.min(written[slot], PER_SQUARE);
      for (int m = 0; m < count; m++) {
        int k = held(moves[slot * PER_SQUARE + m]);
        if (k < 0 || level(k) != at.level() || (at.level() && z(k) > at.z())) {
          continue;
        }
        double distance = distance(k, at, nx, ny, near, reach);
        double width = at.radius() + distance - cutterRadius(k);
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
      int count = Math.min(written[slot], PER_SQUARE);
      for (int m = 0; m < count; m++) {
        int k = held(moves[slot * PER_SQUARE + m]);
        if (k >= 0
            && level(k)
            && z(k) == at.z()
            && Math.abs(cutterRadius(k) - at.radius()) <= 1
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
      int count = slot < 0 ? 0 : Math.min(written[slot], PER_SQUARE);
      for (int m = 0; m < count; m++) {
        int k = held(moves[slot * PER_SQUARE + m]);
        if (k >= 0 && level(k) && z(k) <= at.z()) {
          double beyond = distance(k, at, nx, ny, near, far) + cutterRadius(k) - at.radius();
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

  private boolean level(int k) {
    return kept[k * FIGURES + LEVEL] != 0;
  }

  /** Its Z: below 2^53 in picometres, so a double holds it exactly. */
  private double z(int k) {
    return kept[k * FIGURES + Z];
  }

  private double cutterRadius(int k) {
    return kept[k * FIGURES + CUTTER_RADIUS];
  }

  /**
   * How far from the station, along a normal of its path, the kept path runs in parallel; NaN where
   * it doesn't between the limits.
   */
  private double distance(int k, Station at, double nx, double ny, double low, double high) {
    int m = k * FIGURES;
    if (kept[m + ARC_RADIUS] > 0) {
      return arcDistance(k, at, nx, ny, low, high);
    }
    double wx = kept[m + BX] - kept[m + AX];
    double wy = kept[m + BY] - kept[m + AY];
    double length = Math.sqrt(wx * wx + wy * wy);
    if (length == 0 || Math.abs(wx * at.uy() - wy * at.ux()) > MOST_CROSSING * length) {
      return Double.NaN;
    }
    double px = at.x() - kept[m + AX];
    double py = at.y() - kept[m + AY];
    double distance = (wx * py - wy * px) / (wy * nx - wx * ny);
    double along = ((px + distance * nx) * wx + (py + distance * ny) * wy) / (length * length);
    return along >= 0 && along <= 1 && distance >= low && distance <= high ? distance : Double.NaN;
  }

  private double arcDistance(int k, Station at, double nx, double ny, double low, double high) {
    int m = k * FIGURES;
    double arcRadius = kept[m + ARC_RADIUS];
    double px = at.x() - centreX[k];
    double py = at.y() - centreY[k];
    double b = px * nx + py * ny;
    double root = b * b - (px * px + py * py - arcRadius * arcRadius);
    if (root < 0) {
      return Double.NaN;
    }
    double best = Double.NaN;
    for (int sign = -1; sign <= 1; sign += 2) {
      double distance = -b + sign * Math.sqrt(root);
      double qx = px + distance * nx;
      double qy = py + distance * ny;
      boolean parallel = Math.abs(qx * at.ux() + qy * at.uy()) <= MOST_CROSSING * arcRadius;
      if (parallel
          && distance >= low
          && distance <= high
          && Spans.inSector(
              qx,
              qy,
              sweep[k],
              kept[m + AX] - centreX[k],
              kept[m + AY] - centreY[k],
              kept[m + BX] - centreX[k],
              kept[m + BY] - centreY[k])
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

    /** At which part of the segment the square is entered. */
    double entered;

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
        entered = nextX;
        nextX += deltaX;
      } else {
        row += stepY;
        entered = nextY;
        nextY += deltaY;
      }
      return true;
    }
  }
}

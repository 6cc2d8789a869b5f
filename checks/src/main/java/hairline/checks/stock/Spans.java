package hairline.checks.stock;

import java.util.Arrays;

/**
 * The cells of a footprint: runs of cells, ordered by rows, of which a row may have several. Reused
 * from move to move.
 */
final class Spans {
  private int[] rows = new int[256];
  private int[] froms = new int[256];
  private int[] tos = new int[256];
  private int count;
  private final Band band = new Band();

  // Cells outside of these are left out.
  private final int columnMin;
  private final int columnMax;

  private final Swath swath;

  Spans(HeightGrid grid) {
    this.swath = new Swath(grid);
    this.columnMin = grid.boxFrom();
    this.columnMax = grid.boxTo();
  }

  boolean isEmpty() {
    return count == 0;
  }

  int count() {
    return count;
  }

  int row(int k) {
    return rows[k];
  }

  int from(int k) {
    return froms[k];
  }

  int to(int k) {
    return tos[k];
  }

  /** Forgets all spans. */
  void clear() {
    count = 0;
  }

  /** Adds the cells of one row between these columns. */
  void add(int row, int from, int to) {
    int first = Math.max(from, columnMin);
    int last = Math.min(to, columnMax);
    if (first > last) {
      return;
    }
    if (count == rows.length) {
      rows = Arrays.copyOf(rows, 2 * count);
      froms = Arrays.copyOf(froms, 2 * count);
      tos = Arrays.copyOf(tos, 2 * count);
    }
    rows[count] = row;
    froms[count] = first;
    tos[count] = last;
    count++;
  }

  /**
   * Takes the cells whose centres lie within a radius of a segment, borders included.
   *
   * @param ax start
   * @param ay start
   * @param bx end
   * @param by end
   * @param radius the radius
   */
  void segment(double ax, double ay, double bx, double by, double radius) {
    swath.segment(ax, ay, bx, by, radius);
    of(swath);
  }

  /** Takes the cells whose centres lie within a radius of an arc about Z, borders included. */
  void arc(Path path, double radius) {
    swath.arc(path, radius);
    of(swath);
  }

  /** Takes the cells of a swath. */
  void of(Swath swath) {
    count = 0;
    swath.addTo(this);
  }

  /** Whether a direction from the centre lies between start and end of the sweep. */
  static boolean inSector(
      double dx, double dy, double sweep, double startX, double startY, double endX, double endY) {
    if (Math.abs(sweep) >= 2 * Math.PI - 1e-12) {
      return true;
    }
    double turn = Math.signum(sweep);
    boolean afterStart = turn * (startX * dy - startY * dx) >= 0;
    boolean beforeEnd = turn * (dx * endY - dy * endX) >= 0;
    return Math.abs(sweep) <= Math.PI ? afterStart && beforeEnd : afterStart || beforeEnd;
  }

  /** X from and to, Y from and to, of an arc. */
  static double[] bounds(Path path, double r) {
    double[] b = {
      Math.min(path.x0, path.x1),
      Math.max(path.x0, path.x1),
      Math.min(path.y0, path.y1),
      Math.max(path.y0, path.y1)
    };
    double startX = path.x0 - path.centreX();
    double startY = path.y0 - path.centreY();
    double endX = path.x1 - path.centreX();
    double endY = path.y1 - path.centreY();
    double sweep = path.sweep();
    if (inSector(-1, 0, sweep, startX, startY, endX, endY)) {
      b[0] = Math.min(b[0], path.centreX() - r);
    }
    if (inSector(1, 0, sweep, startX, startY, endX, endY)) {
      b[1] = Math.max(b[1], path.centreX() + r);
    }
    if (inSector(0, -1, sweep, startX, startY, endX, endY)) {
      b[2] = Math.min(b[2], path.centreY() - r);
    }
    if (inSector(0, 1, sweep, startX, startY, endX, endY)) {
      b[3] = Math.max(b[3], path.centreY() + r);
    }
    return b;
  }

  // By rows of tiles.

  /** Starts over with the first row of tiles. */
  Band firstBand() {
    band.start();
    return band;
  }

  /** The spans that lie in one row of tiles. */
  final class Band {
    private int first;
    private int last;
    private int firstTile;
    private int lastTile;

    private void start() {
      last = -1;
      next();
    }

    /** Goes on to the next row of tiles. */
    void next() {
      first = last + 1;
      if (first >= count) {
        return;
      }
      int row = rows[first] >> HeightGrid.SHIFT;
      int low = froms[first];
      int high = tos[first];
      last = first;
      while (last + 1 < count && rows[last + 1] >> HeightGrid.SHIFT == row) {
        last++;
        low = Math.min(low, froms[last]);
        high = Math.max(high, tos[last]);
      }
      firstTile = low >> HeightGrid.SHIFT;
      lastTile = high >> HeightGrid.SHIFT;
    }

    boolean more() {
      return first < count;
    }

    /** The row of tiles. */
    int row() {
      return rows[first] >> HeightGrid.SHIFT;
    }

    int first() {
      return first;
    }

    int last() {
      return last;
    }

    int firstTile() {
      return firstTile;
    }

    int lastTile() {
      return lastTile;
    }

    int row(int k) {
      return rows[k];
    }

    int from(int k) {
      return froms[k];
    }

    int to(int k) {
      return tos[k];
    }

    /** Whether any cell of the tile belongs to the footprint. */
    boolean touches(int tileColumn) {
      int left = tileColumn << HeightGrid.SHIFT;
      for (int k = first; k <= last; k++) {
        if (froms[k] < left + HeightGrid.SIDE && tos[k] >= left) {
          return true;
        }
      }
      return false;
    }

    /** Whether every cell of the tile belongs to the footprint. */
    boolean covers(int tileColumn) {
      if (last - first + 1 < HeightGrid.SIDE) {
        return false;
      }
      int left = tileColumn << HeightGrid.SHIFT;
      int full = 0;
      for (int k = first; k <= last; k++) {
        if (froms[k] <= left && tos[k] >= left + HeightGrid.SIDE - 1) {
          full++;
        }
      }
      return full == HeightGrid.SIDE;
    }
  }
}

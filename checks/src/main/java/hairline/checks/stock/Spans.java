package hairline.checks.stock;

import java.util.Arrays;

/**
 * The cells of a footprint: runs of cells, ordered by rows, of which a row may have several. Reused
 * from move to move.
 */
final class Spans {
  private final double cell;
  private int[] rows = new int[256];
  private int[] froms = new int[256];
  private int[] tos = new int[256];
  private int count;
  private final Band band = new Band();

  // Cells outside of these are left out.
  private final int columnMin;
  private final int columnMax;
  private final int rowMin;
  private final int rowMax;

  Spans(HeightGrid grid) {
    this.cell = grid.cellPm();
    this.columnMin = grid.boxFrom();
    this.columnMax = grid.boxTo();
    this.rowMin = grid.boxRowFrom();
    this.rowMax = grid.boxRowTo();
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

  private double centre(int index) {
    return index * cell + cell / 2;
  }

  /** First column or row whose centre is at or above. */
  private int above(double coordinate) {
    return (int) Math.ceil((coordinate - cell / 2) / cell);
  }

  /** Last column or row whose centre is at or below. */
  private int below(double coordinate) {
    return (int) Math.floor((coordinate - cell / 2) / cell);
  }

  private void add(int row, int from, int to) {
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

  // Straight footprints.

  /**
   * The cells whose centres lie within a radius of a segment, borders included.
   *
   * @param ax start
   * @param ay start
   * @param bx end
   * @param by end
   * @param radius the radius
   */
  void segment(double ax, double ay, double bx, double by, double radius) {
    count = 0;
    double dx = bx - ax;
    double dy = by - ay;
    double length2 = dx * dx + dy * dy;
    double reach = radius * Math.sqrt(length2);
    int firstRow = Math.max(rowMin, above(Math.min(ay, by) - radius) - 1);
    int lastRow = Math.min(rowMax, below(Math.max(ay, by) + radius) + 1);
    for (int row = firstRow; row <= lastRow; row++) {
      double py = centre(row) - ay;
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      double cap = radius * radius - py * py;
      if (cap >= 0) {
        double half = Math.sqrt(cap);
        low = -half;
        high = half;
      }
      double capEnd = radius * radius - (py - dy) * (py - dy);
      if (capEnd >= 0) {
        double half = Math.sqrt(capEnd);
        low = Math.min(low, dx - half);
        high = Math.max(high, dx + half);
      }
      if (dy != 0) {
        // Between the long sides, and beside the segment rather than beyond its ends.
        double sideLow = (py * dx - Math.copySign(reach, dy)) / dy;
        double sideHigh = (py * dx + Math.copySign(reach, dy)) / dy;
        if (dx != 0) {
          double endLow = (dx > 0 ? -py * dy : length2 - py * dy) / dx;
          double endHigh = (dx > 0 ? length2 - py * dy : -py * dy) / dx;
          sideLow = Math.max(sideLow, endLow);
          sideHigh = Math.min(sideHigh, endHigh);
        } else if (py * dy < 0 || py * dy > length2) {
          sideHigh = Double.NEGATIVE_INFINITY;
        }
        if (sideLow <= sideHigh) {
          low = Math.min(low, sideLow);
          high = Math.max(high, sideHigh);
        }
      }
      int from = above(ax + low);
      int to = below(ax + high);
      if (low > high) {
        // Rounding may hide a single cell that just touches.
        continue;
      }
      while (within(centre(from - 1) - ax, py, dx, dy, length2, radius)) {
        from--;
      }
      while (within(centre(to + 1) - ax, py, dx, dy, length2, radius)) {
        to++;
      }
      while (from <= to && !within(centre(from) - ax, py, dx, dy, length2, radius)) {
        from++;
      }
      while (from <= to && !within(centre(to) - ax, py, dx, dy, length2, radius)) {
        to--;
      }
      if (from <= to) {
        add(row, from, to);
      }
    }
  }

  /** Whether a point, given from the start of the segment, lies within the radius of it. */
  private static boolean within(
      double px, double py, double dx, double dy, double length2, double radius) {
    double along = px * dx + py * dy;
    if (along <= 0) {
      return px * px + py * py <= radius * radius;
    }
    if (along >= length2) {
      return (px - dx) * (px - dx) + (py - dy) * (py - dy) <= radius * radius;
    }
    double cross = px * dy - py * dx;
    return cross * cross <= radius * radius * length2;
  }

  // Round footprints.

  /** The cells whose centres lie within a radius of an arc about Z, borders included. */
  void arc(Path path, double radius) {
    count = 0;
    double r = (path.startRadius() + path.endRadius()) / 2;
    double outer = r + radius;
    double inner = Math.max(0, r - radius);
    double sweep = path.sweep();
    double startX = path.x0 - path.centreX();
    double startY = path.y0 - path.centreY();
    double endX = path.x1 - path.centreX();
    double endY = path.y1 - path.centreY();
    double[] bounds = bounds(path, r);
    int firstRow = Math.max(rowMin, above(bounds[2] - radius) - 1);
    int lastRow = Math.min(rowMax, below(bounds[3] + radius) + 1);
    int firstColumn = Math.max(columnMin, above(bounds[0] - radius) - 1);
    int lastColumn = Math.min(columnMax, below(bounds[1] + radius) + 1);
    for (int row = firstRow; row <= lastRow; row++) {
      double dy = centre(row) - path.centreY();
      if (Math.abs(dy) > outer) {
        // Only the ends can reach here, and only where the two radii differ.
        scan(row, firstColumn, lastColumn, path, dy, r, radius, sweep, startX, startY, endX, endY);
        continue;
      }
      double wide = Math.sqrt(outer * outer - dy * dy);
      int from = Math.max(firstColumn, above(path.centreX() - wide) - 1);
      int to = Math.min(lastColumn, below(path.centreX() + wide) + 1);
      double hole = Math.abs(dy) < inner ? Math.sqrt(inner * inner - dy * dy) : 0;
      int holeFrom = above(path.centreX() - hole) + 1;
      int holeTo = below(path.centreX() + hole) - 1;
      if (hole > 0 && holeFrom <= holeTo && holeFrom > from && holeTo < to) {
        scan(row, from, holeFrom - 1, path, dy, r, radius, sweep, startX, startY, endX, endY);
        scan(row, holeTo + 1, to, path, dy, r, radius, sweep, startX, startY, endX, endY);
      } else {
        scan(row, from, to, path, dy, r, radius, sweep, startX, startY, endX, endY);
      }
    }
  }

  private void scan(
      int row,
      int from,
      int to,
      Path path,
      double dy,
      double r,
      double radius,
      double sweep,
      double startX,
      double startY,
      double endX,
      double endY) {
    int start = Integer.MIN_VALUE;
    for (int column = from; column <= to; column++) {
      double dx = centre(column) - path.centreX();
      boolean covered = nearArc(dx, dy, r, radius, sweep, startX, startY, endX, endY);
      if (covered && start == Integer.MIN_VALUE) {
        start = column;
      } else if (!covered && start != Integer.MIN_VALUE) {
        add(row, start, column - 1);
        start = Integer.MIN_VALUE;
      }
    }
    if (start != Integer.MIN_VALUE) {
      add(row, start, to);
    }
  }

  private static boolean nearArc(
      double dx,
      double dy,
      double r,
      double radius,
      double sweep,
      double startX,
      double startY,
      double endX,
      double endY) {
    double fromStart = (dx - startX) * (dx - startX) + (dy - startY) * (dy - startY);
    if (fromStart <= radius * radius) {
      return true;
    }
    double fromEnd = (dx - endX) * (dx - endX) + (dy - endY) * (dy - endY);
    if (fromEnd <= radius * radius) {
      return true;
    }
    double distance2 = dx * dx + dy * dy;
    double outer = r + radius;
    double inner = r - radius;
    if (distance2 > outer * outer || (inner > 0 && distance2 < inner * inner)) {
      return false;
    }
    return inSector(dx, dy, sweep, startX, startY, endX, endY);
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
  private static double[] bounds(Path path, double r) {
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

package hairline.checks.stock;

/**
 * What a tool covers on one stretch of its path, seen from above: the cells whose centres lie
 * within its radius of a segment or of an arc, borders included. A cell within the radius of either
 * end counts by its distance from that end alone, so that stretches that go on from one another
 * agree to the bit. Reused from move to move.
 */
final class Swath {
  /** What rounding may do to a distance. */
  private static final double ROUNDING_PM = 1;

  /** Cells that a long side just touches all count, whatever rounding does to their distances. */
  private static final double TANGENT = 1 + 1e-12;

  private static final double ROUNDING_CELLS = 1.0 / 1024;

  /** Across a stretch that runs more along Y than this, columns are not told apart. */
  private static final double STEEPEST = 64;

  private final double cell;
  private final double perCell;

  // Cells outside of these are left out.
  private final int columnMin;
  private final int columnMax;
  private final int rowMin;
  private final int rowMax;

  private boolean round;
  private double ax;
  private double ay;
  private double bx;
  private double by;
  private double dx;
  private double dy;
  private double length;
  private double length2;
  private double reach;
  private double wide2;
  private double radius;
  private double radius2;
  private int firstRow;
  private int lastRow;

  // Of an arc.
  private double centreX;
  private double centreY;
  private double arcRadius;
  private double sweep;
  private double[] bounds = {0, 0, 0, 0};
  private int firstColumn;
  private int lastColumn;

  // What was asked for last.
  private int from;
  private int to;

  Swath(HeightGrid grid) {
    this.cell = grid.cellPm();
    this.perCell = 1 / cell;
    this.columnMin = grid.boxFrom();
    this.columnMax = grid.boxTo();
    this.rowMin = grid.boxRowFrom();
    this.rowMax = grid.boxRowTo();
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

  /**
   * Takes the cells about a segment.
   *
   * @param x0 start
   * @param y0 start
   * @param x1 end
   * @param y1 end
   * @param radiusPm the radius
   */
  void segment(double x0, double y0, double x1, double y1, double radiusPm) {
    round = false;
    ends(x0, y0, x1, y1, radiusPm);
    dx = bx - ax;
    dy = by - ay;
    length2 = dx * dx + dy * dy;
    length = Math.sqrt(length2);
    reach = Math.copySign(radius * length, dy);
    wide2 = radius2 * length2 * TANGENT;
    firstRow = Math.max(rowMin, above(Math.min(ay, by) - radius) - 1);
    lastRow = Math.min(rowMax, below(Math.max(ay, by) + radius) + 1);
  }

  /** Takes the cells about the straight stretch of another swath, within another radius. */
  void within(Swath other, double radiusPm) {
    segment(other.ax, other.ay, other.bx, other.by, radiusPm);
  }

  /** Takes the cells about an arc about Z. */
  void arc(Path path, double radiusPm) {
    round = true;
    ends((double) path.x0, (double) path.y0, (double) path.x1, (double) path.y1, radiusPm);
    centreX = path.centreX();
    centreY = path.centreY();
    arcRadius = (path.startRadius() + path.endRadius()) / 2;
    sweep = path.sweep();
    bounds = Spans.bounds(path, arcRadius);
    firstRow = Math.max(rowMin, above(bounds[2] - radius) - 1);
    lastRow = Math.min(rowMax, below(bounds[3] + radius) + 1);
    firstColumn = Math.max(columnMin, above(bounds[0] - radius) - 1);
    lastColumn = Math.min(columnMax, below(bounds[1] + radius) + 1);
  }

  private void ends(double x0, double y0, double x1, double y1, double radiusPm) {
    ax = x0;
    ay = y0;
    bx = x1;
    by = y1;
    radius = radiusPm;
    radius2 = radiusPm * radiusPm;
  }

  /** No row before this one is covered. */
  int firstRow() {
    return firstRow;
  }

  /** No row after this one is covered. */
  int lastRow() {
    return lastRow;
  }

  /** No column before this one is covered. */
  int leftmost() {
    return round
        ? firstColumn
        : Math.max(columnMin, (int) Math.floor((Math.min(ax, bx) - radius) * perCell) - 1);
  }

  /** No column after this one is covered. */
  int rightmost() {
    return round
        ? lastColumn
        : Math.min(columnMax, (int) Math.floor((Math.max(ax, bx) + radius) * perCell) + 1);
  }

  /** The first column that the last question was answered with. */
  int from() {
    return from;
  }

  /** The last column that the last question was answered with. */
  int to() {
    return to;
  }

  /**
   * Between which columns cells of some rows may be covered: none outside is.
   *
   * @return whether any may be
   */
  boolean columns(int lowRow, int highRow) {
    double low = centre(lowRow) - ROUNDING_PM;
    double high = centre(highRow) + ROUNDING_PM;
    if (round) {
      double outer = arcRadius + radius;
      double away = Math.max(0, Math.max(low - centreY, centreY - high));
      // Where the two radii of the arc differ, its ends reach a little farther.
      double wide = away < outer ? Math.sqrt(outer * outer - away * away) + 2 * cell : 2 * outer;
      from = Math.max(firstColumn, above(centreX - wide) - 1);
      to = Math.min(lastColumn, below(centreX + wide) + 1);
      return from <= to;
    }
    double lowY = Math.min(ay, by);
    double highY = Math.max(ay, by);
    double away = Math.max(0, Math.max(lowY - high, low - highY));
    if (away > radius) {
      from = 0;
      to = -1;
      return false;
    }
    double lowX = Math.min(ax, bx);
    double highX = Math.max(ax, bx);
    if (highY - lowY > radius) {
      // Only the part of the segment beside these rows counts.
      double atLow = Math.max(lowY, low - radius);
      double atHigh = Math.min(highY, high + radius);
      double x = ax + (atLow - ay) / dy * dx;
      double x2 = ax + (atHigh - ay) / dy * dx;
      lowX = Math.max(lowX, Math.min(x, x2) - ROUNDING_PM);
      highX = Math.min(highX, Math.max(x, x2) + ROUNDING_PM);
    }
    double wide = Math.sqrt(radius2 - away * away) + ROUNDING_PM;
    // The column in which a border lies may be needed or not; a few thousandths are rounding.
    from = Math.max(columnMin, (int) Math.floor((lowX - wide) * perCell - ROUNDING_CELLS));
    to = Math.min(columnMax, (int) Math.floor((highX + wide) * perCell + ROUNDING_CELLS));
    return from <= to;
  }

  /**
   * Between which columns all cells of some rows lie under the tool where it starts.
   *
   * @return whether any do
   */
  boolean startColumns(int lowRow, int highRow) {
    double away = Math.max(Math.abs(centre(lowRow) - ay), Math.abs(centre(highRow) - ay));
    if (away >= radius) {
      return false;
    }
    double half = Math.sqrt(radius2 - away * away) - ROUNDING_PM;
    from = (int) Math.ceil((ax - half) * perCell - 0.5 + ROUNDING_CELLS);
    to = (int) Math.floor((ax + half) * perCell - 0.5 - ROUNDING_CELLS);
    return from <= to;
  }

  /**
   * Narrows the columns last told to those in which some cell of some rows may lie farther along a
   * straight stretch than this.
   *
   * @param along in picometres from the start; below zero before it
   * @return whether any are left
   */
  boolean narrow(int lowRow, int highRow, double along) {
    if (length2 == 0) {
      return from <= to;
    }
    double least = along * length - ROUNDING_PM * length;
    // How far the rows alone come along.
    double rows = Math.max((centre(lowRow) - ay) * dy, (centre(highRow) - ay) * dy);
    if (Math.abs(dx) * STEEPEST < Math.abs(dy)) {
      if (rows + Math.abs(dx) * (radius + Math.abs(dx)) < least) {
        to = from - 1;
      }
    } else if (dx > 0) {
      from = Math.max(from, (int) Math.floor((ax + (least - rows) / dx) * perCell - 1));
    } else {
      to = Math.min(to, (int) Math.ceil((ax + (least - rows) / dx) * perCell + 1));
    }
    return from <= to;
  }

  /** Whether a straight stretch covers each of the cells between these: it is convex. */
  boolean covers(int lowRow, int highRow, int lowColumn, int highColumn) {
    return !round
        && lowRow >= rowMin
        && highRow <= rowMax
        && lowColumn >= columnMin
        && highColumn <= columnMax
        && within(centre(lowColumn), centre(lowRow))
        && within(centre(highColumn), centre(highRow))
        && within(centre(highColumn), centre(lowRow))
        && within(centre(lowColumn), centre(highRow));
  }

  /** Adds all covered cells, row by row. */
  void addTo(Spans spans) {
    for (int row = firstRow; row <= lastRow; row++) {
      addRow(row, columnMin, columnMax, spans);
    }
  }

  /** Adds the covered cells of one row between these columns. */
  void addRow(int row, int low, int high, Spans spans) {
    if (round) {
      addRoundRow(row, low, high, spans);
    } else if (row(row)) {
      spans.add(row, Math.max(from, low), Math.min(to, high));
    }
  }

  /** Whether the stretch is an arc, of which a row may hold several runs of cells. */
  boolean round() {
    return round;
  }

  // Straight stretches.

  /**
   * The covered cells of one row of a straight stretch.
   *
   * @return whether there are any
   */
  boolean row(int row) {
    double y = centre(row);
    double py = y - ay;
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    double cap = radius2 - py * py;
    if (cap >= 0) {
      double half = Math.sqrt(cap);
      low = -half;
      high = half;
    }
    double capEnd = radius2 - (py - dy) * (py - dy);
    if (capEnd >= 0) {
      double half = Math.sqrt(capEnd);
      low = Math.min(low, dx - half);
      high = Math.max(high, dx + half);
    }
    if (dy != 0) {
      // Between the long sides, and beside the segment rather than beyond its ends.
      double sideLow = (py * dx - reach) / dy;
      double sideHigh = (py * dx + reach) / dy;
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
    if (low > high) {
      // Rounding may hide a single cell that just touches.
      from = 0;
      to = -1;
      return false;
    }
    int first = above(ax + low);
    int last = below(ax + high);
    while (within(centre(first - 1), y)) {
      first--;
    }
    while (within(centre(last + 1), y)) {
      last++;
    }
    while (first <= last && !within(centre(first), y)) {
      first++;
    }
    while (first <= last && !within(centre(last), y)) {
      last--;
    }
    from = Math.max(columnMin, first);
    to = Math.min(columnMax, last);
    return from <= to;
  }

  /** The column in which the stretch starts. */
  int startColumn() {
    return (int) Math.floor(ax * perCell);
  }

  /** The row in which the stretch starts. */
  int startRow() {
    return (int) Math.floor(ay * perCell);
  }

  /** Whether a straight stretch covers a cell, and the stock reaches it. */
  boolean holds(int row, int column) {
    return column >= columnMin
        && column <= columnMax
        && row >= rowMin
        && row <= rowMax
        && covers(row, column);
  }

  /** Whether a straight stretch covers a cell. */
  boolean covers(int row, int column) {
    return within(centre(column), centre(row));
  }

  /** Whether a point lies within the radius of the segment. */
  private boolean within(double x, double y) {
    double px = x - ax;
    double py = y - ay;
    if (px * px + py * py <= radius2) {
      return true;
    }
    double qx = x - bx;
    double qy = y - by;
    if (qx * qx + qy * qy <= radius2) {
      return true;
    }
    double along = px * dx + py * dy;
    double cross = px * dy - py * dx;
    return along > 0 && along < length2 && cross * cross <= wide2;
  }

  // Round stretches.

  private void addRoundRow(int row, int low, int high, Spans spans) {
    double y = centre(row) - centreY;
    double outer = arcRadius + radius;
    int left = Math.max(low, firstColumn);
    int right = Math.min(high, lastColumn);
    if (Math.abs(y) > outer) {
      // Only the ends can reach here, and only where the two radii differ.
      scan(row, left, right, y, spans);
      return;
    }
    double wide = Math.sqrt(outer * outer - y * y);
    left = Math.max(left, above(centreX - wide) - 1);
    right = Math.min(right, below(centreX + wide) + 1);
    double inner = Math.max(0, arcRadius - radius);
    double hole = Math.abs(y) < inner ? Math.sqrt(inner * inner - y * y) : 0;
    int holeFrom = above(centreX - hole) + 1;
    int holeTo = below(centreX + hole) - 1;
    if (hole > 0 && holeFrom <= holeTo) {
      scan(row, left, Math.min(right, holeFrom - 1), y, spans);
      scan(row, Math.max(left, holeTo + 1), right, y, spans);
    } else {
      scan(row, left, right, y, spans);
    }
  }

  private void scan(int row, int low, int high, double dyCentre, Spans spans) {
    double y = centre(row);
    int start = Integer.MIN_VALUE;
    for (int column = low; column <= high; column++) {
      boolean covered = nearArc(centre(column), y, dyCentre);
      if (covered && start == Integer.MIN_VALUE) {
        start = column;
      } else if (!covered && start != Integer.MIN_VALUE) {
        spans.add(row, start, column - 1);
        start = Integer.MIN_VALUE;
      }
    }
    if (start != Integer.MIN_VALUE) {
      spans.add(row, start, high);
    }
  }

  private boolean nearArc(double x, double y, double dyCentre) {
    double px = x - ax;
    double py = y - ay;
    if (px * px + py * py <= radius2) {
      return true;
    }
    double qx = x - bx;
    double qy = y - by;
    if (qx * qx + qy * qy <= radius2) {
      return true;
    }
    double dxCentre = x - centreX;
    double distance2 = dxCentre * dxCentre + dyCentre * dyCentre;
    double outer = arcRadius + radius;
    double inner = arcRadius - radius;
    boolean inRing = distance2 <= outer * outer && (inner <= 0 || distance2 >= inner * inner);
    return inRing
        && Spans.inSector(
            dxCentre, dyCentre, sweep, ax - centreX, ay - centreY, bx - centreX, by - centreY);
  }
}

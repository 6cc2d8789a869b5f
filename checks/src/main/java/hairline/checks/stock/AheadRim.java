package hairline.checks.stock;

import org.jspecify.annotations.Nullable;

/**
 * What stands within a cell ahead of a flat tool where a move ends: a short move may reach no new
 * cell's centre though it cuts. Rows are taken four at a time, and passed over where no block of
 * cells along the rim holds anything above the tool. Reused from move to move.
 */
final class AheadRim {
  private final HeightGrid grid;
  private final double cell;
  private final double perCell;
  private final Removed rim;

  // Of the move at hand: where it ends, its direction, and its rim.
  private long x;
  private long y;
  private long z;
  private double ux;
  private double uy;
  private double radius2;
  private double outer2;
  private boolean ahead;
  private HeightGrid.@Nullable Tile tile;

  AheadRim(HeightGrid grid) {
    this.grid = grid;
    this.cell = grid.cellPm();
    this.perCell = 1 / cell;
    this.rim = new Removed(grid.cellPm());
  }

  /**
   * Adds it to what the move found, where some of it stands within 60° of the direction of travel;
   * further to the side it may be the wall that the tool slides along.
   */
  void addTo(Path path, Cutter cutter, Removed found) {
    double[] u = path.direction(1);
    double radius = cutter.radiusPm();
    double outer = radius + cell;
    x = path.x1;
    y = path.y1;
    z = path.z1;
    ux = u[0];
    uy = u[1];
    radius2 = radius * radius;
    outer2 = outer * outer;
    ahead = false;
    tile = null;
    rim.clear();
    rim.alongLine((double) x, (double) y, ux, uy, 0, 0);
    int last = grid.index(y + outer);
    for (int row = grid.index(y - outer); row <= last; ) {
      int end = Math.min(last, row | (HeightGrid.BLOCK - 1));
      rows(row, end);
      row = end + 1;
    }
    if (ahead) {
      found.add(rim);
    }
  }

  /** Looks at some rows of one row of blocks, left and right of the tool. */
  private void rows(int first, int last) {
    double low = grid.centre(first) - y;
    double high = grid.centre(last) - y;
    double near = low > 0 ? low : high < 0 ? -high : 0;
    double far = Math.max(-low, high);
    if (near * near > outer2) {
      return;
    }
    double wide = Math.sqrt(outer2 - near * near);
    double hole = far * far < radius2 ? Math.sqrt(radius2 - far * far) : 0;
    // Good to a cell: what counts is told by the cells' centres.
    double forward = Math.max(low * uy, high * uy) + cell;
    boolean left = forward - ux * (ux > 0 ? hole : wide) > 0;
    boolean right = forward + ux * (ux > 0 ? wide : hole) > 0;
    int leftFirst = (int) Math.floor((x - wide) * perCell);
    int leftLast = (int) Math.floor((x - hole) * perCell);
    int rightFirst = (int) Math.floor((x + hole) * perCell);
    int rightLast = (int) Math.floor((x + wide) * perCell);
    if (left && right && leftLast >= rightFirst) {
      leftLast = rightLast;
      right = false;
    }
    left = left && mayStand(first, leftFirst, leftLast);
    right = right && mayStand(first, rightFirst, rightLast);
    if (!left && !right) {
      return;
    }
    for (int row = first; row <= last; row++) {
      double dy = grid.centre(row) - y;
      double wide2 = outer2 - dy * dy;
      if (wide2 < 0 || Math.abs(ux) * Math.sqrt(wide2) + dy * uy <= 0) {
        continue;
      }
      if (left) {
        look(row, dy, leftFirst, leftLast);
      }
      if (right) {
        look(row, dy, rightFirst, rightLast);
      }
    }
  }

  /**
   * Whether a cell of a row's blocks between these columns may stand above the tool, or be lost.
   */
  private boolean mayStand(int row, int first, int last) {
    if (grid.lossy()) {
      return true;
    }
    int blockRow = row >> HeightGrid.BLOCK_SHIFT;
    for (int b = first >> HeightGrid.BLOCK_SHIFT; b <= last >> HeightGrid.BLOCK_SHIFT; b++) {
      HeightGrid.Tile here = at(b << HeightGrid.BLOCK_SHIFT, row);
      if (here == null) {
        return true;
      }
      if (here.even() ? here.height > z : !here.liesUpTo(HeightGrid.block(b, blockRow), z)) {
        return true;
      }
    }
    return false;
  }

  private HeightGrid.@Nullable Tile at(int column, int row) {
    HeightGrid.Tile known = tile;
    if (known == null || !known.holds(column, row)) {
      known = grid.find(column >> HeightGrid.SHIFT, row >> HeightGrid.SHIFT);
      tile = known;
    }
    return known;
  }

  private void look(int row, double dy, int first, int last) {
    for (int column = first; column <= last; column++) {
      double dx = grid.centre(column) - x;
      double distance2 = dx * dx + dy * dy;
      if (distance2 <= radius2) {
        // Skip to the far side of the tool.
        double in = Math.sqrt(radius2 - dy * dy);
        column = Math.max(column, (int) Math.floor((x + in - cell) * perCell));
        continue;
      }
      double forward = dx * ux + dy * uy;
      if (distance2 > outer2 || forward <= 0) {
        continue;
      }
      HeightGrid.Tile here = at(column, row);
      long height = here == null ? grid.height(column, row) : grid.height(here, column, row);
      if (height > z) {
        int id = here == null ? grid.id(column, row) : grid.id(here, column, row);
        rim.addCell(id, height, z, row, column);
        ahead |= forward * forward >= distance2 / 4;
      } else if (height == HeightGrid.LOST_HEIGHT) {
        rim.lost();
      }
    }
  }
}

package hairline.checks.stock;

/**
 * The columns and rows of cells in which something is to be seen: the stock, or without one the
 * tiles that were cut.
 */
record Bounds(int fromColumn, int toColumn, int fromRow, int toRow) {

  /** Nothing. */
  static final Bounds NONE = new Bounds(0, -1, 0, -1);

  static Bounds of(SurfaceLeft surface) {
    HeightGrid grid = surface.grid();
    if (surface.stock().isPresent()) {
      return new Bounds(grid.boxFrom(), grid.boxTo(), grid.boxRowFrom(), grid.boxRowTo());
    }
    int fromColumn = Integer.MAX_VALUE;
    int toColumn = Integer.MIN_VALUE;
    int fromRow = Integer.MAX_VALUE;
    int toRow = Integer.MIN_VALUE;
    for (HeightGrid.Tile tile : grid.tiles()) {
      int left = tile.column << HeightGrid.SHIFT;
      int low = tile.row << HeightGrid.SHIFT;
      for (int k = 0; k < HeightGrid.SIDE * HeightGrid.SIDE; k++) {
        if (tile.heightOf(k) == HeightGrid.VIRGIN_HEIGHT) {
          continue;
        }
        int column = left + (k & (HeightGrid.SIDE - 1));
        int row = low + (k >> HeightGrid.SHIFT);
        fromColumn = Math.min(fromColumn, column);
        toColumn = Math.max(toColumn, column);
        fromRow = Math.min(fromRow, row);
        toRow = Math.max(toRow, row);
      }
    }
    return new Bounds(fromColumn, toColumn, fromRow, toRow);
  }

  boolean empty() {
    return fromColumn > toColumn || fromRow > toRow;
  }
}

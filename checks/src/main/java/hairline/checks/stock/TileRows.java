package hairline.checks.stock;

import java.util.Arrays;

/**
 * The tiles of a grid in the order of rows, and the uncut stock between them as few rectangles: the
 * gaps of each row of tiles, and the bands between the rows. Places are columns and rows of tiles.
 */
final class TileRows {
  private final HeightGrid grid;
  private final HeightGrid.Tile[] tiles;

  /** First tile of each row of tiles that has any; one more entry at the end. */
  private final int[] starts;

  private final int rows;
  private final boolean stock;

  // The stock in tiles.
  private final int left;
  private final int right;
  private final int low;
  private final int high;

  /** The order of tiles by row, then by column. */
  static int byRow(HeightGrid.Tile one, HeightGrid.Tile other) {
    int rows = Integer.compare(one.row, other.row);
    return rows != 0 ? rows : Integer.compare(one.column, other.column);
  }

  /** The order of tiles by column, then by row. */
  static int byColumn(HeightGrid.Tile one, HeightGrid.Tile other) {
    int columns = Integer.compare(one.column, other.column);
    return columns != 0 ? columns : Integer.compare(one.row, other.row);
  }

  TileRows(HeightGrid grid, boolean stock) {
    this.grid = grid;
    this.stock = stock;
    this.tiles = grid.tiles();
    Arrays.sort(tiles, TileRows::byRow);
    int[] found = new int[tiles.length + 1];
    int count = 0;
    for (int t = 0; t < tiles.length; t++) {
      if (t == 0 || tiles[t].row != tiles[t - 1].row) {
        found[count++] = t;
      }
    }
    found[count] = tiles.length;
    this.rows = count;
    this.starts = Arrays.copyOf(found, count + 1);
    this.left = grid.boxFrom() >> HeightGrid.SHIFT;
    this.right = grid.boxTo() >> HeightGrid.SHIFT;
    this.low = grid.boxRowFrom() >> HeightGrid.SHIFT;
    this.high = grid.boxRowTo() >> HeightGrid.SHIFT;
  }

  /** How many tiles there are. */
  int tiles() {
    return tiles.length;
  }

  HeightGrid.Tile tile(int t) {
    return tiles[t];
  }

  /** How many rows of tiles have any. */
  int rows() {
    return rows;
  }

  int start(int k) {
    return starts[k];
  }

  /** The first of these rows at this row of tiles or above. */
  private int rowAt(int row) {
    int from = 0;
    int to = rows;
    while (from < to) {
      int middle = (from + to) >>> 1;
      if (tiles[starts[middle]].row < row) {
        from = middle + 1;
      } else {
        to = middle;
      }
    }
    return from;
  }

  /** The first tile of this row at this column or right of it. */
  private int tileAt(int k, int column) {
    int from = starts[k];
    int to = starts[k + 1];
    while (from < to) {
      int middle = (from + to) >>> 1;
      if (tiles[middle].column < column) {
        from = middle + 1;
      } else {
        to = middle;
      }
    }
    return from;
  }

  /** Index of the tile there; negative where there is none. */
  int find(int column, int row) {
    int k = rowAt(row);
    if (k == rows || tiles[starts[k]].row != row) {
      return -1;
    }
    int t = tileAt(k, column);
    return t < starts[k + 1] && tiles[t].column == column ? t : -1;
  }

  // Blocks of uncut stock. Row k has a block before each tile and one behind the last: numbers
  // starts[k] + k and on. Bands follow, one below each row and one above the last. Some are empty.

  /** How many blocks there are, empty ones included. */
  int blocks() {
    return stock ? tiles.length + rows + rows + 1 : 0;
  }

  /** The block there, where no tile is and the tile touches the stock; negative outside. */
  int block(int column, int row) {
    if (!stock || column < left || column > right || row < low || row > high) {
      return -1;
    }
    int k = rowAt(row);
    return k < rows && tiles[starts[k]].row == row
        ? tileAt(k, column) + k
        : tiles.length + rows + k;
  }

  /** The cells of a block: first and last column, first and last row; empty where first > last. */
  int[] cells(int block) {
    int fromColumn = left;
    int toColumn = right;
    int fromRow = low;
    int toRow = high;
    if (block >= tiles.length + rows) {
      int k = block - tiles.length - rows;
      fromRow = k == 0 ? low : tiles[starts[k - 1]].row + 1;
      toRow = k == rows ? high : tiles[starts[k]].row - 1;
    } else {
      int k = rowOfBlock(block);
      int t = block - k;
      fromColumn = t == starts[k] ? left : tiles[t - 1].column + 1;
      toColumn = t == starts[k + 1] ? right : tiles[t].column - 1;
      fromRow = tiles[starts[k]].row;
      toRow = fromRow;
    }
    return new int[] {
      (int) Math.max(grid.boxFrom(), (long) fromColumn << HeightGrid.SHIFT),
      (int) Math.min(grid.boxTo(), ((long) toColumn << HeightGrid.SHIFT) + HeightGrid.SIDE - 1),
      (int) Math.max(grid.boxRowFrom(), (long) fromRow << HeightGrid.SHIFT),
      (int) Math.min(grid.boxRowTo(), ((long) toRow << HeightGrid.SHIFT) + HeightGrid.SIDE - 1)
    };
  }

  private int rowOfBlock(int block) {
    int from = 0;
    int to = rows - 1;
    while (from < to) {
      int middle = (from + to + 1) >>> 1;
      if (starts[middle] + middle > block) {
        to = middle - 1;
      } else {
        from = middle;
      }
    }
    return from;
  }
}

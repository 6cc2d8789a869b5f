package hairline.checks.stock;

import java.util.Arrays;

/**
 * Which cells of a surface belong together: those that share an edge and whose heights round to the
 * same multiple of a tolerance, so that no chain of small differences joins what lies apart. Sets
 * are kept as trees of parents (union by size, halved paths): four bytes for each cell of an uneven
 * tile, one node for each even tile and for each rectangle of uncut stock between the tiles.
 */
final class AreaLabels {
  /** Cells of no terrace. */
  static final int NONE = -1;

  private static final int CELLS = HeightGrid.SIDE * HeightGrid.SIDE;
  private static final int TILE_SHIFT = 2 * HeightGrid.SHIFT;
  private static final int LAST = HeightGrid.SIDE - 1;

  private final SurfaceLeft surface;
  private final HeightGrid grid;
  private final TileRows rows;
  private final long tolerance;

  /** First node of each tile. */
  private final int[] base;

  /** Parents of the cells of each uneven tile; in a root minus the size. */
  private final int[][] cells;

  /** From this node on come even tiles, then blocks. */
  private final int singlesFrom;

  private final int blocksFrom;
  private final int[] singles;
  private final long[] singleSizes;

  AreaLabels(SurfaceLeft surface, TileRows rows, long tolerancePm) {
    this.surface = surface;
    this.grid = surface.grid();
    this.rows = rows;
    this.tolerance = Math.max(1, tolerancePm);
    this.base = new int[rows.tiles()];
    int uneven = uneven(rows);
    this.cells = new int[uneven][];
    this.singlesFrom = uneven << TILE_SHIFT;
    int u = 0;
    int single = singlesFrom;
    for (int t = 0; t < base.length; t++) {
      if (rows.tile(t).even()) {
        base[t] = single++;
      } else {
        cells[u] = new int[CELLS];
        Arrays.fill(cells[u], -1);
        base[t] = u++ << TILE_SHIFT;
      }
    }
    this.blocksFrom = single;
    this.singles = new int[single - singlesFrom + rows.blocks()];
    Arrays.fill(singles, -1);
    this.singleSizes = new long[singles.length];
    Arrays.fill(singleSizes, CELLS);
    for (int b = 0; b < rows.blocks(); b++) {
      int[] box = rows.cells(b);
      singleSizes[blocksFrom - singlesFrom + b] =
          Math.max(0L, box[1] - (long) box[0] + 1) * Math.max(0L, box[3] - (long) box[2] + 1);
    }
  }

  /** How many tiles hold more than one height. */
  static int uneven(TileRows rows) {
    int count = 0;
    for (int t = 0; t < rows.tiles(); t++) {
      count += rows.tile(t).even() ? 0 : 1;
    }
    return count;
  }

  // Nodes.

  private int get(int node) {
    return node < singlesFrom
        ? cells[node >> TILE_SHIFT][node & (CELLS - 1)]
        : singles[node - singlesFrom];
  }

  private void set(int node, int value) {
    if (node < singlesFrom) {
      cells[node >> TILE_SHIFT][node & (CELLS - 1)] = value;
    } else {
      singles[node - singlesFrom] = value;
    }
  }

  /** The node of a cell of a tile. */
  int node(int tile, int place) {
    return base[tile] < singlesFrom ? base[tile] + place : base[tile];
  }

  int blockNode(int block) {
    return blocksFrom + block;
  }

  /** The node of a cell anywhere; negative where there is none. */
  int nodeAt(int column, int row) {
    int tileColumn = column >> HeightGrid.SHIFT;
    int tileRow = row >> HeightGrid.SHIFT;
    int tile = rows.find(tileColumn, tileRow);
    if (tile >= 0) {
      return node(tile, HeightGrid.place(column, row));
    }
    int block = rows.block(tileColumn, tileRow);
    return block < 0 ? -1 : blockNode(block);
  }

  /** Whether a node is the root of its set. */
  boolean isRoot(int node) {
    return get(node) < 0;
  }

  int root(int node) {
    int at = node;
    while (true) {
      int parent = get(at);
      if (parent < 0) {
        return at;
      }
      int above = get(parent);
      if (above < 0) {
        return parent;
      }
      set(at, above);
      at = above;
    }
  }

  /** How many cells the set of this root has. */
  long size(int root) {
    return root < singlesFrom ? -get(root) : singleSizes[root - singlesFrom];
  }

  private void join(int a, int b) {
    int first = root(a);
    int second = root(b);
    if (first == second) {
      return;
    }
    // Only a single can hold a size beyond that of an int.
    boolean swap =
        first < singlesFrom == second < singlesFrom
            ? size(second) > size(first)
            : second >= singlesFrom;
    int upper = swap ? second : first;
    int lower = swap ? first : second;
    long size = size(upper) + size(lower);
    set(lower, upper);
    if (upper < singlesFrom) {
      set(upper, (int) -size);
    } else {
      singleSizes[upper - singlesFrom] = size;
    }
  }

  // Joining.

  /** Whether two heights are of one area. */
  boolean alike(long one, long other) {
    return one == other
        ? surface.stands(one) == Stands.SURFACE
        : surface.stands(one) == Stands.SURFACE
            && surface.stands(other) == Stands.SURFACE
            && step(one) == step(other);
  }

  private long step(long height) {
    return Math.floorDiv(height + tolerance / 2, tolerance);
  }

  /** Joins all that belongs together. */
  void join() {
    for (int t = 0; t < rows.tiles(); t++) {
      if (!rows.tile(t).even()) {
        within(t);
      }
    }
    for (int t = 0; t < rows.tiles(); t++) {
      edge(t, 1, 0);
      edge(t, 0, 1);
      edge(t, -1, 0);
      edge(t, 0, -1);
    }
    if (rows.blocks() > 0) {
      blocks();
    }
  }

  /**
   * Joins within a tile of which no cell is joined yet: runs of its rows, then each to those below.
   */
  private void within(int t) {
    HeightGrid.Tile tile = rows.tile(t);
    int first = base[t];
    int[] own = cells[first >> TILE_SHIFT];
    long[] heights = tile.heights;
    int[] startBelow = new int[HeightGrid.SIDE];
    int[] endBelow = new int[HeightGrid.SIDE];
    int[] startHere = new int[HeightGrid.SIDE];
    int[] endHere = new int[HeightGrid.SIDE];
    for (int row = 0; row < CELLS; row += HeightGrid.SIDE) {
      int start = row;
      while (start < row + HeightGrid.SIDE) {
        long height = heights[start];
        boolean stands = surface.stands(height) == Stands.SURFACE;
        int end = start + 1;
        while (stands
            && end < row + HeightGrid.SIDE
            && (heights[end] == height || alike(height, heights[end]))) {
          own[end++] = first + start;
        }
        own[start] = start - end;
        for (int k = start; stands && row > 0 && k < end; k = row + endBelow[k - row]) {
          int below = startBelow[k - row];
          if (alike(height, heights[below])) {
            join(first + start, first + below);
          }
        }
        Arrays.fill(startHere, start - row, end - row, start);
        Arrays.fill(endHere, start - row, end - row, end - row);
        start = end;
      }
      int[] starts = startBelow;
      int[] ends = endBelow;
      startBelow = startHere;
      endBelow = endHere;
      startHere = starts;
      endHere = ends;
    }
  }

  /** Joins across one edge of a tile; of two tiles the left or lower one sees to it. */
  private void edge(int t, int right, int up) {
    HeightGrid.Tile tile = rows.tile(t);
    int other = rows.find(tile.column + right, tile.row + up);
    boolean backward = right + up < 0;
    if (other >= 0 && backward) {
      return;
    }
    int left = tile.column << HeightGrid.SHIFT;
    int low = tile.row << HeightGrid.SHIFT;
    for (int k = 0; k <= LAST; k++) {
      int column = right == 0 ? left + k : left + (right > 0 ? LAST : 0);
      int row = up == 0 ? low + k : low + (up > 0 ? LAST : 0);
      int place = HeightGrid.place(column, row);
      int otherPlace = HeightGrid.place(column + right, row + up);
      long otherHeight =
          other >= 0
              ? rows.tile(other).heightOf(otherPlace)
              : grid.height(column + right, row + up);
      if (alike(tile.heightOf(place), otherHeight)) {
        join(
            node(t, place),
            other >= 0 ? node(other, otherPlace) : nodeAt(column + right, row + up));
        if (tile.even() && (other < 0 || rows.tile(other).even())) {
          return;
        }
      }
    }
  }

  /** Joins the uncut stock between the tiles; all of it has one height. */
  private void blocks() {
    int bands = rows.tiles() + rows.rows();
    for (int k = 0; k <= rows.rows(); k++) {
      // The band below row k, and the rows on both sides of it.
      boolean band = !empty(rows.cells(bands + k));
      if (band && k > 0) {
        joinGaps(k - 1, bands + k);
      }
      if (band && k < rows.rows()) {
        joinGaps(k, bands + k);
      }
      if (!band && k > 0 && k < rows.rows()) {
        joinRows(k - 1, k);
      }
    }
  }

  private static boolean empty(int[] box) {
    return box[0] > box[1] || box[2] > box[3];
  }

  private void joinGaps(int k, int band) {
    for (int b = rows.start(k) + k; b <= rows.start(k + 1) + k; b++) {
      if (!empty(rows.cells(b))) {
        join(blockNode(b), blockNode(band));
      }
    }
  }

  /** Joins the gaps of two rows of tiles that follow each other. */
  private void joinRows(int k, int next) {
    int a = rows.start(k) + k;
    int b = rows.start(next) + next;
    while (a <= rows.start(k + 1) + k && b <= rows.start(next + 1) + next) {
      int[] one = rows.cells(a);
      int[] other = rows.cells(b);
      boolean overlap = Math.max(one[0], other[0]) <= Math.min(one[1], other[1]);
      if (overlap && !empty(one) && !empty(other)) {
        join(blockNode(a), blockNode(b));
      }
      if (one[1] < other[1]) {
        a++;
      } else {
        b++;
      }
    }
  }

  // Labels, once all is joined.

  /** Gives every root a label: 0 or more, or {@link #NONE}. From then on only labels are known. */
  void label(java.util.function.IntUnaryOperator labelOfRoot) {
    for (int u = 0; u <= cells.length; u++) {
      // Cells side by side mostly have one parent.
      int[] own = nodes(u);
      int before = NONE;
      int root = NONE;
      for (int k = 0; k < own.length; k++) {
        if (own[k] >= 0) {
          if (own[k] != before) {
            before = own[k];
            root = root(before);
          }
          own[k] = root;
        }
      }
    }
    for (int u = 0; u <= cells.length; u++) {
      int[] own = nodes(u);
      for (int k = 0; k < own.length; k++) {
        if (own[k] < 0) {
          own[k] = -2 - labelOfRoot.applyAsInt((u << TILE_SHIFT) + k);
        }
      }
    }
    for (int u = 0; u <= cells.length; u++) {
      int[] own = nodes(u);
      int before = NONE;
      int label = NONE;
      for (int k = 0; k < own.length; k++) {
        if (own[k] >= 0) {
          if (own[k] != before) {
            before = own[k];
            label = get(before);
          }
          own[k] = label;
        }
      }
    }
  }

  /** The nodes of an uneven tile; behind the last the singles. */
  private int[] nodes(int u) {
    return u < cells.length ? cells[u] : singles;
  }

  /** The nodes of the cells of an uneven tile: those below zero are roots. */
  int[] ofTile(int tile) {
    return cells[base[tile] >> TILE_SHIFT];
  }

  /** The label of a cell of an uneven tile. */
  static int labelIn(int[] ofTile, int place) {
    return -2 - ofTile[place];
  }

  /** The label of a node. */
  int labelOf(int node) {
    return -2 - get(node);
  }

  /** The label of a cell of a tile. */
  int label(int tile, int place) {
    return labelOf(node(tile, place));
  }
}

package hairline.checks.stock;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;

/**
 * Finds the terraces of a surface: connected areas of one height.
 *
 * <p>Slopes, balls and ramps fall into thousands of areas of a cell or a thin line of cells, for
 * each height one. So an area counts as a terrace only with a square of cells that nothing but a
 * flat leaves: {@value #LEVEL_SIDE} by {@value #LEVEL_SIDE} cells that a level or the uncut top
 * left, or {@value #FLAT_SIDE} by {@value #FLAT_SIDE} of exactly one height whatever left them (the
 * ground of a plunge); and only from {@value #FEWEST_CELLS} cells on. What is none is counted.
 *
 * <p>Memory: beside the field, which holds 48 KiB for each tile with more than one height, 16 KiB
 * for each such tile. Up to {@value #MOST_TILES} of them are looked at, so that field and labels
 * together stay within 512 MiB; beyond, no terraces are told, and that is said.
 */
final class TerraceFinder {
  /** Side of the square of cells that makes what a level left a terrace. */
  static final int LEVEL_SIDE = 2;

  /** Side of the square of cells that makes any surface a terrace. */
  static final int FLAT_SIDE = 8;

  /** Fewest cells of a terrace. */
  static final int FEWEST_CELLS = 16;

  /** Most tiles with more than one height. */
  static final int MOST_TILES = 8192;

  /** Most terraces told. */
  static final int MOST_TERRACES = 10_000;

  private static final double MM2_PER_PM2 = 1e-18;
  private static final int CELLS = HeightGrid.SIDE * HeightGrid.SIDE;
  private static final long[] NO_HEIGHTS = {};
  private static final int LAST = HeightGrid.SIDE - 1;

  private final SurfaceLeft surface;
  private final HeightGrid grid;
  private final long tolerance;
  private final int mostTiles;
  private final int mostTerraces;
  private final List<String> left = new ArrayList<>();
  private int terraces;
  private long otherAreas;
  private long otherCells;

  TerraceFinder(SurfaceLeft surface, long tolerancePm) {
    this(surface, tolerancePm, MOST_TILES, MOST_TERRACES);
  }

  /** With other caps. */
  TerraceFinder(SurfaceLeft surface, long tolerancePm, int mostTiles, int mostTerraces) {
    this.surface = surface;
    this.grid = surface.grid();
    this.tolerance = tolerancePm;
    this.mostTiles = mostTiles;
    this.mostTerraces = mostTerraces;
  }

  /** Tells in which terrace a cell lies. */
  @FunctionalInterface
  interface TerraceAt {
    /** The terrace's id, 0 for none. */
    int id(int column, int row);
  }

  /** What was found; the second part holds the working memory. */
  record Found(Terraces terraces, TerraceAt at) {}

  /** Finds them. */
  Found find() {
    return find(true);
  }

  /**
   * Finds them.
   *
   * @param borders whether neighbours and edges are looked for too; else there are none
   */
  Found find(boolean borders) {
    if (!surface.known()) {
      return new Found(new Terraces(List.of(), 0, 0, List.of()), (column, row) -> 0);
    }
    TileRows rows = new TileRows(grid, surface.stock().isPresent());
    if (AreaLabels.uneven(rows) > mostTiles) {
      left.add("terraces: more than " + mostTiles + " tiles of cells with several heights");
      return new Found(new Terraces(List.of(), 0, 0, left), (column, row) -> 0);
    }
    AreaLabels labels = new AreaLabels(surface, rows, tolerance);
    labels.join();
    BitSet accepted = accepted(rows, labels);
    countOthers(rows, labels, accepted);
    int[] next = {0};
    labels.label(root -> accepted.get(root) ? next[0]++ : AreaLabels.NONE);
    Measured[] measured = measured(rows, labels);
    int[] idOf = ids(measured);
    TerraceBorders found = new TerraceBorders(surface, rows, labels, heights(measured));
    if (borders) {
      found.find();
    }
    if (found.capReached()) {
      left.add("neighbours of terraces: more than " + TerraceBorders.MOST_BORDERS);
    }
    List<TerraceArea> areas = areas(measured, idOf, found);
    double cellMm2 = (double) grid.cellPm() * grid.cellPm() * MM2_PER_PM2;
    return new Found(
        new Terraces(areas, otherAreas, otherCells * cellMm2, left),
        (column, row) -> {
          int node = labels.nodeAt(column, row);
          int label = node < 0 ? AreaLabels.NONE : labels.labelOf(node);
          return label < 0 || surface.stands(column, row) != Stands.SURFACE ? 0 : idOf[label];
        });
  }

  // Which areas are terraces.

  private BitSet accepted(TileRows rows, AreaLabels labels) {
    BitSet accepted = new BitSet();
    for (int t = 0; t < rows.tiles(); t++) {
      HeightGrid.Tile tile = rows.tile(t);
      if (!tile.even()) {
        lookAt(tile, labels, accepted);
      } else if (surface.stands(tile.heightOf(0)) == Stands.SURFACE) {
        accept(labels.root(labels.node(t, 0)), accepted);
      }
    }
    for (int b = 0; b < rows.blocks(); b++) {
      int[] box = rows.cells(b);
      if (box[1] > box[0] && box[3] > box[2] && surface.stands(box[0], box[2]) == Stands.SURFACE) {
        accept(labels.root(labels.blockNode(b)), accepted);
      }
    }
    return accepted;
  }

  /** Every square of cells that begins in this tile, or one cell left of it or below. */
  private void lookAt(HeightGrid.Tile tile, AreaLabels labels, BitSet accepted) {
    int fromColumn = tile.column << HeightGrid.SHIFT;
    int fromRow = tile.row << HeightGrid.SHIFT;
    HeightGrid.Tile below = grid.find(tile.column, tile.row - 1);
    for (int row = fromRow - 1; row <= fromRow + LAST; row++) {
      HeightGrid.Tile holds = row < fromRow ? below : tile;
      long[] heights = holds == null ? NO_HEIGHTS : holds.heights;
      int place = HeightGrid.place(fromColumn, row) - fromColumn;
      // Cells of one height side by side are of one area, which is asked about once.
      long settled = HeightGrid.AIR_HEIGHT;
      for (int column = fromColumn - 1; column <= fromColumn + LAST; column++) {
        long height =
            holds == null || column < fromColumn
                ? grid.height(column, row)
                : heights.length == 0 ? holds.heightOf(0) : heights[place + column];
        if (height != settled) {
          settled = height;
          if (surface.stands(height) == Stands.SURFACE
              && !isSettled(tile, labels, column, row, accepted)) {
            settled = HeightGrid.AIR_HEIGHT;
          }
        }
      }
    }
  }

  /** Whether the area of a cell is told to be a terrace, or is known to be none. */
  private boolean isSettled(
      HeightGrid.Tile tile, AreaLabels labels, int column, int row, BitSet accepted) {
    int root = labels.root(labels.nodeAt(column, row));
    if (accepted.get(root) || labels.size(root) < FEWEST_CELLS) {
      return true;
    }
    if (!levelSquare(tile, labels, column, row) && !flatSquare(tile, column, row)) {
      return false;
    }
    accept(root, accepted);
    return accepted.get(root);
  }

  private void accept(int root, BitSet accepted) {
    if (accepted.get(root)) {
      return;
    }
    if (terraces >= mostTerraces) {
      if (left.isEmpty()) {
        left.add("terraces: more than " + mostTerraces);
      }
      return;
    }
    terraces++;
    accepted.set(root);
  }

  private boolean levelSquare(HeightGrid.Tile tile, AreaLabels labels, int column, int row) {
    long height = grid.height(tile, column, row);
    for (int j = row; j < row + LEVEL_SIDE; j++) {
      for (int i = column; i < column + LEVEL_SIDE; i++) {
        if (grid.id(tile, i, j) < 0 || !labels.alike(height, grid.height(tile, i, j))) {
          return false;
        }
      }
    }
    return true;
  }

  private boolean flatSquare(HeightGrid.Tile tile, int column, int row) {
    long height = grid.height(tile, column, row);
    for (int j = row; j < row + FLAT_SIDE; j++) {
      for (int i = column; i < column + FLAT_SIDE; i++) {
        if (grid.height(tile, i, j) != height) {
          return false;
        }
      }
    }
    return true;
  }

  private void countOthers(TileRows rows, AreaLabels labels, BitSet accepted) {
    for (int t = 0; t < rows.tiles(); t++) {
      HeightGrid.Tile tile = rows.tile(t);
      if (!tile.even()) {
        int[] own = labels.ofTile(t);
        for (int k = 0; k < CELLS; k++) {
          if (own[k] < 0 && surface.stands(tile.heights[k]) == Stands.SURFACE) {
            countOther(labels.node(t, k), labels, accepted);
          }
        }
      }
    }
    for (int b = 0; b < rows.blocks(); b++) {
      countOther(labels.blockNode(b), labels, accepted);
    }
  }

  private void countOther(int node, AreaLabels labels, BitSet accepted) {
    if (labels.isRoot(node) && !accepted.get(node) && labels.size(node) > 0) {
      otherAreas++;
      otherCells += labels.size(node);
    }
  }

  // What they are like.

  /** A terrace while its cells are counted. */
  private static final class Measured {
    private long cells;
    private int fromColumn = Integer.MAX_VALUE;
    private int toColumn = Integer.MIN_VALUE;
    private int fromRow = Integer.MAX_VALUE;
    private int toRow = Integer.MIN_VALUE;
    private int firstColumn;
    private long lowest = Long.MAX_VALUE;
    private long highest = Long.MIN_VALUE;
    private final Vote height = new Vote();
    private final Vote level = new Vote();

    void add(int column0, int column1, int row0, int row1, long z, int id) {
      long count = (column1 - (long) column0 + 1) * (row1 - (long) row0 + 1);
      if (row0 < fromRow) {
        fromRow = row0;
        firstColumn = column0;
      } else if (row0 == fromRow) {
        firstColumn = Math.min(firstColumn, column0);
      }
      cells += count;
      fromColumn = Math.min(fromColumn, column0);
      toColumn = Math.max(toColumn, column1);
      toRow = Math.max(toRow, row1);
      lowest = Math.min(lowest, z);
      highest = Math.max(highest, z);
      height.add(z, count);
      if (id >= 0) {
        level.add(id, count);
      }
    }
  }

  /**
   * Finds the value that more than half of many have, in one walk and with no table (the majority
   * vote of Boyer and Moore, from memory); where there is none it ends with some value.
   */
  private static final class Vote {
    private long value = Cut.NO_LEVEL;
    private long lead;

    void add(long candidate, long count) {
      if (candidate == value) {
        lead += count;
      } else if (count > lead) {
        value = candidate;
        lead = count - lead;
      } else {
        lead -= count;
      }
    }
  }

  private Measured[] measured(TileRows rows, AreaLabels labels) {
    Measured[] all = new Measured[terraces];
    for (int k = 0; k < all.length; k++) {
      all[k] = new Measured();
    }
    for (int t = 0; t < rows.tiles(); t++) {
      HeightGrid.Tile tile = rows.tile(t);
      int column = tile.column << HeightGrid.SHIFT;
      int row = tile.row << HeightGrid.SHIFT;
      if (tile.even()) {
        int label = labels.label(t, 0);
        if (label >= 0) {
          all[label].add(column, column + LAST, row, row + LAST, tile.heightOf(0), tile.idOf(0));
        }
      } else {
        measure(tile, t, labels, all);
      }
    }
    for (int b = 0; b < rows.blocks(); b++) {
      int[] box = rows.cells(b);
      int label = labels.labelOf(labels.blockNode(b));
      if (label >= 0 && box[0] <= box[1] && box[2] <= box[3]) {
        all[label].add(box[0], box[1], box[2], box[3], grid.height(box[0], box[2]), Cut.UNCUT);
      }
    }
    return all;
  }

  private static void measure(HeightGrid.Tile tile, int t, AreaLabels labels, Measured[] all) {
    long[] heights = tile.heights;
    int[] ids = tile.ids;
    int[] own = labels.ofTile(t);
    for (int row = 0; row <= LAST; row++) {
      int from = 0;
      while (from <= LAST) {
        int k = (row << HeightGrid.SHIFT) + from;
        int label = AreaLabels.labelIn(own, k);
        long height = heights[k];
        int id = ids[k];
        int to = from;
        while (to < LAST
            && heights[k + to - from + 1] == height
            && ids[k + to - from + 1] == id
            && AreaLabels.labelIn(own, k + to - from + 1) == label) {
          to++;
        }
        if (label >= 0) {
          int column = (tile.column << HeightGrid.SHIFT) + from;
          int y = (tile.row << HeightGrid.SHIFT) + row;
          all[label].add(column, column + to - from, y, y, height, id);
        }
        from = to + 1;
      }
    }
  }

  /** The id of each, in the order of their first cells. */
  private static int[] ids(Measured[] measured) {
    List<Integer> order = new ArrayList<>();
    for (int k = 0; k < measured.length; k++) {
      order.add(k);
    }
    order.sort(
        (one, other) -> {
          int rows = Integer.compare(measured[one].fromRow, measured[other].fromRow);
          return rows != 0
              ? rows
              : Integer.compare(measured[one].firstColumn, measured[other].firstColumn);
        });
    int[] ids = new int[measured.length];
    for (int place = 0; place < ids.length; place++) {
      ids[order.get(place)] = place + 1;
    }
    return ids;
  }

  private static long[] heights(Measured[] measured) {
    long[] heights = new long[measured.length];
    for (int k = 0; k < heights.length; k++) {
      heights[k] = measured[k].height.value;
    }
    return heights;
  }

  private List<TerraceArea> areas(Measured[] measured, int[] ids, TerraceBorders borders) {
    List<List<TerraceArea.Neighbour>> neighbours = new ArrayList<>();
    for (int k = 0; k < measured.length; k++) {
      neighbours.add(new ArrayList<>());
    }
    double cellMm = grid.cellPm() / 1e9;
    for (Map.Entry<TerraceBorders.Pair, Long> border : borders.edges().entrySet()) {
      int a = border.getKey().one();
      int b = border.getKey().other();
      long step = measured[b].height.value - measured[a].height.value;
      double length = border.getValue() * cellMm;
      neighbours.get(a).add(new TerraceArea.Neighbour(ids[b], step, length));
      neighbours.get(b).add(new TerraceArea.Neighbour(ids[a], -step, length));
    }
    TerraceArea[] areas = new TerraceArea[measured.length];
    for (int k = 0; k < areas.length; k++) {
      neighbours.get(k).sort((one, other) -> Integer.compare(one.id(), other.id()));
      areas[ids[k] - 1] = area(measured[k], ids[k], neighbours.get(k), borders.beside(k));
    }
    return List.of(areas);
  }

  private TerraceArea area(
      Measured one, int id, List<TerraceArea.Neighbour> neighbours, java.util.Set<Stands> beside) {
    long cell = grid.cellPm();
    return new TerraceArea(
        id,
        one.height.value,
        one.lowest,
        one.highest,
        (int) one.level.value,
        one.cells,
        one.cells * ((double) cell * cell * MM2_PER_PM2),
        one.fromColumn * cell,
        (one.toColumn + 1L) * cell,
        one.fromRow * cell,
        (one.toRow + 1L) * cell,
        neighbours,
        beside);
  }
}

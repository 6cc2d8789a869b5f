package hairline.checks.stock;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Finds where levels of different height adjoin on the finished part, by walking every row and
 * every column of the grid. A terrace narrower than two cells is no terrace but a sliver, and is
 * looked across; so is a strip of surface that is no level, as wide as two of the largest corner
 * radius leave one.
 */
final class StepFinder {
  /**
   * The border of two levels in one feature. Of two that are equal as stored, the upper one is that
   * with the smaller id.
   *
   * @param feature index among features, -1 for none
   */
  record Border(int upperId, int lowerId, int feature) {}

  /** Cell edges that separate two levels, along X and along Y. */
  static final class Length {
    private int alongX;
    private int alongY;

    /**
     * Length in cells: exact for a straight border at any angle, up to three tenths short for one
     * that winds.
     */
    double cells() {
      return Math.sqrt((double) alongX * alongX + (double) alongY * alongY);
    }
  }

  /** Tells in which feature a point lies. */
  @FunctionalInterface
  interface FeatureAt {
    /** Index of the feature, -1 for none. */
    int of(double x, double y);
  }

  /** Tells of two levels of one height whether they were written differently. */
  @FunctionalInterface
  interface WrittenApart {
    /** Whether they differ as written. */
    boolean test(int oneId, int otherId);
  }

  private static final int CELLS_OF_TERRACE = 2;

  private final HeightGrid grid;
  private final int mostAcross;
  private final int cap;
  private final FeatureAt features;
  private final WrittenApart apart;
  private final Map<Border, Length> borders = new HashMap<>();
  private boolean capReached;

  // The walk along one row or column.
  private boolean alongRow;
  private int lineIndex;
  private boolean runOpen;
  private long runHeight;
  private int runId;
  private int runCells;
  private int runStart;
  private boolean terraceSeen;
  private long terraceHeight;
  private int terraceId;
  private int terraceEnd;

  /**
   * A finder.
   *
   * @param widestCornerPm the largest corner radius used
   * @param cap most borders kept
   * @param apart which levels of one height count as two
   */
  StepFinder(
      HeightGrid grid, double widestCornerPm, int cap, FeatureAt features, WrittenApart apart) {
    this.grid = grid;
    // The foot of the wall, and the rounded edge that the last pass above left.
    this.mostAcross = 2 * (int) Math.ceil(widestCornerPm / grid.cellPm()) + CELLS_OF_TERRACE;
    this.cap = cap;
    this.features = features;
    this.apart = apart;
  }

  boolean capReached() {
    return capReached;
  }

  /** The borders found. */
  Map<Border, Length> find() {
    HeightGrid.Tile[] tiles = grid.tiles();
    alongRow = true;
    Arrays.sort(tiles, TileRows::byRow);
    walk(tiles);
    alongRow = false;
    Arrays.sort(tiles, TileRows::byColumn);
    walk(tiles);
    return borders;
  }

  /** Across a line of tiles: its row when walking along rows, else its column. */
  private int line(HeightGrid.Tile tile) {
    return alongRow ? tile.row : tile.column;
  }

  private int along(HeightGrid.Tile tile) {
    return alongRow ? tile.column : tile.row;
  }

  private void walk(HeightGrid.Tile[] tiles) {
    int first = 0;
    while (first < tiles.length) {
      int last = first;
      while (last + 1 < tiles.length && line(tiles[last + 1]) == line(tiles[first])) {
        last++;
      }
      for (int k = 0; k < HeightGrid.SIDE; k++) {
        walkLine(tiles, first, last, k);
      }
      first = last + 1;
    }
  }

  private void walkLine(HeightGrid.Tile[] tiles, int first, int last, int k) {
    lineIndex = (line(tiles[first]) << HeightGrid.SHIFT) + k;
    begin();
    for (int t = first; t <= last; t++) {
      int here = along(tiles[t]);
      if (t == first || along(tiles[t - 1]) < here - 1) {
        // Next to it nothing was cut.
        if (t > first && along(tiles[t - 1]) < here - 2) {
          endRun();
          begin();
        }
        walkTile(null, here - 1);
      }
      walkTile(tiles[t], here);
      if (t == last || along(tiles[t + 1]) > here + 2) {
        walkTile(null, here + 1);
      }
    }
    endRun();
  }

  private void walkTile(HeightGrid.@Nullable Tile tile, int along) {
    int start = along << HeightGrid.SHIFT;
    if (tile != null && tile.even()) {
      put(tile.heightOf(0), tile.idOf(0), start, HeightGrid.SIDE);
      return;
    }
    if (tile == null) {
      walkUncut(start, start + HeightGrid.SIDE);
      return;
    }
    long[] heights = tile.heights;
    int[] ids = tile.ids;
    int step = alongRow ? 1 : HeightGrid.SIDE;
    int first = alongRow ? HeightGrid.place(0, lineIndex) : HeightGrid.place(lineIndex, 0);
    int end = first + step * HeightGrid.SIDE;
    int cell = start;
    for (int from = first; from < end; ) {
      long height = heights[from];
      int id = ids[from];
      int to = from + step;
      int cells = 1;
      while (to < end && heights[to] == height && ids[to] == id) {
        to += step;
        cells++;
      }
      put(height, id, cell, cells);
      cell += cells;
      from = to;
    }
  }

  /** Cells where no tile is: before, within and behind the stock they are alike. */
  private void walkUncut(int start, int end) {
    int stockFrom = alongRow ? grid.boxFrom() : grid.boxRowFrom();
    int stockTo = alongRow ? grid.boxTo() : grid.boxRowTo();
    int from = start;
    while (from < end) {
      int to =
          from < stockFrom ? stockFrom : from <= stockTo ? (int) Math.min(end, stockTo + 1L) : end;
      to = Math.min(to, end);
      int column = alongRow ? from : lineIndex;
      int row = alongRow ? lineIndex : from;
      put(grid.height(column, row), grid.id(column, row), from, to - from);
      from = to;
    }
  }

  private void begin() {
    runOpen = false;
    terraceSeen = false;
  }

  private void put(long height, int id, int start, int cells) {
    if (runOpen && runHeight == height && runId == id) {
      runCells += cells;
      return;
    }
    endRun();
    runOpen = true;
    runHeight = height;
    runId = id;
    runCells = cells;
    runStart = start;
  }

  private void endRun() {
    if (!runOpen) {
      return;
    }
    runOpen = false;
    boolean surfaceOfNoPart =
        runId == HeightGrid.VIRGIN || runId == HeightGrid.AIR || runId == HeightGrid.LOST;
    if (surfaceOfNoPart) {
      terraceSeen = false;
      return;
    }
    if (runId < 0 || runCells < CELLS_OF_TERRACE) {
      return;
    }
    if (terraceSeen && runStart - terraceEnd <= mostAcross && differs()) {
      border();
    }
    terraceSeen = true;
    terraceHeight = runHeight;
    terraceId = runId;
    terraceEnd = runStart + runCells;
  }

  private boolean differs() {
    return runHeight != terraceHeight || (runId != terraceId && apart.test(runId, terraceId));
  }

  private void border() {
    double middle = (terraceEnd + runStart) / 2.0 * grid.cellPm();
    double across = grid.centre(lineIndex);
    int feature = alongRow ? features.of(middle, across) : features.of(across, middle);
    boolean down = terraceHeight == runHeight ? terraceId < runId : terraceHeight > runHeight;
    Border border = new Border(down ? terraceId : runId, down ? runId : terraceId, feature);
    Length length = borders.get(border);
    if (length == null) {
      if (borders.size() >= cap) {
        capReached = true;
        return;
      }
      length = new Length();
      borders.put(border, length);
    }
    if (alongRow) {
      length.alongY++;
    } else {
      length.alongX++;
    }
  }
}

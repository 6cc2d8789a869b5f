package hairline.checks.stock;

import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The surface of the part under one work offset: a sparse grid of square cells, each with the
 * stored height of its floor and what left it.
 *
 * <p>A cell belongs to the tool when its centre does, so borders are known to half a cell. A flat
 * tool at constant Z leaves its floor at exactly its Z; under ramps, balls and corner radii the
 * height is that of the tool's profile over the cell's centre. Tiles of 64 × 64 cells exist where
 * something was cut, and hold arrays only while their cells differ. At the cap, tiles that have
 * become even give their arrays up; where that doesn't help, the tile is lost: its heights are
 * unknown from then on.
 */
final class HeightGrid {
  /** Uncut stock whose top is not known. */
  static final int VIRGIN = -2;

  /** Outside of the stock box. */
  static final int AIR = -3;

  /** A surface that a move of unknown course may have cut. */
  static final int LOST = -4;

  /** Stands for any id. */
  static final int WHICHEVER = -5;

  /** Ids up to here are entries: ramps and plunges, told apart while they last. */
  static final int FIRST_ENTRY = -16;

  static final long VIRGIN_HEIGHT = Long.MAX_VALUE;
  static final long AIR_HEIGHT = Long.MIN_VALUE;
  static final long LOST_HEIGHT = Long.MIN_VALUE + 1;

  static final int SHIFT = 6;
  static final int SIDE = 1 << SHIFT;
  private static final int MASK = SIDE - 1;
  private static final int EVEN_TILES_PER_TILE = 32;
  private static final int ASKED_TO_LOOK = 64;

  /** Of a tile with more than one height: a long and an int for each cell and each block. */
  static final long BYTES_PER_TILE = 12L * (SIDE * SIDE + HeightGrid.BLOCKS * HeightGrid.BLOCKS);

  private static final long[] NO_HEIGHTS = {};
  private static final int[] NO_IDS = {};

  /** Cells along a block: of each block of a tile the highest cell is known. */
  static final int BLOCK_SHIFT = 2;

  static final int BLOCK = 1 << BLOCK_SHIFT;
  private static final int BLOCKS_SHIFT = SHIFT - BLOCK_SHIFT;
  private static final int BLOCKS = 1 << BLOCKS_SHIFT;

  /** The highest cells of a block are of several ids. */
  private static final int MIXED = Integer.MAX_VALUE;

  /** Cells of the block were lowered or given away since it was last looked at. */
  static final int STALE = Integer.MAX_VALUE - 1;

  /** The floor that a tool leaves where it passes over a point; heights in picometres. */
  interface Floor {
    /** Height of the floor over this point. */
    long at(double x, double y);

    /**
     * Whether the tool, for certain, lowers no cell of a square.
     *
     * @param height none of them is higher
     * @param x middle of the square
     * @param y middle of the square
     * @param half half of the distance of its outermost centres; 0 for one cell
     */
    boolean spares(long height, double x, double y, double half);

    /** Height from which the depth of the cut at this point is measured. */
    long tip(double x, double y, long floor);

    /**
     * Along a straight stretch, from where on it may lower anything; below zero before its start.
     */
    default double begins() {
      return Double.NEGATIVE_INFINITY;
    }
  }

  /** A square of cells, all alike while it has no arrays. */
  static final class Tile {
    final int column;
    final int row;
    long[] heights = NO_HEIGHTS;
    int[] ids = NO_IDS;
    long height;
    int id;

    // Of each block: no cell is higher than this, and who left those that are as high.
    long[] tops = NO_HEIGHTS;
    int[] topIds = NO_IDS;

    // No cell is higher than this; looked at anew once in a while.
    private long peak;
    private int asked;

    Tile(int column, int row, long height, int id) {
      this.column = column;
      this.row = row;
      this.height = height;
      this.id = id;
    }

    boolean even() {
      return heights.length == 0;
    }

    boolean holds(int aColumn, int aRow) {
      return aColumn >> SHIFT == column && aRow >> SHIFT == row;
    }

    long heightOf(int k) {
      return even() ? height : heights[k];
    }

    int idOf(int k) {
      return even() ? id : ids[k];
    }

    /** A height that no cell exceeds, mostly that of the highest. */
    long peak() {
      if (even()) {
        return height;
      }
      if (++asked >= ASKED_TO_LOOK) {
        asked = 0;
        long highest = AIR_HEIGHT;
        for (int block = 0; block < tops.length; block++) {
          if (topIds[block] == STALE) {
            refresh(block);
          }
          highest = Math.max(highest, tops[block]);
        }
        peak = highest;
      }
      return peak;
    }

    /**
     * Looks at the cells of a block that has become stale, until one is above a height.
     *
     * @return whether none is; only then the block is no longer stale
     */
    boolean refreshUpTo(int block, long z) {
      int k = firstPlace(block);
      long top = heights[k];
      int topId = ids[k];
      for (int row = 0; row < BLOCK; row++, k += SIDE) {
        for (int i = k; i < k + BLOCK; i++) {
          long other = heights[i];
          if (other > z) {
            return false;
          }
          if (other > top) {
            top = other;
            topId = ids[i];
          } else if (other == top && ids[i] != topId) {
            topId = MIXED;
          }
        }
      }
      tops[block] = top;
      topIds[block] = topId;
      return true;
    }

    /** Whether no cell of a block stands above a height; not for even tiles. */
    boolean liesUpTo(int block, long z) {
      return tops[block] <= z || (topIds[block] == STALE && refreshUpTo(block, z));
    }

    private static int firstPlace(int block) {
      return (block >> BLOCKS_SHIFT << (BLOCK_SHIFT + SHIFT))
          | (block & (BLOCKS - 1)) << BLOCK_SHIFT;
    }

    /** Looks at the cells of a block that has become stale. */
    void refresh(int block) {
      int k = firstPlace(block);
      long top = heights[k];
      int topId = ids[k];
      for (int row = 0; row < BLOCK; row++, k += SIDE) {
        for (int i = k; i < k + BLOCK; i++) {
          long other = heights[i];
          if (other > top) {
            top = other;
            topId = ids[i];
          } else if (other == top && ids[i] != topId) {
            topId = MIXED;
          }
        }
      }
      tops[block] = top;
      topIds[block] = topId;
    }

    private void allStale() {
      Arrays.fill(topIds, STALE);
    }
  }

  /** Counts the tiles of all grids of a program against their cap. */
  static final class TileBudget {
    private final int cap;
    private int uneven;
    private int made;
    private int expandedSinceSearch;
    private boolean reached;

    TileBudget(int cap) {
      this.cap = cap;
      this.expandedSinceSearch = cap;
    }

    boolean reached() {
      return reached;
    }
  }

  private final long cell;
  private final Optional<StockModel.Box> box;
  private final TileBudget budget;

  // Open addressing by column and row; the load stays below a half.
  private @Nullable Tile[] table = new @Nullable Tile[64];
  private int count;
  private boolean lossy;

  // Cells whose centres lie in the stock box.
  private final int boxFrom;
  private final int boxTo;
  private final int boxRowFrom;
  private final int boxRowTo;

  HeightGrid(long cellPm, Optional<StockModel.Box> box, TileBudget budget) {
    this.cell = cellPm;
    this.box = box;
    this.budget = budget;
    boxFrom = box.map(b -> firstCentre(b.xMinPm())).orElse(Integer.MIN_VALUE);
    boxTo = box.map(b -> lastCentre(b.xMaxPm())).orElse(Integer.MAX_VALUE);
    boxRowFrom = box.map(b -> firstCentre(b.yMinPm())).orElse(Integer.MIN_VALUE);
    boxRowTo = box.map(b -> lastCentre(b.yMaxPm())).orElse(Integer.MAX_VALUE);
  }

  /** The first column or row whose centre lies at this coordinate or above. */
  private int firstCentre(long coordinate) {
    return (int) -Math.floorDiv(-(coordinate - cell / 2), cell);
  }

  /** The last column or row whose centre lies at this coordinate or below. */
  private int lastCentre(long coordinate) {
    return (int) Math.floorDiv(coordinate - cell / 2, cell);
  }

  long cellPm() {
    return cell;
  }

  /** Coordinate of the centres of this column or row. */
  long centre(int index) {
    return index * cell + cell / 2;
  }

  /** The column or row in which this coordinate lies. */
  int index(double coordinate) {
    return (int) Math.floor(coordinate / cell);
  }

  int boxFrom() {
    return boxFrom;
  }

  int boxTo() {
    return boxTo;
  }

  int boxRowFrom() {
    return boxRowFrom;
  }

  int boxRowTo() {
    return boxRowTo;
  }

  /** What the cells take in memory; an even tile takes next to nothing. */
  long bytes() {
    long uneven = Arrays.stream(table).filter(tile -> tile != null && !tile.even()).count();
    return uneven * BYTES_PER_TILE;
  }

  /** The tiles there are, in no order. */
  Tile[] tiles() {
    return Arrays.stream(table).filter(Objects::nonNull).toArray(Tile[]::new);
  }

  private boolean inBox(int column, int row) {
    return column >= boxFrom && column <= boxTo && row >= boxRowFrom && row <= boxRowTo;
  }

  private long firstHeight(int column, int row) {
    if (box.isEmpty()) {
      return VIRGIN_HEIGHT;
    }
    return inBox(column, row) ? box.get().topPm() : AIR_HEIGHT;
  }

  private int firstId(int column, int row) {
    if (box.isEmpty()) {
      return VIRGIN;
    }
    return inBox(column, row) ? Cut.UNCUT : AIR;
  }

  /** Height of a cell. */
  long height(int column, int row) {
    return heightIn(find(column >> SHIFT, row >> SHIFT), column, row);
  }

  /**
   * Height of a cell.
   *
   * @param tile the tile in which it lies; null if there is none
   */
  long heightIn(@Nullable Tile tile, int column, int row) {
    return tile == null ? firstHeight(column, row) : tile.heightOf(place(column, row));
  }

  /** What left a cell. */
  int id(int column, int row) {
    Tile tile = find(column >> SHIFT, row >> SHIFT);
    return tile == null ? firstId(column, row) : tile.idOf(place(column, row));
  }

  /** Whether cells of a tile may stand higher than this; of uncut stock without a top, no. */
  boolean mayExceed(int tileColumn, int tileRow, long height) {
    Tile tile = find(tileColumn, tileRow);
    if (tile == null) {
      return box.isPresent() && box.get().topPm() > height;
    }
    return !tile.even() || (tile.height > height && tile.height != VIRGIN_HEIGHT);
  }

  /** Whether some heights may be lost. */
  boolean lossy() {
    return lossy;
  }

  /** Where a block of cells stands in its tile, given by its column and row among all blocks. */
  static int block(int column, int row) {
    return ((row & (BLOCKS - 1)) << BLOCKS_SHIFT) | (column & (BLOCKS - 1));
  }

  /** Height of a cell in or near this tile; the tile itself is not looked up again. */
  long height(Tile tile, int column, int row) {
    return tile.holds(column, row) ? tile.heightOf(place(column, row)) : height(column, row);
  }

  /** What left a cell in or near this tile. */
  int id(Tile tile, int column, int row) {
    return tile.holds(column, row) ? tile.idOf(place(column, row)) : id(column, row);
  }

  /** Where a cell stands in its tile. */
  static int place(int column, int row) {
    return ((row & MASK) << SHIFT) | (column & MASK);
  }

  // Cutting.

  /**
   * Lowers the cells of a footprint to one height.
   *
   * @param spans the cells
   * @param z the height
   * @param id what leaves it
   * @param found takes what lay above, at that height, or lost
   */
  void cutFlat(Spans spans, long z, int id, Removed found) {
    for (Spans.Band band = spans.firstBand(); band.more(); band.next()) {
      for (int column = band.firstTile(); column <= band.lastTile(); column++) {
        Tile tile = tile(column, band.row());
        if (tile == null) {
          found.lost();
        } else {
          cutFlat(tile, band, z, id, found);
        }
      }
    }
  }

  private void cutFlat(Tile tile, Spans.Band band, long z, int id, Removed found) {
    if (tile.even()) {
      if (tile.height <= z) {
        if (band.touches(tile.column)) {
          note(tile.height, tile.id, z, id, found);
        }
        return;
      }
      if (band.covers(tile.column)) {
        int from = tile.column << SHIFT;
        int row = tile.row << SHIFT;
        found.takeBlock(tile.id, tile.height, z, row, row + MASK, from, from + MASK);
        tile.height = z;
        tile.id = id;
        return;
      }
      if (!band.touches(tile.column)) {
        return;
      }
      if (!expand(tile)) {
        found.lost();
        return;
      }
    }
    tile.allStale();
    int left = tile.column << SHIFT;
    for (int k = band.first(); k <= band.last(); k++) {
      int from = Math.max(band.from(k), left);
      int to = Math.min(band.to(k), left + MASK);
      if (from <= to) {
        cutRun(tile, band.row(k), from, to, z, id, found);
      }
    }
    if (band.covers(tile.column)) {
      collapse(tile);
    }
  }

  /** Notes a cell that is not lowered. */
  static void note(long height, int left, long z, int id, Removed found) {
    if (height == z) {
      found.at(left, id);
    } else if (height == LOST_HEIGHT) {
      found.lost();
    }
  }

  /**
   * Lowers cells of one row of a tile that is not even.
   *
   * @return whether any lay higher
   */
  static boolean cutRun(Tile tile, int row, int from, int to, long z, int id, Removed found) {
    boolean taken = false;
    long[] heights = tile.heights;
    int[] ids = tile.ids;
    int base = place(from, row) - from;
    int k = from;
    while (k <= to) {
      long height = heights[base + k];
      int left = ids[base + k];
      if (height <= z) {
        note(height, left, z, id, found);
        do {
          k++;
        } while (k <= to && heights[base + k] == height && ids[base + k] == left);
        continue;
      }
      int start = k;
      do {
        heights[base + k] = z;
        ids[base + k] = id;
        k++;
      } while (k <= to && heights[base + k] == height && ids[base + k] == left);
      found.take(left, height, z, z, row, start, k - 1);
      taken = true;
    }
    return taken;
  }

  /**
   * Lowers the cells of a footprint to a floor that is not one height.
   *
   * @param spans the cells
   * @param floor the floor over each
   * @param z the height at which the floor counts as left by {@code id}
   * @param id what leaves it there
   * @param otherId what leaves it elsewhere
   * @param found takes what lay above, at that height, or lost
   */
  void cut(Spans spans, Floor floor, long z, int id, int otherId, Removed found) {
    for (Spans.Band band = spans.firstBand(); band.more(); band.next()) {
      for (int column = band.firstTile(); column <= band.lastTile(); column++) {
        Tile tile = tile(column, band.row());
        if (tile == null || (tile.even() && tile.height == LOST_HEIGHT)) {
          found.lost();
        } else if (tile.height != AIR_HEIGHT || !tile.even()) {
          cut(tile, band, floor, z, id, otherId, found);
        }
      }
    }
  }

  private void cut(
      Tile tile, Spans.Band band, Floor floor, long z, int id, int otherId, Removed found) {
    int left = tile.column << SHIFT;
    for (int k = band.first(); k <= band.last(); k++) {
      int from = Math.max(band.from(k), left);
      int to = Math.min(band.to(k), left + MASK);
      if (from <= to && !cutCells(tile, band.row(k), from, to, floor, z, id, otherId, found)) {
        return;
      }
    }
  }

  /**
   * Lowers cells of one row of a tile to a floor that is not one height.
   *
   * @return false where the tile is lost at the cap
   */
  boolean cutCells(
      Tile tile,
      int row,
      int from,
      int to,
      Floor floor,
      long z,
      int id,
      int otherId,
      Removed found) {
    double y = (double) centre(row);
    for (int column = from; column <= to; column++) {
      int place = place(column, row);
      long height = tile.heightOf(place);
      double x = (double) centre(column);
      long low = floor.at(x, y);
      if (height <= low) {
        if (low == z || height == LOST_HEIGHT) {
          note(height, tile.idOf(place), z, id, found);
        }
        continue;
      }
      int before = tile.idOf(place);
      if (tile.even() && !expand(tile)) {
        found.lost();
        return false;
      }
      tile.heights[place] = low;
      tile.ids[place] = low == z ? id : otherId;
      tile.topIds[block(column >> BLOCK_SHIFT, row >> BLOCK_SHIFT)] = STALE;
      found.take(before, height, floor.tip(x, y, low), low, row, column, column);
    }
    return true;
  }

  /**
   * Gives cells of a footprint at exactly this height to another level, from one or {@link
   * #WHICHEVER}.
   */
  void relabel(Spans spans, long z, int fromId, int toId) {
    for (Spans.Band band = spans.firstBand(); band.more(); band.next()) {
      for (int column = band.firstTile(); column <= band.lastTile(); column++) {
        Tile tile = find(column, band.row());
        if (tile != null) {
          relabel(tile, band, z, fromId, toId);
        }
      }
    }
  }

  private void relabel(Tile tile, Spans.Band band, long z, int fromId, int toId) {
    if (tile.even()) {
      boolean concerned = tile.height == z && (fromId == WHICHEVER || tile.id == fromId);
      if (!concerned || tile.id == toId || !band.touches(tile.column)) {
        return;
      }
      if (band.covers(tile.column)) {
        tile.id = toId;
        return;
      }
      if (!expand(tile)) {
        return;
      }
    }
    tile.allStale();
    int left = tile.column << SHIFT;
    for (int k = band.first(); k <= band.last(); k++) {
      int from = Math.max(band.from(k), left);
      int to = Math.min(band.to(k), left + MASK);
      for (int column = from; column <= to; column++) {
        int place = place(column, band.row(k));
        if (tile.heights[place] == z && (fromId == WHICHEVER || tile.ids[place] == fromId)) {
          tile.ids[place] = toId;
        }
      }
    }
  }

  /** Marks the cells of a footprint as of unknown height. */
  void lose(Spans spans) {
    for (Spans.Band band = spans.firstBand(); band.more(); band.next()) {
      for (int column = band.firstTile(); column <= band.lastTile(); column++) {
        Tile tile = tile(column, band.row());
        if (tile == null || (tile.even() && tile.height <= LOST_HEIGHT)) {
          continue;
        }
        if (!band.touches(column) || (tile.even() && !expand(tile))) {
          continue;
        }
        lossy = true;
        tile.allStale();
        int left = column << SHIFT;
        for (int k = band.first(); k <= band.last(); k++) {
          int to = Math.min(band.to(k), left + MASK);
          for (int i = Math.max(band.from(k), left); i <= to; i++) {
            int place = place(i, band.row(k));
            if (tile.heights[place] != AIR_HEIGHT) {
              tile.heights[place] = LOST_HEIGHT;
              tile.ids[place] = LOST;
            }
          }
        }
      }
    }
  }

  // Tiles.

  private static int hash(int column, int row) {
    int h = column * 0x9E3779B1 + row * 0x85EBCA77;
    return h ^ (h >>> 15);
  }

  /** The tile at this column and row of tiles; null where nothing was cut. */
  @Nullable Tile find(int column, int row) {
    int k = hash(column, row) & (table.length - 1);
    while (true) {
      Tile tile = table[k];
      if (tile == null || (tile.column == column && tile.row == row)) {
        return tile;
      }
      k = (k + 1) & (table.length - 1);
    }
  }

  /** The tile, made where there is none; null where the cap forbids. */
  @Nullable Tile tile(int column, int row) {
    Tile tile = find(column, row);
    if (tile != null) {
      return tile;
    }
    if (budget.made >= (long) budget.cap * EVEN_TILES_PER_TILE) {
      budget.reached = true;
      lossy = true;
      return null;
    }
    int left = column << SHIFT;
    int low = row << SHIFT;
    tile = new Tile(column, row, firstHeight(left, low), firstId(left, low));
    boolean mixed = straddlesBox(left, low);
    if (mixed && expand(tile)) {
      for (int k = 0; k < SIDE * SIDE; k++) {
        int i = left + (k & MASK);
        int j = low + (k >> SHIFT);
        tile.heights[k] = firstHeight(i, j);
        tile.ids[k] = firstId(i, j);
      }
      Arrays.fill(tile.tops, VIRGIN_HEIGHT);
      tile.peak = VIRGIN_HEIGHT;
      tile.asked = ASKED_TO_LOOK;
      tile.allStale();
    }
    put(tile);
    budget.made++;
    return tile;
  }

  /** Whether some cells of a tile lie in the box, and some don't. */
  private boolean straddlesBox(int left, int low) {
    if (box.isEmpty()) {
      return false;
    }
    boolean apart =
        boxTo < left || boxFrom > left + MASK || boxRowTo < low || boxRowFrom > low + MASK;
    return !apart && !(inBox(left, low) && inBox(left + MASK, low + MASK));
  }

  private void put(Tile tile) {
    if (2 * (count + 1) > table.length) {
      @Nullable Tile[] old = table;
      table = new @Nullable Tile[2 * old.length];
      for (Tile moved : old) {
        if (moved != null) {
          seat(moved);
        }
      }
    }
    seat(tile);
    count++;
  }

  private void seat(Tile tile) {
    int k = hash(tile.column, tile.row) & (table.length - 1);
    while (table[k] != null) {
      k = (k + 1) & (table.length - 1);
    }
    table[k] = tile;
  }

  /** Gives an even tile its arrays; at the cap it is lost instead, and the answer is false. */
  boolean expand(Tile tile) {
    if (budget.uneven >= budget.cap && !makeRoom()) {
      budget.reached = true;
      lossy = true;
      tile.height = LOST_HEIGHT;
      tile.id = LOST;
      return false;
    }
    budget.uneven++;
    budget.expandedSinceSearch++;
    tile.heights = new long[SIDE * SIDE];
    tile.ids = new int[SIDE * SIDE];
    Arrays.fill(tile.heights, tile.height);
    Arrays.fill(tile.ids, tile.id);
    tile.tops = new long[BLOCKS * BLOCKS];
    tile.topIds = new int[BLOCKS * BLOCKS];
    tile.peak = tile.height;
    Arrays.fill(tile.tops, tile.height);
    Arrays.fill(tile.topIds, tile.id);
    return true;
  }

  /** Takes the arrays of tiles that have become even; not again before it can pay. */
  private boolean makeRoom() {
    if (budget.expandedSinceSearch < Math.max(1, budget.cap / 8)) {
      return false;
    }
    budget.expandedSinceSearch = 0;
    for (Tile tile : table) {
      if (tile != null && !tile.even()) {
        collapse(tile);
      }
    }
    return budget.uneven < budget.cap;
  }

  /** Takes the arrays of a tile, if it has become even. */
  void collapse(Tile tile) {
    long height = tile.heights[0];
    int id = tile.ids[0];
    for (int k = 1; k < SIDE * SIDE; k++) {
      if (tile.heights[k] != height || tile.ids[k] != id) {
        return;
      }
    }
    tile.height = height;
    tile.id = id;
    tile.heights = NO_HEIGHTS;
    tile.ids = NO_IDS;
    tile.tops = NO_HEIGHTS;
    tile.topIds = NO_IDS;
    budget.uneven--;
  }
}

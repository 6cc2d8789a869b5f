package hairline.checks.stock;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Cuts a {@link HeightGrid} to the same cells, heights and findings as its own {@code cut} and
 * {@code cutFlat}, in the same order, but asks no cell of a block whose highest lies below the
 * tool. So a move costs what it changes rather than what the tool covers. Not for grids of which
 * some heights are lost.
 */
final class Carver {
  private static final int SHIFT = HeightGrid.SHIFT;
  private static final int SIDE = HeightGrid.SIDE;
  private static final int BLOCK_SHIFT = HeightGrid.BLOCK_SHIFT;
  private static final int BLOCK = HeightGrid.BLOCK;
  private static final int BLOCKS = SIDE / BLOCK;

  /** So many cells are rather asked one by one than their row for its border. */
  private static final int FEW = 16;

  /** The core of a swath is worth its while from this part of the radius down. */
  private static final double NARROWED = 0.99;

  private static final double EVERYWHERE = Double.NEGATIVE_INFINITY;

  private final HeightGrid grid;
  private final Swath whole;
  private final Swath core;
  private final Spans row;

  /** What is cut: the whole swath, or the part of it in which the tool can reach anything. */
  private Swath swath;

  private boolean narrowed;

  private final double halfBlock;

  // Of the row of tiles at work: between which columns each row of blocks may be covered.
  private int lowRow;
  private int highRow;
  private final int[] lows = new int[BLOCKS];
  private final int[] highs = new int[BLOCKS];
  private int low;
  private int high;

  // And of each the columns in which something may be left to cut, where the tool goes on from its
  // last cut; blocks that lie wholly under the tool where it starts are left out as well.
  private double begins;
  private final int[] aheadLows = new int[BLOCKS];
  private final int[] aheadHighs = new int[BLOCKS];
  private int aheadLow;
  private int aheadHigh;
  private boolean leavesOutStart;
  private final int[] innerLows = new int[BLOCKS];
  private final int[] innerHighs = new int[BLOCKS];

  // And which columns each of its rows covers, as far as asked for.
  private final boolean[] known = new boolean[SIDE];
  private final int[] froms = new int[SIDE];
  private final int[] tos = new int[SIDE];

  // Columns of the row of blocks at work that are to be asked one by one.
  private int stretches;
  private final int[] starts = new int[BLOCKS];
  private final int[] ends = new int[BLOCKS];

  Carver(HeightGrid grid, Swath swath) {
    this.grid = grid;
    this.whole = swath;
    this.core = new Swath(grid);
    this.swath = swath;
    this.row = new Spans(grid);
    this.halfBlock = (BLOCK - 1) * (double) grid.cellPm() / 2;
  }

  // By rows of tiles.

  private boolean bandAt(int tileRow) {
    lowRow = Math.max(swath.firstRow(), tileRow << SHIFT);
    highRow = Math.min(swath.lastRow(), (tileRow << SHIFT) + SIDE - 1);
    low = Integer.MAX_VALUE;
    high = Integer.MIN_VALUE;
    aheadLow = Integer.MAX_VALUE;
    aheadHigh = Integer.MIN_VALUE;
    for (int k = lowRow >> BLOCK_SHIFT; k <= highRow >> BLOCK_SHIFT; k++) {
      int first = Math.max(lowRow, k << BLOCK_SHIFT);
      int last = Math.min(highRow, (k << BLOCK_SHIFT) + BLOCK - 1);
      boolean any = swath.columns(first, last);
      lows[k & (BLOCKS - 1)] = any ? swath.from() : 0;
      highs[k & (BLOCKS - 1)] = any ? swath.to() : -1;
      if (any) {
        low = Math.min(low, swath.from());
        high = Math.max(high, swath.to());
      }
      boolean ahead = any && (begins == EVERYWHERE || swath.narrow(first, last, begins));
      aheadLows[k & (BLOCKS - 1)] = ahead ? swath.from() : 0;
      aheadHighs[k & (BLOCKS - 1)] = ahead ? swath.to() : -1;
      if (ahead) {
        aheadLow = Math.min(aheadLow, swath.from());
        aheadHigh = Math.max(aheadHigh, swath.to());
      }
      if (leavesOutStart) {
        boolean inner = ahead && swath.startColumns(first, last);
        innerLows[k & (BLOCKS - 1)] = inner ? (swath.from() + BLOCK - 1) >> BLOCK_SHIFT : 0;
        innerHighs[k & (BLOCKS - 1)] = inner ? ((swath.to() + 1) >> BLOCK_SHIFT) - 1 : -1;
      }
    }
    Arrays.fill(known, false);
    return low <= high;
  }

  /** Whether some cells of the rows between these columns are covered. */
  private boolean touches(int left, int right) {
    for (int r = lowRow; r <= highRow; r++) {
      if (swath.round()) {
        row.clear();
        swath.addRow(r, left, right, row);
        if (!row.isEmpty()) {
          return true;
        }
      } else {
        ask(r);
        if (froms[r & (SIDE - 1)] <= right && tos[r & (SIDE - 1)] >= left) {
          return true;
        }
      }
    }
    return false;
  }

  /** Whether the covered cells of the rows lie on both sides of these columns, or among them. */
  private boolean reaches(int left, int right) {
    return touches(left, right)
        || (touches(Integer.MIN_VALUE, left - 1) && touches(right + 1, Integer.MAX_VALUE));
  }

  private boolean covers(HeightGrid.Tile tile) {
    int left = tile.column << SHIFT;
    int down = tile.row << SHIFT;
    if (!swath.covers(down, down + SIDE - 1, left, left + SIDE - 1)) {
      return swath.round() && coversRows(left);
    }
    return coversRows(left);
  }

  private boolean coversRows(int left) {
    if (highRow - lowRow < SIDE - 1) {
      return false;
    }
    for (int r = lowRow; r <= highRow; r++) {
      if (swath.round()) {
        row.clear();
        swath.addRow(r, left, left + SIDE - 1, row);
        if (row.count() != 1 || row.from(0) > left || row.to(0) < left + SIDE - 1) {
          return false;
        }
      } else {
        ask(r);
        if (froms[r & (SIDE - 1)] > left || tos[r & (SIDE - 1)] < left + SIDE - 1) {
          return false;
        }
      }
    }
    return true;
  }

  private void ask(int r) {
    int k = r & (SIDE - 1);
    if (!known[k]) {
      known[k] = true;
      boolean any = swath.row(r);
      froms[k] = any ? swath.from() : 0;
      tos[k] = any ? swath.to() : -1;
    }
  }

  /** The tile, made where the swath reaches it; null where it does not, or the cap forbids. */
  private HeightGrid.@Nullable Tile tileAt(int column, int row, Removed found) {
    HeightGrid.Tile tile = grid.find(column, row);
    if (tile == null && reaches(column << SHIFT, (column << SHIFT) + SIDE - 1)) {
      tile = grid.tile(column, row);
    }
    if (tile == null && grid.lossy()) {
      found.lost();
    }
    return tile;
  }

  // Level floors of flat tools.

  /**
   * As {@link HeightGrid#cutFlat}.
   *
   * @param goesOn whether nothing stands above Z where it starts, and what lies at Z there has this
   *     id
   */
  void cutFlat(long z, int id, boolean goesOn, Removed found) {
    swath = whole;
    leavesOutStart = goesOn;
    begins = goesOn ? 0 : EVERYWHERE;
    if (goesOn) {
      lookUnderStart(z, id, found);
    }
    for (int t = swath.firstRow() >> SHIFT; t <= swath.lastRow() >> SHIFT; t++) {
      if (!bandAt(t)) {
        continue;
      }
      // Where only what lies ahead is asked, the tiles behind are there, and stay as they are.
      boolean onlyAhead = leavesOutStart && found.sawOwn();
      int last = (onlyAhead ? aheadHigh : high) >> SHIFT;
      for (int column = (onlyAhead ? aheadLow : low) >> SHIFT; column <= last; column++) {
        HeightGrid.Tile tile = tileAt(column, t, found);
        if (tile == null) {
          continue;
        }
        cutFlat(tile, z, id, found);
      }
    }
  }

  /** Notes the floor under the tool's axis, so that the rest of it need not be asked. */
  private void lookUnderStart(long z, int id, Removed found) {
    int column = swath.startColumn();
    int r = swath.startRow();
    if (swath.holds(r, column) && grid.height(column, r) == z) {
      found.at(grid.id(column, r), id);
    }
  }

  private void cutFlat(HeightGrid.Tile tile, long z, int id, Removed found) {
    int left = tile.column << SHIFT;
    int right = left + SIDE - 1;
    if (tile.even()) {
      boolean own = tile.height == z && tile.id == id && found.sawOwn();
      if (tile.height < z || own || !touches(left, right)) {
        return;
      }
      if (tile.height == z) {
        found.at(tile.id, id);
        return;
      }
      if (covers(tile)) {
        int down = tile.row << SHIFT;
        found.takeBlock(tile.id, tile.height, z, down, down + SIDE - 1, left, right);
        tile.height = z;
        tile.id = id;
        return;
      }
      if (!grid.expand(tile)) {
        found.lost();
        return;
      }
    }
    for (int b = lowRow >> BLOCK_SHIFT; b <= highRow >> BLOCK_SHIFT; b++) {
      if (leftOver(tile, b, z, id, found)) {
        cutFlatRows(tile, b, z, id, found);
      }
    }
    if (covers(tile)) {
      grid.collapse(tile);
    }
  }

  /** Finds the blocks of a row of them that hold anything above, or to be noted. */
  private boolean leftOver(HeightGrid.Tile tile, int blockRow, long z, int id, Removed found) {
    int left = tile.column << SHIFT;
    boolean sawOwn = found.sawOwn();
    boolean onlyAhead = leavesOutStart && sawOwn;
    int low = (onlyAhead ? aheadLows : lows)[blockRow & (BLOCKS - 1)];
    int high = (onlyAhead ? aheadHighs : highs)[blockRow & (BLOCKS - 1)];
    int first = Math.max(low, left) >> BLOCK_SHIFT;
    int last = Math.min(high, left + SIDE - 1) >> BLOCK_SHIFT;
    boolean open = false;
    stretches = 0;
    int innerFirst = Math.max(first, innerLows[blockRow & (BLOCKS - 1)]);
    int innerLast = innerHighs[blockRow & (BLOCKS - 1)];
    boolean leavesOut = onlyAhead && innerFirst <= innerLast;
    int place = HeightGrid.block(first, blockRow);
    for (int b = first; b <= last; b++, place++) {
      if (leavesOut && b == innerFirst) {
        place += innerLast - b;
        b = innerLast;
        open = false;
        continue;
      }
      long top = tile.tops[place];
      if (top >= z && tile.topIds[place] == HeightGrid.STALE && tile.refreshUpTo(place, z)) {
        top = tile.tops[place];
      }
      if (top < z || (top == z && sawOwn && tile.topIds[place] == id)) {
        open = false;
        continue;
      }
      keep(b, open);
      open = true;
    }
    return stretches > 0;
  }

  private void keep(int block, boolean goesOn) {
    if (!goesOn) {
      starts[stretches++] = block << BLOCK_SHIFT;
    }
    ends[stretches - 1] = (block << BLOCK_SHIFT) + BLOCK - 1;
  }

  private void cutFlatRows(HeightGrid.Tile tile, int blockRow, long z, int id, Removed found) {
    int first = Math.max(lowRow, blockRow << BLOCK_SHIFT);
    int last = Math.min(highRow, (blockRow << BLOCK_SHIFT) + BLOCK - 1);
    boolean taken = false;
    for (int r = first; r <= last; r++) {
      for (int k = 0; k < stretches; k++) {
        taken |= cutStretch(tile, r, starts[k], ends[k], z, id, found);
      }
    }
    if (taken) {
      stale(tile, blockRow);
    }
  }

  /** Cuts what the swath covers of some cells of one row, but for those at either end of no use. */
  private boolean cutStretch(
      HeightGrid.Tile tile, int r, int start, int end, long z, int id, Removed found) {
    int base = HeightGrid.place(start, r) - start;
    int from = start;
    int to = end;
    int own = found.sawOwn() ? id : HeightGrid.WHICHEVER;
    while (from <= to && lies(tile, base + from, z, own)) {
      from++;
    }
    while (from < to && lies(tile, base + to, z, own)) {
      to--;
    }
    if (from > to) {
      return false;
    }
    if (swath.round()) {
      boolean taken = false;
      row.clear();
      swath.addRow(r, from, to, row);
      for (int m = 0; m < row.count(); m++) {
        taken |= HeightGrid.cutRun(tile, r, row.from(m), row.to(m), z, id, found);
      }
      return taken;
    }
    if (to - from >= FEW) {
      ask(r);
      from = Math.max(from, froms[r & (SIDE - 1)]);
      to = Math.min(to, tos[r & (SIDE - 1)]);
    } else {
      from = Math.max(from, lows[(r >> BLOCK_SHIFT) & (BLOCKS - 1)]);
      to = Math.min(to, highs[(r >> BLOCK_SHIFT) & (BLOCKS - 1)]);
      while (from <= to && !swath.covers(r, from)) {
        from++;
      }
      while (from < to && !swath.covers(r, to)) {
        to--;
      }
    }
    return from <= to && HeightGrid.cutRun(tile, r, from, to, z, id, found);
  }

  /** Whether a cell is neither to be lowered nor to be noted. */
  private static boolean lies(HeightGrid.Tile tile, int place, long z, int own) {
    long height = tile.heights[place];
    return height < z || (height == z && tile.ids[place] == own);
  }

  private void stale(HeightGrid.Tile tile, int blockRow) {
    for (int k = 0; k < stretches; k++) {
      int place = HeightGrid.block(starts[k] >> BLOCK_SHIFT, blockRow);
      int count = (ends[k] - starts[k] + 1) >> BLOCK_SHIFT;
      Arrays.fill(tile.topIds, place, place + count, HeightGrid.STALE);
    }
  }

  // Other floors.

  /**
   * As {@link HeightGrid#cut}.
   *
   * @param cutter the tool
   * @param lowest the lowest Z of its tip
   * @param notes whether it matters who left cells that lie at the floor already
   */
  void cut(
      HeightGrid.Floor floor,
      Cutter cutter,
      double lowest,
      long z,
      int id,
      int otherId,
      boolean notes,
      Removed found) {
    swath = whole;
    leavesOutStart = false;
    begins = EVERYWHERE;
    narrowed = false;
    double peak = makeTiles(found);
    if (!swath.round()) {
      double reach = Floors.reach(cutter, peak - lowest);
      narrowed = reach < cutter.radiusPm() * NARROWED;
      core.within(swath, narrowed ? reach : cutter.radiusPm());
      swath = core;
      begins = floor.begins();
    }
    for (int t = swath.firstRow() >> SHIFT; t <= swath.lastRow() >> SHIFT; t++) {
      if (!bandAt(t)) {
        continue;
      }
      for (int column = aheadLow >> SHIFT; column <= aheadHigh >> SHIFT; column++) {
        HeightGrid.Tile tile = grid.find(column, t);
        if (tile == null) {
          continue;
        }
        if (tile.even() && tile.height == HeightGrid.AIR_HEIGHT) {
          continue;
        }
        for (int b = lowRow >> BLOCK_SHIFT; b <= highRow >> BLOCK_SHIFT; b++) {
          if (leftOver(tile, b, floor, z, id, notes, found)
              && !cutRows(tile, b, floor, z, id, otherId, notes, found)) {
            break;
          }
        }
      }
    }
  }

  /**
   * Makes the tiles that the swath reaches, where there are none.
   *
   * @return a height that no cell under the swath exceeds
   */
  private double makeTiles(Removed found) {
    long peak = HeightGrid.AIR_HEIGHT;
    int leftTile = swath.leftmost() >> SHIFT;
    int rightTile = swath.rightmost() >> SHIFT;
    for (int t = swath.firstRow() >> SHIFT; t <= swath.lastRow() >> SHIFT; t++) {
      boolean asked = false;
      boolean any = false;
      for (int column = leftTile; column <= rightTile; column++) {
        HeightGrid.Tile tile = grid.find(column, t);
        if (tile == null) {
          any = asked ? any : bandAt(t);
          asked = true;
          if (!any || low >> SHIFT > column || high >> SHIFT < column) {
            continue;
          }
          tile = tileAt(column, t, found);
        }
        if (tile != null) {
          peak = Math.max(peak, tile.peak());
        }
      }
    }
    return peak;
  }

  private boolean leftOver(
      HeightGrid.Tile tile,
      int blockRow,
      HeightGrid.Floor floor,
      long z,
      int id,
      boolean notes,
      Removed found) {
    int left = tile.column << SHIFT;
    int first = Math.max(aheadLows[blockRow & (BLOCKS - 1)], left) >> BLOCK_SHIFT;
    int last = Math.min(aheadHighs[blockRow & (BLOCKS - 1)], left + SIDE - 1) >> BLOCK_SHIFT;
    boolean sawOwn = found.sawOwn();
    boolean open = false;
    stretches = 0;
    double y = middle(blockRow);
    int place = HeightGrid.block(first, blockRow);
    for (int b = first; b <= last; b++, place++) {
      long top = tile.even() ? tile.height : tile.tops[place];
      double x = middle(b);
      boolean spared = floor.spares(top, x, y, halfBlock);
      if (!tile.even()
          && tile.topIds[place] == HeightGrid.STALE
          && (!spared || (notes && top >= z))) {
        tile.refresh(place);
        top = tile.tops[place];
        spared = floor.spares(top, x, y, halfBlock);
      }
      if (spared && notes && top == z) {
        spared = sawOwn && (tile.even() ? tile.id : tile.topIds[place]) == id;
      }
      if (spared) {
        open = false;
        continue;
      }
      keep(b, open);
      open = true;
    }
    return stretches > 0;
  }

  private double middle(int block) {
    return (double) grid.centre(block << BLOCK_SHIFT) + halfBlock;
  }

  private boolean cutRows(
      HeightGrid.Tile tile,
      int blockRow,
      HeightGrid.Floor floor,
      long z,
      int id,
      int otherId,
      boolean notes,
      Removed found) {
    int first = Math.max(lowRow, blockRow << BLOCK_SHIFT);
    int last = Math.min(highRow, (blockRow << BLOCK_SHIFT) + BLOCK - 1);
    for (int r = first; r <= last; r++) {
      for (int k = 0; k < stretches; k++) {
        if (!cutStretch(tile, r, starts[k], ends[k], floor, z, id, otherId, notes, found)) {
          return false;
        }
      }
    }
    return true;
  }

  private boolean cutStretch(
      HeightGrid.Tile tile,
      int r,
      int start,
      int end,
      HeightGrid.Floor floor,
      long z,
      int id,
      int otherId,
      boolean notes,
      Removed found) {
    if (narrowed) {
      // What lies outside of the core is spared, so the core needs no border.
      int first = Math.max(start, aheadLows[(r >> BLOCK_SHIFT) & (BLOCKS - 1)]);
      int last = Math.min(end, aheadHighs[(r >> BLOCK_SHIFT) & (BLOCKS - 1)]);
      return cutCells(tile, r, first, last, floor, z, id, otherId, notes, found);
    }
    double y = (double) grid.centre(r);
    int base = HeightGrid.place(start, r) - start;
    int from = start;
    int to = end;
    while (from <= to && isSpared(tile, base + from, from, y, floor, z, notes)) {
      from++;
    }
    while (from < to && isSpared(tile, base + to, to, y, floor, z, notes)) {
      to--;
    }
    if (from > to) {
      return true;
    }
    if (swath.round()) {
      row.clear();
      swath.addRow(r, from, to, row);
      for (int m = 0; m < row.count(); m++) {
        if (!cutCells(tile, r, row.from(m), row.to(m), floor, z, id, otherId, notes, found)) {
          return false;
        }
      }
      return true;
    }
    if (to - from >= FEW) {
      ask(r);
      from = Math.max(from, froms[r & (SIDE - 1)]);
      to = Math.min(to, tos[r & (SIDE - 1)]);
    } else {
      from = Math.max(from, lows[(r >> BLOCK_SHIFT) & (BLOCKS - 1)]);
      to = Math.min(to, highs[(r >> BLOCK_SHIFT) & (BLOCKS - 1)]);
      while (from <= to && !swath.covers(r, from)) {
        from++;
      }
      while (from < to && !swath.covers(r, to)) {
        to--;
      }
    }
    return from > to || cutCells(tile, r, from, to, floor, z, id, otherId, notes, found);
  }

  /** Whether a cell, for certain, is neither to be lowered nor to be noted. */
  private boolean isSpared(
      HeightGrid.Tile tile,
      int place,
      int column,
      double y,
      HeightGrid.Floor floor,
      long z,
      boolean notes) {
    long height = tile.heightOf(place);
    return (!notes || height != z) && floor.spares(height, (double) grid.centre(column), y, 0);
  }

  private boolean cutCells(
      HeightGrid.Tile tile,
      int r,
      int first,
      int last,
      HeightGrid.Floor floor,
      long z,
      int id,
      int otherId,
      boolean notes,
      Removed found) {
    double y = (double) grid.centre(r);
    int base = HeightGrid.place(first, r) - first;
    long even = tile.height;
    long[] heights = tile.heights;
    for (int column = first; column <= last; column++) {
      long height = heights.length == 0 ? even : heights[base + column];
      double x = (double) grid.centre(column);
      if ((!notes || height != z) && floor.spares(height, x, y, 0)) {
        continue;
      }
      long low = floor.at(x, y);
      if (height <= low) {
        if (low == z) {
          HeightGrid.note(height, tile.idOf(base + column), z, id, found);
        }
        continue;
      }
      int before = tile.idOf(base + column);
      if (heights.length == 0) {
        if (!grid.expand(tile)) {
          found.lost();
          return false;
        }
        heights = tile.heights;
      }
      heights[base + column] = low;
      tile.ids[base + column] = low == z ? id : otherId;
      tile.topIds[HeightGrid.block(column >> BLOCK_SHIFT, r >> BLOCK_SHIFT)] = HeightGrid.STALE;
      found.takeCell(before, height, floor.tip(x, y, low), low, r, column);
    }
    return true;
  }
}

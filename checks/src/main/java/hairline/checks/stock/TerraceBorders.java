package hairline.checks.stock;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;

/**
 * Finds which terraces adjoin, by walking every row and every column of the grid. A strip that is
 * no terrace is looked across where it is a wall: as narrow as two of the largest corner radius
 * leave one, every cell of it at the height of one of the two terraces or between.
 */
final class TerraceBorders {
  /** Most pairs of neighbours kept. */
  static final int MOST_BORDERS = 100_000;

  private static final int CELLS_BESIDE = 2;

  /**
   * Two labels.
   *
   * @param one the smaller
   */
  record Pair(int one, int other) {}

  private final SurfaceLeft surface;
  private final HeightGrid grid;
  private final TileRows rows;
  private final AreaLabels labels;
  private final long[] heights;
  private final int mostAcross;
  private final Map<Pair, Long> edges = new HashMap<>();
  private final Map<Integer, EnumSet<Stands>> beside = new HashMap<>();
  private boolean capReached;

  // The walk along one row or column.
  private boolean alongRow;
  private int lineIndex;
  private Stands before = Stands.OUTSIDE;
  private int terrace;
  private int strip;
  private long stripLow;
  private long stripHigh;

  /**
   * A finder.
   *
   * @param heights the height of each label
   */
  TerraceBorders(SurfaceLeft surface, TileRows rows, AreaLabels labels, long[] heights) {
    this.surface = surface;
    this.grid = surface.grid();
    this.rows = rows;
    this.labels = labels;
    this.heights = heights;
    this.mostAcross = 2 * (int) Math.ceil(surface.widestCornerPm() / grid.cellPm()) + CELLS_BESIDE;
  }

  boolean capReached() {
    return capReached;
  }

  /** The edges of cells between two terraces. */
  Map<Pair, Long> edges() {
    return edges;
  }

  /** What else a terrace adjoins. */
  Set<Stands> beside(int label) {
    return beside.getOrDefault(label, EnumSet.noneOf(Stands.class));
  }

  /** Walks. */
  void find() {
    int[] order = new int[rows.tiles()];
    for (int t = 0; t < order.length; t++) {
      order[t] = t;
    }
    alongRow = true;
    walk(order);
    alongRow = false;
    walk(
        Arrays.stream(order)
            .boxed()
            .sorted((one, other) -> TileRows.byColumn(rows.tile(one), rows.tile(other)))
            .mapToInt(Integer::intValue)
            .toArray());
    for (int b = 0; b < rows.blocks(); b++) {
      atEdgeOfStock(b);
    }
  }

  /** Rows and columns without a tile are not walked, and may reach the edge of the stock too. */
  private void atEdgeOfStock(int block) {
    int[] box = rows.cells(block);
    int label = labels.labelOf(labels.blockNode(block));
    if (label >= 0
        && (box[0] == grid.boxFrom()
            || box[1] == grid.boxTo()
            || box[2] == grid.boxRowFrom()
            || box[3] == grid.boxRowTo())) {
      beside(label, Stands.OUTSIDE);
    }
  }

  private int line(int t) {
    return alongRow ? rows.tile(t).row : rows.tile(t).column;
  }

  private int along(int t) {
    return alongRow ? rows.tile(t).column : rows.tile(t).row;
  }

  private void walk(int[] order) {
    int first = 0;
    while (first < order.length) {
      int last = first;
      while (last + 1 < order.length && line(order[last + 1]) == line(order[first])) {
        last++;
      }
      for (int k = 0; k < HeightGrid.SIDE; k++) {
        walkLine(order, first, last, k);
      }
      first = last + 1;
    }
  }

  private void walkLine(int[] order, int first, int last, int k) {
    lineIndex = (line(order[first]) << HeightGrid.SHIFT) + k;
    before = surface.stock().isPresent() ? Stands.OUTSIDE : Stands.TOP_UNKNOWN;
    terrace = AreaLabels.NONE;
    for (int i = first; i <= last; i++) {
      int here = along(order[i]);
      if (i == first || along(order[i - 1]) < here - 1) {
        walkGap(i == first ? Integer.MIN_VALUE : along(order[i - 1]) + 1, here - 1);
      }
      walkTile(order[i], here);
    }
    walkGap(along(order[last]) + 1, Integer.MAX_VALUE);
  }

  /** Where no tiles are: uncut stock as far as it goes. */
  private void walkGap(int from, int to) {
    if (surface.stock().isEmpty()) {
      nothing(Stands.TOP_UNKNOWN);
      return;
    }
    int low = alongRow ? grid.boxFrom() : grid.boxRowFrom();
    int high = alongRow ? grid.boxTo() : grid.boxRowTo();
    long start = Math.max(low, (long) from << HeightGrid.SHIFT);
    long end = Math.min(high, ((long) to << HeightGrid.SHIFT) + HeightGrid.SIDE - 1);
    int column = alongRow ? (int) start : lineIndex;
    int row = alongRow ? lineIndex : (int) start;
    if (start > end || surface.stands(column, row) != Stands.SURFACE) {
      nothing(Stands.OUTSIDE);
      return;
    }
    if (start > (long) from << HeightGrid.SHIFT) {
      nothing(Stands.OUTSIDE);
    }
    put(labels.labelOf(labels.nodeAt(column, row)), grid.height(column, row), end - start + 1);
    if (end < ((long) to << HeightGrid.SHIFT) + HeightGrid.SIDE - 1) {
      nothing(Stands.OUTSIDE);
    }
  }

  private void walkTile(int t, int along) {
    HeightGrid.Tile tile = rows.tile(t);
    if (tile.even()) {
      put(t, 0, HeightGrid.SIDE);
      return;
    }
    int start = along << HeightGrid.SHIFT;
    for (int k = start; k < start + HeightGrid.SIDE; k++) {
      put(t, alongRow ? HeightGrid.place(k, lineIndex) : HeightGrid.place(lineIndex, k), 1);
    }
  }

  private void put(int t, int place, int cells) {
    long height = rows.tile(t).heightOf(place);
    Stands stands = surface.stands(height);
    if (stands == Stands.SURFACE) {
      put(labels.label(t, place), height, cells);
    } else {
      nothing(stands);
    }
  }

  /** The next cells are no surface. */
  private void nothing(Stands stands) {
    if (terrace >= 0 && strip == 0) {
      beside(terrace, stands);
    }
    terrace = AreaLabels.NONE;
    before = stands;
  }

  private void beside(int label, Stands stands) {
    beside.computeIfAbsent(label, k -> EnumSet.noneOf(Stands.class)).add(stands);
  }

  /** The next cells are of this terrace, or of none. */
  private void put(int label, long height, long cells) {
    if (label < 0) {
      if (terrace >= 0) {
        stripLow = strip == 0 ? height : Math.min(stripLow, height);
        stripHigh = strip == 0 ? height : Math.max(stripHigh, height);
        strip = (int) Math.min(Integer.MAX_VALUE, strip + cells);
      }
      before = Stands.SURFACE;
      return;
    }
    if (before != Stands.SURFACE) {
      beside(label, before);
    } else if (terrace >= 0 && terrace != label && (strip == 0 || wall(label))) {
      border(label);
    }
    before = Stands.SURFACE;
    terrace = label;
    strip = 0;
  }

  private boolean wall(int label) {
    return strip <= mostAcross
        && stripLow >= Math.min(heights[terrace], heights[label])
        && stripHigh <= Math.max(heights[terrace], heights[label]);
  }

  private void border(int label) {
    Pair pair = new Pair(Math.min(terrace, label), Math.max(terrace, label));
    if (edges.size() >= MOST_BORDERS && !edges.containsKey(pair)) {
      capReached = true;
      return;
    }
    edges.merge(pair, 1L, Long::sum);
  }
}

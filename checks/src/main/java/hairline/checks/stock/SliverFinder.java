package hairline.checks.stock;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;

/**
 * Finds slivers: strips of the uncut top or of a level, two cells wide or wider, with a lower level
 * on both sides. Rows tell those that run more along Y, columns the others: in each, the cells of
 * one height between lower ones are a run, and runs that touch from row to row are a strip. One
 * that runs at about 45° may be told by both, and counts once.
 */
final class SliverFinder {
  /** Fewest cells across: narrower is not told from the error of the borders. */
  static final int FEWEST_CELLS = 2;

  /**
   * What tapers by more than this part of its width, and by more than {@value #FEWEST_CELLS} cells,
   * is the wedge that is left wherever two passes cross.
   */
  static final double MOST_TAPER = 0.3;

  /** Most runs kept. */
  static final int MOST_RUNS = 1_000_000;

  /** Steeper than this both ways: rows and columns may tell it. */
  private static final double STEEP = 0.9;

  private static final int LAST = HeightGrid.SIDE - 1;
  private static final double SQRT2 = StrictMath.sqrt(2);

  private final SurfaceLeft surface;
  private final HeightGrid grid;
  private final IntToDoubleFunction widestPm;
  private final IntToDoubleFunction shortestPm;
  private final int mostCells;
  private boolean full;

  /**
   * A finder.
   *
   * @param widestPm a strip beside this level is narrower than that; NaN: not looked for
   * @param shortestPm and it is as long as that or longer
   * @param mostPm the largest of {@code widestPm}
   */
  SliverFinder(
      SurfaceLeft surface,
      IntToDoubleFunction widestPm,
      IntToDoubleFunction shortestPm,
      double mostPm) {
    this.surface = surface;
    this.grid = surface.grid();
    this.widestPm = widestPm;
    this.shortestPm = shortestPm;
    this.mostCells = (int) Math.ceil(mostPm / grid.cellPm() * SQRT2) + 1;
  }

  /** Cells of one height in a line of cells, with lower ones before and behind. */
  private record Run(int line, int from, int to, long height, int before, int behind) {
    int cells() {
      return to - from + 1;
    }
  }

  /** Finds them. */
  List<Sliver> find() {
    List<Sliver> slivers = new ArrayList<>();
    if (surface.known()) {
      strips(true, slivers);
      strips(false, slivers);
    }
    return slivers;
  }

  /** Whether there were more runs than are kept. */
  boolean full() {
    return full;
  }

  private void strips(boolean rows, List<Sliver> slivers) {
    List<Run> runs = new ArrayList<>();
    for (HeightGrid.Tile tile : grid.tiles()) {
      if (!tile.even()) {
        runs(tile, rows, runs);
      }
      runsBehind(tile, rows, runs);
    }
    runs.sort(
        (one, other) -> {
          int lines = Integer.compare(one.line(), other.line());
          return lines != 0 ? lines : Integer.compare(one.from(), other.from());
        });
    List<List<Run>> open = new ArrayList<>();
    int k = 0;
    while (k < runs.size()) {
      int line = runs.get(k).line();
      List<List<Run>> next = new ArrayList<>();
      // Both lines are in order, and so are the strips that go on.
      int over = 0;
      for (; k < runs.size() && runs.get(k).line() == line; k++) {
        Run run = runs.get(k);
        while (over < open.size() && !reaches(last(open.get(over)), run)) {
          tell(open.get(over), rows, slivers);
          over++;
        }
        if (over < open.size() && goesOn(last(open.get(over)), run)) {
          open.get(over).add(run);
          next.add(open.get(over));
          over++;
        } else {
          next.add(new ArrayList<>(List.of(run)));
        }
      }
      open.subList(over, open.size()).forEach(strip -> tell(strip, rows, slivers));
      open = next;
    }
    open.forEach(strip -> tell(strip, rows, slivers));
  }

  private static Run last(List<Run> strip) {
    return strip.get(strip.size() - 1);
  }

  /** Whether a strip's last run may touch this one or one behind it. */
  private static boolean reaches(Run last, Run run) {
    return run.line() == last.line() + 1 && last.to() >= run.from();
  }

  private static boolean goesOn(Run last, Run run) {
    return run.line() == last.line() + 1
        && run.height() == last.height()
        && run.from() <= last.to()
        && run.to() >= last.from();
  }

  private void tell(List<Run> strip, boolean rows, List<Sliver> slivers) {
    Run first = strip.get(0);
    Run last = strip.get(strip.size() - 1);
    double along = strip.size();
    double aside = (last.from() + (double) last.to() - first.from() - first.to()) / 2;
    // The ends are wider, between round ends of passes.
    List<Run> inner = strip.subList(strip.size() / 4, strip.size() - strip.size() / 4);
    double slant = slant(inner);
    if (Math.abs(slant) > 1 / STEEP) {
      return;
    }
    double straight = StrictMath.hypot(along, aside);
    double cells = 0;
    int narrowest = Integer.MAX_VALUE;
    int widest = 0;
    for (Run run : inner) {
      cells += run.cells();
      narrowest = Math.min(narrowest, run.cells());
      widest = Math.max(widest, run.cells());
    }
    if (widest - narrowest > Math.max(FEWEST_CELLS, MOST_TAPER * cells / inner.size())) {
      return;
    }
    double width = cells / inner.size() * (along / straight) * grid.cellPm();
    double length = straight * grid.cellPm();
    Run middle = strip.get(strip.size() / 2);
    double narrowerThan =
        Math.min(widestPm.applyAsDouble(middle.before()), widestPm.applyAsDouble(middle.behind()));
    double shortest =
        Math.max(
            shortestPm.applyAsDouble(middle.before()), shortestPm.applyAsDouble(middle.behind()));
    if (width < narrowerThan
        && width >= FEWEST_CELLS * (double) grid.cellPm()
        && length >= shortest) {
      long across = grid.centre((middle.from() + middle.to()) / 2);
      long line = grid.centre(middle.line());
      Sliver sliver =
          new Sliver(
              width,
              length,
              middle.height(),
              middle.before(),
              middle.behind(),
              rows ? across : line,
              rows ? line : across);
      if (Math.abs(slant) < STEEP || slivers.stream().noneMatch(told -> one(told, sliver, slant))) {
        slivers.add(sliver);
      }
    }
  }

  /** How far a strip goes aside for each line of cells. */
  private static double slant(List<Run> inner) {
    Run first = inner.get(0);
    Run last = last(inner);
    return inner.size() == 1
        ? 0
        : (last.from() + (double) last.to() - first.from() - first.to())
            / (2.0 * (inner.size() - 1));
  }

  /** Whether two at about 45° are one: a diagonal that goes up, or down where it slants so. */
  private static boolean one(Sliver told, Sliver sliver, double slant) {
    double dx = (double) told.xPm() - sliver.xPm();
    double dy = (told.yPm() - (double) sliver.yPm()) * Math.signum(slant);
    return told.heightPm() == sliver.heightPm()
        && Math.abs(dx - dy) / SQRT2 < sliver.widthPm()
        && Math.abs(dx + dy) / SQRT2 < sliver.lengthPm() / 2;
  }

  /** The runs that begin just behind this tile, where all there is of one height. */
  private void runsBehind(HeightGrid.Tile tile, boolean rows, List<Run> runs) {
    HeightGrid.Tile next = grid.find(tile.column + (rows ? 1 : 0), tile.row + (rows ? 0 : 1));
    if (mostCells < HeightGrid.SIDE || (next != null && !next.even())) {
      return;
    }
    int fromColumn = tile.column << HeightGrid.SHIFT;
    int fromRow = tile.row << HeightGrid.SHIFT;
    for (int k = 0; k < HeightGrid.SIDE && !full; k++) {
      int column = rows ? fromColumn + HeightGrid.SIDE : fromColumn + k;
      int row = rows ? fromRow + k : fromRow + HeightGrid.SIDE;
      int right = rows ? 1 : 0;
      int up = rows ? 0 : 1;
      long height = grid.height(column, row);
      int before = grid.id(column - right, row - up);
      if (before <= Cut.UNCUT
          || grid.height(column - right, row - up) >= height
          || grid.id(column, row) < Cut.UNCUT
          || surface.stands(height) != Stands.SURFACE) {
        continue;
      }
      int cells = HeightGrid.SIDE;
      while (cells <= mostCells
          && grid.height(column + right * cells, row + up * cells) == height) {
        cells++;
      }
      add(
          new Run(
              rows ? row : column,
              rows ? column : row,
              (rows ? column : row) + cells - 1,
              height,
              before,
              grid.id(column + right * cells, row + up * cells)),
          grid.height(column + right * cells, row + up * cells),
          runs);
    }
  }

  /** Keeps a run that ends before it is too wide, at a lower level. */
  private void add(Run run, long heightBehind, List<Run> runs) {
    if (run.cells() > mostCells || run.behind() <= Cut.UNCUT || heightBehind >= run.height()) {
      return;
    }
    if (runs.size() == MOST_RUNS) {
      full = true;
      return;
    }
    runs.add(run);
  }

  /** The runs that begin in this tile. */
  private void runs(HeightGrid.Tile tile, boolean rows, List<Run> runs) {
    int fromColumn = tile.column << HeightGrid.SHIFT;
    int fromRow = tile.row << HeightGrid.SHIFT;
    int right = rows ? 1 : 0;
    int up = rows ? 0 : 1;
    int back = rows ? 1 : HeightGrid.SIDE;
    long[] heights = tile.heights;
    int[] ids = tile.ids;
    for (int place = 0; place < heights.length; place++) {
      // Most cells have a floor of no level, or none lower before them in the tile.
      if (ids[place] < Cut.UNCUT) {
        continue;
      }
      int column = fromColumn + (place & LAST);
      int row = fromRow + (place >> HeightGrid.SHIFT);
      boolean inside = rows ? column > fromColumn : row > fromRow;
      long height = heights[place];
      if ((inside && heights[place - back] >= height)
          || grid.height(tile, column - right, row - up) >= height
          || grid.id(tile, column - right, row - up) <= Cut.UNCUT
          || surface.stands(height) != Stands.SURFACE) {
        continue;
      }
      // Within the tile without looking it up.
      int room = LAST - (rows ? place & LAST : place >> HeightGrid.SHIFT);
      int cells = 1;
      while (cells <= Math.min(room, mostCells) && heights[place + cells * back] == height) {
        cells++;
      }
      while (cells <= mostCells
          && grid.height(tile, column + right * cells, row + up * cells) == height) {
        cells++;
      }
      int endColumn = column + right * cells;
      int endRow = row + up * cells;
      int from = rows ? column : row;
      add(
          new Run(
              rows ? row : column,
              from,
              from + cells - 1,
              height,
              grid.id(tile, column - right, row - up),
              grid.id(tile, endColumn, endRow)),
          grid.height(tile, endColumn, endRow),
          runs);
    }
  }
}

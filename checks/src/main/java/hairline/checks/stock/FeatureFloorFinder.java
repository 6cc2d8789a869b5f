package hairline.checks.stock;

import hairline.checks.setup.Feature;
import hairline.checks.setup.LengthRange;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Finds what terraces lie in each declared feature. */
final class FeatureFloorFinder {
  /** Most cells looked at in one feature. */
  static final long MOST_CELLS = 32_000_000;

  /** Heights of one terrace are equal to a picometre: levels keep their stored Z. */
  private static final long EXACTLY_PM = 1;

  private static final double MM2_PER_PM2 = 1e-18;

  private final SurfaceLeft surface;
  private final HeightGrid grid;
  private final StockModel.Box stock;

  FeatureFloorFinder(SurfaceLeft surface, StockModel.Box stock) {
    this.surface = surface;
    this.grid = surface.grid();
    this.stock = stock;
  }

  /** What lies in the features; each cell belongs to the smallest one that holds its centre. */
  List<FeatureFloors> of(List<Feature> features) {
    TerraceFinder.Found found = new TerraceFinder(surface, EXACTLY_PM).find(false);
    FeatureAreas areas = new FeatureAreas(features);
    return features.stream().map(feature -> of(feature, areas, found)).toList();
  }

  /** A rectangle of cells, all four edges included. */
  private record Cells(int left, int right, int low, int high) {
    long count() {
      return (right - (long) left + 1) * (high - (long) low + 1);
    }

    /** The part of it in a tile. */
    Cells within(int tileColumn, int tileRow) {
      int column = tileColumn << HeightGrid.SHIFT;
      int row = tileRow << HeightGrid.SHIFT;
      return new Cells(
          Math.max(left, column),
          Math.min(right, column + HeightGrid.SIDE - 1),
          Math.max(low, row),
          Math.min(high, row + HeightGrid.SIDE - 1));
    }
  }

  /** The parts of a feature found so far. */
  private static final class Seen {
    private final Map<Integer, Outline> outlines = new TreeMap<>();
    private boolean known;

    Seen(boolean known) {
      this.known = known;
    }
  }

  /** The outline of a part, in cells. */
  private static final class Outline {
    private long cells;
    private int fromColumn = Integer.MAX_VALUE;
    private int toColumn = Integer.MIN_VALUE;
    private int fromRow = Integer.MAX_VALUE;
    private int toRow = Integer.MIN_VALUE;

    void add(Cells added) {
      cells += added.count();
      fromColumn = Math.min(fromColumn, added.left);
      toColumn = Math.max(toColumn, added.right);
      fromRow = Math.min(fromRow, added.low);
      toRow = Math.max(toRow, added.high);
    }

    long longerSide() {
      return Math.max(toColumn - (long) fromColumn, toRow - (long) fromRow) + 1;
    }
  }

  private FeatureFloors of(Feature feature, FeatureAreas areas, TerraceFinder.Found found) {
    List<String> left = new ArrayList<>(found.terraces().left());
    int[] columns = range(feature.x(), stock.xMinPm(), stock.xMaxPm());
    int[] rows = range(feature.y(), stock.yMinPm(), stock.yMaxPm());
    long wide = Math.max(0, columns[1] - (long) columns[0] + 1);
    long high = Math.max(0, rows[1] - (long) rows[0] + 1);
    if (wide * high > MOST_CELLS) {
      left.add(feature.name() + ": more than " + MOST_CELLS + " cells");
      return new FeatureFloors(feature, surface.known(), List.of(), left);
    }
    Seen seen = new Seen(surface.known());
    int row = rows[0];
    while (row <= rows[1]) {
      int to = row;
      while (to < rows[1] && areas.alike((double) grid.centre(row), (double) grid.centre(to + 1))) {
        to++;
      }
      int column = columns[0];
      while (column <= columns[1]) {
        boolean owned = owns(feature, areas, column, row);
        int end = column;
        while (end < columns[1] && owns(feature, areas, end + 1, row) == owned) {
          end++;
        }
        if (owned) {
          look(new Cells(column, end, row, to), found, seen);
        }
        column = end + 1;
      }
      row = to + 1;
    }
    double cell = grid.cellPm();
    List<FeatureFloors.Floor> floors = new ArrayList<>();
    seen.outlines.forEach(
        (id, outline) ->
            floors.add(
                new FeatureFloors.Floor(
                    found.terraces().areas().get(id - 1),
                    outline.longerSide() * grid.cellPm(),
                    outline.cells * (cell * cell * MM2_PER_PM2))));
    return new FeatureFloors(feature, seen.known, floors, left);
  }

  private boolean owns(Feature feature, FeatureAreas areas, int column, int row) {
    return areas
        .at((double) grid.centre(column), (double) grid.centre(row))
        .equals(Optional.of(feature));
  }

  /** Looks at cells that belong to the feature, those of one height and of uncut stock at once. */
  private void look(Cells cells, TerraceFinder.Found found, Seen seen) {
    for (int r = cells.low >> HeightGrid.SHIFT; r <= cells.high >> HeightGrid.SHIFT; r++) {
      for (int c = cells.left >> HeightGrid.SHIFT; c <= cells.right >> HeightGrid.SHIFT; c++) {
        Cells here = cells.within(c, r);
        HeightGrid.Tile tile = grid.find(c, r);
        if ((tile == null || tile.even()) && inStock(here)) {
          take(here, found, seen);
          continue;
        }
        for (int row = here.low; row <= here.high; row++) {
          int from = here.left;
          while (from <= here.right) {
            // Side by side and of one height, so of one terrace.
            int to = from;
            while (to < here.right && height(tile, to + 1, row) == height(tile, from, row)) {
              to++;
            }
            take(new Cells(from, to, row, row), found, seen);
            from = to + 1;
          }
        }
      }
    }
  }

  private long height(HeightGrid.@Nullable Tile tile, int column, int row) {
    return tile == null ? grid.height(column, row) : grid.height(tile, column, row);
  }

  private boolean inStock(Cells cells) {
    return cells.left >= grid.boxFrom()
        && cells.right <= grid.boxTo()
        && cells.low >= grid.boxRowFrom()
        && cells.high <= grid.boxRowTo();
  }

  /** Takes cells that are all alike. */
  private void take(Cells cells, TerraceFinder.Found found, Seen seen) {
    int id = found.at().id(cells.left, cells.low);
    if (id > 0) {
      seen.outlines.computeIfAbsent(id, k -> new Outline()).add(cells);
    } else {
      seen.known &= surface.stands(cells.left, cells.low) != Stands.NOT_KNOWN;
    }
  }

  /** First and last cell of a range, within the stock. */
  private int[] range(Optional<LengthRange> range, long stockLow, long stockHigh) {
    long low = Math.max(stockLow, range.map(r -> r.lo().pm()).orElse(stockLow));
    long high = Math.min(stockHigh, range.map(r -> r.hi().pm()).orElse(stockHigh));
    return new int[] {grid.index((double) low), grid.index((double) high)};
  }
}

package hairline.checks.stock;

import hairline.checks.setup.Feature;
import hairline.checks.setup.LengthRange;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

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
    TerraceFinder.Found found = new TerraceFinder(surface, EXACTLY_PM).find();
    FeatureAreas areas = new FeatureAreas(features);
    return features.stream().map(feature -> of(feature, areas, found)).toList();
  }

  /** The outline of a part, in cells. */
  private static final class Outline {
    private long cells;
    private int fromColumn = Integer.MAX_VALUE;
    private int toColumn = Integer.MIN_VALUE;
    private int fromRow = Integer.MAX_VALUE;
    private int toRow = Integer.MIN_VALUE;

    void add(int column, int row) {
      cells++;
      fromColumn = Math.min(fromColumn, column);
      toColumn = Math.max(toColumn, column);
      fromRow = Math.min(fromRow, row);
      toRow = Math.max(toRow, row);
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
    boolean known = surface.known();
    Map<Integer, Outline> outlines = new TreeMap<>();
    for (int row = rows[0]; row <= rows[1]; row++) {
      for (int column = columns[0]; column <= columns[1]; column++) {
        Optional<Feature> owner = areas.at((double) grid.centre(column), (double) grid.centre(row));
        if (owner.isEmpty() || !owner.get().equals(feature)) {
          continue;
        }
        int id = found.at().id(column, row);
        if (id > 0) {
          outlines.computeIfAbsent(id, k -> new Outline()).add(column, row);
        } else {
          known &= surface.stands(column, row) != Stands.NOT_KNOWN;
        }
      }
    }
    double cell = grid.cellPm();
    List<FeatureFloors.Floor> floors = new ArrayList<>();
    outlines.forEach(
        (id, outline) ->
            floors.add(
                new FeatureFloors.Floor(
                    found.terraces().areas().get(id - 1),
                    outline.longerSide() * grid.cellPm(),
                    outline.cells * (cell * cell * MM2_PER_PM2))));
    return new FeatureFloors(feature, known, floors, left);
  }

  /** First and last cell of a range, within the stock. */
  private int[] range(Optional<LengthRange> range, long stockLow, long stockHigh) {
    long low = Math.max(stockLow, range.map(r -> r.lo().pm()).orElse(stockLow));
    long high = Math.min(stockHigh, range.map(r -> r.hi().pm()).orElse(stockHigh));
    return new int[] {grid.index((double) low), grid.index((double) high)};
  }
}

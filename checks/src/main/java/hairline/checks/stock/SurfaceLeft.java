package hairline.checks.stock;

import hairline.checks.setup.Feature;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Consumer;
import java.util.function.IntToDoubleFunction;

/**
 * The surface left under one work offset, to be looked at: heights in picometres, work coordinates.
 * It is the field itself and no copy, and answers truly only while nothing is cut any more.
 */
public final class SurfaceLeft {
  private final String offset;
  private final boolean known;
  private final Optional<StockModel.Box> stock;

  /** What is as low as this is cut through. */
  private final long bottomPm;

  private final HeightGrid grid;
  private final double widestCornerPm;
  private final long highestFloorPm;

  SurfaceLeft(Surface surface, double widestCornerPm) {
    this.offset = surface.offset;
    this.known = !surface.lost();
    this.stock = surface.box;
    this.bottomPm =
        stock.map(StockModel.Box::bottomPm).orElse(OptionalLong.empty()).orElse(Long.MIN_VALUE);
    this.grid = surface.grid;
    this.widestCornerPm = widestCornerPm;
    this.highestFloorPm = surface.highestFloor();
  }

  /** The work offset: "G54" and so on. */
  public String offset() {
    return offset;
  }

  /** Whether anything is known; false where a move of unknown course may have cut anywhere. */
  public boolean known() {
    return known;
  }

  /** The stock that stood there before the first cut, where the sheet gives one. */
  public Optional<StockModel.Box> stock() {
    return stock;
  }

  /**
   * Where the sheet gives no stock: the box around all cutting moves, as far as their tools reach,
   * up to the highest floor of one of them. What stands beside the cuts is at least as high as
   * that; how high it is, and so how much the first moves take, stays unknown: a box that ends
   * there would have them cut air. Empty where the sheet gives a stock, or nothing is cut.
   */
  public Optional<StockModel.Box> assumedStock() {
    Bounds bounds = stock.isPresent() || !known ? Bounds.NONE : Bounds.of(this);
    if (bounds.empty() || highestFloorPm == Long.MIN_VALUE) {
      return Optional.empty();
    }
    long half = grid.cellPm() / 2;
    return Optional.of(
        new StockModel.Box(
            grid.centre(bounds.fromColumn()) - half,
            grid.centre(bounds.toColumn()) + half,
            grid.centre(bounds.fromRow()) - half,
            grid.centre(bounds.toRow()) + half,
            highestFloorPm,
            OptionalLong.empty(),
            offset));
  }

  /** What its cells take in memory. */
  public long bytes() {
    return grid.bytes();
  }

  /** Edge of a cell. */
  public long cellPm() {
    return grid.cellPm();
  }

  /** What stands at a place. */
  public Stands standsAt(double xPm, double yPm) {
    return stands(grid.index(xPm), grid.index(yPm));
  }

  /** The height at a place: exact for the cell in which it lies; empty where there is none. */
  public OptionalLong heightPm(double xPm, double yPm) {
    int column = grid.index(xPm);
    int row = grid.index(yPm);
    return stands(column, row) == Stands.SURFACE
        ? OptionalLong.of(grid.height(column, row))
        : OptionalLong.empty();
  }

  /**
   * The terraces.
   *
   * @param tolerancePm heights are of one terrace where they round to the same multiple of it
   * @see TerraceFinder
   */
  public Terraces terraces(long tolerancePm) {
    return new TerraceFinder(this, tolerancePm).find().terraces();
  }

  /** What terraces lie in declared features; nothing is told without a stock. */
  public List<FeatureFloors> floors(List<Feature> features) {
    return stock.map(box -> new FeatureFloorFinder(this, box).of(features)).orElse(List.of());
  }

  /**
   * Slivers between levels.
   *
   * @param widestPm a strip beside a level, by its id, is narrower than that; NaN: not looked for
   * @param shortestPm and as long as that or longer
   * @param mostPm the largest of {@code widestPm}
   * @param each takes each sliver
   * @return false where there may be more than were told
   * @see SliverFinder
   */
  public boolean slivers(
      IntToDoubleFunction widestPm,
      IntToDoubleFunction shortestPm,
      double mostPm,
      Consumer<Sliver> each) {
    SliverFinder finder = new SliverFinder(this, widestPm, shortestPm, mostPm);
    finder.find().forEach(each);
    return !finder.full();
  }

  /** The smallest of these features that holds the middle of a sliver. */
  public static Optional<Feature> featureOf(Sliver sliver, List<Feature> features) {
    return new FeatureAreas(features).at((double) sliver.xPm(), (double) sliver.yPm());
  }

  /** The heights along a line. */
  public Section section(SectionLine line) {
    return new SectionTracer(this, line, SectionTracer.MOST_POINTS).trace();
  }

  HeightGrid grid() {
    return grid;
  }

  double widestCornerPm() {
    return widestCornerPm;
  }

  /** Whether there is anything to show: a stock, or something that was cut. */
  boolean anything() {
    return stock.isPresent() || grid.tiles().length > 0;
  }

  Stands stands(int column, int row) {
    return stands(grid.height(column, row));
  }

  /** What a height of the grid stands for. */
  Stands stands(long height) {
    if (!known || height == HeightGrid.LOST_HEIGHT) {
      return Stands.NOT_KNOWN;
    }
    if (height == HeightGrid.AIR_HEIGHT) {
      return Stands.OUTSIDE;
    }
    if (height == HeightGrid.VIRGIN_HEIGHT) {
      return Stands.TOP_UNKNOWN;
    }
    return height <= bottomPm ? Stands.CUT_THROUGH : Stands.SURFACE;
  }
}

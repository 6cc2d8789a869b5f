package hairline.checks.stock;

import hairline.checks.setup.CompensationShift;
import hairline.checks.setup.ControlKeys;
import hairline.checks.setup.Feature;
import hairline.checks.setup.JobKeys;
import hairline.checks.setup.Length;
import hairline.checks.setup.LengthRange;
import hairline.checks.setup.MachineKeys;
import hairline.checks.setup.Setup;
import hairline.checks.setup.StockKeys;
import hairline.checks.setup.Tool;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * What this stage takes from the setup sheet, and how finely it works.
 *
 * @param box the uncut stock, where the sheet gives x, y and top
 * @param tools the tools by number
 * @param features the declared features in the order of the sheet
 * @param fineStepPm {@code job.fine_step}
 * @param fineToolPm {@code job.fine_tool}
 * @param compensation what G41 and G42 shift by, where the sheet says so
 * @param cellPm edge of a cell of the height grid: even, so that centres are whole picometres
 * @param chordErrorPm how far chords may lie from an arc that does not keep its height: a tenth of
 *     the resolution where the sheet gives it, and a 64th of a cell at most
 * @param limits how much is kept
 */
public record StockModel(
    Optional<Box> box,
    Map<Integer, Tool> tools,
    List<Feature> features,
    long fineStepPm,
    long fineToolPm,
    Optional<CompensationShift> compensation,
    long cellPm,
    double chordErrorPm,
    Limits limits) {

  /** Cells across the smallest tool, where the stock is not too large for so many. */
  public static final int CELLS_PER_DIAMETER = 100;

  /** Cells across the smallest tool, however large the stock. */
  static final int FEWEST_CELLS_PER_DIAMETER = 16;

  /** Smallest edge of a cell: a tenth of a micrometre. */
  public static final long SMALLEST_CELL_PM = 100_000;

  /** Largest edge that may be asked for: a millimetre. */
  public static final long LARGEST_CELL_PM = 1_000_000_000;

  private static final long CELL_WITHOUT_TOOLS_PM = 25_000_000;

  /**
   * The uncut stock: a box in the work coordinates of one offset.
   *
   * @param bottomPm its underside, where given
   * @param offset "G54" and so on
   */
  public record Box(
      long xMinPm,
      long xMaxPm,
      long yMinPm,
      long yMaxPm,
      long topPm,
      OptionalLong bottomPm,
      String offset) {}

  /**
   * Caps of the tables. Reaching one but that of the paths is told by an event, and what lies
   * beyond is unknown.
   *
   * @param tiles tiles of 64 × 64 cells with more than one height, 51 KiB each
   * @param paths moves kept to find parallel neighbours and repeats, and squares of two cells that
   *     hold them; older ones are forgotten, and what would come from them is not known
   * @param levels levels told apart
   * @param steps steps told
   */
  public record Limits(int tiles, int paths, int levels, int steps) {
    /** What is kept unless told otherwise: at most some 340 MiB. */
    public static final Limits DEFAULT = new Limits(6144, 131_072, 65_536, 10_000);

    /** What the cells of the height grids take in memory at most. */
    public long gridBytes() {
      return tiles * HeightGrid.BYTES_PER_TILE;
    }
  }

  public StockModel {
    tools = Map.copyOf(tools);
    features = List.copyOf(features);
    if (cellPm < SMALLEST_CELL_PM || cellPm % 2 != 0) {
      throw new IllegalArgumentException("cell of " + cellPm + " pm");
    }
  }

  /** What a setup sheet says. */
  public static StockModel of(Setup setup) {
    return of(setup, OptionalLong.empty());
  }

  /**
   * What a setup sheet says, but for the cells.
   *
   * @param cellPm edge of a cell, where it is not to be the usual one
   */
  public static StockModel of(Setup setup, OptionalLong cellPm) {
    Map<Integer, Tool> tools = new HashMap<>();
    setup.tools().forEach(tool -> tools.put(tool.number(), tool));
    Optional<Box> box = boxOf(setup);
    long cell = cellPm.orElseGet(() -> cellFor(setup.tools(), box));
    return new StockModel(
        box,
        tools,
        setup.features(),
        setup.get(JobKeys.FINE_STEP).orElseThrow().pm(),
        setup.get(JobKeys.FINE_TOOL).orElseThrow().pm(),
        setup.get(ControlKeys.COMPENSATION),
        cell,
        setup
            .get(MachineKeys.RESOLUTION)
            .map(resolution -> Math.min(chordError(cell), resolution.pm() / 10.0))
            .orElse(chordError(cell)),
        Limits.DEFAULT);
  }

  /** A 64th of a cell. */
  static double chordError(long cellPm) {
    return cellPm / 64.0;
  }

  /** The same with other caps. */
  public StockModel withLimits(Limits others) {
    return new StockModel(
        box, tools, features, fineStepPm, fineToolPm, compensation, cellPm, chordErrorPm, others);
  }

  private static Optional<Box> boxOf(Setup setup) {
    Optional<LengthRange> x = setup.get(StockKeys.X);
    Optional<LengthRange> y = setup.get(StockKeys.Y);
    Optional<Length> top = setup.get(StockKeys.TOP);
    if (x.isEmpty() || y.isEmpty() || top.isEmpty()) {
      return Optional.empty();
    }
    Optional<Length> bottom = setup.get(StockKeys.BOTTOM);
    return Optional.of(
        new Box(
            x.get().lo().pm(),
            x.get().hi().pm(),
            y.get().lo().pm(),
            y.get().hi().pm(),
            top.get().pm(),
            bottom.map(length -> OptionalLong.of(length.pm())).orElse(OptionalLong.empty()),
            setup.get(StockKeys.OFFSET).orElse("G54")));
  }

  /**
   * A hundredth of the smallest diameter; on a stock whose tiles would then not fit, as fine as
   * they do, or a sixteenth of that diameter. Rounded to an even number of picometres.
   */
  private static long cellFor(List<Tool> tools, Optional<Box> box) {
    double smallest =
        tools.stream()
            .flatMap(tool -> Cutter.of(tool).stream())
            .mapToDouble(cutter -> 2 * cutter.radiusPm())
            .min()
            .orElse(CELL_WITHOUT_TOOLS_PM * (double) CELLS_PER_DIAMETER);
    double finest = box.map(StockModel::finestCell).orElse(0.0);
    double cell =
        Math.min(
            smallest / FEWEST_CELLS_PER_DIAMETER, Math.max(smallest / CELLS_PER_DIAMETER, finest));
    long down = (long) cell;
    return Math.max(SMALLEST_CELL_PM, down - down % 2);
  }

  /** The cell at which every tile of a stock may hold more than one height. */
  private static double finestCell(Box box) {
    double x = (box.xMaxPm() - (double) box.xMinPm()) / HeightGrid.SIDE;
    double y = (box.yMaxPm() - (double) box.yMinPm()) / HeightGrid.SIDE;
    // One tile more on each side: (x/c + 2) (y/c + 2) = tiles, solved for the cell c.
    double rest = Limits.DEFAULT.tiles() - 4.0;
    double sum = x + y;
    return (sum + Math.sqrt(sum * sum + rest * x * y)) / rest;
  }
}

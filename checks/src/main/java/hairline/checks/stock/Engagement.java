package hairline.checks.stock;

import hairline.checks.motion.Axis;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How a move engages its material from the side.
 *
 * @param contact whether it removes anything, or is a spring pass
 * @param spring whether it repeats a path
 * @param radialMm width of cut, where it can be told
 * @param slot whether the full diameter engages
 * @param side where the material stands
 */
record Engagement(
    boolean contact, boolean spring, OptionalDouble radialMm, boolean slot, Optional<Side> side) {

  /** No contact. */
  static final Engagement NONE =
      new Engagement(false, false, OptionalDouble.empty(), false, Optional.empty());

  /** Contact, and nothing known of its width. */
  static final Engagement UNKNOWN =
      new Engagement(true, false, OptionalDouble.empty(), false, Optional.empty());

  private static final double PM_PER_MM = 1e9;

  /** Arc centres are good to a nanometre. */
  private static final double ARC_ERROR_PM = 1000;

  /** How far widths found along one path may differ: a micrometre, or two in a hundred. */
  private static final double EVEN_PM = 1e6;

  private static final double EVEN_SHARE = 0.02;
  private static final double[] STATIONS = {0.5, 1.0 / 6, 5.0 / 6};
  private static final int MOST_SPRING_STATIONS = 16;

  /** Looks at one move, after its cells were cut and before its path is kept. */
  static final class Finder {
    private final HeightGrid grid;
    private final PathIndex index;
    private final double cell;
    private final AheadRim ahead;

    Finder(HeightGrid grid, PathIndex index) {
      this.grid = grid;
      this.index = index;
      this.cell = grid.cellPm();
      this.ahead = new AheadRim(grid);
    }

    /**
     * The engagement of a move at constant Z.
     *
     * @param found what its cells held; what stands just ahead is added for short moves
     */
    Engagement atLevel(Path path, Cutter cutter, Removed found, Optional<StockModel.Box> box) {
      boolean brief = path.planLength() < 4 * cell;
      if (brief && cutter.flat()) {
        ahead.addTo(path, cutter, found);
      }
      Extent taken = taken(path, cutter, found);
      boolean thin = taken.cells == 0 || taken.across() < 2 * cell;
      if (thin && repeats(path, cutter)) {
        return new Engagement(true, true, OptionalDouble.empty(), false, Optional.empty());
      }
      if (taken.cells == 0) {
        Engagement strip = cutter.flat() ? thinStrip(path, cutter, found) : NONE;
        return strip.contact() || found.nothing() ? strip : UNKNOWN;
      }
      return cutter.flat() ? square(path, cutter, taken, box) : round(path, cutter, taken, true);
    }

    /**
     * The cells that tell the width. Where a pass ends beside another, its round end reaches beyond
     * that one's; so of a move as long as the tool's radius only what lies beside it counts.
     */
    private static Extent taken(Path path, Cutter cutter, Removed found) {
      return path.planLength() >= cutter.radiusPm() ? found.beside() : found.all();
    }

    /** The engagement of a move that varies Z while it moves in X or Y. */
    Engagement contouring(Path path, Cutter cutter, Removed found) {
      if (found.nothing()) {
        return NONE;
      }
      return cutter.flat() ? UNKNOWN : round(path, cutter, taken(path, cutter, found), false);
    }

    private PathIndex.Station station(Path path, Cutter cutter, double fraction) {
      double[] u = path.direction(fraction);
      return new PathIndex.Station(
          path.at(Axis.X, fraction),
          path.at(Axis.Y, fraction),
          u[0],
          u[1],
          cutter.radiusPm(),
          path.z0,
          path.level());
    }

    // Spring passes and strips narrower than a cell.

    private boolean repeats(Path path, Cutter cutter) {
      double offset = cutter.edgeRadiusPm() + (path.straight() ? 1 : ARC_ERROR_PM);
      int stations =
          (int) Math.max(1, Math.min(MOST_SPRING_STATIONS, path.planLength() / cutter.radiusPm()));
      boolean overStock = false;
      for (int k = 0; k < stations; k++) {
        PathIndex.Station at = station(path, cutter, (k + 0.5) / stations);
        long height = grid.height(grid.index(at.x()), grid.index(at.y()));
        if (height == HeightGrid.AIR_HEIGHT) {
          // Runs in and out of the part repeat nothing.
          continue;
        }
        if (height < path.z0 || !index.repeats(at, offset)) {
          return false;
        }
        overStock = true;
      }
      return overStock;
    }

    /**
     * Contact in a strip too narrow to hold the centre of a cell, told by a parallel path; of two
     * strips the wider counts.
     */
    private Engagement thinStrip(Path path, Cutter cutter, Removed found) {
      double left = stripWidth(path, cutter, 1);
      double right = stripWidth(path, cutter, -1);
      if (!Double.isNaN(left)) {
        addBeside(path, cutter, 1, found);
      }
      if (!Double.isNaN(right)) {
        addBeside(path, cutter, -1, found);
      }
      return wider(left, right, NONE);
    }

    /** Width of the strip on that side (1: left), where material stands there; else NaN. */
    private double stripWidth(Path path, Cutter cutter, int materialSide) {
      return standsBeside(path, cutter, materialSide)
          ? evenWidth(path, cutter, -materialSide, 1, 2 * cell)
          : Double.NaN;
    }

    /** The wider of two strips; of equal ones the side is not told. */
    private static Engagement wider(double leftPm, double rightPm, Engagement none) {
      if (Double.isNaN(leftPm) && Double.isNaN(rightPm)) {
        return none;
      }
      if (leftPm == rightPm) {
        return new Engagement(
            true, false, OptionalDouble.of(leftPm / PM_PER_MM), false, Optional.empty());
      }
      boolean left = Double.isNaN(rightPm) || leftPm > rightPm;
      return told(left ? leftPm : rightPm, left ? Side.LEFT : Side.RIGHT);
    }

    private boolean standsBeside(Path path, Cutter cutter, int side) {
      for (double fraction : STATIONS) {
        PathIndex.Station at = station(path, cutter, fraction);
        double out = cutter.radiusPm() + 0.75 * cell;
        double x = at.x() - side * at.uy() * out;
        double y = at.y() + side * at.ux() * out;
        if (grid.height(grid.index(x), grid.index(y)) <= path.z0) {
          return false;
        }
      }
      return true;
    }

    private void addBeside(Path path, Cutter cutter, int side, Removed found) {
      int stations = (int) Math.max(1, Math.min(64, path.planLength() / cell));
      for (int k = 0; k < stations; k++) {
        PathIndex.Station at = station(path, cutter, (k + 0.5) / stations);
        double out = cutter.radiusPm() + 0.75 * cell;
        int column = grid.index(at.x() - side * at.uy() * out);
        int row = grid.index(at.y() + side * at.ux() * out);
        long height = grid.height(column, row);
        if (height > path.z0) {
          found.add(grid.id(column, row), height, path.z0, row, column, column);
        }
      }
    }

    // Width of cut.

    /** With a square end, at constant Z. */
    private Engagement square(
        Path path, Cutter cutter, Extent taken, Optional<StockModel.Box> box) {
      double radius = cutter.radiusPm();
      double diameter = 2 * radius;
      boolean left = taken.acrossHigh >= radius - 1.5 * cell;
      boolean right = taken.acrossLow <= -(radius - 1.5 * cell);
      if (left && right) {
        Engagement slot =
            new Engagement(
                true, false, OptionalDouble.of(diameter / PM_PER_MM), true, Optional.empty());
        return wider(
            width(path, cutter, -1, diameter - 3 * cell, diameter - 1, box),
            width(path, cutter, 1, diameter - 3 * cell, diameter - 1, box),
            slot);
      }
      if (left == right) {
        return UNKNOWN;
      }
      Side side = left ? Side.LEFT : Side.RIGHT;
      // From the border of the tool to half a cell beyond the farthest centre.
      double width = radius + cell / 2 + (left ? -taken.acrossLow : taken.acrossHigh);
      double told =
          width(
              path,
              cutter,
              left ? -1 : 1,
              Math.max(1, width - 1.5 * cell),
              Math.min(diameter - 1, width + 1.5 * cell),
              box);
      return Double.isNaN(told)
          ? new Engagement(true, false, OptionalDouble.empty(), false, Optional.of(side))
          : told(told, side);
    }

    /** With a ball or a corner radius: the width is the distance of the neighbouring path. */
    private Engagement round(Path path, Cutter cutter, Extent taken, boolean level) {
      if (taken.cells == 0) {
        return UNKNOWN;
      }
      double middle = (taken.acrossHigh + taken.acrossLow) / 2;
      double width = taken.across() + cell;
      double diameter = 2 * cutter.radiusPm();
      if (Math.abs(middle) > cell / 2) {
        Side side = middle > 0 ? Side.LEFT : Side.RIGHT;
        double told = evenWidth(path, cutter, middle > 0 ? -1 : 1, 1, diameter - 1);
        return Double.isNaN(told)
            ? new Engagement(true, false, OptionalDouble.empty(), false, Optional.of(side))
            : told(told, side);
      }
      boolean slot = level && width >= diameter - 3 * cell;
      return new Engagement(
          true,
          false,
          slot ? OptionalDouble.of(diameter / PM_PER_MM) : OptionalDouble.empty(),
          slot,
          Optional.empty());
    }

    private static Engagement told(double widthPm, Side side) {
      return new Engagement(
          true, false, OptionalDouble.of(widthPm / PM_PER_MM), false, Optional.of(side));
    }

    /** From a parallel path or, for a move along X or Y, from an edge of the stock. */
    private double width(
        Path path, Cutter cutter, int side, double low, double high, Optional<StockModel.Box> box) {
      double beside = evenWidth(path, cutter, side, low, high);
      double edge = box.map(b -> edgeWidth(path, cutter, side, b)).orElse(Double.NaN);
      boolean edgeCounts = edge >= low && edge <= high;
      return edgeCounts && !(beside <= edge) ? edge : beside;
    }

    /** The width that a parallel path leaves, where it is even along the move; else NaN. */
    private double evenWidth(Path path, Cutter cutter, int side, double low, double high) {
      double middle = Double.NaN;
      int stations = path.planLength() < 2 * cell ? 1 : STATIONS.length;
      for (int k = 0; k < stations; k++) {
        double width = index.width(station(path, cutter, STATIONS[k]), side, low, high);
        if (k == 0) {
          middle = width;
        } else if (!(Math.abs(width - middle) <= Math.max(EVEN_PM, EVEN_SHARE * middle))) {
          return Double.NaN;
        }
      }
      return middle;
    }

    private static double edgeWidth(Path path, Cutter cutter, int side, StockModel.Box box) {
      if (!path.straight()) {
        return Double.NaN;
      }
      double[] u = path.direction(0.5);
      // The edge on that side, from the path towards that side.
      double edge;
      if (u[1] == 0) {
        edge = side * u[0] > 0 ? box.yMaxPm() - path.y0 : path.y0 - box.yMinPm();
      } else if (u[0] == 0) {
        edge = side * u[1] > 0 ? path.x0 - box.xMinPm() : box.xMaxPm() - path.x0;
      } else {
        return Double.NaN;
      }
      return cutter.radiusPm() + edge;
    }
  }
}

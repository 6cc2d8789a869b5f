package hairline.checks.stock;

import hairline.checks.motion.Axis;
import hairline.checks.setup.Feature;
import hairline.checks.stock.PassBook.Contacted;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * The moves that cut beside material of a declared feature; at the program's end, those whose
 * material still stands above their floor: they left a wall.
 *
 * <p>Moves that follow each other without a corner count as one. What is then shorter than the
 * tool's diameter links passes: it slides along the wall that their ends left. A strip that a later
 * pass takes away is no wall. Where a finishing pass cut it back by less than two cells, which the
 * height grid may not show, the finishing path itself tells it.
 */
final class Walls {
  /** Most moves kept. */
  static final int MOST = 65_536;

  private static final double[] PLACES = {0.5, 1.0 / 6, 5.0 / 6};

  /** So many of these places must lie beside the wall. */
  private static final int ENOUGH = 2;

  private static final double CELLS_BEYOND_RIM = 0.75;

  /** Cosine of the largest turn that is no corner: 30°. */
  private static final double NO_CORNER = 0.866;

  private final List<Beside> kept = new ArrayList<>();
  private Optional<Beside> latest = Optional.empty();

  /** Moves that follow each other without a corner. */
  private static final class Run {
    private double lengthPm;
  }

  /** A move with material on one side. */
  private record Beside(Contacted cut, Surface surface, Feature feature, int side, Run run) {
    /** Whether another cut goes on where this one ends, along the same wall. */
    boolean goesOn(Contacted next, int nextSide) {
      Path path = cut.path();
      Path after = next.path();
      double[] end = path.direction(1);
      double[] start = after.direction(0);
      return side == nextSide
          && path.x1 == after.x0
          && path.y1 == after.y0
          && path.z1 == after.z0
          && end[0] * start[0] + end[1] * start[1] >= NO_CORNER;
    }
  }

  /**
   * Keeps a cut that may leave a wall.
   *
   * @return false where there is no room
   */
  boolean keep(Contacted cut, Surface surface, FeatureAreas features) {
    boolean concerned =
        cut.engagement().side().isPresent()
            && !cut.engagement().spring()
            && cut.runsAtLevel()
            && cut.cutter().map(Cutter::leavesFloor).orElse(false);
    if (!concerned) {
      return true;
    }
    if (kept.size() == MOST) {
      return features.of(cut.path()).isEmpty();
    }
    int side = cut.engagement().side().orElseThrow() == Side.LEFT ? 1 : -1;
    Run run =
        latest.filter(before -> before.goesOn(cut, side)).map(Beside::run).orElseGet(Run::new);
    run.lengthPm += cut.path().planLength();
    latest = features.of(cut.path()).map(feature -> new Beside(cut, surface, feature, side, run));
    latest.ifPresent(kept::add);
    return true;
  }

  /** Tells those that left a wall. */
  void tell(Consumer<WallCut> sink) {
    for (Beside beside : kept) {
      if (!beside.surface().lost() && stands(beside)) {
        sink.accept(
            new WallCut(
                beside.cut().move(),
                beside.feature(),
                Cut.climb(beside.cut().move(), beside.cut().engagement().side())));
      }
    }
  }

  private static boolean stands(Beside beside) {
    Path path = beside.cut().path();
    double radius = beside.cut().cutter().orElseThrow().radiusPm();
    HeightGrid grid = beside.surface().grid;
    if (beside.run().lengthPm < 2 * radius) {
      return false;
    }
    int standing = 0;
    for (double place : PLACES) {
      double[] u = path.direction(place);
      double x = path.at(Axis.X, place);
      double y = path.at(Axis.Y, place);
      double out = radius + CELLS_BEYOND_RIM * grid.cellPm();
      long height =
          grid.height(
              grid.index(x - beside.side() * u[1] * out),
              grid.index(y + beside.side() * u[0] * out));
      PathIndex.Station at = new PathIndex.Station(x, y, u[0], u[1], radius, path.z0, true);
      if (height > path.z0
          && !beside.surface().index.reachesBeyond(at, beside.side(), 2.0 * grid.cellPm())) {
        standing++;
      }
    }
    return standing >= ENOUGH;
  }
}

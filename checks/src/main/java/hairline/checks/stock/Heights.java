package hairline.checks.stock;

import hairline.checks.motion.Move;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/** The heights that a move takes, from what it found above its floor. */
final class Heights {
  private static final double PM_PER_MM = 1e9;
  private static final int CELLS_WIDE = 2;

  private static final int CELLS_LONG = 4;

  private final double cell;
  private final Levels levels;

  Heights(long cellPm, Levels levels) {
    this.cell = cellPm;
    this.levels = levels;
  }

  /** Whether a meaningful part of the path ran over a surface of unknown height. */
  boolean partlyUnknown(Removed found) {
    return found.sawLost() || meaningful(found.unknown(), found);
  }

  /**
   * A patch counts when it is an eighth of the smallest tool wide and a quarter of it long, or half
   * as wide and half as long as all that the move took.
   */
  /** Equal heights: exact ones first, then in the order of their levels. */
  private static int largestFirst(StepDown one, StepDown other) {
    int order = Long.compare(other.storedPm(), one.storedPm());
    order = order != 0 ? order : Boolean.compare(other.exact(), one.exact());
    return order != 0 ? order : Integer.compare(one.overLevelId(), other.overLevelId());
  }

  private boolean meaningful(Extent patch, Removed found) {
    return patch.cells > 0
        && patch.width(cell) >= Math.min(CELLS_WIDE * cell, found.all().width(cell) / 2)
        && patch.length(cell) >= Math.min(CELLS_LONG * cell, found.all().length(cell) / 2);
  }

  /** The heights, the largest first. */
  List<StepDown> of(Move move, Surface surface, Path path, Removed found) {
    List<StepDown> heights = new ArrayList<>(1);
    for (int k = 0; k < found.surfaces(); k++) {
      if (meaningful(found.extent(k), found)) {
        heights.add(height(move, surface, path, found, k));
      }
    }
    if (heights.size() > 1) {
      heights.sort(Heights::largestFirst);
    }
    return heights;
  }

  private StepDown height(Move move, Surface surface, Path path, Removed found, int k) {
    double lengthMm =
        Math.min(found.extent(k).length(cell), Math.max(path.planLength(), cell)) / PM_PER_MM;
    long lowest = Math.min(path.z0, path.z1);
    // What lies below the stock is no height taken.
    long beyond = surface.depthBelowBottom(lowest);
    int over = found.id(k);
    long full = found.height(k) - lowest;
    boolean exact = over >= 0 && (path.level() || found.deepest(k) == full);
    if (!exact) {
      long stored = Math.max(0, found.deepest(k) - beyond);
      return new StepDown(
          Math.max(over, Cut.NO_LEVEL), stored, OptionalLong.empty(), lengthMm, false);
    }
    long writtenTop = over == Cut.UNCUT ? found.height(k) : levels.get(over).writtenZPm;
    long writtenLow = beyond > 0 ? lowest + beyond : writtenLowest(move, path);
    return new StepDown(
        over, full - beyond, OptionalLong.of(writtenTop - writtenLow), lengthMm, true);
  }

  private static long writtenLowest(Move move, Path path) {
    long end = move.writtenTo().zPm();
    return path.level() ? end : Math.min(end, move.writtenFrom().zPm());
  }
}

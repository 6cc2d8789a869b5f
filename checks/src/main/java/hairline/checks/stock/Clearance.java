package hairline.checks.stock;

import hairline.checks.motion.Axis;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * Looks for stock beside a tool into which its shoulder comes, before the move cuts: what lies
 * within the cutting end's way is left out.
 *
 * <p>It looks at points, the centres of some cells, so that whatever it finds is there. They lie a
 * 64th of the shank's diameter apart, or a quarter of what the shank is wider by; a move that
 * slopes or bends is looked at in places along its way.
 */
final class Clearance {
  private static final long ROUNDING_PM = 1000;
  private static final int POINTS_PER_RADIUS = 32;
  private static final int POINTS_BESIDE = 4;
  private static final int MOST_PLACES = 32;

  private final HeightGrid grid;
  private final OptionalLong bottom;
  private final double chordError;
  private final Spans spans;

  /** Stock found: its height above the tip, and where it stands. */
  record Found(long depthPm, long xPm, long yPm) {}

  Clearance(HeightGrid grid, Optional<StockModel.Box> box, double chordErrorPm) {
    this.grid = grid;
    this.bottom = box.map(StockModel.Box::bottomPm).orElse(OptionalLong.empty());
    this.chordError = chordErrorPm;
    this.spans = new Spans(grid);
  }

  /** The highest stock that the shoulder comes into along a path. */
  Optional<Found> beside(Path path, Cutter cutter, Shoulder shoulder) {
    if (path.straight() && (path.level() || !path.movesInPlan())) {
      return look(path, path, cutter, shoulder);
    }
    double length = Math.max(path.planLength(), Math.abs((double) path.z1 - path.z0));
    int places = (int) Math.min(MOST_PLACES, Math.ceil(2 * length / shoulder.shankRadiusPm()));
    Optional<Found> highest = Optional.empty();
    for (int k = 0; k <= places; k++) {
      double f = (double) k / places;
      Path place =
          Path.at(
              Math.round(path.at(Axis.X, f)),
              Math.round(path.at(Axis.Y, f)),
              Math.round(path.at(Axis.Z, f)));
      highest = higher(highest, look(place, path, cutter, shoulder));
    }
    return highest;
  }

  private static Optional<Found> higher(Optional<Found> a, Optional<Found> b) {
    return a.isEmpty() || (b.isPresent() && b.get().depthPm() > a.get().depthPm()) ? b : a;
  }

  /** Looks beside a straight way at one height; the cutting end goes along the whole path. */
  private Optional<Found> look(Path way, Path whole, Cutter cutter, Shoulder shoulder) {
    double shank = shoulder.shankRadiusPm();
    double apart = Math.min(shank / POINTS_PER_RADIUS, (shank - cutter.radiusPm()) / POINTS_BESIDE);
    int stride = (int) Math.max(1, Math.floor(apart / grid.cellPm()));
    long tip = way.lowestEnd();
    double cutWithin = cutter.radiusPm() + chordError + ROUNDING_PM;
    spans.segment((double) way.x0, (double) way.y0, (double) way.x1, (double) way.y1, shank);
    Optional<Found> highest = Optional.empty();
    for (int k = 0; k < spans.count(); k++) {
      int row = spans.row(k);
      if (Math.floorMod(row, stride) != 0) {
        continue;
      }
      double y = grid.centre(row);
      int first = spans.from(k) + Math.floorMod(-spans.from(k), stride);
      for (int column = first; column <= spans.to(k); column += stride) {
        long height = grid.height(column, row);
        long depth = height - tip;
        boolean stands =
            height != HeightGrid.VIRGIN_HEIGHT
                && height > bottom.orElse(HeightGrid.LOST_HEIGHT)
                && depth > highest.map(Found::depthPm).orElse(shoulder.reachPm() + ROUNDING_PM);
        if (!stands) {
          continue;
        }
        double x = grid.centre(column);
        double distance = way.planDistance(x, y);
        if (distance < shank
            && depth > shoulder.heightPm(distance) + ROUNDING_PM
            && whole.planDistance(x, y) > cutWithin) {
          highest = Optional.of(new Found(depth, grid.centre(column), grid.centre(row)));
        }
      }
    }
    return highest;
  }
}

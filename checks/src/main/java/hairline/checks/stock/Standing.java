package hairline.checks.stock;

import hairline.checks.motion.Position;
import hairline.checks.setup.ToolShape;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * Asks how far the surface stands above a tool's end along a straight way, without changing it.
 *
 * <p>Seen from above, the tool counts as smaller by a cell: that far the border of what was cut is
 * not known, and a tool that goes down along a wall that it cut before meets nothing.
 */
final class Standing {
  /** Lower heights are rounding. */
  private static final long ROUNDING_PM = 1000;

  /** Halvings that bring a way of ten metres below a micrometre. */
  private static final int HALVINGS = 24;

  private final HeightGrid grid;
  private final OptionalLong bottom;
  private final Spans spans;

  Standing(HeightGrid grid, Optional<StockModel.Box> box) {
    this.grid = grid;
    this.bottom = box.map(StockModel.Box::bottomPm).orElse(OptionalLong.empty());
    this.spans = new Spans(grid);
  }

  /** The largest height above the tool's end; 0 where nothing known stands there. */
  long deepest(Surface.Piece way, Cutter cutter) {
    return look(way, smaller(cutter), false);
  }

  /**
   * How much of the way the tool has gone when it first meets something, 0 to 1, given that it
   * does.
   */
  double first(Surface.Piece way, Cutter cutter) {
    Cutter inner = smaller(cutter);
    double free = 0;
    double meets = 1;
    for (int n = 0; n < HALVINGS; n++) {
      double middle = (free + meets) / 2;
      if (look(part(way, middle), inner, true) > 0) {
        meets = middle;
      } else {
        free = middle;
      }
    }
    return meets;
  }

  /**
   * What a tool touches that stands with its tip at a point: material within a cell of its rim, or
   * the floor under its end. Of both the wall is told.
   *
   * @param errorPm how far the heights that round ends leave may be off
   */
  DwelledAt.Touch touch(Position tip, Cutter cutter, double errorPm) {
    double x = tip.xPm();
    double y = tip.yPm();
    double outer = cutter.radiusPm() + grid.cellPm();
    long error = ROUNDING_PM + (cutter.flat() ? 0 : Math.round(errorPm));
    spans.segment(x, y, x, y, outer);
    boolean floor = false;
    for (int k = 0; k < spans.count(); k++) {
      double dy = grid.centre(spans.row(k)) - y;
      for (int column = spans.from(k); column <= spans.to(k); column++) {
        double dx = grid.centre(column) - x;
        double distance = Math.sqrt(dx * dx + dy * dy);
        long height = grid.height(column, spans.row(k));
        if (height <= bottom.orElse(HeightGrid.LOST_HEIGHT)) {
          continue;
        }
        long end = tip.zPm() + Math.round(cutter.profilePm(Math.min(distance, cutter.radiusPm())));
        if (distance > cutter.radiusPm() && height > end + error) {
          return DwelledAt.Touch.WALL;
        }
        floor |= distance <= cutter.radiusPm() && height >= end - error;
      }
    }
    return floor ? DwelledAt.Touch.FLOOR : DwelledAt.Touch.NOTHING;
  }

  private static Surface.Piece part(Surface.Piece way, double fraction) {
    return new Surface.Piece(
        way.x0(),
        way.y0(),
        way.z0(),
        way.x0() + (way.x1() - way.x0()) * fraction,
        way.y0() + (way.y1() - way.y0()) * fraction,
        way.z0() + (way.z1() - way.z0()) * fraction,
        0,
        false);
  }

  /** A flat end smaller by a cell; round ends keep their profile, only its rim is left out. */
  private Cutter smaller(Cutter cutter) {
    return cutter.flat()
        ? new Cutter(
            ToolShape.FLAT,
            Math.max(0, cutter.radiusPm() - grid.cellPm()),
            0,
            cutter.edgeRadiusPm())
        : cutter;
  }

  private long look(Surface.Piece way, Cutter cutter, boolean whetherAny) {
    double reach = cutter.flat() ? cutter.radiusPm() : cutter.radiusPm() - grid.cellPm();
    spans.segment(way.x0(), way.y0(), way.x1(), way.y1(), Math.max(0, reach));
    HeightGrid.Floor floor = Floors.straight(way, cutter);
    long lowest = Math.round(Math.min(way.z0(), way.z1()));
    long deepest = 0;
    for (Spans.Band band = spans.firstBand(); band.more(); band.next()) {
      for (int column = band.firstTile(); column <= band.lastTile(); column++) {
        if (grid.mayExceed(column, band.row(), lowest + ROUNDING_PM)) {
          deepest = Math.max(deepest, look(column, band, floor, whetherAny));
          if (whetherAny && deepest > 0) {
            return deepest;
          }
        }
      }
    }
    return deepest;
  }

  private long look(int tile, Spans.Band band, HeightGrid.Floor floor, boolean whetherAny) {
    long deepest = 0;
    int left = tile << HeightGrid.SHIFT;
    for (int k = band.first(); k <= band.last(); k++) {
      int to = Math.min(band.to(k), left + HeightGrid.SIDE - 1);
      for (int column = Math.max(band.from(k), left); column <= to; column++) {
        long height = grid.height(column, band.row(k));
        if (height == HeightGrid.VIRGIN_HEIGHT
            || (bottom.isPresent() && height <= bottom.getAsLong())) {
          continue;
        }
        long low = floor.at((double) grid.centre(column), (double) grid.centre(band.row(k)));
        if (height > low + ROUNDING_PM) {
          deepest = Math.max(deepest, height - low);
          if (whetherAny) {
            return deepest;
          }
        }
      }
    }
    return deepest;
  }
}

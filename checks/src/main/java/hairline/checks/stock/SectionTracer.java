package hairline.checks.stock;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;

/**
 * Takes a section: walks the line from cell to cell, tile by tile where all cells of one are alike.
 *
 * <p>A run of cells of one height is flat where a level or the uncut top lies there, or where it is
 * {@value #FLAT_CELLS} cells long. Between two flats stands a wall, also between a flat and another
 * surface that begins more than a cell higher or lower; elsewhere the surface slopes from the
 * middle of one cell to the middle of the next.
 */
final class SectionTracer {
  /** Most points of a section. */
  static final int MOST_POINTS = 100_000;

  private static final double STRAIGHT_PM = 2;
  private static final int FLAT_CELLS = 4;

  private final SurfaceLeft surface;
  private final HeightGrid grid;
  private final SectionLine line;
  private final int mostPoints;
  private final double cell;
  private final double length;
  private final double alongX;
  private final double alongY;

  private final List<Section.Point> points = new ArrayList<>();
  private final List<Section.Gap> gaps = new ArrayList<>();
  private boolean complete = true;

  /** Neighbouring cells of one height. */
  private record Run(double from, double to, Stands stands, long height, boolean level) {
    boolean goesOn(Run next) {
      return stands == next.stands
          && (stands != Stands.SURFACE || (height == next.height && level == next.level));
    }
  }

  private @Nullable Run before;
  private @Nullable Run ready;
  private @Nullable Run run;

  // Points to come: the last one kept, the one after it, and between which slopes it may be left
  // out.
  private Section.@Nullable Point anchor;
  private Section.@Nullable Point candidate;
  private double steepestDown;
  private double steepestUp;

  SectionTracer(SurfaceLeft surface, SectionLine line, int mostPoints) {
    this.surface = surface;
    this.grid = surface.grid();
    this.line = line;
    this.mostPoints = mostPoints;
    this.cell = grid.cellPm();
    this.length = line.lengthPm();
    this.alongX = (line.x1Pm() - (double) line.x0Pm()) / length;
    this.alongY = (line.y1Pm() - (double) line.y0Pm()) / length;
  }

  Section trace() {
    Bounds bounds = Bounds.of(surface);
    double from = 0;
    double to = length;
    if (surface.known() && !bounds.empty()) {
      double[] x = within(line.x0Pm(), alongX, bounds.fromColumn(), bounds.toColumn());
      double[] y = within(line.y0Pm(), alongY, bounds.fromRow(), bounds.toRow());
      from = Math.max(0, Math.max(x[0], y[0]));
      to = Math.min(length, Math.min(x[1], y[1]));
    } else {
      from = length;
    }
    Stands beyond =
        !surface.known()
            ? Stands.NOT_KNOWN
            : surface.stock().isPresent() ? Stands.OUTSIDE : Stands.TOP_UNKNOWN;
    if (from >= to) {
      take(new Run(0, length, beyond, 0, false));
    } else {
      take(new Run(0, from, beyond, 0, false));
      walk(from, to);
      take(new Run(to, length, beyond, 0, false));
    }
    end();
    return new Section(line, points, gaps, complete);
  }

  /** The distances between which the line runs over these columns or rows. */
  private double[] within(long start, double along, int first, int last) {
    double low = first * cell;
    double high = (last + 1.0) * cell;
    if (along == 0) {
      boolean in = start >= low && start < high;
      return new double[] {in ? 0 : length, in ? length : 0};
    }
    double a = (low - start) / along;
    double b = (high - start) / along;
    return new double[] {Math.min(a, b), Math.max(a, b)};
  }

  // The walk.

  private int firstIndex(double coordinate, double along) {
    int index = grid.index(coordinate);
    return along < 0 && index * cell == coordinate ? index - 1 : index;
  }

  private void walk(double from, double to) {
    int column = firstIndex(line.x0Pm() + alongX * from, alongX);
    int row = firstIndex(line.y0Pm() + alongY * from, alongY);
    double at = from;
    while (at < to && complete) {
      int tileColumn = column >> HeightGrid.SHIFT;
      int tileRow = row >> HeightGrid.SHIFT;
      HeightGrid.Tile tile = grid.find(tileColumn, tileRow);
      boolean whole = tile == null ? !atEdgeOfStock(tileColumn, tileRow) : tile.even();
      int left = whole ? tileColumn << HeightGrid.SHIFT : column;
      int right = whole ? left + HeightGrid.SIDE - 1 : column;
      int low = whole ? tileRow << HeightGrid.SHIFT : row;
      int high = whole ? low + HeightGrid.SIDE - 1 : row;
      double exitX = exit(line.x0Pm(), alongX, left, right);
      double exitY = exit(line.y0Pm(), alongY, low, high);
      double exit = Math.min(to, Math.max(at, Math.min(exitX, exitY)));
      take(column, row, at, exit);
      int inRow = clamp(grid.index(line.y0Pm() + alongY * exit), low, high);
      int inColumn = clamp(grid.index(line.x0Pm() + alongX * exit), left, right);
      column = exitX <= exitY ? (alongX > 0 ? right + 1 : left - 1) : inColumn;
      row = exitY <= exitX ? (alongY > 0 ? high + 1 : low - 1) : inRow;
      at = exit;
    }
  }

  private static int clamp(int index, int low, int high) {
    return Math.max(low, Math.min(high, index));
  }

  private double exit(long start, double along, int first, int last) {
    if (along == 0) {
      return Double.POSITIVE_INFINITY;
    }
    return ((along > 0 ? last + 1.0 : first) * cell - start) / along;
  }

  private boolean atEdgeOfStock(int tileColumn, int tileRow) {
    if (surface.stock().isEmpty()) {
      return false;
    }
    int left = tileColumn << HeightGrid.SHIFT;
    int low = tileRow << HeightGrid.SHIFT;
    int right = left + HeightGrid.SIDE - 1;
    int high = low + HeightGrid.SIDE - 1;
    return left < grid.boxFrom()
        || right > grid.boxTo()
        || low < grid.boxRowFrom()
        || high > grid.boxRowTo();
  }

  private void take(int column, int row, double from, double to) {
    long height = grid.height(column, row);
    Stands stands = surface.stands(height);
    take(new Run(from, to, stands, height, grid.id(column, row) >= 0));
  }

  private void take(Run next) {
    if (next.to() <= next.from()) {
      return;
    }
    Run open = run;
    if (open != null && open.goesOn(next)) {
      run = new Run(open.from(), next.to(), open.stands(), open.height(), open.level());
      return;
    }
    if (open != null) {
      over(open);
    }
    run = next;
  }

  /** A run has ended, so that the one before it knows its neighbour. */
  private void over(Run ended) {
    Run last = ready;
    if (last != null) {
      put(last, ended);
      before = last;
    }
    ready = ended;
  }

  private void end() {
    Run open = run;
    if (open != null) {
      over(open);
      put(open, null);
    }
    Section.Point last = candidate;
    if (last != null) {
      keep(last);
    }
  }

  // Points.

  private static boolean bothSurfaces(Run one, Run other) {
    return one.stands() == Stands.SURFACE && other.stands() == Stands.SURFACE;
  }

  private boolean flat(Run one) {
    return one.level() || one.to() - one.from() >= FLAT_CELLS * cell;
  }

  private boolean slopes(@Nullable Run one, @Nullable Run other) {
    return one != null
        && other != null
        && bothSurfaces(one, other)
        && !(flat(one) && flat(other))
        && (Math.abs(one.height() - other.height()) <= cell || !(flat(one) || flat(other)));
  }

  private void put(Run one, @Nullable Run next) {
    if (one.stands() != Stands.SURFACE) {
      gaps.add(new Section.Gap(one.from(), one.to(), one.stands()));
      point(one.from(), OptionalLong.empty());
      point(one.to(), OptionalLong.empty());
      return;
    }
    OptionalLong height = OptionalLong.of(one.height());
    double half = Math.min(cell, one.to() - one.from()) / 2;
    if (!slopes(before, one) || flat(one)) {
      point(one.from(), height);
    }
    if (!flat(one)) {
      point(one.from() + half, height);
      point(one.to() - half, height);
    }
    if (!slopes(one, next) || flat(one)) {
      point(one.to(), height);
    }
  }

  private void point(double distance, OptionalLong height) {
    Section.Point next = new Section.Point(distance, height);
    Section.Point from = anchor;
    Section.Point last = candidate;
    if (next.equals(last)) {
      return;
    }
    if (from != null && last != null && straight(from, last, next)) {
      candidate = next;
      bound(from, next);
      return;
    }
    if (last != null) {
      keep(last);
      anchor = last;
    }
    candidate = next;
    steepestDown = Double.NEGATIVE_INFINITY;
    steepestUp = Double.POSITIVE_INFINITY;
    if (last != null) {
      bound(last, next);
    }
  }

  /** Whether all since the anchor lies on one line to this point, the last one included. */
  private boolean straight(Section.Point from, Section.Point last, Section.Point next) {
    if (from.heightPm().isEmpty()
        || last.heightPm().isEmpty()
        || next.heightPm().isEmpty()
        || last.distancePm() <= from.distancePm()
        || next.distancePm() <= last.distancePm()) {
      return false;
    }
    double slope =
        (next.heightPm().getAsLong() - from.heightPm().getAsLong())
            / (next.distancePm() - from.distancePm());
    return slope >= steepestDown && slope <= steepestUp;
  }

  private void bound(Section.Point from, Section.Point next) {
    double run = next.distancePm() - from.distancePm();
    if (run <= 0 || from.heightPm().isEmpty() || next.heightPm().isEmpty()) {
      return;
    }
    double rise = next.heightPm().getAsLong() - from.heightPm().getAsLong();
    steepestDown = Math.max(steepestDown, (rise - STRAIGHT_PM) / run);
    steepestUp = Math.min(steepestUp, (rise + STRAIGHT_PM) / run);
  }

  private void keep(Section.Point point) {
    if (points.size() >= mostPoints) {
      complete = false;
    } else {
      points.add(point);
    }
  }
}

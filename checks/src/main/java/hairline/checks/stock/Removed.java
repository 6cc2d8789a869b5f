package hairline.checks.stock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * What one move found above its floor: how many cells of which surface, how high above it, and how
 * far across and along the path. Reused from move to move.
 */
final class Removed {
  /** Most surfaces told apart under one move; further ones count as surface without one height. */
  static final int MOST_SURFACES = 256;

  /** Sums of picometres up to here are kept as whole numbers. */
  private static final long MOST_EXACT = Long.MAX_VALUE / 4;

  private final double cell;

  // Where across and along are measured.
  private boolean arc;
  private double originX;
  private double originY;
  private double ux;
  private double uy;
  private double radius;
  private double turn;
  private double startAngle;
  private double alongOffset;
  private double length;

  // The surface before the entry that now runs: an entry's own ramp counts as that surface.
  private int entryId;
  private boolean entrySettled;
  private int entryFromId;
  private long entryFromHeight;

  private int surfaces;
  private int[] ids = new int[8];
  private long[] heights = new long[8];
  private long[] deepest = new long[8];
  private final List<Extent> extents = new ArrayList<>();
  private final Extent all = new Extent();
  private final Extent beside = new Extent();
  private final Extent unknown = new Extent();
  private boolean sawLost;
  private boolean sawOwn;
  private boolean sawOther;
  private int otherLevel;
  private boolean overflow;
  private int last;

  // What is taken, and where along the way.
  private double rimPm;
  private long cellsTaken;
  private double manyHeightsTaken;
  private long heightsTaken;
  private long deepestTaken;
  private boolean topUnknown;
  private final Stations stations;
  private @Nullable DepthTrack depths;

  Removed(long cellPm) {
    this.cell = cellPm;
    this.stations = new Stations(cellPm);
    for (int k = 0; k < ids.length; k++) {
      extents.add(new Extent());
    }
    clear();
  }

  /** From here on every cell taken is told to this track as well. */
  void tellTo(DepthTrack track) {
    depths = track;
  }

  private void tell(int row, int from, int to, long depth, boolean topKnown) {
    if (depths != null) {
      for (int column = from; column <= to; column++) {
        depths.cell((column + 0.5) * cell, (row + 0.5) * cell, depth, topKnown);
      }
    }
  }

  /** Forgets the last move. */
  void clear() {
    surfaces = 0;
    last = -1;
    all.clear();
    beside.clear();
    unknown.clear();
    sawLost = false;
    sawOwn = false;
    sawOther = false;
    otherLevel = 0;
    overflow = false;
    cellsTaken = 0;
    manyHeightsTaken = 0;
    heightsTaken = 0;
    deepestTaken = 0;
    topUnknown = false;
    stations.begin(0, 0);
  }

  /** Begins another move of this length seen from above. */
  void begin(double lengthPm, Cutter cutter) {
    clear();
    rimPm = cutter.radiusPm();
    stations.begin(lengthPm, cutter.leavesFloor() ? cutter.radiusPm() : 0);
  }

  /** From here on no cells count as another surface. */
  void forgetEntry() {
    entryId = 0;
  }

  /** From here on cells with this id count as the surface that was there before them. */
  void beginEntry(int id) {
    entryId = id;
    entrySettled = false;
  }

  /** Decides from which surface the entry goes down: the largest found so far. */
  void settleEntry() {
    if (entryId == 0 || entrySettled || nothing()) {
      return;
    }
    entrySettled = true;
    int cells = unknown.cells;
    entryFromId = HeightGrid.VIRGIN;
    for (int k = 0; k < surfaces; k++) {
      if (extents.get(k).cells > cells) {
        cells = extents.get(k).cells;
        entryFromId = ids[k];
        entryFromHeight = heights[k];
      }
    }
  }

  /**
   * Measures across and along a straight line.
   *
   * @param x where it begins
   * @param y where it begins
   * @param directionX its unit direction
   * @param directionY its unit direction
   * @param offset how much of the path lies before it
   * @param pathLength length of the whole path
   */
  void alongLine(
      double x, double y, double directionX, double directionY, double offset, double pathLength) {
    arc = false;
    originX = x;
    originY = y;
    ux = directionX;
    uy = directionY;
    alongOffset = offset;
    length = pathLength;
  }

  /** Measures across and along an arc about this centre. */
  void alongArc(double x, double y, double arcRadius, double arcStartAngle, double arcTurn) {
    arc = true;
    originX = x;
    originY = y;
    radius = arcRadius;
    startAngle = arcStartAngle;
    turn = Math.signum(arcTurn);
    length = Math.abs(arcTurn) * arcRadius;
  }

  /**
   * Takes cells of one row that lay above the floor.
   *
   * @param id what left them
   * @param height their height
   * @param tip the height from which their depth counts: the floor under them now, or the tool's
   *     tip
   * @param floor the floor under them now
   * @param row their row
   * @param from first cell in the row
   * @param to last cell in the row
   */
  void take(int id, long height, long tip, long floor, int row, int from, int to) {
    int cells = to - from + 1;
    cellsTaken += cells;
    if (id == HeightGrid.VIRGIN) {
      topUnknown = true;
    } else {
      sum((double) (height - floor) * cells, (height - floor) * cells);
      deepestTaken = Math.max(deepestTaken, height - floor);
    }
    place(row, from, to);
    tell(row, from, to, height - floor, id != HeightGrid.VIRGIN);
    add(id, height, tip, row, from, to);
  }

  /** Takes one cell that lay above the floor, as {@link #take}. */
  void takeCell(int id, long height, long tip, long floor, int row, int column) {
    if (arc || id == HeightGrid.VIRGIN || (entryId != 0 && id == entryId)) {
      take(id, height, tip, floor, row, column, column);
      return;
    }
    cellsTaken++;
    long down = height - floor;
    sum((double) down, down);
    if (down > deepestTaken) {
      deepestTaken = down;
    }
    double dx = (column + 0.5) * cell - originX;
    double dy = (row + 0.5) * cell - originY;
    double along = along(dx, dy);
    double across = across(dx, dy);
    stations.cell(along, across);
    tell(row, column, column, down, true);
    cover(id, height, tip, along, across);
  }

  /** Notes one cell as surface under the move, as {@link #add}. */
  void addCell(int id, long height, long floor, int row, int column) {
    if (arc || id == HeightGrid.VIRGIN || (entryId != 0 && id == entryId)) {
      add(id, height, floor, row, column, column);
      return;
    }
    double dx = (column + 0.5) * cell - originX;
    double dy = (row + 0.5) * cell - originY;
    cover(id, height, floor, along(dx, dy), across(dx, dy));
  }

  private void cover(int id, long height, long floor, double along, double across) {
    int k = find(id < 0 ? Cut.NO_LEVEL : id, height);
    if (height - floor > deepest[k]) {
      deepest[k] = height - floor;
    }
    extents.get(k).cover(across);
    all.cover(across);
    if (along >= 0 && along <= length) {
      beside.cover(across);
    }
  }

  /** Adds heights exactly, so that their order doesn't matter, while there are not too many. */
  private void sum(double about, long exact) {
    if (about > MOST_EXACT || heightsTaken > MOST_EXACT) {
      manyHeightsTaken += about + heightsTaken;
      heightsTaken = 0;
    } else {
      heightsTaken += exact;
    }
  }

  private void place(int row, int from, int to) {
    double dx = (from + 0.5) * cell - originX;
    double dy = (row + 0.5) * cell - originY;
    if (!arc) {
      stations.line(along(dx, dy), across(dx, dy), ux * cell, -uy * cell, to - from + 1);
      return;
    }
    for (int k = from; k <= to; k++) {
      double x = (k + 0.5) * cell - originX;
      stations.arc(alongArc(x, dy), Math.sqrt(x * x + dy * dy), radius, turn);
    }
  }

  /** What the move takes, if it is in contact. */
  Removal removal(Path path) {
    if (cellsTaken == 0) {
      return Removal.NOT_MEASURED;
    }
    double cellMm = cell / 1e9;
    return new Removal(
        cellsTaken * cellMm * cellMm,
        topUnknown
            ? OptionalDouble.empty()
            : OptionalDouble.of((manyHeightsTaken + heightsTaken) / 1e9 * cellMm * cellMm),
        topUnknown ? 0 : deepestTaken,
        stations.contactShare(),
        path.movesInPlan() ? stations.widest(rimPm) : Optional.empty());
  }

  /**
   * Notes cells of one row as surface under the move, without having them taken.
   *
   * @param id what left them
   * @param height their height
   * @param floor the height from which to measure: the floor under them now, or the tool's tip
   * @param row their row
   * @param from first cell in the row
   * @param to last cell in the row
   */
  void add(int id, long height, long floor, int row, int from, int to) {
    int surface = id;
    long top = height;
    if (entryId != 0 && id == entryId) {
      settleEntry();
      if (entrySettled && entryFromId != Cut.NO_LEVEL) {
        surface = entryFromId;
        top = entryFromHeight;
      }
    }
    if (surface == HeightGrid.VIRGIN) {
      cover(unknown, row, from, to);
      return;
    }
    int k = find(surface < 0 ? Cut.NO_LEVEL : surface, top);
    deepest[k] = Math.max(deepest[k], top - floor);
    cover(extents.get(k), row, from, to);
  }

  /** Takes a block of cells of one surface. */
  void takeBlock(int id, long height, long floor, int firstRow, int lastRow, int from, int to) {
    for (int row = firstRow; row <= lastRow; row++) {
      take(id, height, floor, floor, row, from, to);
    }
  }

  private int find(int id, long height) {
    if (last >= 0 && ids[last] == id) {
      return last;
    }
    for (int k = 0; k < surfaces; k++) {
      if (ids[k] == id) {
        last = k;
        return k;
      }
    }
    if (surfaces == MOST_SURFACES) {
      overflow = true;
      // The last one becomes a surface without one height.
      ids[surfaces - 1] = Cut.NO_LEVEL;
      last = surfaces - 1;
      return last;
    }
    if (surfaces == ids.length) {
      grow();
    }
    last = surfaces++;
    ids[last] = id;
    heights[last] = height;
    deepest[last] = 0;
    extents.get(last).clear();
    return last;
  }

  private void grow() {
    int old = ids.length;
    ids = Arrays.copyOf(ids, 2 * old);
    heights = Arrays.copyOf(heights, 2 * old);
    deepest = Arrays.copyOf(deepest, 2 * old);
    for (int k = old; k < ids.length; k++) {
      extents.add(new Extent());
    }
  }

  private void cover(Extent extent, int row, int from, int to) {
    double dy = (row + 0.5) * cell - originY;
    if (arc) {
      for (int i = from; i <= to; i++) {
        coverBesideArc(extent, (i + 0.5) * cell - originX, dy);
      }
      return;
    }
    double dxFirst = (from + 0.5) * cell - originX;
    double dxLast = (to + 0.5) * cell - originX;
    double first = across(dxFirst, dy);
    double last = across(dxLast, dy);
    int count = to - from + 1;
    extent.cover(count, first, last);
    all.cover(count, first, last);
    double begin = along(dxFirst, dy);
    double end = along(dxLast, dy);
    if (Math.min(begin, end) >= 0 && Math.max(begin, end) <= length) {
      beside.cover(count, first, last);
    } else if (Math.max(begin, end) >= 0 && Math.min(begin, end) <= length && begin != end) {
      // The way along the path changes evenly from cell to cell: leave out those beyond its ends.
      double perCell = (end - begin) / (count - 1);
      double atStart = -begin / perCell;
      double atEnd = (length - begin) / perCell;
      int low = (int) Math.max(0, Math.ceil(Math.min(atStart, atEnd)));
      int high = (int) Math.min(count - 1, Math.floor(Math.max(atStart, atEnd)));
      if (low <= high) {
        double step = (last - first) / (count - 1);
        beside.cover(high - low + 1, first + low * step, first + high * step);
      }
    }
  }

  private void coverBesideArc(Extent extent, double dx, double dy) {
    double place = turn * (radius - Math.sqrt(dx * dx + dy * dy));
    extent.cover(1, place, place);
    all.cover(1, place, place);
    if (length >= 2 * Math.PI * radius || alongArc(dx, dy) <= length) {
      beside.cover(1, place, place);
    }
  }

  private double alongArc(double dx, double dy) {
    double angle = turn * (StrictMath.atan2(dy, dx) - startAngle);
    while (angle < 0) {
      angle += 2 * Math.PI;
    }
    return radius * angle;
  }

  private double along(double dx, double dy) {
    return dx * ux + dy * uy + alongOffset;
  }

  private double across(double dx, double dy) {
    return dy * ux - dx * uy;
  }

  /** Adds what another look at the same move found. */
  void add(Removed other) {
    for (int k = 0; k < other.surfaces; k++) {
      int mine = find(other.ids[k], other.heights[k]);
      deepest[mine] = Math.max(deepest[mine], other.deepest[k]);
      extents.get(mine).cover(other.extents.get(k));
    }
    all.cover(other.all);
    beside.cover(other.beside);
    unknown.cover(other.unknown);
    sawLost |= other.sawLost;
    overflow |= other.overflow;
  }

  /** Notes a cell that lay at the floor already. */
  void at(int id, int ownId) {
    if (id == ownId) {
      sawOwn = true;
      return;
    }
    sawOther = true;
    // Of several the one first cut, in whatever order its cells come.
    if (id > 0 && (otherLevel == 0 || id < otherLevel)) {
      otherLevel = id;
    }
  }

  /** Notes a cell whose height is lost. */
  void lost() {
    sawLost = true;
  }

  boolean nothing() {
    return all.cells == 0;
  }

  /** All cells above the floor. */
  Extent all() {
    return all;
  }

  /** Those beside the path, without what lies before its start and beyond its end. */
  Extent beside() {
    return beside;
  }

  int surfaces() {
    return surfaces;
  }

  int id(int k) {
    return ids[k];
  }

  /** Height of a surface; meaningless for {@link Cut#NO_LEVEL}. */
  long height(int k) {
    return heights[k];
  }

  /** The largest height of a surface above the floor. */
  long deepest(int k) {
    return deepest[k];
  }

  Extent extent(int k) {
    return extents.get(k);
  }

  /** The cells of uncut stock whose top is not known. */
  Extent unknown() {
    return unknown;
  }

  /** Whether the path runs over cells whose height is lost. */
  boolean sawLost() {
    return sawLost;
  }

  /** Whether cells lay at the floor already, left by the level now cut. */
  boolean sawOwn() {
    return sawOwn;
  }

  /** Whether cells lay at the floor already, left by something else. */
  boolean sawOther() {
    return sawOther;
  }

  /** The first level, other than the one now cut, with cells at this very height; 0: none. */
  int otherLevel() {
    return otherLevel;
  }

  boolean overflowed() {
    return overflow;
  }
}

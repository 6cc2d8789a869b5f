package hairline.checks.stock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What one move found above its floor: how many cells of which surface, how high above it, and how
 * far across and along the path. Reused from move to move.
 */
final class Removed {
  /** Most surfaces told apart under one move; further ones count as surface without one height. */
  static final int MOST_SURFACES = 256;

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

  // The surface before the entry that now runs: an entry's own ramp counts as that surface.
  private int entryId;
  private int entryFromId;
  private long entryFromHeight;

  private int surfaces;
  private int[] ids = new int[8];
  private long[] heights = new long[8];
  private long[] deepest = new long[8];
  private final List<Extent> extents = new ArrayList<>();
  private final Extent all = new Extent();
  private final Extent unknown = new Extent();
  private boolean sawLost;
  private boolean sawOwn;
  private boolean sawOther;
  private int otherLevel;
  private boolean overflow;
  private int last;

  /** Cells, and how far they reach across (left is positive) and along the path. */
  static final class Extent {
    int cells;
    double acrossLow;
    double acrossHigh;
    double alongLow;
    double alongHigh;

    private void clear() {
      cells = 0;
      acrossLow = Double.POSITIVE_INFINITY;
      acrossHigh = Double.NEGATIVE_INFINITY;
      alongLow = Double.POSITIVE_INFINITY;
      alongHigh = Double.NEGATIVE_INFINITY;
    }

    private void cover(double across, double along) {
      acrossLow = Math.min(acrossLow, across);
      acrossHigh = Math.max(acrossHigh, across);
      alongLow = Math.min(alongLow, along);
      alongHigh = Math.max(alongHigh, along);
    }

    private void cover(Extent other) {
      if (other.cells > 0) {
        cells += other.cells;
        cover(other.acrossLow, other.alongLow);
        cover(other.acrossHigh, other.alongHigh);
      }
    }

    /** Distance of the outermost cell centres across. */
    double across() {
      return acrossHigh - acrossLow;
    }

    /** Distance of the outermost cell centres along. */
    double along() {
      return alongHigh - alongLow;
    }
  }

  Removed(long cellPm) {
    this.cell = cellPm;
    for (int k = 0; k < ids.length; k++) {
      extents.add(new Extent());
    }
    clear();
  }

  /** Forgets the last move. */
  void clear() {
    surfaces = 0;
    last = -1;
    all.clear();
    unknown.clear();
    sawLost = false;
    sawOwn = false;
    sawOther = false;
    otherLevel = 0;
    overflow = false;
    alongOffset = 0;
  }

  /** From here on no cells count as another surface. */
  void forgetEntry() {
    entryId = 0;
  }

  /** Cells with this id count as the surface that was there before them. */
  void setEntry(int id, int fromId, long fromHeight) {
    entryId = id;
    entryFromId = fromId;
    entryFromHeight = fromHeight;
  }

  /** Measures across and along a straight line from here. */
  void alongLine(double x, double y, double directionX, double directionY, double offset) {
    arc = false;
    originX = x;
    originY = y;
    ux = directionX;
    uy = directionY;
    alongOffset = offset;
  }

  /** Measures across and along an arc about this centre. */
  void alongArc(double x, double y, double arcRadius, double arcStartAngle, double arcTurn) {
    arc = true;
    originX = x;
    originY = y;
    radius = arcRadius;
    startAngle = arcStartAngle;
    turn = Math.signum(arcTurn);
    alongOffset = 0;
  }

  /**
   * Takes cells of one row that lay above the floor.
   *
   * @param id what left them
   * @param height their height
   * @param floor the floor under them now
   * @param row their row
   * @param from first cell in the row
   * @param to last cell in the row
   */
  void add(int id, long height, long floor, int row, int from, int to) {
    int surface = id;
    long top = height;
    if (entryId != 0 && id == entryId) {
      surface = entryFromId;
      top = entryFromHeight;
    }
    if (surface == HeightGrid.VIRGIN) {
      cover(unknown, row, from, to);
      cover(all, row, from, to);
      return;
    }
    int k = find(surface < 0 ? Cut.NO_LEVEL : surface, top);
    deepest[k] = Math.max(deepest[k], top - floor);
    cover(extents.get(k), row, from, to);
    cover(all, row, from, to);
  }

  /** Takes a block of cells of one surface. */
  void addBlock(int id, long height, long floor, int firstRow, int lastRow, int from, int to) {
    for (int row = firstRow; row <= lastRow; row++) {
      add(id, height, floor, row, from, to);
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
    extent.cells += to - from + 1;
    double y = (row + 0.5) * cell;
    double x = (from + 0.5) * cell;
    if (!arc) {
      cover(extent, x - originX, y - originY);
      if (to > from) {
        cover(extent, (to + 0.5) * cell - originX, y - originY);
      }
      return;
    }
    for (int i = from; i <= to; i++) {
      double dx = (i + 0.5) * cell - originX;
      double dy = y - originY;
      double angle = turn * (StrictMath.atan2(dy, dx) - startAngle);
      extent.cover(
          turn * (radius - Math.sqrt(dx * dx + dy * dy)),
          radius * (angle < 0 ? angle + 2 * Math.PI : angle));
    }
  }

  private void cover(Extent extent, double dx, double dy) {
    extent.cover(dy * ux - dx * uy, dx * ux + dy * uy + alongOffset);
  }

  /** Adds what another look at the same move found. */
  void add(Removed other) {
    for (int k = 0; k < other.surfaces; k++) {
      int mine = find(other.ids[k], other.heights[k]);
      deepest[mine] = Math.max(deepest[mine], other.deepest[k]);
      extents.get(mine).cover(other.extents.get(k));
    }
    all.cover(other.all);
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
    if (id > 0) {
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

  /** A level other than the one now cut that had left cells at this very height; 0: none. */
  int otherLevel() {
    return otherLevel;
  }

  boolean overflowed() {
    return overflow;
  }
}

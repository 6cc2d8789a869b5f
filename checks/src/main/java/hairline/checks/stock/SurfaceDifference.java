package hairline.checks.stock;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * How the surfaces that two programs leave differ, cell by cell.
 *
 * @param offset the work offset
 * @param largestPm the largest difference of height, the one after less the one before; 0 for none
 * @param xPm where that is, the middle of a cell
 * @param yPm where that is
 * @param beforePm the height there before
 * @param afterPm the height there after
 * @param differentMm2 area of all cells that differ; NaN where only one of them is cut or known
 * @param otherwiseMm2 area of the cells that are surface, uncut, cut through or not known on one
 *     side only
 * @param bordersOnly whether each cell that differs has, on both sides, a height that the other has
 *     there or in the cells around: borders that moved by less than a cell differ so
 * @param notCompared why it could not be told; empty where it could
 */
public record SurfaceDifference(
    String offset,
    long largestPm,
    long xPm,
    long yPm,
    long beforePm,
    long afterPm,
    double differentMm2,
    double otherwiseMm2,
    boolean bordersOnly,
    Optional<String> notCompared) {

  private static final double PM_PER_MM = 1e9;

  /** Whether the surfaces are one. */
  public boolean none() {
    return notCompared.isEmpty() && differentMm2 == 0;
  }

  /** Whether they differ for certain. */
  public boolean differs() {
    return differentMm2 != 0;
  }

  /** Compares what is left under each offset; one without any difference is left out. */
  public static List<SurfaceDifference> of(List<SurfaceLeft> before, List<SurfaceLeft> after) {
    Set<String> offsets = new TreeSet<>();
    before.forEach(surface -> offsets.add(surface.offset()));
    after.forEach(surface -> offsets.add(surface.offset()));
    List<SurfaceDifference> all = new ArrayList<>();
    for (String offset : offsets) {
      Optional<SurfaceLeft> a = before.stream().filter(s -> s.offset().equals(offset)).findFirst();
      Optional<SurfaceLeft> b = after.stream().filter(s -> s.offset().equals(offset)).findFirst();
      SurfaceDifference difference =
          a.isPresent() && b.isPresent()
              ? of(a.get(), b.get())
              : not(
                  offset,
                  Double.NaN,
                  "nothing is known to be cut under this offset "
                      + (a.isPresent() ? "in the program after" : "in the program before"));
      if (!difference.none()) {
        all.add(difference);
      }
    }
    return all;
  }

  private static SurfaceDifference not(String offset, double mm2, String why) {
    return new SurfaceDifference(offset, 0, 0, 0, 0, 0, mm2, 0, false, Optional.of(why));
  }

  private static SurfaceDifference of(SurfaceLeft before, SurfaceLeft after) {
    if (!before.known() || !after.known()) {
      return before.known() == after.known()
          ? not(
              before.offset(),
              0,
              "a move of unknown course may have cut anywhere, in both programs")
          : not(
              before.offset(),
              Double.NaN,
              "a move of unknown course may have cut anywhere, in one program");
    }
    if (before.cellPm() != after.cellPm()) {
      return not(before.offset(), 0, "the surfaces are kept in cells of different size");
    }
    return new Walk(before, after).difference();
  }

  /** Goes over all cells where one of the two was cut, or that differ from the start. */
  private static final class Walk {
    private final SurfaceLeft before;
    private final SurfaceLeft after;
    private long largest;
    private long x;
    private long y;
    private long was;
    private long is;
    private long different;
    private long otherwise;
    private boolean bordersOnly = true;

    Walk(SurfaceLeft before, SurfaceLeft after) {
      this.before = before;
      this.after = after;
    }

    SurfaceDifference difference() {
      Set<Long> tiles = new TreeSet<>();
      add(tiles, before.grid());
      add(tiles, after.grid());
      if (!before.stock().equals(after.stock())) {
        return not(before.offset(), Double.NaN, "the stocks on the two sheets differ");
      }
      for (long tile : tiles) {
        tile((int) (tile >> 32), (int) tile);
      }
      double cellMm = before.cellPm() / PM_PER_MM;
      return new SurfaceDifference(
          before.offset(),
          largest,
          x,
          y,
          was,
          is,
          different * cellMm * cellMm,
          otherwise * cellMm * cellMm,
          bordersOnly,
          Optional.empty());
    }

    private static void add(Set<Long> tiles, HeightGrid grid) {
      for (HeightGrid.Tile tile : grid.tiles()) {
        tiles.add(((long) tile.row << 32) | (tile.column & 0xFFFFFFFFL));
      }
    }

    private void tile(int row, int column) {
      int fromRow = row << HeightGrid.SHIFT;
      int fromColumn = column << HeightGrid.SHIFT;
      for (int j = fromRow; j < fromRow + HeightGrid.SIDE; j++) {
        for (int i = fromColumn; i < fromColumn + HeightGrid.SIDE; i++) {
          cell(i, j);
        }
      }
    }

    private void cell(int column, int row) {
      long a = before.grid().height(column, row);
      long b = after.grid().height(column, row);
      if (a == b) {
        return;
      }
      different++;
      bordersOnly =
          bordersOnly
              && among(before.grid(), column, row, b)
              && among(after.grid(), column, row, a);
      if (before.stands(a) != Stands.SURFACE || after.stands(b) != Stands.SURFACE) {
        if (before.stands(a) != after.stands(b)) {
          otherwise++;
        }
        return;
      }
      // Of equal ones the first: rows from below, columns from the left.
      if (Math.abs(b - a) > Math.abs(largest)) {
        largest = b - a;
        x = before.grid().centre(column);
        y = before.grid().centre(row);
        was = a;
        is = b;
      }
    }

    /** Whether a height lies between those of a cell and the eight around it. */
    private static boolean among(HeightGrid grid, int column, int row, long height) {
      long least = Long.MAX_VALUE;
      long most = Long.MIN_VALUE;
      for (int j = row - 1; j <= row + 1; j++) {
        for (int i = column - 1; i <= column + 1; i++) {
          long at = grid.height(i, j);
          if (at == HeightGrid.LOST_HEIGHT) {
            return false;
          }
          least = Math.min(least, at);
          most = Math.max(most, at);
        }
      }
      return least <= height && height <= most;
    }
  }
}

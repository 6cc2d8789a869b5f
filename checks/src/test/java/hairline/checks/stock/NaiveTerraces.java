package hairline.checks.stock;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * Terraces as anybody would find them who has time and memory: the whole field as one array, filled
 * area by area; every place asked cell by cell.
 */
final class NaiveTerraces {
  private final SurfaceLeft surface;
  private final long tolerance;
  private final int mostAcross;
  private final int column0;
  private final int row0;
  private final int width;
  private final int height;
  private final int[][] area;
  private final List<Area> areas = new ArrayList<>();

  /** An area of one height. */
  static final class Area {
    int id;
    long z;
    long cells;
    int left = Integer.MAX_VALUE;
    int right = Integer.MIN_VALUE;
    int low = Integer.MAX_VALUE;
    int high = Integer.MIN_VALUE;
    boolean terrace;
    final Map<Integer, Long> edges = new HashMap<>();
    final Set<Stands> beside = new TreeSet<>();

    @Override
    public String toString() {
      return id + " at " + z + ": " + cells + " cells " + left + ".." + right + " " + low + ".."
          + high + " " + edges + " " + beside;
    }
  }

  /** Looks at these cells; what lies beyond must be no surface. */
  NaiveTerraces(
      SurfaceLeft surface, long tolerance, double cornerCells, int from, int to, int low, int up) {
    this.surface = surface;
    this.tolerance = tolerance;
    this.mostAcross = 2 * (int) Math.ceil(cornerCells) + 2;
    this.column0 = from;
    this.row0 = low;
    this.width = to - from + 1;
    this.height = up - low + 1;
    this.area = new int[height][width];
    for (int[] row : area) {
      Arrays.fill(row, -1);
    }
    for (int j = 0; j < height; j++) {
      for (int i = 0; i < width; i++) {
        if (area[j][i] < 0 && stands(i, j) == Stands.SURFACE) {
          fill(i, j);
        }
      }
    }
    accept();
    neighbours();
  }

  private Stands stands(int i, int j) {
    return surface.stands(column0 + i, row0 + j);
  }

  private long z(int i, int j) {
    return surface.grid().height(column0 + i, row0 + j);
  }

  private boolean alike(long a, long b) {
    return Math.floorDiv(a + tolerance / 2, tolerance)
        == Math.floorDiv(b + tolerance / 2, tolerance);
  }

  private boolean in(int i, int j) {
    return i >= 0 && j >= 0 && i < width && j < height;
  }

  private void fill(int i0, int j0) {
    int number = areas.size();
    Area one = new Area();
    areas.add(one);
    Map<Long, Long> heights = new HashMap<>();
    ArrayDeque<int[]> open = new ArrayDeque<>();
    open.add(new int[] {i0, j0});
    area[j0][i0] = number;
    while (!open.isEmpty()) {
      int[] at = open.remove();
      int i = at[0];
      int j = at[1];
      one.cells++;
      one.left = Math.min(one.left, i);
      one.right = Math.max(one.right, i);
      one.low = Math.min(one.low, j);
      one.high = Math.max(one.high, j);
      heights.merge(z(i, j), 1L, Long::sum);
      for (int[] step : new int[][] {{1, 0}, {-1, 0}, {0, 1}, {0, -1}}) {
        int ni = i + step[0];
        int nj = j + step[1];
        if (in(ni, nj)
            && area[nj][ni] < 0
            && stands(ni, nj) == Stands.SURFACE
            && alike(z(i, j), z(ni, nj))) {
          area[nj][ni] = number;
          open.add(new int[] {ni, nj});
        }
      }
    }
    heights.forEach(
        (z, cells) -> {
          if (2 * cells > one.cells) {
            one.z = z;
          }
        });
  }

  private void accept() {
    for (int j = 0; j < height; j++) {
      for (int i = 0; i < width; i++) {
        if (area[j][i] >= 0 && areas.get(area[j][i]).cells >= TerraceFinder.FEWEST_CELLS) {
          areas.get(area[j][i]).terrace |= square(i, j, 2, true) || square(i, j, 8, false);
        }
      }
    }
    int id = 0;
    for (Area one : areas) {
      one.id = one.terrace ? ++id : 0;
    }
  }

  private boolean square(int i0, int j0, int side, boolean levels) {
    for (int j = j0; j < j0 + side; j++) {
      for (int i = i0; i < i0 + side; i++) {
        boolean fits =
            in(i, j)
                && area[j][i] == area[j0][i0]
                && (levels ? surface.grid().id(column0 + i, row0 + j) >= 0 : z(i, j) == z(i0, j0));
        if (!fits) {
          return false;
        }
      }
    }
    return true;
  }

  private int id(int i, int j) {
    return area[j][i] < 0 ? 0 : areas.get(area[j][i]).id;
  }

  private void neighbours() {
    for (int j = 0; j < height; j++) {
      for (int i = 0; i < width; i++) {
        if (id(i, j) > 0) {
          Area one = areas.get(area[j][i]);
          look(one, i, j, 1, 0);
          look(one, i, j, 0, 1);
          for (int[] step : new int[][] {{1, 0}, {-1, 0}, {0, 1}, {0, -1}}) {
            Stands other = stands(i + step[0], j + step[1]);
            if (other != Stands.SURFACE) {
              one.beside.add(other);
            }
          }
        }
      }
    }
  }

  /** From the last cell of a terrace on: across a wall to the next terrace. */
  private void look(Area one, int i, int j, int right, int up) {
    long low = Long.MAX_VALUE;
    long high = Long.MIN_VALUE;
    for (int k = 1; k <= mostAcross + 1; k++) {
      int ni = i + k * right;
      int nj = j + k * up;
      if (!in(ni, nj) || stands(ni, nj) != Stands.SURFACE || id(ni, nj) == one.id) {
        return;
      }
      if (id(ni, nj) == 0) {
        low = Math.min(low, z(ni, nj));
        high = Math.max(high, z(ni, nj));
        continue;
      }
      Area other = areas.get(area[nj][ni]);
      if (k == 1 || (low >= Math.min(one.z, other.z) && high <= Math.max(one.z, other.z))) {
        one.edges.merge(other.id, 1L, Long::sum);
        other.edges.merge(one.id, 1L, Long::sum);
      }
      return;
    }
  }

  /** The terraces in words, one each. */
  List<String> words() {
    return areas.stream().filter(a -> a.terrace).map(this::words).toList();
  }

  private String words(Area one) {
    long cell = surface.cellPm();
    return words(
        one.id,
        one.z,
        one.cells,
        (column0 + one.left) * cell,
        (column0 + one.right + 1) * cell,
        (row0 + one.low) * cell,
        (row0 + one.high + 1) * cell,
        one.edges.entrySet().stream()
            .sorted(Map.Entry.comparingByKey())
            .map(e -> e.getKey() + "x" + e.getValue())
            .toList(),
        one.beside);
  }

  List<Long> cells() {
    return areas.stream().filter(a -> a.terrace).map(a -> a.cells).toList();
  }

  long others() {
    return areas.stream().filter(a -> !a.terrace).count();
  }

  /** The same words for what the finder tells. */
  static List<String> words(Terraces terraces, long cell) {
    return terraces.areas().stream()
        .map(
            a ->
                words(
                    a.id(),
                    a.heightPm(),
                    a.cells(),
                    a.xMinPm(),
                    a.xMaxPm(),
                    a.yMinPm(),
                    a.yMaxPm(),
                    a.neighbours().stream()
                        .map(n -> n.id() + "x" + Math.round(n.borderMm() * 1e9 / cell))
                        .toList(),
                    a.beside()))
        .toList();
  }

  private static String words(
      int id,
      long z,
      long cells,
      long x0,
      long x1,
      long y0,
      long y1,
      List<String> edges,
      Set<Stands> beside) {
    return id
        + " at "
        + z
        + ": "
        + cells
        + " cells, x "
        + x0
        + " to "
        + x1
        + ", y "
        + y0
        + " to "
        + y1
        + ", beside "
        + edges
        + new TreeSet<>(new HashSet<>(beside));
  }
}

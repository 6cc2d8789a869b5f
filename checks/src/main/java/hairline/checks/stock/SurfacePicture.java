package hairline.checks.stock;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * A surface seen from above as a raster of bounded size: each pixel shows the cell in its middle.
 * Row 0 is the lowest Y.
 */
public final class SurfacePicture {
  /** Most pixels of a picture. */
  public static final int MOST_PIXELS = 500_000;

  private static final int MOST_ALONG = 2000;
  private static final int MARGIN_SHARE = 16;
  private static final int NOT_ASKED = -1;

  private final int width;
  private final int height;
  private final double widthPm;
  private final double heightPm;
  private final double x0Pm;
  private final double y0Pm;
  private final Stands[] stands;
  private final long[] heights;
  private final int[] terraces;

  private SurfacePicture(int width, int height, Bounds bounds, double cell) {
    this.width = width;
    this.height = height;
    this.widthPm = (bounds.toColumn() - (double) bounds.fromColumn() + 1) * cell;
    this.heightPm = (bounds.toRow() - (double) bounds.fromRow() + 1) * cell;
    this.x0Pm = bounds.fromColumn() * cell;
    this.y0Pm = bounds.fromRow() * cell;
    this.stands = new Stands[width * height];
    this.heights = new long[width * height];
    this.terraces = new int[width * height];
    Arrays.fill(stands, Stands.OUTSIDE);
  }

  /**
   * Draws a surface.
   *
   * @param at tells the terraces
   */
  static SurfacePicture of(SurfaceLeft surface, TerraceFinder.TerraceAt at) {
    Bounds bounds = Bounds.of(surface);
    if (surface.stock().isEmpty() && !bounds.empty()) {
      int columns = bounds.toColumn() - bounds.fromColumn() + 1;
      int rows = bounds.toRow() - bounds.fromRow() + 1;
      int around = 2 + Math.max(columns, rows) / MARGIN_SHARE;
      bounds =
          new Bounds(
              bounds.fromColumn() - around,
              bounds.toColumn() + around,
              bounds.fromRow() - around,
              bounds.toRow() + around);
    }
    if (bounds.empty()) {
      return new SurfacePicture(0, 0, new Bounds(0, 0, 0, 0), 1);
    }
    double cell = surface.cellPm();
    double columns = bounds.toColumn() - (double) bounds.fromColumn() + 1;
    double rows = bounds.toRow() - (double) bounds.fromRow() + 1;
    double cellsPerPixel =
        Math.max(
            Math.max(1, Math.sqrt(columns * rows / MOST_PIXELS)),
            Math.max(columns, rows) / MOST_ALONG);
    int width = Math.max(1, (int) (columns / cellsPerPixel));
    int height = Math.max(1, (int) (rows / cellsPerPixel));
    SurfacePicture picture = new SurfacePicture(width, height, bounds, cell);
    for (int j = 0; j < height; j++) {
      int row = bounds.fromRow() + (int) ((j + 0.5) * rows / height);
      picture.drawRow(surface, at, bounds.fromColumn(), columns, j, row);
    }
    return picture;
  }

  /**
   * Draws a row of pixels; pixels side by side mostly lie in one tile, which is looked for once.
   */
  private void drawRow(
      SurfaceLeft surface,
      TerraceFinder.TerraceAt at,
      int fromColumn,
      double columns,
      int j,
      int row) {
    HeightGrid grid = surface.grid();
    HeightGrid.@Nullable Tile tile = null;
    int tileColumn = 0;
    int terrace = NOT_ASKED;
    for (int i = 0; i < width; i++) {
      int column = fromColumn + (int) ((i + 0.5) * columns / width);
      if (i == 0 || column >> HeightGrid.SHIFT != tileColumn) {
        tileColumn = column >> HeightGrid.SHIFT;
        tile = grid.find(tileColumn, row >> HeightGrid.SHIFT);
        terrace = NOT_ASKED;
      }
      int k = j * width + i;
      long heightPm = grid.heightIn(tile, column, row);
      heights[k] = heightPm;
      stands[k] = surface.stands(heightPm);
      if (stands[k] == Stands.SURFACE) {
        // Elsewhere there is none. All of an even tile lies in one, and so does what nothing cut.
        if (terrace == NOT_ASKED || (tile != null && !tile.even())) {
          terrace = at.id(column, row);
        }
        terraces[k] = terrace;
      }
    }
  }

  /** Pixels along X. */
  public int width() {
    return width;
  }

  /** Pixels along Y. */
  public int height() {
    return height;
  }

  /** How wide what it shows is. */
  public double widthPm() {
    return widthPm;
  }

  /** How high what it shows is. */
  public double heightPm() {
    return heightPm;
  }

  /** Left edge. */
  public double x0Pm() {
    return x0Pm;
  }

  /** Lower edge. */
  public double y0Pm() {
    return y0Pm;
  }

  /** What stands at a pixel. */
  public Stands stands(int i, int j) {
    return stands[j * width + i];
  }

  /** The height at a pixel that shows a surface. */
  public long heightPm(int i, int j) {
    return heights[j * width + i];
  }

  /** The terrace at a pixel, 0 for none. */
  public int terrace(int i, int j) {
    return terraces[j * width + i];
  }
}

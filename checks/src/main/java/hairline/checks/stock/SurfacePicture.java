package hairline.checks.stock;

import java.util.Arrays;

/**
 * A surface seen from above as a raster of bounded size: each pixel shows the cell in its middle.
 * Row 0 is the lowest Y.
 */
public final class SurfacePicture {
  /** Most pixels of a picture. */
  public static final int MOST_PIXELS = 500_000;

  private static final int MOST_ALONG = 2000;

  private final int width;
  private final int height;
  private final double pixelPm;
  private final double x0Pm;
  private final double y0Pm;
  private final Stands[] stands;
  private final long[] heights;
  private final int[] terraces;

  private SurfacePicture(int width, int height, double pixelPm, double x0Pm, double y0Pm) {
    this.width = width;
    this.height = height;
    this.pixelPm = pixelPm;
    this.x0Pm = x0Pm;
    this.y0Pm = y0Pm;
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
    if (bounds.empty()) {
      return new SurfacePicture(0, 0, 1, 0, 0);
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
    SurfacePicture picture =
        new SurfacePicture(
            width,
            height,
            cellsPerPixel * cell,
            bounds.fromColumn() * cell,
            bounds.fromRow() * cell);
    for (int j = 0; j < height; j++) {
      int row = bounds.fromRow() + (int) ((j + 0.5) * cellsPerPixel);
      for (int i = 0; i < width; i++) {
        int column = bounds.fromColumn() + (int) ((i + 0.5) * cellsPerPixel);
        int k = j * width + i;
        picture.stands[k] = surface.stands(column, row);
        picture.heights[k] = surface.grid().height(column, row);
        picture.terraces[k] = at.id(column, row);
      }
    }
    return picture;
  }

  public int width() {
    return width;
  }

  public int height() {
    return height;
  }

  /** Edge of a pixel. */
  public double pixelPm() {
    return pixelPm;
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

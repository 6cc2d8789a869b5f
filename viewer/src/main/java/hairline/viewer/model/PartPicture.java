package hairline.viewer.model;

import hairline.checks.motion.Place;
import hairline.checks.report.HeightColours;
import hairline.checks.report.TerraceSpots;
import hairline.checks.setup.Setup;
import hairline.checks.stock.PartLeft;
import hairline.checks.stock.Section;
import hairline.checks.stock.SectionLine;
import hairline.checks.stock.Stands;
import hairline.checks.stock.SurfaceLeft;
import hairline.checks.stock.SurfacePicture;
import hairline.checks.stock.SurfaceShown;
import hairline.checks.stock.SurfaceWanted;
import hairline.checks.stock.Terraces;
import hairline.parser.Span;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The part under one work offset, ready to be drawn from above. It holds the height field, so
 * nothing may be cut in that any more.
 */
public final class PartPicture {
  private final SurfaceLeft surface;
  private final SurfacePicture picture;
  private final Terraces terraces;
  private final HeightColours colours;
  private final Map<Integer, TerraceSpots.Spot> spots;

  private PartPicture(
      SurfaceLeft surface,
      SurfacePicture picture,
      Terraces terraces,
      Optional<HeightColours> colours) {
    this.surface = surface;
    this.picture = picture;
    this.terraces = terraces;
    this.colours = colours.orElseGet(() -> HeightColours.of(picture, terraces));
    this.spots = TerraceSpots.of(picture);
  }

  /**
   * The picture of a part; takes a while, so not on the window's thread.
   *
   * @param colours those to use, so that a height keeps its colour while the part is cut; empty for
   *     its own
   * @return empty where nothing is known of it
   */
  public static Optional<PartPicture> of(
      SurfaceLeft surface, Setup setup, Optional<HeightColours> colours) {
    if (!surface.known()) {
      return Optional.empty();
    }
    PartLeft part = new PartLeft(new Place(0, 1, new Span(1, 1)), List.of(surface));
    SurfaceShown.Under under =
        SurfaceShown.of(
                part,
                new SurfaceWanted(true, List.of(), true),
                surface.cellPm(),
                SurfaceShown.tolerancePm(setup))
            .offsets()
            .get(0);
    return under
        .picture()
        .filter(picture -> picture.width() > 0)
        .map(picture -> new PartPicture(surface, picture, under.terraces().orElseThrow(), colours));
  }

  /** The work offset. */
  public String offset() {
    return surface.offset();
  }

  /** Its terraces. */
  public Terraces terraces() {
    return terraces;
  }

  /** What colour stands for what height. */
  public HeightColours colours() {
    return colours;
  }

  /** Where terraces have room for a label: X in picometres, Y in picometres, side in picometres. */
  public Optional<double[]> spot(int terrace) {
    TerraceSpots.Spot spot = spots.get(terrace);
    return spot == null
        ? Optional.empty()
        : Optional.of(
            new double[] {
              picture.x0Pm() + spot.i() * picture.widthPm() / picture.width(),
              picture.y0Pm() + spot.j() * picture.heightPm() / picture.height(),
              spot.side() * picture.widthPm() / picture.width()
            });
  }

  /** The whole of it seen from above, in mm: left, bottom, right, top. */
  public double[] boundsMm() {
    return new double[] {
      picture.x0Pm() / 1e9,
      picture.y0Pm() / 1e9,
      (picture.x0Pm() + picture.widthPm()) / 1e9,
      (picture.y0Pm() + picture.heightPm()) / 1e9
    };
  }

  /** Its raster, for a table of heights. */
  public SurfacePicture raster() {
    return picture;
  }

  /** Edge of a cell. */
  public long cellPm() {
    return surface.cellPm();
  }

  /** The field itself. */
  public SurfaceLeft surface() {
    return surface;
  }

  /** The heights along a line. */
  public Section section(SectionLine line) {
    return surface.section(line);
  }

  /**
   * A stretch of it as pixels, each showing the cell in its middle; 0xAARRGGBB, the upper row
   * first.
   *
   * @param leftMm X of the left edge
   * @param topMm Y of the upper edge
   * @param mmPerPixel how large a pixel is
   */
  public int[] pixels(double leftMm, double topMm, double mmPerPixel, int columns, int rows) {
    int[] palette = colours.palette();
    int[] pixels = new int[columns * rows];
    for (int row = 0; row < rows; row++) {
      double y = (topMm - (row + 0.5) * mmPerPixel) * 1e9;
      for (int column = 0; column < columns; column++) {
        double x = (leftMm + (column + 0.5) * mmPerPixel) * 1e9;
        Stands stands = surface.standsAt(x, y);
        pixels[row * columns + column] =
            stands == Stands.OUTSIDE
                ? 0
                : 0xFF000000
                    | (stands == Stands.SURFACE
                        ? palette[colours.index(surface.heightPm(x, y).orElse(0))]
                        : HeightColours.colour(stands));
      }
    }
    return pixels;
  }
}

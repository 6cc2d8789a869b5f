package hairline.checks.report;

import hairline.checks.stock.SurfacePicture;
import java.util.HashMap;
import java.util.Map;

/** Where the terraces of a picture are broadest, so that a label has room. */
public final class TerraceSpots {
  /**
   * The middle of the largest square of pixels of a terrace.
   *
   * @param i along X, in pixels from the left edge of the picture
   * @param j along Y, in pixels from its lower edge
   * @param side of that square, in pixels
   */
  public record Spot(double i, double j, int side) {}

  private TerraceSpots() {}

  /** The spot of each terrace by its id, by the sides of the squares that end at each pixel. */
  public static Map<Integer, Spot> of(SurfacePicture picture) {
    Map<Integer, Spot> spots = new HashMap<>();
    int[] below = new int[picture.width()];
    for (int j = 0; j < picture.height(); j++) {
      int diagonal = 0;
      for (int i = 0; i < picture.width(); i++) {
        int id = picture.terrace(i, j);
        int straight = below[i];
        int side = id == 0 ? 0 : 1;
        if (id != 0 && i > 0 && j > 0) {
          boolean same =
              picture.terrace(i - 1, j) == id
                  && picture.terrace(i, j - 1) == id
                  && picture.terrace(i - 1, j - 1) == id;
          side = same ? 1 + Math.min(diagonal, Math.min(straight, below[i - 1])) : 1;
        }
        diagonal = straight;
        below[i] = side;
        Spot best = spots.get(id);
        if (id != 0 && (best == null || side > best.side())) {
          spots.put(id, new Spot(i + 1 - side / 2.0, j + 1 - side / 2.0, side));
        }
      }
    }
    return spots;
  }
}

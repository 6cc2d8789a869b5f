package hairline.checks.report;

import hairline.checks.stock.SurfacePicture;
import hairline.checks.stock.TerraceArea;
import hairline.checks.stock.Terraces;
import java.util.HashMap;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;

/**
 * Puts numbers and heights on the terraces of a plan, each where it is broadest; where there is no
 * room for both the number alone, and where there is none for that nothing.
 */
final class Labels {
  private static final double TALL = 13;

  private Labels() {}

  /** Where a terrace is broadest: the middle of its largest square of pixels. */
  private record Spot(double i, double j, int side) {}

  /**
   * Puts them.
   *
   * @param x where a column of pixels is drawn
   * @param y where a row of pixels is drawn
   */
  static void put(
      SvgText out,
      SurfacePicture picture,
      Terraces terraces,
      DoubleUnaryOperator x,
      DoubleUnaryOperator y) {
    Map<Integer, Spot> spots = spots(picture);
    double pixel = Math.abs(x.applyAsDouble(1) - x.applyAsDouble(0));
    for (TerraceArea area : terraces.areas()) {
      Spot spot = spots.get(area.id());
      if (spot == null) {
        continue;
      }
      double side = spot.side() * pixel;
      double px = x.applyAsDouble(spot.i());
      double py = y.applyAsDouble(spot.j());
      String height = Ticks.minus(SurfaceWords.um(area.heightPm())) + " µm";
      if (side >= Math.max(2 * TALL, SurfaceDrawing.width(height))) {
        out.label(px, py - 2, "on mid", Integer.toString(area.id()));
        out.label(px, py + TALL - 2, "on mid", height);
      } else if (side >= TALL) {
        out.label(px, py + 4, "on mid", Integer.toString(area.id()));
      }
    }
  }

  /** The largest square of each terrace, by the sides of those that end at each pixel. */
  private static Map<Integer, Spot> spots(SurfacePicture picture) {
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

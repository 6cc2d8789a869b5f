package hairline.checks.report;

import hairline.checks.stock.SurfacePicture;
import hairline.checks.stock.TerraceArea;
import hairline.checks.stock.Terraces;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;

/**
 * Puts numbers and heights on the terraces of a plan, each where it is broadest; where there is no
 * room for both the number alone, and where there is none for that nothing.
 */
final class Labels {
  private static final double TALL = 13;

  private Labels() {}

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
    Map<Integer, TerraceSpots.Spot> spots = TerraceSpots.of(picture);
    double pixel = Math.abs(x.applyAsDouble(1) - x.applyAsDouble(0));
    for (TerraceArea area : terraces.areas()) {
      TerraceSpots.Spot spot = spots.get(area.id());
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
}

package hairline.checks.stock;

import java.util.List;
import java.util.Set;

/**
 * A connected area of one height on the finished part.
 *
 * @param id counted from 1 under its offset, in the order of the first cell: by Y, then by X
 * @param heightPm its height: that of more than half of its cells, where one is; else one of them
 * @param lowestPm its lowest cell
 * @param highestPm its highest cell
 * @param levelId a level that left it, the one of more than half of it where one is; {@link
 *     Cut#UNCUT} for the uncut top, {@link Cut#NO_LEVEL} for a flat that is no level, such as the
 *     ground of a plunge
 * @param cells how many cells it has
 * @param areaMm2 the area of these cells; off by at most half a cell along the outline
 * @param xMinPm left edge of its outline box
 * @param xMaxPm right edge
 * @param yMinPm lower edge
 * @param yMaxPm upper edge
 * @param neighbours the terraces it adjoins, in the order of their ids
 * @param beside what else it adjoins
 */
public record TerraceArea(
    int id,
    long heightPm,
    long lowestPm,
    long highestPm,
    int levelId,
    long cells,
    double areaMm2,
    long xMinPm,
    long xMaxPm,
    long yMinPm,
    long yMaxPm,
    List<Neighbour> neighbours,
    Set<Stands> beside) {

  /**
   * A terrace beside another.
   *
   * @param id which
   * @param stepPm how much higher it lies than the one it is neighbour of
   * @param borderMm length of the cells' edges between them: exact for a border along X or Y, up to
   *     √2 too long for an oblique one
   */
  public record Neighbour(int id, long stepPm, double borderMm) {}

  public TerraceArea {
    neighbours = List.copyOf(neighbours);
    beside = Set.copyOf(beside);
  }

  /** Whether it is the uncut top of the stock. */
  public boolean uncut() {
    return levelId == Cut.UNCUT;
  }
}

package hairline.checks.stock;

import java.util.List;

/**
 * The terraces under one work offset, and what is none.
 *
 * @param areas the terraces by id
 * @param otherAreas how many connected areas of one height are too small or too narrow to be a
 *     terrace: slopes, contoured surfaces, walls, slivers
 * @param otherMm2 how large these are together
 * @param left what was left out because a table was full, as a clause each
 */
public record Terraces(
    List<TerraceArea> areas, long otherAreas, double otherMm2, List<String> left) {
  public Terraces {
    areas = List.copyOf(areas);
    left = List.copyOf(left);
  }
}

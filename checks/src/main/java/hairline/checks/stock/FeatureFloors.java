package hairline.checks.stock;

import hairline.checks.setup.Feature;
import java.util.List;

/**
 * The terraces of a declared feature on the finished part: what of them lies in its range in X and
 * Y and in no smaller feature.
 *
 * @param feature the feature
 * @param known whether the whole surface in it is known
 * @param floors the parts of terraces in it, in the order of the terraces' ids
 * @param left what was left out, as a clause each; then {@code floors} need not be all
 */
public record FeatureFloors(Feature feature, boolean known, List<Floor> floors, List<String> left) {

  public FeatureFloors {
    floors = List.copyOf(floors);
    left = List.copyOf(left);
  }

  /**
   * What of a terrace lies in the feature.
   *
   * @param terrace the whole terrace, without its neighbours
   * @param lengthPm the longer side of the outline box of the part in the feature, good to a cell
   * @param areaMm2 its area; off by at most half a cell along the outline
   */
  public record Floor(TerraceArea terrace, long lengthPm, double areaMm2) {}
}

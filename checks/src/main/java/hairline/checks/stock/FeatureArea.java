package hairline.checks.stock;

import java.util.OptionalLong;

/**
 * A feature of the job as an area of the part.
 *
 * @param index its place in the sheet's list, from 0
 * @param name its name on the sheet
 * @param stepPm the largest step declared for it, directly or as levels, where there is one
 */
public record FeatureArea(
    int index,
    String name,
    long xMinPm,
    long xMaxPm,
    long yMinPm,
    long yMaxPm,
    OptionalLong stepPm) {

  /** Whether the point lies in it, its border included. */
  public boolean contains(long xPm, long yPm) {
    return xPm >= xMinPm && xPm <= xMaxPm && yPm >= yMinPm && yPm <= yMaxPm;
  }
}

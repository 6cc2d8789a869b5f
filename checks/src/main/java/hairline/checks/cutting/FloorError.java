package hairline.checks.cutting;

import java.util.Optional;

/**
 * The largest error of a floor under a bent tool (exact within beam theory). Tilt digs the engaged
 * side of the end face deeper by slope × radius; thrust on the end edges lifts the tool by its
 * axial give, which is far smaller.
 *
 * @param digsUm how much deeper the tilted end face reaches, µm
 * @param liftsUm how much the tool is lifted, µm
 */
public record FloorError(Band digsUm, Band liftsUm) {

  /** The error in µm: above zero the floor is too deep. Both parts at the same end of the band. */
  public Band deeperUm() {
    return Band.spanning(atLow(), atTypical(), atHigh());
  }

  /** Its typical value in µm. */
  public double typicalUm() {
    return atTypical();
  }

  /**
   * What the height of a step between two levels suffers, µm: the amount by which the errors of the
   * levels differ, both at the same end of the band. Equal passes at two levels shift both floors
   * alike and the step not at all.
   *
   * @param lower error of the one level
   * @param upper error of the other; absent where it is uncut stock, which has none
   */
  public static Band ofStepUm(FloorError lower, Optional<FloorError> upper) {
    return Band.spanning(
        Math.abs(lower.atLow() - upper.map(FloorError::atLow).orElse(0.0)),
        Math.abs(lower.atTypical() - upper.map(FloorError::atTypical).orElse(0.0)),
        Math.abs(lower.atHigh() - upper.map(FloorError::atHigh).orElse(0.0)));
  }

  /**
   * The same with its sign: above zero the step comes out too high. A floor that is too deep makes
   * the step below another level higher, and the step above it lower.
   *
   * @param lower error of the lower level
   * @param upper error of the upper level; absent where it is uncut stock, which has none
   */
  public static Band heightOfStepUm(FloorError lower, Optional<FloorError> upper) {
    return Band.spanning(
        lower.atLow() - upper.map(FloorError::atLow).orElse(0.0),
        lower.atTypical() - upper.map(FloorError::atTypical).orElse(0.0),
        lower.atHigh() - upper.map(FloorError::atHigh).orElse(0.0));
  }

  private double atLow() {
    return digsUm.low() - liftsUm.low();
  }

  private double atTypical() {
    return digsUm.typical() - liftsUm.typical();
  }

  private double atHigh() {
    return digsUm.high() - liftsUm.high();
  }
}

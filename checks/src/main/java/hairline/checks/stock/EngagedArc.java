package hairline.checks.stock;

/**
 * The part of a tool's rim that cuts, by how far its ends lie across the way of travel; to the left
 * is positive. Angles run as a clockwise tooth goes: 0 at the left of the way, π/2 at the front, π
 * at the right; a counter-clockwise one goes them backwards.
 *
 * @param rightMm the end farther to the right
 * @param leftMm the end farther to the left
 * @param radiusMm radius of the rim, above 0
 * @param errorMm how far each end may lie from where it is told: a cell of the field
 */
public record EngagedArc(double rightMm, double leftMm, double radiusMm, double errorMm) {

  /** Angle of the end to the left, in radians: where a clockwise tooth enters. */
  public double fromRad() {
    return angleRad(leftMm);
  }

  /** Angle of the end to the right, in radians: where a clockwise tooth leaves. */
  public double toRad() {
    return angleRad(rightMm);
  }

  /** The same arc, longer at both ends by as much as it may be. */
  public EngagedArc longest() {
    return new EngagedArc(rightMm - errorMm, leftMm + errorMm, radiusMm, 0);
  }

  /** The same arc, shorter at both ends by as much as it may be, but for an end at the flank. */
  public EngagedArc shortest() {
    double right = rightMm <= -radiusMm ? rightMm : rightMm + errorMm;
    double left = leftMm >= radiusMm ? leftMm : leftMm - errorMm;
    double middle = (rightMm + leftMm) / 2;
    return new EngagedArc(Math.min(right, middle), Math.max(left, middle), radiusMm, 0);
  }

  private double angleRad(double acrossMm) {
    return StrictMath.acos(Math.max(-1, Math.min(1, acrossMm / radiusMm)));
  }
}

package hairline.checks.stock;

import java.util.OptionalLong;

/**
 * What the removal of stock needs to know of a tool.
 *
 * @param number its number in the program
 * @param shape its end
 * @param diameterPm cutting diameter, ISO 13399 DC
 * @param cornerRadiusPm RE; 0 for a flat tool, half of the diameter for a ball
 * @param edgeRadiusPm rounding of the cutting edge, where the sheet gives it
 */
public record ToolShape(
    int number, Shape shape, long diameterPm, long cornerRadiusPm, OptionalLong edgeRadiusPm) {

  /** The ends a tool can have. */
  public enum Shape {
    FLAT,
    BALL,
    BULL
  }

  public ToolShape {
    if (diameterPm <= 0) {
      throw new IllegalArgumentException("diameter " + diameterPm + " pm");
    }
    if (cornerRadiusPm < 0 || cornerRadiusPm > diameterPm - diameterPm / 2) {
      throw new IllegalArgumentException("corner radius " + cornerRadiusPm + " pm");
    }
  }

  /** Half of the diameter. */
  public long radiusPm() {
    return diameterPm / 2;
  }
}

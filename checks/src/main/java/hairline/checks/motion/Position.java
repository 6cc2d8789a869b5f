package hairline.checks.motion;

/**
 * A point in work coordinates, each axis known or not.
 *
 * <p>Work coordinates are those of the work offset in force (G54 and its like) with every G52, G92
 * and G10 shift taken out, so that a point of the part has one position however the program shifted
 * its zero. Lengths are picometres; the rotary axes are carried in microdegrees and nothing is
 * checked on them.
 *
 * @param xPm X in picometres, meaningless where unknown
 * @param yPm Y in picometres, meaningless where unknown
 * @param zPm Z in picometres, meaningless where unknown
 * @param aMicrodeg A in microdegrees
 * @param bMicrodeg B in microdegrees
 * @param cMicrodeg C in microdegrees
 * @param unknown set of axes that are not known, as the sum of their {@link Axis#bit()}
 */
public record Position(
    long xPm, long yPm, long zPm, long aMicrodeg, long bMicrodeg, long cMicrodeg, int unknown) {

  /** Every axis unknown: the state before the first word of each. */
  public static final Position UNKNOWN = new Position(0, 0, 0, 0, 0, 0, 0b111111);

  /** Whether this axis is known. */
  public boolean knows(Axis axis) {
    return (unknown & axis.bit()) == 0;
  }

  /** Whether X, Y and Z are known. */
  public boolean knowsXyz() {
    return (unknown & 0b111) == 0;
  }

  /** Whether X and Y are known. */
  public boolean knowsXy() {
    return (unknown & 0b011) == 0;
  }

  /** The coordinate of an axis: picometres for X, Y, Z, microdegrees for A, B, C. */
  public long get(Axis axis) {
    return switch (axis) {
      case X -> xPm;
      case Y -> yPm;
      case Z -> zPm;
      case A -> aMicrodeg;
      case B -> bMicrodeg;
      case C -> cMicrodeg;
    };
  }

  /** The same point with one axis known at this coordinate. */
  public Position with(Axis axis, long coordinate) {
    int known = unknown & ~axis.bit();
    return switch (axis) {
      case X -> new Position(coordinate, yPm, zPm, aMicrodeg, bMicrodeg, cMicrodeg, known);
      case Y -> new Position(xPm, coordinate, zPm, aMicrodeg, bMicrodeg, cMicrodeg, known);
      case Z -> new Position(xPm, yPm, coordinate, aMicrodeg, bMicrodeg, cMicrodeg, known);
      case A -> new Position(xPm, yPm, zPm, coordinate, bMicrodeg, cMicrodeg, known);
      case B -> new Position(xPm, yPm, zPm, aMicrodeg, coordinate, cMicrodeg, known);
      case C -> new Position(xPm, yPm, zPm, aMicrodeg, bMicrodeg, coordinate, known);
    };
  }

  /** The same point with one axis unknown. */
  public Position without(Axis axis) {
    return new Position(xPm, yPm, zPm, aMicrodeg, bMicrodeg, cMicrodeg, unknown | axis.bit());
  }
}

package hairline.checks.motion;

/**
 * One coordinate, or one increment, of a linear axis: as the control stores it, and as it would be
 * with unlimited digits. Arithmetic with an unknown one is unknown, and so is a sum too large.
 *
 * @param known whether both values are known
 * @param storedPm the value that the control keeps, in picometres
 * @param writtenPm the value as written, in picometres
 */
public record Coordinate(boolean known, long storedPm, long writtenPm) {

  /** A coordinate that is not known. */
  public static final Coordinate UNKNOWN = new Coordinate(false, 0, 0);

  /** A known coordinate. */
  public static Coordinate of(long storedPm, long writtenPm) {
    return new Coordinate(true, storedPm, writtenPm);
  }

  /** A coordinate that the control stores as written. */
  public static Coordinate of(long pm) {
    return of(pm, pm);
  }

  /** This coordinate moved by an increment. */
  public Coordinate plus(Coordinate increment) {
    if (!known || !increment.known) {
      return UNKNOWN;
    }
    long stored = storedPm + increment.storedPm;
    long written = writtenPm + increment.writtenPm;
    boolean overflow =
        ((storedPm ^ stored) & (increment.storedPm ^ stored)) < 0
            || ((writtenPm ^ written) & (increment.writtenPm ^ written)) < 0;
    return overflow ? UNKNOWN : of(stored, written);
  }

  /** This coordinate moved back by an increment. */
  public Coordinate minus(Coordinate increment) {
    return increment.known
            && increment.storedPm != Long.MIN_VALUE
            && increment.writtenPm != Long.MIN_VALUE
        ? plus(of(-increment.storedPm, -increment.writtenPm))
        : UNKNOWN;
  }

  /** Whether both are known and this one is stored above the other. */
  public boolean above(Coordinate other) {
    return known && other.known && storedPm > other.storedPm;
  }
}

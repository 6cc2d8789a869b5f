package hairline.checks.timing;

/** A direction in space: a unit vector in X, Y, Z. */
record Direction(double x, double y, double z) {

  /** The direction of a vector that is not zero. */
  static Direction of(double x, double y, double z) {
    double length = Math.sqrt(x * x + y * y + z * z);
    return length > 0 ? new Direction(x / length, y / length, z / length) : new Direction(0, 0, 0);
  }

  /**
   * Sine of half the angle that the legs of a corner enclose: 1 straight on, 0 straight back.
   *
   * @param next direction behind the corner
   */
  double sineOfHalfCorner(Direction next) {
    double sumX = x + next.x;
    double sumY = y + next.y;
    double sumZ = z + next.z;
    return Math.min(1, Math.sqrt(sumX * sumX + sumY * sumY + sumZ * sumZ) / 2);
  }
}

package hairline.checks.timing;

/** A direction in space: a unit vector in X, Y, Z. */
record Direction(double x, double y, double z) {

  /** The direction of a vector that is not zero. */
  static Direction of(double x, double y, double z) {
    double length = Math.sqrt(x * x + y * y + z * z);
    return length > 0 ? new Direction(x / length, y / length, z / length) : new Direction(0, 0, 0);
  }
}

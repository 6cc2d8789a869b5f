package hairline.checks.stock;

/** A point or a way in space, in picometres. */
record Point3(double x, double y, double z) {
  Point3 plus(Point3 other) {
    return new Point3(x + other.x, y + other.y, z + other.z);
  }

  Point3 minus(Point3 other) {
    return new Point3(x - other.x, y - other.y, z - other.z);
  }

  Point3 times(double factor) {
    return new Point3(x * factor, y * factor, z * factor);
  }

  double dot(Point3 other) {
    return x * other.x + y * other.y + z * other.z;
  }

  /** Its length. */
  double norm() {
    return StrictMath.sqrt(dot(this));
  }

  /** Its length seen from above. */
  double inPlan() {
    return StrictMath.sqrt(x * x + y * y);
  }

  /** Where on a way from the origin, from 0 to 1, it is nearest to this point. */
  double nearestOn(Point3 way) {
    double length2 = way.dot(way);
    return length2 == 0 ? 0 : Math.max(0, Math.min(1, dot(way) / length2));
  }
}

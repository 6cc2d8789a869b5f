package hairline.checks.cutting;

/** The true path of a milling tooth, as an oracle for the circular approximation. */
final class Trochoid {
  private Trochoid() {}

  /**
   * Chip along the radius at angle θ, solved numerically. The centre moves by z f_z/(2π) a radian.
   * The tooth stands at θ (measured from the feed direction's normal, so that sin θ is along the
   * feed); the tooth before it passed the same ray from the present centre.
   */
  static double exactChipUm(double radiusUm, double feedUm, int flutes, double theta) {
    double perRadian = flutes * feedUm / (2 * Math.PI);
    // The tooth before: at time t (in radians of rotation) it stands at angle t + 2π/z of its own,
    // centre at perRadian · t. The present tooth: angle theta at time theta, centre there.
    double pitch = 2 * Math.PI / flutes;
    // Find angle a of the tooth before such that its point lies on the ray of direction theta from
    // the present centre: x = along the feed, y = across it.
    double low = theta - 0.5;
    double high = theta + 0.5;
    for (int i = 0; i < 200; i++) {
      double a = (low + high) / 2;
      double shift = perRadian * (a - pitch - theta);
      double x = shift + radiusUm * StrictMath.sin(a);
      double y = radiusUm * StrictMath.cos(a);
      double across = x * StrictMath.cos(theta) - y * StrictMath.sin(theta);
      if (across < 0) {
        low = a;
      } else {
        high = a;
      }
    }
    double a = (low + high) / 2;
    double shift = perRadian * (a - pitch - theta);
    double x = shift + radiusUm * StrictMath.sin(a);
    double y = radiusUm * StrictMath.cos(a);
    return radiusUm - StrictMath.sqrt(x * x + y * y);
  }

  /**
   * The second-order formula (from memory: Bao and Tansel 2000, part I): f_z sin θ − (z/2πr) f_z²
   * sin θ cos θ + f_z² cos² θ/2r.
   */
  static double formulaChipUm(double radiusUm, double feedUm, int flutes, double theta) {
    double sin = StrictMath.sin(theta);
    double cos = StrictMath.cos(theta);
    return feedUm * sin
        - flutes / (2 * Math.PI * radiusUm) * feedUm * feedUm * sin * cos
        + feedUm * feedUm * cos * cos / (2 * radiusUm);
  }
}

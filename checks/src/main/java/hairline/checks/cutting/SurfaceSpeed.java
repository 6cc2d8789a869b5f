package hairline.checks.cutting;

/** Cutting speed at the edge: v_c = π D n (exact; ISO 3002-3 has the symbols). */
public final class SurfaceSpeed {
  private SurfaceSpeed() {}

  /**
   * The cutting speed in m/min.
   *
   * @param effectiveDiameterMm diameter that cuts (see {@link EffectiveDiameter}), above 0
   * @param rpm spindle speed, above 0
   * @throws IllegalArgumentException outside these ranges
   */
  public static double mPerMin(double effectiveDiameterMm, double rpm) {
    Require.positive("diameter", effectiveDiameterMm);
    Require.positive("spindle speed", rpm);
    return Math.PI * effectiveDiameterMm * rpm / 1000;
  }

  /**
   * The spindle speed in rpm that gives a cutting speed.
   *
   * @param mPerMin cutting speed, above 0
   * @param effectiveDiameterMm diameter that cuts, above 0
   * @throws IllegalArgumentException outside these ranges
   */
  public static double rpm(double mPerMin, double effectiveDiameterMm) {
    Require.positive("cutting speed", mPerMin);
    Require.positive("diameter", effectiveDiameterMm);
    return mPerMin * 1000 / (Math.PI * effectiveDiameterMm);
  }
}

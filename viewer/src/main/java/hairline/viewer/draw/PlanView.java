package hairline.viewer.draw;

/**
 * What part of the plan is looked at.
 *
 * @param xMm X in the middle
 * @param yMm Y in the middle
 * @param perMm pixels a millimetre; 0 for as many as fit
 */
public record PlanView(double xMm, double yMm, double perMm) {
  /** All of it. */
  public static final PlanView FIT = new PlanView(0, 0, 0);

  private static final double NEAREST = 1e7;

  /** The view scaled about a point; below 1 it goes nearer. */
  public PlanView zoomed(double factor, double aboutXmm, double aboutYmm) {
    double scaled = perMm / factor;
    if (scaled > NEAREST || scaled < 1e-3) {
      return this;
    }
    return new PlanView(
        aboutXmm + (xMm - aboutXmm) * factor, aboutYmm + (yMm - aboutYmm) * factor, scaled);
  }

  /** The view moved. */
  public PlanView panned(double byXmm, double byYmm) {
    return new PlanView(xMm + byXmm, yMm + byYmm, perMm);
  }
}

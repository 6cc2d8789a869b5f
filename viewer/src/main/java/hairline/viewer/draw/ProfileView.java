package hairline.viewer.draw;

/**
 * What stretch of a section is looked at.
 *
 * @param fromMm left end
 * @param toMm right end; not above {@code fromMm} for all of it
 * @param lowUm lower end
 * @param highUm upper end; not above {@code lowUm} for as much as fits
 */
public record ProfileView(double fromMm, double toMm, double lowUm, double highUm) {
  /** All of it. */
  public static final ProfileView FIT = new ProfileView(0, 0, 0, 0);

  /** The view scaled about a point; below 1 it goes nearer. */
  public ProfileView zoomed(
      double alongFactor, double heightFactor, double aboutMm, double aboutUm) {
    ProfileView next =
        new ProfileView(
            aboutMm + (fromMm - aboutMm) * alongFactor,
            aboutMm + (toMm - aboutMm) * alongFactor,
            aboutUm + (lowUm - aboutUm) * heightFactor,
            aboutUm + (highUm - aboutUm) * heightFactor);
    boolean tooNear = next.toMm - next.fromMm < 1e-8 || next.highUm - next.lowUm < 1e-6;
    return tooNear && (alongFactor < 1 || heightFactor < 1) ? this : next;
  }

  /** The view moved. */
  public ProfileView panned(double byMm, double byUm) {
    return new ProfileView(fromMm + byMm, toMm + byMm, lowUm + byUm, highUm + byUm);
  }
}

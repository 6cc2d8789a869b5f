package hairline.checks.stock;

/**
 * A straight line in the XY plane, along which a section is taken; picometres, work coordinates.
 */
public record SectionLine(long x0Pm, long y0Pm, long x1Pm, long y1Pm) {

  /** Farthest coordinate: 100 m. */
  public static final long FARTHEST_PM = 100_000_000_000_000L;

  public SectionLine {
    if (x0Pm == x1Pm && y0Pm == y1Pm) {
      throw new IllegalArgumentException("a section from a point to itself");
    }
    for (long coordinate : new long[] {x0Pm, y0Pm, x1Pm, y1Pm}) {
      if (coordinate > FARTHEST_PM || coordinate < -FARTHEST_PM) {
        throw new IllegalArgumentException("a section beyond " + FARTHEST_PM + " pm");
      }
    }
  }

  /** Its length. */
  public double lengthPm() {
    double dx = x1Pm - (double) x0Pm;
    double dy = y1Pm - (double) y0Pm;
    return Math.sqrt(dx * dx + dy * dy);
  }
}

package hairline.checks.setup;

/**
 * From one length to another, both included.
 *
 * @param lo the lower end
 * @param hi the upper end, above the lower
 */
public record LengthRange(Length lo, Length hi) {
  public LengthRange {
    if (lo.pm() >= hi.pm()) {
      throw new IllegalArgumentException("empty range " + lo + ", " + hi);
    }
  }

  /** Whether a position lies in it, ends included. */
  public boolean contains(long positionPm) {
    return lo.pm() <= positionPm && positionPm <= hi.pm();
  }

  @Override
  public String toString() {
    return "[" + lo + ", " + hi + "]";
  }
}

package hairline.checks.budget;

import java.util.List;

/**
 * Combination of uncertainties after the GUM (JCGM 100:2008): u_c² = Σ (c_i u_i)², for
 * contributions that do not depend on each other.
 *
 * <p>Only random contributions belong here. What is known with its sign (a drift, a rounding) is
 * added as it is.
 */
public final class Uncertainty {

  /**
   * One contribution.
   *
   * @param standard its standard uncertainty u, 0 or more
   * @param sensitivity how much the result changes for one unit of it, c
   */
  public record Contribution(double standard, double sensitivity) {
    /**
     * Checks both.
     *
     * @throws IllegalArgumentException unless u is 0 or more and both are finite
     */
    public Contribution {
      requireNotNegative("standard uncertainty", standard);
      if (!Double.isFinite(sensitivity)) {
        throw new IllegalArgumentException("sensitivity is " + sensitivity);
      }
    }

    /** A contribution that the result takes over as it is. */
    public static Contribution of(double standard) {
      return new Contribution(standard, 1);
    }
  }

  private Uncertainty() {}

  /** The combined standard uncertainty, in the unit of the result; 0 for no contribution. */
  public static double combined(List<Contribution> contributions) {
    double squares = 0;
    for (Contribution c : contributions) {
      double part = c.sensitivity() * c.standard();
      squares += part * part;
    }
    return StrictMath.sqrt(squares);
  }

  /**
   * The standard uncertainty of what lies anywhere within ±a, all places alike: a/√3 (GUM 4.3.7).
   *
   * @param halfWidth a, 0 or more
   * @throws IllegalArgumentException outside this range
   */
  public static double ofRectangle(double halfWidth) {
    return requireNotNegative("half width", halfWidth) / StrictMath.sqrt(3);
  }

  static double requireNotNegative(String name, double value) {
    if (!(value >= 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(name + " is " + value + ", it must not be below zero");
    }
    return value;
  }
}

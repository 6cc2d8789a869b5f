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
   * @param degreesOfFreedom how well u itself is known, above 0; infinite where it is taken as
   *     exactly known
   */
  public record Contribution(double standard, double sensitivity, double degreesOfFreedom) {
    /**
     * Checks them.
     *
     * @throws IllegalArgumentException unless u is 0 or more, u and c are finite, and the degrees
     *     of freedom above 0
     */
    public Contribution {
      requireNotNegative("standard uncertainty", standard);
      if (!Double.isFinite(sensitivity)) {
        throw new IllegalArgumentException("sensitivity is " + sensitivity);
      }
      if (!(degreesOfFreedom > 0)) {
        throw new IllegalArgumentException("degrees of freedom are " + degreesOfFreedom);
      }
    }

    /** A contribution whose u is taken as exactly known. */
    public Contribution(double standard, double sensitivity) {
      this(standard, sensitivity, Double.POSITIVE_INFINITY);
    }

    /** A contribution that the result takes over as it is. */
    public static Contribution of(double standard) {
      return new Contribution(standard, 1);
    }

    /** What it brings into the result: |c| u. */
    public double inResult() {
      return Math.abs(sensitivity) * standard;
    }
  }

  private Uncertainty() {}

  /** The combined standard uncertainty, in the unit of the result; 0 for no contribution. */
  public static double combined(List<Contribution> contributions) {
    double squares = 0;
    for (Contribution c : contributions) {
      double part = c.inResult();
      squares += part * part;
    }
    return StrictMath.sqrt(squares);
  }

  /**
   * The degrees of freedom of the combined standard uncertainty, by the formula of Welch and
   * Satterthwaite: ν = u_c⁴ / Σ ((c_i u_i)⁴ / ν_i) (GUM G.4.1). Infinite where every u is exactly
   * known or nothing.
   */
  public static double effectiveDegreesOfFreedom(List<Contribution> contributions) {
    double combined = combined(contributions);
    double sum = 0;
    for (Contribution c : contributions) {
      if (c.inResult() > 0) {
        // As a ratio, so that no fourth power leaves the range of a double.
        double share = c.inResult() / combined;
        sum += share * share * share * share / c.degreesOfFreedom();
      }
    }
    return 1 / sum;
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

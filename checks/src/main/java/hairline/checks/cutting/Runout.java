package hairline.checks.cutting;

/**
 * What runout does to the chips of single teeth.
 *
 * <p>The reading is the total one at the rotating edges, largest less smallest edge radius, helix
 * included; it is taken as twice the eccentricity. Between a tooth and the m-th before it the edge
 * radius then differs by at most reading · sin(πm/z), and a tooth cuts min over m of (m f_z sin φ +
 * R_i − R_{i−m}) (from memory: Kline and DeVor 1983; Bao and Tansel 2000). Where the eccentricity
 * points is not known: the figures below hold for the worst direction.
 *
 * <p>All chips are as a feed per tooth of {@code radialFeedUm} = f_z sin φ_max gives them, across
 * the tool axis; times sin κ they are chip thicknesses.
 */
public final class Runout {
  private Runout() {}

  /**
   * The chip of the most loaded tooth in µm: the smallest of m f_z sin φ + reading · sin(πm/z), m
   * from 1 to z. For two teeth: the smaller of f_z sin φ + reading and 2 f_z sin φ. No tooth takes
   * more.
   *
   * @param radialFeedUm f_z sin φ, 0 or more
   * @param readingUm total reading, 0 or more
   * @param flutes teeth, equally spaced, 1 or more
   * @throws IllegalArgumentException outside these ranges
   */
  public static double mostLoadedChipUm(double radialFeedUm, double readingUm, int flutes) {
    require(radialFeedUm, readingUm, flutes);
    // The z-th tooth before is the tooth itself, a revolution ago.
    double least = flutes * radialFeedUm;
    for (int m = 1; m < flutes; m++) {
      least = Math.min(least, m * radialFeedUm + radiusStepUm(readingUm, m, flutes));
    }
    return least;
  }

  /**
   * The f_z sin φ in µm from which on the most loaded tooth takes a chip: the reverse of {@link
   * #mostLoadedChipUm}, that is the largest of (chip − reading · sin(πm/z))/m, m from 1 to z. For
   * two teeth: the larger of chip − reading and chip/2.
   *
   * @param chipUm the chip wanted, 0 or more
   * @param readingUm total reading, 0 or more
   * @param flutes teeth, equally spaced, 1 or more
   * @throws IllegalArgumentException outside these ranges
   */
  public static double radialFeedForChipUm(double chipUm, double readingUm, int flutes) {
    require(chipUm, readingUm, flutes);
    double most = chipUm / flutes;
    for (int m = 1; m < flutes; m++) {
      most = Math.max(most, (chipUm - radiusStepUm(readingUm, m, flutes)) / m);
    }
    return most;
  }

  /**
   * The chip of the least loaded tooth in µm: f_z sin φ − reading · sin(π/z), or 0 where that is
   * negative.
   *
   * @param radialFeedUm f_z sin φ, 0 or more
   * @param readingUm total reading, 0 or more
   * @param flutes teeth, equally spaced, 1 or more
   * @throws IllegalArgumentException outside these ranges
   */
  public static double leastLoadedChipUm(double radialFeedUm, double readingUm, int flutes) {
    require(radialFeedUm, readingUm, flutes);
    return Math.max(0, radialFeedUm - radiusStepUm(readingUm, 1, flutes));
  }

  /**
   * The largest step of radius from one tooth to the next in µm: reading · sin(π/z), 0 for one
   * tooth. A tooth cuts nothing where this reaches f_z sin φ_max.
   *
   * @param readingUm total reading, 0 or more
   * @param flutes teeth, equally spaced, 1 or more
   * @throws IllegalArgumentException outside these ranges
   */
  public static double neighbourStepUm(double readingUm, int flutes) {
    require(0, readingUm, flutes);
    return radiusStepUm(readingUm, 1, flutes);
  }

  /**
   * Whether a tooth cuts nothing: reading · sin(π/z) ≥ f_z sin φ_max; for two teeth, reading ≥ f_z
   * sin φ_max; for one tooth never.
   *
   * @param radialFeedUm f_z sin φ_max, above 0
   * @param readingUm total reading, 0 or more
   * @param flutes teeth, equally spaced, 1 or more
   * @return the answer over the band of the reading
   * @throws IllegalArgumentException outside these ranges
   */
  public static Certainty leavesToothIdle(double radialFeedUm, Band readingUm, int flutes) {
    Require.positive("feed per tooth", radialFeedUm);
    return readingUm.map(reading -> neighbourStepUm(reading, flutes)).atLeast(radialFeedUm);
  }

  private static double radiusStepUm(double readingUm, int teethApart, int flutes) {
    // StrictMath.sin(Math.PI) is not quite 0, and sin(Math.PI / 2) is 1.
    return teethApart == flutes ? 0 : readingUm * StrictMath.sin(Math.PI * teethApart / flutes);
  }

  private static void require(double chipUm, double readingUm, int flutes) {
    Require.notNegative("chip", chipUm);
    Require.notNegative("runout", readingUm);
    Require.positive("number of flutes", flutes);
  }
}

package hairline.checks.cutting;

/**
 * Minimum chip thickness: h_min = k r_e, with the radius r_e of the cutting edge. A thinner layer
 * is rubbed and pushed aside; no chip forms.
 *
 * <p>The ratio k of minimum chip thickness to edge radius depends on the work material, and what
 * was published scatters widely, so it is always a band. Certainly rubbing is what lies below the
 * low end, likely rubbing what lies below the typical value. End teeth and side teeth differ (Li,
 * Cheng, Zheng, Liu, Mech. Sci. 12 (2021) 487); the bands are not told apart by that.
 */
public final class MinimumChip {

  /**
   * A published ratio.
   *
   * @param ratio the band of k
   * @param source a sentence for reports: what was measured, by whom, and how far it was checked
   */
  public record PublishedRatio(Band ratio, String source) {}

  /** All materials together: where nothing narrower was published. */
  public static final PublishedRatio ALL_MATERIALS =
      new PublishedRatio(
          new Band(0.08, 0.30, 0.63),
          "all materials together 0.08 to 0.63, mostly 0.2 to 0.45, as quoted from table 1 of"
              + " Wojciechowski, Materials 2022, 15(1):59; typical value 0.30 is our choice");

  private static final PublishedRatio STEEL =
      new PublishedRatio(
          new Band(0.14, 0.29, 0.43),
          "ferritic-pearlitic steel 0.14 to 0.43 as quoted from Vogler, DeVor, Kapoor 2004; typical"
              + " value 0.29 is the middle of 0.22 to 0.36 for AISI 1045 in micro-milling, as"
              + " quoted from de Oliveira, Rodrigues, Coelho, de Souza, Int. J. Mach. Tools Manuf."
              + " 89 (2015) 39-54");

  private static final PublishedRatio NON_FERROUS =
      new PublishedRatio(
          new Band(0.14, 0.30, 0.68),
          "usually 0.14 to 0.43, and 0.60 to 0.68 for brass in micro helical milling (Cheng et al.,"
              + " IJAMT 97 (2018) 3119-3128, abstract); typical value 0.30 is the middle of 0.23 for"
              + " Al 6061 (as quoted from Malekian, Park, Jun 2012) and 0.35 to 0.40 for Al 6082-T6"
              + " (as quoted from Liu, DeVor, Kapoor 2006)");

  private MinimumChip() {}

  /**
   * The published ratio for a group of materials. For stainless steel, cast iron, superalloys,
   * titanium and hardened steel no published ratio was found: they get that of all materials
   * together, and the source says so.
   */
  public static PublishedRatio published(MaterialGroup group) {
    return switch (group) {
      case P -> STEEL;
      case N -> NON_FERROUS;
      case M, K, S, H ->
          new PublishedRatio(
              ALL_MATERIALS.ratio(),
              "no published ratio was found for group " + group + ": " + ALL_MATERIALS.source());
    };
  }

  /**
   * The minimum chip thickness in µm.
   *
   * @param ratio k, 0 or more
   * @param edgeRadiusUm edge radius r_e, above 0
   * @throws IllegalArgumentException outside these ranges
   */
  public static Band um(Band ratio, Band edgeRadiusUm) {
    Require.notNegative("minimum chip ratio", ratio.low());
    Require.positive("edge radius", edgeRadiusUm.low());
    return ratio.times(edgeRadiusUm);
  }
}

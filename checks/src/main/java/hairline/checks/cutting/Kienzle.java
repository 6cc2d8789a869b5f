package hairline.checks.cutting;

/**
 * Cutting force after Kienzle: k_c = k_c1.1 h^(−m_c), F = k_c b h, with chip thickness h in mm and
 * chip width b = a_p/sin κ (textbook; the formula is exact by definition, its constants are
 * measured).
 *
 * @param kc11MPa specific cutting force k_c1.1 at h = b = 1 mm, N/mm², above 0
 * @param mc its exponent m_c, 0 to 0.5
 */
public record Kienzle(Band kc11MPa, Band mc) {

  /** A larger exponent is taken for 1 − m_c, which some tables print. */
  public static final double LARGEST_EXPONENT = 0.5;

  /** Axial force as a part of the tangential one: 0.3, within 0.2 to 0.5. Our choice, no source. */
  public static final Band AXIAL_SHARE = new Band(0.2, 0.3, 0.5);

  /** From this chip thickness on the tables hold; as quoted from Horváth 2015. */
  public static final double TABLED_FROM_UM = 100;

  /**
   * Borders of the sections in log-log: 0.1 and 0.01 mm; as quoted from Biró, Czampa, Szalay 2015.
   */
  public static final double EXTRAPOLATED_FROM_UM = 10;

  /** How well the formula is supported at a chip thickness. */
  public enum Range {
    /** 0.1 mm and thicker: what the tables were measured for. */
    TABLED,
    /** 0.01 to 0.1 mm: beyond the tables, the formula extrapolated. */
    EXTRAPOLATED,
    /** Below 0.01 mm: the edge radius counts, the force is larger. */
    SIZE_EFFECT;

    /**
     * What the formula's force is multiplied by: 1, and under the size effect 1 to 2.5, typically
     * 1.6. Our choice, no source.
     */
    public Band factor() {
      return this == SIZE_EFFECT ? new Band(1, 1.6, 2.5) : Band.ofExact(1);
    }

    /** The range of a chip thickness in µm. */
    public static Range of(double chipUm) {
      if (chipUm >= TABLED_FROM_UM) {
        return TABLED;
      }
      return chipUm >= EXTRAPOLATED_FROM_UM ? EXTRAPOLATED : SIZE_EFFECT;
    }
  }

  /**
   * Checks the constants.
   *
   * @throws IllegalArgumentException outside the ranges given; for an exponent above 0.5 with the
   *     hint that the table may print 1 − m_c
   */
  public Kienzle {
    Require.positive("specific cutting force", kc11MPa.low());
    Require.notNegative("exponent of the specific cutting force", mc.low());
    if (mc.high() > LARGEST_EXPONENT) {
      throw new IllegalArgumentException(
          "exponent mc is "
              + mc.high()
              + ", it must not exceed "
              + LARGEST_EXPONENT
              + "; some tables print 1 - mc");
    }
  }

  /** Constants known exactly. */
  public static Kienzle ofExact(double kc11MPa, double mc) {
    return new Kienzle(Band.ofExact(kc11MPa), Band.ofExact(mc));
  }

  /**
   * The specific cutting force k_c in N/mm², by the formula alone.
   *
   * @param chipUm chip thickness h, above 0
   * @throws IllegalArgumentException outside this range
   */
  public Band kcMPa(double chipUm) {
    double chipMm = Require.positive("chip thickness", chipUm) / 1000;
    Band power =
        Band.spanning(
            StrictMath.pow(chipMm, -mc.low()),
            StrictMath.pow(chipMm, -mc.typical()),
            StrictMath.pow(chipMm, -mc.high()));
    return kc11MPa.times(power);
  }

  /**
   * The force in N, by the formula alone: k_c b h.
   *
   * @param chipUm chip thickness h, above 0
   * @param chipWidthMm chip width b = a_p/sin κ, above 0
   * @throws IllegalArgumentException outside these ranges
   */
  public Band forceN(double chipUm, double chipWidthMm) {
    Require.positive("chip width", chipWidthMm);
    return kcMPa(chipUm).scale(chipWidthMm * chipUm / 1000);
  }

  /**
   * The force on a tooth as far as it is known: by the formula, times the factor of its {@link
   * Range} (that of the typical chip), and no force where the edge certainly ploughs.
   *
   * @param radialChipUm f_z sin φ of the tooth with its runout, above 0
   * @param depthMm axial depth a_p, above 0
   * @param sinKappa sine of the cutting edge angle, above 0 and at most 1
   * @param minimumUm minimum chip thickness, above 0; 0 where it is not known, then nothing ploughs
   * @throws IllegalArgumentException outside these ranges
   */
  public CuttingForce force(Band radialChipUm, double depthMm, Band sinKappa, Band minimumUm) {
    Require.positive("chip", radialChipUm.low());
    Require.positive("axial depth", depthMm);
    CuttingEdgeAngle.requireSine(sinKappa.low());
    CuttingEdgeAngle.requireSine(sinKappa.high());
    Band chipUm = radialChipUm.times(sinKappa);
    if (chipUm.below(minimumUm) == Certainty.CERTAIN) {
      return new CuttingForce.Ploughing(chipUm, minimumUm);
    }
    Range range = Range.of(chipUm.typical());
    Band tangentialN =
        new Band(
                // A flatter edge (smaller sin κ) makes a thinner, wider chip, which takes more
                // force.
                forceN(radialChipUm.low(), depthMm, sinKappa.high()).low(),
                forceN(radialChipUm.typical(), depthMm, sinKappa.typical()).typical(),
                forceN(radialChipUm.high(), depthMm, sinKappa.low()).high())
            .times(range.factor());
    return new CuttingForce.Cutting(chipUm, tangentialN, tangentialN.times(AXIAL_SHARE), range);
  }

  private Band forceN(double radialChipUm, double depthMm, double sinKappa) {
    return forceN(radialChipUm * sinKappa, depthMm / sinKappa);
  }
}

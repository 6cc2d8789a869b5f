package hairline.checks.cutting;

/**
 * Feed per tooth: f_z = v_f / (n z), with the feed v_f, the spindle speed n and the number of teeth
 * z (exact; ISO 3002-3 has the symbols).
 */
public final class FeedPerTooth {
  private FeedPerTooth() {}

  /**
   * The feed per tooth in µm.
   *
   * @param feedMmPerMin feed along the path, 0 or more
   * @param rpm spindle speed, above 0
   * @param flutes teeth that cut, 1 or more
   * @throws IllegalArgumentException outside these ranges
   */
  public static double um(double feedMmPerMin, double rpm, int flutes) {
    Require.notNegative("feed", feedMmPerMin);
    // The product comes first: the quotient of exact numbers is then correctly rounded.
    return feedMmPerMin * 1000 / teethPerMin(rpm, flutes);
  }

  /**
   * The feed in mm/min that gives a feed per tooth.
   *
   * @param feedPerToothUm feed per tooth, 0 or more
   * @param rpm spindle speed, above 0
   * @param flutes teeth that cut, 1 or more
   * @throws IllegalArgumentException outside these ranges
   */
  public static double feedMmPerMin(double feedPerToothUm, double rpm, int flutes) {
    Require.notNegative("feed per tooth", feedPerToothUm);
    return feedPerToothUm * teethPerMin(rpm, flutes) / 1000;
  }

  private static double teethPerMin(double rpm, int flutes) {
    Require.positive("number of flutes", flutes);
    return Require.positive("spindle speed", rpm) * flutes;
  }
}

package hairline.checks.cutting;

/**
 * Blocks so short that the control cannot keep up with them (exact): a control that needs T for a
 * block moves no faster than L/T on blocks of length L.
 */
public final class Starving {
  private Starving() {}

  /**
   * The fastest feed in mm/min that the control can hold.
   *
   * @param lengthMm length L of the blocks, 0 or more
   * @param blockTimeMs time T that the control needs for a block, above 0
   * @throws IllegalArgumentException outside these ranges
   */
  public static double feedHeldMmPerMin(double lengthMm, double blockTimeMs) {
    Require.notNegative("block length", lengthMm);
    return lengthMm * 60_000 / Require.positive("block time", blockTimeMs);
  }

  /**
   * How long a block lasts at a feed, in ms.
   *
   * @param lengthMm length of the block, 0 or more
   * @param feedMmPerMin feed, above 0
   * @throws IllegalArgumentException outside these ranges
   */
  public static double blockLastsMs(double lengthMm, double feedMmPerMin) {
    Require.notNegative("block length", lengthMm);
    return lengthMm * 60_000 / Require.positive("feed", feedMmPerMin);
  }
}

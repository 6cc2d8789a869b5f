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

  /**
   * The largest factor of all feeds, at most 1, at which a {@link BlockQueue} that is full at first
   * never keeps the tool waiting: of a run of m blocks that last d in sum, more than the N that are
   * ready ahead, at most d / (T · (m - N)) (exact).
   *
   * @param lastMs how long each block lasts at its feed, above 0
   * @param count how many of them there are
   * @param mostBlocks blocks N that the control keeps ready, 0 or more
   * @param blockTimeMs time T that it needs for a block, above 0
   */
  public static double factorHeld(double[] lastMs, int count, int mostBlocks, double blockTimeMs) {
    double factor = 1;
    while (true) {
      double tighter = tighter(lastMs, count, mostBlocks, blockTimeMs, factor);
      if (tighter >= factor) {
        return factor;
      }
      factor = tighter;
    }
  }

  /** The factor that the run asks for which at this one falls short most; none asks for more. */
  private static double tighter(
      double[] lastMs, int count, int mostBlocks, double blockTimeMs, double factor) {
    double ready = mostBlocks;
    double shortest = 0;
    double tighter = factor;
    double sumMs = 0;
    int blocks = 0;
    for (int k = 0; k < count; k++) {
      ready += lastMs[k] / (factor * blockTimeMs) - 1;
      sumMs += lastMs[k];
      blocks++;
      if (ready >= mostBlocks) {
        ready = mostBlocks;
        sumMs = 0;
        blocks = 0;
      } else if (ready < shortest) {
        shortest = ready;
        tighter = sumMs / (blockTimeMs * (blocks - mostBlocks));
      }
    }
    return tighter;
  }
}

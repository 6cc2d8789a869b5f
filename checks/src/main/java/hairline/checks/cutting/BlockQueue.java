package hairline.checks.cutting;

/**
 * How many blocks a control has ready ahead of the tool (exact, of a control that prepares one
 * block after the other in a time T each and keeps N of them): while a block of duration d runs,
 * d/T blocks are prepared and one is used up. Where the next block is not ready when one ends, the
 * tool waits for it.
 */
public final class BlockQueue {
  /** Sums of quotients round; a queue that is just empty is not short of a block. */
  private static final double NOTHING = 1e-6;

  private final int mostBlocks;
  private final double blockTimeMs;
  private double readyBlocks;

  /**
   * A queue that is full.
   *
   * @param mostBlocks blocks N after the present one that the control keeps ready, 0 or more
   * @param blockTimeMs time T that it needs for a block, above 0
   * @throws IllegalArgumentException outside these ranges
   */
  public BlockQueue(int mostBlocks, double blockTimeMs) {
    Require.notNegative("blocks ahead", mostBlocks);
    this.mostBlocks = mostBlocks;
    this.blockTimeMs = Require.positive("block time", blockTimeMs);
    this.readyBlocks = mostBlocks;
  }

  /** Blocks that are ready behind the one that runs; parts of one count. */
  public double readyBlocks() {
    return readyBlocks;
  }

  /** The queue has had time to fill. */
  public void fill() {
    readyBlocks = mostBlocks;
  }

  /**
   * Runs a block.
   *
   * @param lastsMs how long it lasts at its feed, 0 or more
   * @return how long the tool waits behind it until the next one is ready, in ms; 0 where it is
   * @throws IllegalArgumentException outside this range
   */
  public double run(double lastsMs) {
    Require.notNegative("duration of a block", lastsMs);
    double ready = readyBlocks - 1 + lastsMs / blockTimeMs;
    readyBlocks = Math.min(mostBlocks, Math.max(0, ready));
    return ready < -NOTHING ? -ready * blockTimeMs : 0;
  }
}

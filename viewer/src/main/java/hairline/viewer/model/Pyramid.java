package hairline.viewer.model;

import java.util.Arrays;
import java.util.function.LongUnaryOperator;

/**
 * Smallest and largest values of a growing column, by blocks of blocks: the range of any stretch is
 * told exactly from a few of them, so that no spike is lost however much is drawn in one pixel. A
 * value may be absent.
 *
 * <p>Memory: 16 bytes for each block of 32 values and an eighth of that for all levels above, some
 * 0.6 bytes a value. One thread appends; any thread may ask for stretches below a count that was
 * published to it.
 */
public final class Pyramid {
  /** No value. */
  public static final long ABSENT = Long.MIN_VALUE;

  private static final int BLOCK = 32;
  private static final int FAN = 8;
  private static final int LEVELS = 12;
  private static final int FIRST_NODES = 64;

  private final LongUnaryOperator values;
  private final Level[] levels = new Level[LEVELS];
  private long appended;
  private Range open = Range.NONE;

  private static final class Level {
    private volatile long[] lows = new long[FIRST_NODES];
    private volatile long[] highs = new long[FIRST_NODES];
    private int nodes;
    private Range open = Range.NONE;

    void add(Range node) {
      if (nodes == lows.length) {
        lows = Arrays.copyOf(lows, 2 * nodes);
        highs = Arrays.copyOf(highs, 2 * nodes);
      }
      lows[nodes] = node.low();
      highs[nodes] = node.high();
      nodes++;
    }

    Range node(long index) {
      return new Range(lows[(int) index], highs[(int) index]);
    }
  }

  /**
   * An empty one.
   *
   * @param values tells the value of each index appended, or {@link #ABSENT}
   */
  public Pyramid(LongUnaryOperator values) {
    this.values = values;
    for (int level = 0; level < LEVELS; level++) {
      levels[level] = new Level();
    }
  }

  /** Takes note of the next value. */
  public void append(long value) {
    if (value != ABSENT) {
      open = open.with(value);
    }
    appended++;
    if (appended % BLOCK != 0) {
      return;
    }
    Range node = open;
    open = Range.NONE;
    long width = BLOCK;
    for (Level level : levels) {
      level.add(node);
      level.open = level.open.with(node);
      width *= FAN;
      if (appended % width != 0) {
        return;
      }
      node = level.open;
      level.open = Range.NONE;
    }
  }

  /**
   * The range of a stretch.
   *
   * @param from first index
   * @param to one past the last index, not beyond what was published
   */
  public Range range(long from, long to) {
    Range found = Range.NONE;
    long at = from;
    while (at < to) {
      int level = -1;
      long width = 1;
      long next = BLOCK;
      while (level + 1 < LEVELS && at % next == 0 && at + next <= to) {
        level++;
        width = next;
        next *= FAN;
      }
      if (level < 0) {
        long value = values.applyAsLong(at);
        found = value == ABSENT ? found : found.with(value);
      } else {
        found = found.with(levels[level].node(at / width));
      }
      at += width;
    }
    return found;
  }

  /**
   * The first index in a stretch whose value lies within bounds; -1 where there is none.
   *
   * @param from first index
   * @param to one past the last index, not beyond what was published
   */
  public long first(long from, long to, long low, long high) {
    long at = from;
    while (at < to) {
      int level = -1;
      long width = 1;
      long next = BLOCK;
      while (level + 1 < LEVELS && at % next == 0 && at + next <= to) {
        if (meets(levels[level + 1].node(at / next), low, high)) {
          break;
        }
        level++;
        width = next;
        next *= FAN;
      }
      if (level < 0) {
        long value = values.applyAsLong(at);
        if (value != ABSENT && value >= low && value <= high) {
          return at;
        }
      }
      at += width;
    }
    return -1;
  }

  private static boolean meets(Range node, long low, long high) {
    return node.low() <= high && node.high() >= low;
  }
}

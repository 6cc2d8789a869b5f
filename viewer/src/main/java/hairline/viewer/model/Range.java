package hairline.viewer.model;

/**
 * The smallest and the largest of some values.
 *
 * @param low the smallest
 * @param high the largest
 */
public record Range(long low, long high) {
  /** No value at all. */
  public static final Range NONE = new Range(Long.MAX_VALUE, Long.MIN_VALUE);

  /** Whether there is no value. */
  public boolean isEmpty() {
    return low > high;
  }

  /** The range that holds both. */
  public Range with(Range other) {
    return new Range(Math.min(low, other.low), Math.max(high, other.high));
  }

  /** The range with one more value. */
  public Range with(long value) {
    return new Range(Math.min(low, value), Math.max(high, value));
  }
}

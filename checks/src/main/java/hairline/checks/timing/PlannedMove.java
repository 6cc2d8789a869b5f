package hairline.checks.timing;

/**
 * How fast the machine really goes along a move. Within a move the feed first rises, then stays,
 * then falls, so the lowest one stands at one of its ends.
 *
 * @param seconds how long the move takes
 * @param entryMmPerMin feed at its start
 * @param exitMmPerMin feed at its end
 * @param peakMmPerMin highest feed on the way
 * @param meanMmPerMin length over time; 0 where the move has no length
 * @param peakFromShare part of the length after which the highest feed is reached, 0 to 1
 * @param peakToShare part of the length after which it is left, not below the former
 */
public record PlannedMove(
    double seconds,
    double entryMmPerMin,
    double exitMmPerMin,
    double peakMmPerMin,
    double meanMmPerMin,
    double peakFromShare,
    double peakToShare) {

  /** A move without length. */
  static final PlannedMove NONE = new PlannedMove(0, 0, 0, 0, 0, 0, 1);

  /** The lowest feed on the way. */
  public double lowestMmPerMin() {
    return Math.min(entryMmPerMin, exitMmPerMin);
  }

  /**
   * The part of the length on which the feed is below a value, 0 to 1. Between its ends and its
   * peak the square of the feed is taken to change evenly along the way: exact without a jerk
   * limit.
   */
  public double shareBelow(double feedMmPerMin) {
    if (feedMmPerMin > peakMmPerMin) {
      return 1;
    }
    return below(entryMmPerMin, feedMmPerMin) * peakFromShare
        + below(exitMmPerMin, feedMmPerMin) * (1 - peakToShare);
  }

  /** The time in seconds for which the feed is below a value. */
  public double secondsBelow(double feedMmPerMin) {
    return feedMmPerMin > peakMmPerMin
        ? seconds
        : Math.min(seconds, secondsBelowAtStart(feedMmPerMin) + secondsBelowAtEnd(feedMmPerMin));
  }

  /** The time in seconds for which the feed is below a value at the start of the move. */
  public double secondsBelowAtStart(double feedMmPerMin) {
    return feedMmPerMin > peakMmPerMin ? seconds : ramp(entryMmPerMin, feedMmPerMin, peakFromShare);
  }

  /** The time in seconds for which the feed is below a value at the end of the move. */
  public double secondsBelowAtEnd(double feedMmPerMin) {
    return feedMmPerMin > peakMmPerMin
        ? seconds
        : ramp(exitMmPerMin, feedMmPerMin, 1 - peakToShare);
  }

  /** Under a steady acceleration the mean feed of a ramp is that of its ends. */
  private double ramp(double endMmPerMin, double feedMmPerMin, double rampShare) {
    double share = below(endMmPerMin, feedMmPerMin) * rampShare;
    double lengthMm = meanMmPerMin * seconds / 60;
    double feeds = endMmPerMin + feedMmPerMin;
    return share > 0 && feeds > 0 ? 2 * share * lengthMm / feeds * 60 : 0;
  }

  private double below(double endMmPerMin, double feedMmPerMin) {
    if (feedMmPerMin <= endMmPerMin || peakMmPerMin <= endMmPerMin) {
      return 0;
    }
    double end2 = endMmPerMin * endMmPerMin;
    return (feedMmPerMin * feedMmPerMin - end2) / (peakMmPerMin * peakMmPerMin - end2);
  }
}

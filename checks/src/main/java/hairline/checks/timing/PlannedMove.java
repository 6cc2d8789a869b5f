package hairline.checks.timing;

/**
 * How fast the machine really goes along a move. Within a move the feed rises to its highest,
 * stays, and falls. Under a jerk limit it may dip before, behind a corner at which acceleration is
 * not yet taken back, or behind that, to gather way before the next corner; otherwise the lowest
 * feed stands at one end.
 *
 * @param seconds how long the move takes
 * @param entryMmPerMin feed at its start
 * @param exitMmPerMin feed at its end
 * @param lowestMmPerMin lowest feed on the way
 * @param peakMmPerMin highest feed on the way
 * @param meanMmPerMin length over time; 0 where the move has no length
 * @param lowestShare part of the length after which the lowest feed is reached, 0 to 1
 * @param peakFromShare part of the length after which the highest feed is reached, 0 to 1
 * @param peakToShare part of the length after which it is left, not below the former
 */
public record PlannedMove(
    double seconds,
    double entryMmPerMin,
    double exitMmPerMin,
    double lowestMmPerMin,
    double peakMmPerMin,
    double meanMmPerMin,
    double lowestShare,
    double peakFromShare,
    double peakToShare) {

  /** A move without length. */
  static final PlannedMove NONE = new PlannedMove(0, 0, 0, 0, 0, 0, 0, 0, 1);

  /** A stretch on which the square of the feed is taken to change evenly along the way. */
  private record Stretch(double fromMmPerMin, double toMmPerMin, double share) {
    double shareBelow(double feedMmPerMin) {
      double low = Math.min(fromMmPerMin, toMmPerMin);
      double high = Math.max(fromMmPerMin, toMmPerMin);
      if (feedMmPerMin <= low) {
        return 0;
      }
      return feedMmPerMin >= high
          ? share
          : share * (feedMmPerMin * feedMmPerMin - low * low) / (high * high - low * low);
    }

    /** Under a steady acceleration the mean feed is that of the ends. */
    double secondsBelow(double feedMmPerMin, double lengthMm) {
      double below = shareBelow(feedMmPerMin);
      double low = Math.min(fromMmPerMin, toMmPerMin);
      double feeds = low + Math.min(feedMmPerMin, Math.max(fromMmPerMin, toMmPerMin));
      return below > 0 && feeds > 0 ? 2 * below * lengthMm / feeds * 60 : 0;
    }
  }

  /**
   * The part of the length on which the feed is below a value, 0 to 1. Between its ends, its lowest
   * and its peak the square of the feed is taken to change evenly along the way: exact without a
   * jerk limit.
   */
  public double shareBelow(double feedMmPerMin) {
    if (feedMmPerMin > peakMmPerMin) {
      return 1;
    }
    double share = 0;
    for (int k = 0; k < 4; k++) {
      share += stretch(k).shareBelow(feedMmPerMin);
    }
    return share;
  }

  /** The time in seconds for which the feed is below a value. */
  public double secondsBelow(double feedMmPerMin) {
    return feedMmPerMin > peakMmPerMin
        ? seconds
        : Math.min(seconds, secondsBelowAtStart(feedMmPerMin) + secondsBelowAtEnd(feedMmPerMin));
  }

  /** The time in seconds for which the feed is below a value before its highest is reached. */
  public double secondsBelowAtStart(double feedMmPerMin) {
    return feedMmPerMin > peakMmPerMin ? seconds : secondsBelow(feedMmPerMin, 0);
  }

  /** The time in seconds for which the feed is below a value after its highest is left. */
  public double secondsBelowAtEnd(double feedMmPerMin) {
    return feedMmPerMin > peakMmPerMin ? seconds : secondsBelow(feedMmPerMin, 2);
  }

  private double secondsBelow(double feedMmPerMin, int first) {
    double lengthMm = meanMmPerMin * seconds / 60;
    return stretch(first).secondsBelow(feedMmPerMin, lengthMm)
        + stretch(first + 1).secondsBelow(feedMmPerMin, lengthMm);
  }

  /** To the lowest feed and from there to the peak; from it to the lowest feed and to the end. */
  private Stretch stretch(int k) {
    boolean early = lowestShare <= peakFromShare;
    return switch (k) {
      case 0 ->
          early
              ? new Stretch(entryMmPerMin, lowestMmPerMin, lowestShare)
              : new Stretch(entryMmPerMin, peakMmPerMin, peakFromShare);
      case 1 -> new Stretch(lowestMmPerMin, peakMmPerMin, early ? peakFromShare - lowestShare : 0);
      case 2 ->
          early
              ? new Stretch(peakMmPerMin, exitMmPerMin, 1 - peakToShare)
              : new Stretch(peakMmPerMin, lowestMmPerMin, lowestShare - peakToShare);
      default -> new Stretch(lowestMmPerMin, exitMmPerMin, early ? 0 : 1 - lowestShare);
    };
  }
}

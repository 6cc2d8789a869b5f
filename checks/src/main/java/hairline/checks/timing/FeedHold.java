package hairline.checks.timing;

/** What keeps a move below the feed that is programmed. */
public enum FeedHold {
  /** No axis goes faster ({@code machine.rapid}). */
  AXES("axis speed"),
  /** The control reads no more blocks in the time ({@code machine.control.block_time}). */
  BLOCK_TIME("block time"),
  /** Centripetal acceleration, or its jerk, on an arc. */
  ARC("arc"),
  /** A corner at one of its ends, which is held within the path tolerance. */
  CORNER("corner"),
  /** An exact stop at one of its ends. */
  EXACT_STOP("exact stop"),
  /** The axes stand at one of its ends: for a dwell, the spindle, a tool, or the end. */
  STOP("stop"),
  /**
   * The way from or to a slower place outside of the move is too short for acceleration and jerk,
   * or goes farther than the control looks ahead.
   */
  ACCELERATION("acceleration");

  private final String words;

  FeedHold(String words) {
    this.words = words;
  }

  /** In a few words. */
  public String words() {
    return words;
  }
}

package hairline.checks.timing;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The planned feed of the move in hand: the stage that plans writes it, later ones read it. */
public final class PlannedFeed {
  private final boolean withLimits;
  private @Nullable DueMove move;
  private Optional<FeedLimits> limits = Optional.empty();

  /** Without the limits of the plan. */
  public PlannedFeed() {
    this(false);
  }

  private PlannedFeed(boolean withLimits) {
    this.withLimits = withLimits;
  }

  /** With the limits that the plan had to keep. */
  public static PlannedFeed withLimits() {
    return new PlannedFeed(true);
  }

  /** How the machine goes along the move in hand; empty where that can't be planned. */
  public Optional<PlannedMove> ofThisMove() {
    return move == null ? Optional.empty() : Optional.of(move.planned());
  }

  /** What the plan had to keep along the move in hand; empty where nobody asked for it. */
  public Optional<FeedLimits> limitsOfThisMove() {
    return limits;
  }

  boolean hasLimits() {
    return withLimits;
  }

  /** The time in seconds that the move in hand takes as planned; NaN where it is not. */
  double secondsOfThisMove() {
    return move == null ? Double.NaN : move.seconds();
  }

  void set(DueMove planned, Optional<FeedLimits> kept) {
    move = planned;
    limits = kept;
  }

  void clear() {
    move = null;
    limits = Optional.empty();
  }
}

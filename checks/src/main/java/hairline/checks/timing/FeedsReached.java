package hairline.checks.timing;

import hairline.checks.motion.Event;
import hairline.checks.motion.EventSink;
import hairline.checks.motion.Move;
import hairline.checks.stock.Cut;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Compares the feeds that the machine reaches with those programmed, move by move. Stands behind
 * the stage that counts time. Keeps the {@value #SLOWEST} slowest moves of each operation, those
 * alike as one, and {@value OperationTimes#OPERATIONS_CAP} operations.
 */
public final class FeedsReached implements EventSink {
  /** How many moves of an operation are kept. */
  public static final int SLOWEST = 20;

  /** Moves that differ by less than this part are alike. */
  private static final double ALIKE = 1e-6;

  /** Less than this part of the time lost is rounding. */
  private static final double ROUNDING = 1e-9;

  private static final double SECONDS_PER_MINUTE = 60;

  /** The moves of one operation. */
  private static final class Moves {
    private final Map<FeedHold, Double> lost = new EnumMap<>(FeedHold.class);
    private final List<FeedsShown.Slow> slowest = new ArrayList<>();
    private long count;
    private long below;

    void add(FeedMove move) {
      count++;
      if (move.held().isEmpty()) {
        return;
      }
      below++;
      int at = slowest.size();
      while (at > 0 && move.share() < slowest.get(at - 1).first().share() * (1 - ALIKE)) {
        at--;
      }
      for (int k = at - 1; k >= 0 && near(slowest.get(k).first().share(), move.share()); k--) {
        if (alike(slowest.get(k).first(), move)) {
          slowest.set(k, new FeedsShown.Slow(slowest.get(k).first(), slowest.get(k).count() + 1));
          return;
        }
      }
      if (at < SLOWEST) {
        slowest.add(at, new FeedsShown.Slow(move, 1));
        if (slowest.size() > SLOWEST) {
          slowest.remove(SLOWEST);
        }
      }
    }

    private static boolean alike(FeedMove move, FeedMove other) {
      PlannedMove planned = move.planned().orElseThrow();
      PlannedMove otherPlanned = other.planned().orElseThrow();
      return move.held().equals(other.held())
          && move.move().feedMmPerMin().equals(other.move().feedMmPerMin())
          && near(move.move().lengthMm(), other.move().lengthMm())
          && near(planned.entryMmPerMin(), otherPlanned.entryMmPerMin())
          && near(planned.lowestMmPerMin(), otherPlanned.lowestMmPerMin());
    }

    private static boolean near(double a, double b) {
      return Math.abs(a - b) <= ALIKE * Math.max(a, b);
    }
  }

  private final MotionLimits limits;
  private final ProgramTime time;
  private final PlannedFeed feed;
  private final Consumer<FeedMove> taker;
  private final OperationTimes operations = new OperationTimes();
  private final List<Moves> moves = new ArrayList<>();
  private final Map<FeedHold, Double> lost = new EnumMap<>(FeedHold.class);
  private long notPlanned;

  /**
   * A comparison.
   *
   * @param limits what the sheet says
   * @param time holds the time of the events
   * @param feed holds the planned feed of the moves, and the limits of the plan
   * @param taker takes each move
   */
  public FeedsReached(
      MotionLimits limits, ProgramTime time, PlannedFeed feed, Consumer<FeedMove> taker) {
    this.limits = limits;
    this.time = time;
    this.feed = feed;
    this.taker = taker;
  }

  @Override
  public void accept(Event event) {
    Event plain = event instanceof Cut cut ? cut.move() : event;
    operations.accept(plain, time.ofThisEvent().atLeastSeconds(), feed.ofThisMove());
    if (plain instanceof Move move) {
      move(move);
    }
  }

  private void move(Move move) {
    Optional<PlannedMove> planned = feed.ofThisMove();
    double commanded = move.isFeed() ? move.feedMmPerMin().orElse(0) : 0;
    if (move.isFeed() && planned.isEmpty() && move.lengthMm() > 0) {
      notPlanned++;
    }
    if (planned.isEmpty() || !(commanded > 0)) {
      taker.accept(new FeedMove(move, planned, 0, Optional.empty()));
      return;
    }
    int operation = operations.present();
    while (moves.size() <= operation) {
      moves.add(new Moves());
    }
    FeedLimits kept = feed.limitsOfThisMove().orElseThrow();
    double least = move.lengthMm() / commanded * SECONDS_PER_MINUTE;
    double all = planned.get().seconds() - least;
    if (all <= ROUNDING * planned.get().seconds()) {
      take(operation, new FeedMove(move, planned, 0, Optional.empty()));
      return;
    }
    Map<FeedHold, Double> parts = parts(move, commanded, planned.get(), kept, all);
    FeedHold largest = FeedHold.ACCELERATION;
    for (Map.Entry<FeedHold, Double> part : parts.entrySet()) {
      largest = part.getValue() > parts.getOrDefault(largest, 0.0) ? part.getKey() : largest;
      lost.merge(part.getKey(), part.getValue(), Double::sum);
      if (operation >= 0) {
        moves.get(operation).lost.merge(part.getKey(), part.getValue(), Double::sum);
      }
    }
    take(operation, new FeedMove(move, planned, all, Optional.of(largest)));
  }

  /**
   * The time lost by what holds the feed: at the highest feed allowed along the move, and on the
   * ways up to it and down from it, shared as under a steady acceleration.
   */
  private static Map<FeedHold, Double> parts(
      Move move, double commanded, PlannedMove planned, FeedLimits kept, double all) {
    Map<FeedHold, Double> parts = new EnumMap<>(FeedHold.class);
    double ramps = all;
    if (kept.by().isPresent()) {
      double steady =
          move.lengthMm() * SECONDS_PER_MINUTE * (1 / kept.highestMmPerMin() - 1 / commanded);
      parts.put(kept.by().get(), Math.min(all, steady));
      ramps = Math.max(0, all - steady);
    }
    double highest = Math.min(commanded, kept.highestMmPerMin());
    double up = highest - planned.entryMmPerMin();
    double down = highest - planned.exitMmPerMin();
    double share = up * up + down * down > 0 ? up * up / (up * up + down * down) : 0.5;
    if (ramps > ROUNDING * planned.seconds()) {
      parts.merge(kept.atStart(planned), ramps * share, Double::sum);
      parts.merge(kept.atEnd(planned), ramps * (1 - share), Double::sum);
    }
    return parts;
  }

  private void take(int operation, FeedMove shown) {
    if (operation >= 0) {
      moves.get(operation).add(shown);
    }
    taker.accept(shown);
  }

  /** What the events so far come to. */
  public FeedsShown shown() {
    List<FeedsShown.Operation> all = new ArrayList<>();
    for (int k = 0; k < moves.size(); k++) {
      Moves of = moves.get(k);
      if (of.count > 0) {
        all.add(
            new FeedsShown.Operation(
                operations.operation(k),
                of.count,
                of.below,
                Collections.unmodifiableMap(of.lost),
                of.slowest));
      }
    }
    return new FeedsShown(
        operations.ofProgram(),
        Collections.unmodifiableMap(lost),
        all,
        notPlanned,
        limits.missing(),
        !operations.isCapReached());
  }
}

package hairline.checks.timing;

import hairline.checks.motion.Axis;
import hairline.checks.motion.Event;
import hairline.checks.motion.EventSink;
import hairline.checks.motion.Move;
import hairline.checks.setup.AxisValues;
import hairline.checks.stock.Cut;
import java.util.ArrayDeque;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Plans the feed that the machine really reaches, move by move, and hands every event on with the
 * plan of its move in {@link PlannedFeed}. Holds back the events of as many moves as the control
 * sees ahead.
 *
 * <p>A move goes no faster than it is told to (rapids: as the axes can), than its axes can, than
 * the control reads blocks (length over block time), and on an arc than centripetal acceleration
 * and jerk allow (v² ≤ a r, v³ ≤ J r²). At corners the control keeps to the path tolerance on a
 * blending arc of radius r = d s/(1 − s), s the sine of half the included angle (from memory), or
 * stops where an exact stop is told. The axes also stop for what is no motion: dwells, tool
 * changes, starts and changes of the spindle that the control waits for, stops, and the machine's
 * own codes.
 *
 * <p>What holds of the plan: no limit is exceeded anywhere, and without a jerk limit no other plan
 * with this look-ahead is faster. With one, the plan is within 1 % of the fastest motion that brute
 * force finds, where acceleration and jerk are the same along the way; where they are not, the
 * weaker of the moves between two knots of the plan count. Like that motion, the plan may pass a
 * corner while the feed still falls, or gather way before one: the feed then dips below that of the
 * corner, most beside a block of another feed. So times under a jerk limit are what the best
 * control would need, and a plainer one needs more.
 *
 * <p>Without acceleration or path tolerance on the sheet nothing is planned.
 */
public final class FeedPlanner implements EventSink {
  /** Blocks seen ahead where the sheet doesn't tell. */
  public static final int LOOK_AHEAD_UNLESS_TOLD = 1000;

  /** Events held back at most; then the plan comes to rest. */
  private static final int MOST_HELD = 65_536;

  private static final double PER_MINUTE = 60;

  /** Two directions that differ by less than rounding of the arithmetic are one. */
  private static final double STRAIGHT = 1 - 1e-12;

  private static final double ROUNDING = 1e-12;

  private final MotionLimits limits;
  private final boolean isPlanning;
  private final boolean waitsForSpindle;
  private final PlannedFeed feed;
  private final EventSink next;
  private final FeedPlan plan;
  private final FeedPlan.Taker release = this::release;
  private final ArrayDeque<Event> held = new ArrayDeque<>();

  // Of the moves held back, where somebody asks for them; the end is that of the next one's start.
  private final ArrayDeque<FeedLimits> heldLimits = new ArrayDeque<>();

  /** The way of the move in hand. */
  private Way way = new Way();

  // Of the move before, from whose end it goes on without a stop.
  private boolean isUnderWay;
  private Way leaving = new Way();
  private double leavingAcceleration;
  private double leavingJerk;
  private double leavingCap;
  private boolean stopsBefore;

  /**
   * A stage before {@code next}.
   *
   * @param limits what the sheet says
   * @param waitsForSpindle whether motion is held while the spindle reaches a speed
   * @param feed where the plan of the move in hand is held
   * @param next takes every event
   */
  public FeedPlanner(
      MotionLimits limits, boolean waitsForSpindle, PlannedFeed feed, EventSink next) {
    this.limits = limits;
    this.isPlanning = limits.enoughToPlan();
    this.waitsForSpindle = waitsForSpindle;
    this.feed = feed;
    this.next = next;
    this.plan = new FeedPlan(limits.lookAheadBlocks().orElse(LOOK_AHEAD_UNLESS_TOLD));
  }

  @Override
  public void accept(Event event) {
    Move move = isPlanning ? moveOf(event) : null;
    if (move != null) {
      move(event, move);
    } else {
      other(event);
    }
  }

  /** What is no move; what stops the axes is rare, and stands apart from moves for that. */
  private void other(Event event) {
    if (plan.isEmpty()) {
      if (stopsAxes(event)) {
        rest();
      }
      next.accept(event);
    } else if (event instanceof Event.BlockStarted || !stopsAxes(event)) {
      hold(event);
    } else {
      rest();
      next.accept(event);
    }
  }

  /** The move of an event; null where it is none. */
  private static @Nullable Move moveOf(Event event) {
    if (event instanceof Cut cut) {
      return cut.move();
    }
    return event instanceof Move move ? move : null;
  }

  private boolean stopsAxes(Event event) {
    if (event instanceof Event.SpindleChanged change) {
      return waitsForSpindle && Timeline.reachesNewSpeed(change.before(), change.after());
    }
    return event instanceof Event.Dwelled
        || event instanceof Event.ToolChanged
        || event instanceof Event.Stopped
        || event instanceof Event.MachineCode
        || event instanceof Event.Ended;
  }

  private void hold(Event event) {
    held.add(event);
    if (held.size() > MOST_HELD) {
      rest();
    }
  }

  private void move(Event event, Move move) {
    boolean placed = move.from().knowsXyz() && move.to().knowsXyz();
    double feedMmPerMin = move.isFeed() ? move.feedMmPerMin().orElse(0) : Double.POSITIVE_INFINITY;
    if (!placed || feedMmPerMin <= 0 || !(move.lengthMm() > 0)) {
      // Nothing is known of it, or it takes no time along the path.
      rest();
      next.accept(event);
      return;
    }
    way.take(move);
    double acceleration = along(limits.accelerationMmPerS2());
    double jerk = along(limits.jerkMmPerS3());
    double cap = cap(move, feedMmPerMin, acceleration, jerk);
    if (Double.isInfinite(acceleration) || Double.isInfinite(cap)) {
      // No axis that moves has a limit on the sheet.
      rest();
      next.accept(event);
      return;
    }
    double corner = corner(acceleration, jerk, Math.min(leavingCap, cap));
    if (feed.hasLimits()) {
      heldLimits.add(limits(move, acceleration, jerk, cap, corner));
    }
    plan.add(move.lengthMm(), cap, acceleration, jerk, corner, release);
    held.add(event);
    Way behind = leaving;
    leaving = way;
    way = behind;
    isUnderWay = true;
    leavingAcceleration = acceleration;
    leavingJerk = jerk;
    leavingCap = cap;
    stopsBefore = move.exactStop();
  }

  /**
   * A limit along the move in hand, infinity for none. Along an arc each direction of its plane
   * occurs, so its weakest axis counts.
   */
  private double along(Optional<AxisValues> values) {
    if (values.isEmpty()) {
      return Double.POSITIVE_INFINITY;
    }
    AxisValues limit = values.get();
    return limit.alongPath().isPresent()
        ? limit.alongPath().getAsDouble()
        : MotionLimits.along(limit, way.share(Axis.X), way.share(Axis.Y), way.share(Axis.Z));
  }

  /** The highest speed along a move in mm/s. */
  private double cap(Move move, double feedMmPerMin, double acceleration, double jerk) {
    double cap = Math.min(along(limits.rapidMmPerMin()), feedMmPerMin) / PER_MINUTE;
    if (limits.blockTimeS().isPresent()
        && move.lengthMm() <= cap * limits.blockTimeS().getAsDouble() * (1 + ROUNDING)) {
      cap = Math.min(cap, move.lengthMm() / limits.blockTimeS().getAsDouble());
    }
    return isKeptOnCurve(cap, way.radiusMm(), acceleration, jerk)
        ? cap
        : Math.min(cap, onCurve(way.radiusMm(), acceleration, jerk));
  }

  /** What the plan has to keep along a move and at its start; at its end as at rest. */
  private FeedLimits limits(
      Move move, double acceleration, double jerk, double cap, double corner) {
    Optional<FeedHold> by = Optional.of(FeedHold.AXES);
    if (move.isFeed() && move.feedMmPerMin().orElse(0) / PER_MINUTE <= cap) {
      by = Optional.empty();
    } else if (onCurve(way.radiusMm(), acceleration, jerk) <= cap) {
      by = Optional.of(FeedHold.ARC);
    } else if (limits.blockTimeS().isPresent()
        && move.lengthMm() / limits.blockTimeS().getAsDouble() <= cap) {
      by = Optional.of(FeedHold.BLOCK_TIME);
    }
    FeedHold start =
        stopsBefore ? FeedHold.EXACT_STOP : isUnderWay ? FeedHold.CORNER : FeedHold.STOP;
    return new FeedLimits(cap * PER_MINUTE, by, corner * PER_MINUTE, start, 0, FeedHold.STOP);
  }

  /** Those of the move that is due, with what the next one knows of its end. */
  private Optional<FeedLimits> dueLimits() {
    if (heldLimits.isEmpty()) {
      return Optional.empty();
    }
    FeedLimits due = heldLimits.remove();
    FeedLimits next = heldLimits.peek();
    return Optional.of(
        next == null
            ? due
            : new FeedLimits(
                due.highestMmPerMin(),
                due.by(),
                due.startMmPerMin(),
                due.start(),
                next.startMmPerMin(),
                next.start()));
  }

  private static double onCurve(double radiusMm, double acceleration, double jerk) {
    if (Double.isInfinite(radiusMm)) {
      return Double.POSITIVE_INFINITY;
    }
    double byAcceleration = Math.sqrt(acceleration * radiusMm);
    return Double.isInfinite(jerk)
        ? byAcceleration
        : Math.min(byAcceleration, StrictMath.cbrt(jerk * radiusMm * radiusMm));
  }

  /** Whether a curve limits a speed no further, which is asked without roots. */
  private static boolean isKeptOnCurve(
      double speed, double radiusMm, double acceleration, double jerk) {
    double least = speed * speed * (1 + ROUNDING);
    return least <= acceleration * radiusMm && least * speed <= jerk * radiusMm * radiusMm;
  }

  /**
   * The highest speed at the corner to the move before, in mm/s; infinity, where nobody asks for
   * more, if it is no lower than the speed that neither move exceeds.
   */
  private double corner(double acceleration, double jerk, double highest) {
    if (stopsBefore || !isUnderWay) {
      return 0;
    }
    double square = leaving.squareOfHalfCorner(way);
    double tolerance = limits.pathToleranceMm().orElseThrow();
    double weaker = Math.min(acceleration, leavingAcceleration);
    double weakerJerk = Math.min(jerk, leavingJerk);
    if (!feed.hasLimits()) {
      // The radius below is twice as large at least, since the square of a sine is no larger.
      double radiusMm = tolerance * square / Math.max(Double.MIN_NORMAL, 1 - square);
      if (isKeptOnCurve(highest, radiusMm, weaker, weakerJerk)) {
        return Double.POSITIVE_INFINITY;
      }
    }
    double sine = Math.sqrt(square);
    if (sine >= STRAIGHT) {
      return Double.POSITIVE_INFINITY;
    }
    return onCurve(tolerance * sine / (1 - sine), weaker, weakerJerk);
  }

  /** Hands on the events up to the next move, and that one with its plan. */
  private void release(DueMove due) {
    while (true) {
      Event event = held.remove();
      if (moveOf(event) != null) {
        feed.set(due, dueLimits());
        next.accept(event);
        feed.clear();
        return;
      }
      next.accept(event);
    }
  }

  private void rest() {
    plan.rest(release);
    while (!held.isEmpty()) {
      next.accept(held.remove());
    }
    isUnderWay = false;
    stopsBefore = false;
  }
}

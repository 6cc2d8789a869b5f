package hairline.checks.timing;

import hairline.checks.motion.Axis;
import hairline.checks.motion.Event;
import hairline.checks.motion.EventSink;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.motion.Position;
import hairline.checks.setup.AxisValues;
import hairline.checks.stock.Cut;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Counts the time of a program: of every move as planned or, where nothing is planned, at its
 * commanded feed or at the rapid rate from end to end, no acceleration. Hands every event on
 * unchanged; the time then held in {@link ProgramTime} is that at the start of the event. It stands
 * behind the stage that makes moves into cuts, because that one holds events back.
 *
 * <p>What takes time: moves, dwells, tool changes, measuring and warm-up codes, a start or change
 * of speed where the control waits for it, M0 and M60. M1 takes none, the switch for it is held to
 * be off. Codes without known meaning take none either.
 *
 * <p>Where a rapid rate or the place of a move is not known, the time has an upper bound from two
 * figures of our choice (no source): no rapid rate is below 1 m/min, no move longer than 2 m; a
 * run-up that the sheet leaves open takes a minute at most.
 */
public final class Timeline implements EventSink {
  private static final double SLOWEST_RAPID_MM_PER_MIN = 1000;
  private static final double LONGEST_MOVE_MM = 2000;
  private static final double LONGEST_RUN_UP_SECONDS = 60;
  private static final double SECONDS_PER_MINUTE = 60;
  private static final double MM_PER_PM = 1e-9;

  private final TimeTable table;
  private final PlannedFeed feed;
  private final ProgramTime time;
  private final EventSink next;

  /**
   * A stage before {@code next}.
   *
   * @param table what the sheet says about durations
   * @param feed the planned feed of the move in hand; a move without one takes its time as
   *     programmed
   * @param time where the time is held; fresh, for this program only
   * @param next takes every event
   */
  public Timeline(TimeTable table, PlannedFeed feed, ProgramTime time, EventSink next) {
    this.table = table;
    this.feed = feed;
    this.time = time;
    this.next = next;
  }

  @Override
  public void accept(Event event) {
    if (event instanceof Move move) {
      move(move);
    } else if (event instanceof Cut cut) {
      move(cut.move());
    } else {
      other(event);
    }
    next.accept(event);
  }

  private void other(Event event) {
    if (event instanceof Event.SpindleChanged change) {
      spindle(change);
    } else if (event instanceof Event.Dwelled dwell) {
      orGap(dwell.seconds(), Cause.DWELL_UNIT, dwell.at());
    } else if (event instanceof Event.ToolChanged change) {
      orGap(table.toolChangeSeconds(), Cause.TOOL_CHANGE, change.at());
    } else if (event instanceof Event.MachineCode code) {
      code(code);
    } else if (event instanceof Event.Stopped stop && !stop.code().equals("M1")) {
      orGap(OptionalDouble.empty(), Cause.OPERATOR, stop.at());
    } else {
      time.next(0);
    }
  }

  private void move(Move move) {
    double planned = feed.secondsOfThisMove();
    if (!Double.isNaN(planned)) {
      time.next(planned);
    } else if (move.isFeed()) {
      feed(move);
    } else {
      rapid(move);
    }
  }

  private void feed(Move move) {
    boolean placed = move.from().knowsXyz() && move.to().knowsXyz();
    OptionalDouble feed = move.feedMmPerMin();
    if (feed.isEmpty() || !(feed.getAsDouble() > 0)) {
      if (placed && move.lengthMm() == 0) {
        time.next(0);
      } else {
        time.next(0, 0, Cause.FEED, move.at());
      }
    } else if (placed) {
      time.next(move.lengthMm() / feed.getAsDouble() * SECONDS_PER_MINUTE);
    } else {
      double longest = LONGEST_MOVE_MM / feed.getAsDouble() * SECONDS_PER_MINUTE;
      time.next(0, longest, Cause.POSITION, move.at());
    }
  }

  private void rapid(Move move) {
    boolean placed = move.from().knowsXyz() && move.to().knowsXyz();
    Optional<AxisValues> rates = table.rapidMmPerMin();
    if (placed) {
      OptionalDouble seconds = rates.isEmpty() ? OptionalDouble.empty() : rapid(move, rates.get());
      if (move.lengthMm() == 0) {
        time.next(0);
      } else if (seconds.isPresent()) {
        time.next(seconds.getAsDouble());
      } else {
        double longest = move.lengthMm() / SLOWEST_RAPID_MM_PER_MIN * SECONDS_PER_MINUTE;
        time.next(0, longest, Cause.RAPID_RATE, move.at());
      }
    } else {
      double slowest = rates.isEmpty() ? SLOWEST_RAPID_MM_PER_MIN : slowest(rates.get());
      double longest =
          table.longestRapidSeconds().orElse(LONGEST_MOVE_MM / slowest * SECONDS_PER_MINUTE);
      time.next(0, longest, Cause.POSITION, move.at());
    }
  }

  /** The time of the axis that takes longest, or of the path where one rate holds along it. */
  private static OptionalDouble rapid(Move move, AxisValues rates) {
    if (rates.alongPath().isPresent()) {
      return OptionalDouble.of(
          move.lengthMm() / rates.alongPath().getAsDouble() * SECONDS_PER_MINUTE);
    }
    double longest = 0;
    for (Axis axis : Axis.values()) {
      double lengthMm = axis.linear() ? distanceMm(move.from(), move.to(), axis) : 0;
      if (lengthMm > 0) {
        OptionalDouble rate = rate(rates, axis);
        if (rate.isEmpty()) {
          return OptionalDouble.empty();
        }
        longest = Math.max(longest, lengthMm / rate.getAsDouble() * SECONDS_PER_MINUTE);
      }
    }
    return OptionalDouble.of(longest);
  }

  private static double distanceMm(Position from, Position to, Axis axis) {
    return Math.abs((double) to.get(axis) - from.get(axis)) * MM_PER_PM;
  }

  private static OptionalDouble rate(AxisValues rates, Axis axis) {
    return switch (axis) {
      case X -> rates.x();
      case Y -> rates.y();
      case Z -> rates.z();
      case A, B, C -> OptionalDouble.empty();
    };
  }

  private static double slowest(AxisValues rates) {
    if (rates.alongPath().isPresent()) {
      return rates.alongPath().getAsDouble();
    }
    double slowest = Double.POSITIVE_INFINITY;
    for (Axis axis : new Axis[] {Axis.X, Axis.Y, Axis.Z}) {
      slowest = Math.min(slowest, rate(rates, axis).orElse(SLOWEST_RAPID_MM_PER_MIN));
    }
    return slowest;
  }

  private void spindle(Event.SpindleChanged change) {
    if (!table.waitsForSpindle() || !reachesNewSpeed(change.before(), change.after())) {
      time.next(0);
    } else if (table.runUpSeconds().isPresent()) {
      time.next(table.runUpSeconds().getAsDouble());
    } else {
      time.next(0, LONGEST_RUN_UP_SECONDS, Cause.RUN_UP, change.at());
    }
  }

  /** Whether the spindle has to reach a speed: a start, another speed, the other direction. */
  public static boolean reachesNewSpeed(Modes before, Modes after) {
    return turns(after)
        && !(turns(before)
            && before.spindle().value().equals(after.spindle().value())
            && before.turningRpm().equals(after.turningRpm()));
  }

  /** Whether the spindle was told to turn. */
  private static boolean turns(Modes modes) {
    Optional<Modes.Spindle> spindle = modes.spindle().value();
    return spindle.isPresent() && spindle.get() != Modes.Spindle.STOPPED;
  }

  private void code(Event.MachineCode code) {
    switch (code.meaning()) {
      case WARM_UP -> orGap(table.warmUpSeconds(), Cause.WARM_UP, code.at());
      case MEASURE_TOOL -> orGap(table.measuringSeconds(), Cause.MEASURING, code.at());
      case COOLANT_ON, COOLANT_OFF, IGNORE -> time.next(0);
    }
  }

  private void orGap(OptionalDouble seconds, Cause cause, Place at) {
    if (seconds.isPresent()) {
      time.next(seconds.getAsDouble());
    } else {
      time.next(0, 0, cause, at);
    }
  }
}

package hairline.checks.timing;

import hairline.checks.motion.Event;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.timing.ProgramSummary.Operation;
import hairline.checks.timing.ProgramSummary.Plan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/**
 * Sums up times and feeds of a program and of each of its operations; {@value #OPERATIONS_CAP} of
 * these are told apart.
 */
final class OperationTimes {
  /** How many operations are told apart. */
  static final int OPERATIONS_CAP = 1_000;

  /** Less than this below the commanded feed is rounding. */
  private static final double REACHED = 1 - 1e-9;

  private static final double SECONDS_PER_MINUTE = 60;

  /** Feed moves that were planned. */
  private static final class Feeds {
    private double plannedSeconds;
    private double programmedSeconds;
    private double slowSeconds;
    private double plannedMm;
    private double slowMm;

    void add(Move move, PlannedMove planned) {
      double commanded = move.feedMmPerMin().orElse(0);
      plannedSeconds += planned.seconds();
      programmedSeconds += move.lengthMm() / commanded * SECONDS_PER_MINUTE;
      slowSeconds += planned.secondsBelow(commanded * REACHED);
      plannedMm += move.lengthMm();
      slowMm += move.lengthMm() * planned.shareBelow(commanded * REACHED);
    }

    Optional<Plan> plan() {
      return plannedMm > 0
          ? Optional.of(
              new Plan(
                  plannedSeconds,
                  programmedSeconds,
                  slowMm / plannedMm,
                  Math.min(1, slowSeconds / plannedSeconds)))
          : Optional.empty();
    }
  }

  /** One operation. */
  private static final class Times {
    private final Feeds feeds = new Feeds();
    private Place from;
    private Modes modes;
    private boolean moves;
    private double seconds;

    Times(Place from, Modes modes) {
      this.from = from;
      this.modes = modes;
    }

    /** Whether it has not moved yet, so that with this tool it is still the same. */
    boolean goesOn(Modes now) {
      return moves
          ? now.operation() == modes.operation()
          : now.tool().value().equals(modes.tool().value());
    }

    void goOn(Place at, Modes now) {
      // What stops the spindle ends what it did.
      if (!moves && (turns(now) || !turns(modes))) {
        from = at;
        modes = now;
      }
    }

    private static boolean turns(Modes modes) {
      return modes.turningRpm().orElse(0.0) > 0;
    }

    Operation operation() {
      return new Operation(
          from,
          modes.tool().value().map(OptionalInt::of).orElse(OptionalInt.empty()),
          turns(modes)
              ? OptionalDouble.of(modes.turningRpm().orElseThrow())
              : OptionalDouble.empty(),
          seconds,
          feeds.plan());
    }
  }

  private final Feeds ofProgram = new Feeds();
  private final List<Times> operations = new ArrayList<>();
  private @Nullable Times current;

  private boolean capReached;

  /**
   * Takes an event.
   *
   * @param seconds the known part of its time
   * @param planned how the machine goes along a move
   */
  void accept(Event event, double seconds, Optional<PlannedMove> planned) {
    if (event instanceof Move move) {
      enter(move.at(), move.modes(), seconds);
      if (current != null) {
        current.moves = true;
      }
      if (move.isFeed() && planned.isPresent()) {
        ofProgram.add(move, planned.get());
        if (current != null) {
          current.feeds.add(move, planned.get());
        }
      }
    } else if (event instanceof Event.Dwelled dwell) {
      enter(dwell.at(), dwell.modes(), seconds);
    } else if (event instanceof Event.ToolChanged change) {
      enter(change.at(), change.modes(), seconds);
    } else if (event instanceof Event.SpindleChanged change) {
      enter(change.at(), change.after(), seconds);
    } else if (event instanceof Event.MachineCode code) {
      enter(code.at(), code.modes(), seconds);
    } else if (event instanceof Event.Stopped stop) {
      enter(stop.at(), stop.modes(), seconds);
    }
  }

  private void enter(Place at, Modes modes, double seconds) {
    if (current == null || !current.goesOn(modes)) {
      current = null;
      if (operations.size() < OPERATIONS_CAP) {
        current = new Times(at, modes);
        operations.add(current);
      } else {
        capReached = true;
      }
    }
    if (current != null) {
      current.goOn(at, modes);
      current.seconds += seconds;
    }
  }

  /** Which operation the last event belongs to, from 0; -1 for one that is left out. */
  int present() {
    return current == null ? -1 : operations.size() - 1;
  }

  /** An operation by its number. */
  Operation operation(int number) {
    return operations.get(number).operation();
  }

  /** The feed moves of the program; empty where none was planned. */
  Optional<Plan> ofProgram() {
    return ofProgram.plan();
  }

  /** The operations that move or take time, in their order. */
  List<Operation> list() {
    return operations.stream()
        .filter(times -> times.moves || times.seconds > 0)
        .map(Times::operation)
        .toList();
  }

  /** Whether an operation was left out. */
  boolean isCapReached() {
    return capReached;
  }
}

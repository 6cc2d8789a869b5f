package hairline.checks.motion;

import java.util.OptionalDouble;

/** One thing that a cycle does. */
public sealed interface CycleStep {

  /**
   * A straight movement, by rapid or at feed, to a point given by the axes of the plane in force.
   */
  record Travel(boolean rapid, Coordinate first, Coordinate second, Coordinate normal)
      implements CycleStep {}

  /** A dwell; empty where its time is not known. */
  record Dwell(OptionalDouble seconds) implements CycleStep {}

  /** The spindle stops or starts. */
  record SpindleStep(Action action) implements CycleStep {
    /** What the spindle does. */
    public enum Action {
      STOP,
      /** Stops at a set angle, so that a hooked tool passes through its hole. */
      STOP_ORIENTED,
      START_CLOCKWISE,
      START_COUNTER_CLOCKWISE,
      /** Starts again in the direction in which it turned before the cycle stopped it. */
      RESTART
    }
  }

  /** The machine waits for the operator, who takes the tool out of the hole by hand (G88). */
  record OperatorStop() implements CycleStep {}
}

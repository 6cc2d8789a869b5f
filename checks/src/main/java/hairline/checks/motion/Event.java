package hairline.checks.motion;

import hairline.parser.Block;
import hairline.parser.Problem;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * What happens when a program runs, in order of execution. Stages pass events on and may add their
 * own; rules subscribe to the kinds they need.
 */
public interface Event {
  /** The block that causes it. */
  Place at();

  /** A block begins to be executed; before all other events of the block. */
  record BlockStarted(Place at, Block block, Modes modes) implements Event {}

  /**
   * The modal state changed: once a block before its moves, and once behind them for what acts
   * there (M5, M9, a cycle, a call).
   */
  record ModesChanged(Place at, Modes before, Modes after) implements Event {}

  /** A tool is put in the spindle (M6); the spindle stops for it. */
  record ToolChanged(Place at, Modal<Integer> before, Modal<Integer> after, Modes modes)
      implements Event {}

  /** The spindle starts, stops or changes speed. */
  record SpindleChanged(Place at, Modes before, Modes after) implements Event {}

  /** G43, G44 or G49 took effect; {@code number} 0 is none. */
  record LengthOffsetSet(Place at, int number, Modes modes) implements Event {}

  /** G41, G42 switched on or G40 off; acts on the next move in the plane. */
  record CompensationSet(Place at, Modes.Compensation before, Modes.Compensation after, Modes modes)
      implements Event {}

  /** G4; seconds are empty where the unit of its word is not known. */
  record Dwelled(Place at, OptionalDouble seconds, Modes modes) implements Event {}

  /** M0, M1, M60; or G88, where the operator takes the tool out of the hole. */
  record Stopped(Place at, String code, Modes modes) implements Event {}

  /**
   * A code or call that the sheet gives a meaning.
   *
   * @param code as written on the sheet, e.g. "M71" or "P9001"
   * @param meaning the sheet's word for it
   */
  record MachineCode(Place at, String code, Meaning meaning, Modes modes) implements Event {
    /** What machine codes can mean. */
    public enum Meaning {
      WARM_UP,
      MEASURE_TOOL,
      COOLANT_ON,
      COOLANT_OFF,
      IGNORE
    }
  }

  /**
   * A G92, G52 or G10 L2 shift was set, or taken back ({@code active} false); so does a G10 that
   * writes what the sheet has for the work offset.
   */
  record ShiftSet(Place at, String code, boolean active, Modes modes) implements Event {}

  /** A subprogram is entered; {@code depth} is 1 for the first level. */
  record SubprogramEntered(Place at, String name, int depth) implements Event {}

  /** A subprogram is left. */
  record SubprogramLeft(Place at, String name, int depth) implements Event {}

  /**
   * The program has ended.
   *
   * @param code M2, M30, M99 or empty where the text just ends
   * @param modes the state at the end
   */
  record Ended(Place at, Optional<String> code, Modes modes) implements Event {}

  // What the interpreter noticed while reading words.

  /**
   * The grammar could not read the block, or only with a remark; once for each line, before the
   * program runs.
   */
  record BlockProblem(Place at, Problem problem) implements Event {}

  /**
   * A coordinate, I, J, K or R word has digits that the control rounds away.
   *
   * @param letter its address
   * @param written its value as written, in the units of the block
   * @param units those units
   * @param writtenPm the value in picometres (nearest)
   * @param storedPm the value the control keeps
   */
  record WordRounded(
      Place at,
      char letter,
      BigDecimal written,
      Modes.Units units,
      long writtenPm,
      long storedPm,
      Modes modes)
      implements Event {}

  /**
   * A coordinate, I, J, K, R or Q word other than zero has no decimal point.
   *
   * @param readAsPm how the control reads it, in picometres
   * @param reading what the control does with such numbers; empty: not known, taken as units
   */
  record PointMissing(
      Place at,
      char letter,
      BigDecimal written,
      long readAsPm,
      Optional<ControlProfile.PointlessNumber> reading)
      implements Event {

    /** Whether it is read as a number of increments. */
    public boolean readAsIncrements() {
      return reading.filter(r -> r == ControlProfile.PointlessNumber.INCREMENTS).isPresent();
    }
  }

  /** A block moves as written, yet no axis as stored. */
  record MoveVanished(Place at, Position writtenFrom, Position writtenTo, Modes modes)
      implements Event {}

  /**
   * Under G91, stored and written positions of an axis have drifted apart by more than one
   * resolution since {@code since}; again for each block that takes them farther apart than before.
   */
  record IncrementalDrift(Place at, Axis axis, Place since, int roundedMoves, long driftPm)
      implements Event {}

  /**
   * An arc that cannot be computed: no centre given, centre at the start, radius too short. The
   * move is left out and the axes keep their commanded end.
   */
  record ArcImpossible(
      Place at,
      String reason,
      OptionalDouble startRadiusMm,
      OptionalDouble endRadiusMm,
      Modes modes)
      implements Event {}

  /** A G or M code without known meaning; the state it may touch is unknown from here on. */
  record CodeUnknown(Place at, String code) implements Event {}

  /** Two codes that exclude each other in one block. */
  record CodesConflict(Place at, String first, String second, String why) implements Event {}

  /**
   * Axis words with no motion code since a G80 in an earlier block.
   *
   * @param cancelled that G80
   * @param taken the motion that is followed: the G0 or G1 from before, G0 where none stood; empty
   *     where none can be told, then the axes are unknown
   */
  record MotionNotStated(Place at, Place cancelled, Optional<String> taken) implements Event {}

  /** A word that should have a number the control accepts, and has not (e.g. negative F, T1.5). */
  record WordRefused(Place at, String word, String why) implements Event {}

  /**
   * A state item was needed that the program never stated: "units", "distance", "feed mode",
   * "plane", or "motion" where axis words stand before any motion code.
   */
  record StartAssumed(Place at, String item, String assumed) implements Event {}

  /** The first move in work coordinates, and no work offset was chosen. */
  record OffsetAssumed(Place at) implements Event {}

  /**
   * Blocks stand behind the end of a program and before the next program number or tape mark, in a
   * program without jumps: nothing ever executes them.
   *
   * @param at the first of them
   * @param end the end
   * @param code its code, as "M30"
   */
  record BlocksBehindEnd(Place at, Place end, String code) implements Event {}

  /** The text of a subprogram ends without M99, M2 or M30; it is left all the same. */
  record SubprogramEndMissing(Place at, String name) implements Event {}

  /**
   * A call whose program is not found.
   *
   * @param lookedAt the names of files beside the program in which it was looked for too
   */
  record SubprogramMissing(Place at, String name, List<String> lookedAt) implements Event {}

  /** A call that comes back to itself or nests too deep; the call is left out. */
  record SubprogramEndless(Place at, List<String> chain, int depthLimit) implements Event {}

  /**
   * The step budget is used up; interpretation ends here.
   *
   * @param at the step that was one too many, or the block that asks for the repeats
   * @param repeats how many repeats a single block asks for, where these alone are more than the
   *     budget still held; only the first of them were followed
   */
  record StepBudgetReached(Place at, long budget, OptionalLong repeats) implements Event {
    /** A step too many. */
    public StepBudgetReached(Place at, long budget) {
      this(at, budget, OptionalLong.empty());
    }
  }

  /** An N number stands twice in one program; once for each number, before the program runs. */
  record SequenceRepeated(Place at, String number, Place first) implements Event {}

  /**
   * What is not known from this block on, for the list of things not checked.
   *
   * @param cause why, which decides whether the program counts as fully analysed
   */
  record BecameUnknown(Place at, String what, Cause cause) implements Event {
    /** Why something is not known. */
    public enum Cause {
      /** A block, or a word of it, was not understood: the program is not fully analysed. */
      NOT_UNDERSTOOD,
      /** The same because of a macro statement. */
      MACRO,
      /**
       * All was understood, but the program alone does not say: the machine knows it, or a key of
       * the sheet would.
       */
      NOT_SAID
    }
  }

  /**
   * A coordinate, or the sum that an increment leads to, is larger than a position can be; some 9
   * 000 km.
   *
   * @param word as written
   */
  record CoordinateTooLarge(Place at, Axis axis, String word) implements Event {}

  /** A table reached its stated cap, so that something is no longer followed. */
  record CapReached(Place at, String what, long cap) implements Event {}

  /** What a first look at the file of the program told; before everything else. */
  record Indexed(Place at, ProgramIndex index) implements Event {}
}

package hairline.checks.timing;

import hairline.checks.motion.Axis;
import hairline.checks.motion.Extent;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Place;
import hairline.checks.motion.ToolUse;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What a program does as a whole, so that its interpretation can be checked against what the
 * programmer meant.
 *
 * @param blocks how many blocks were executed, repeats included
 * @param rapids how many rapid moves
 * @param lines how many straight feed moves
 * @param arcsClockwise how many arcs and helices by G2
 * @param arcsCounterClockwise how many arcs and helices by G3
 * @param inCycles how many of these moves were made by drilling, tapping and boring cycles
 * @param dwells how many dwells
 * @param rapidMm path length of the rapid moves whose ends are known
 * @param feedMm path length of the feed moves whose ends are known
 * @param extents how far the moves reach, for each work offset that was in force, in the order of
 *     use
 * @param time the time of the whole program, as the stage before counted it
 * @param feedSeconds the known part of it in feed moves
 * @param rapidSeconds the known part of it in rapid moves
 * @param dwellSeconds the known part of it in dwells
 * @param plan how the feed as planned compares with that as programmed; empty where nothing is
 *     planned
 * @param operations the same for each operation, in their order
 * @param tools what it does with its tools
 * @param calls how often each subprogram was entered
 * @param doubts what is unknown, assumed or left out, in the order of its first occurrence
 * @param ending how it ended; empty where the text was not executed to an end
 */
public record ProgramSummary(
    long blocks,
    long rapids,
    long lines,
    long arcsClockwise,
    long arcsCounterClockwise,
    long inCycles,
    long dwells,
    double rapidMm,
    double feedMm,
    List<Reach> extents,
    TimeTaken time,
    double feedSeconds,
    double rapidSeconds,
    double dwellSeconds,
    Optional<Plan> plan,
    List<Operation> operations,
    List<ToolUse> tools,
    Map<String, Long> calls,
    List<Doubt> doubts,
    Optional<Ending> ending) {

  /**
   * The feed moves that were planned.
   *
   * @param plannedSeconds how long they take as planned
   * @param programmedSeconds how long they would take at their commanded feeds
   * @param shareBelowFeed part of their length on which the machine stays below the commanded feed,
   *     0 to 1
   * @param shareOfTimeBelowFeed part of the planned time for which it does, 0 to 1
   */
  public record Plan(
      double plannedSeconds,
      double programmedSeconds,
      double shareBelowFeed,
      double shareOfTimeBelowFeed) {}

  /**
   * What is done with one tool at one commanded speed; a tool change and a measuring belong to what
   * the tool does next.
   *
   * @param from its first move; without one its last block
   * @param tool the tool; empty where there is none or it is not known
   * @param rpm the speed at which the spindle turns then; empty where it stands or is not known
   * @param seconds the known part of its time
   * @param plan its feed moves that were planned
   */
  public record Operation(
      Place from, OptionalInt tool, OptionalDouble rpm, double seconds, Optional<Plan> plan) {}

  public ProgramSummary {
    extents = List.copyOf(extents);
    operations = List.copyOf(operations);
    tools = List.copyOf(tools);
    doubts = List.copyOf(doubts);
  }

  /**
   * How far moves reach under one work offset, in work coordinates as stored; an axis is missing
   * where no end of a move is known on it.
   *
   * @param workOffset "G54" to "G59.3"; empty where none was chosen or it is unknown
   * @param rapid reach of the rapid moves
   * @param feed reach of the feed moves, arcs with the points where they turn round
   */
  public record Reach(String workOffset, Map<Axis, Extent> rapid, Map<Axis, Extent> feed) {}

  /**
   * Something of which the summary is not sure.
   *
   * @param what the reason as a clause
   * @param first where it first occurred
   * @param count how often it occurred
   */
  public record Doubt(String what, Place first, long count) {}

  /**
   * The end.
   *
   * @param at where
   * @param code M2, M30 or M99; empty where the text just ends
   * @param modes the modal state then
   */
  public record Ending(Place at, Optional<String> code, Modes modes) {}

  /** All moves. */
  public long moves() {
    return rapids + lines + arcsClockwise + arcsCounterClockwise;
  }
}

package hairline.checks.timing;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The feeds that the machine reaches, compared with those programmed.
 *
 * @param plan all feed moves that were planned; empty where none was
 * @param lostSeconds what holds them below, and the time that it takes
 * @param operations the operations with feed moves, in their order
 * @param notPlanned how many feed moves could not be planned
 * @param missing the keys that a plan needs and the sheet does not have
 * @param complete whether all operations are there
 */
public record FeedsShown(
    Optional<ProgramSummary.Plan> plan,
    Map<FeedHold, Double> lostSeconds,
    List<Operation> operations,
    long notPlanned,
    List<String> missing,
    boolean complete) {

  public FeedsShown {
    operations = List.copyOf(operations);
    missing = List.copyOf(missing);
  }

  /**
   * One operation.
   *
   * @param of the operation
   * @param moves how many of its feed moves were planned
   * @param below how many of them stay below the feed programmed somewhere
   * @param lostSeconds what holds them below, and the time that it takes
   * @param slowest those that fall furthest below, by mean feed, the furthest first
   */
  public record Operation(
      ProgramSummary.Operation of,
      long moves,
      long below,
      Map<FeedHold, Double> lostSeconds,
      List<Slow> slowest) {
    public Operation {
      slowest = List.copyOf(slowest);
    }
  }

  /**
   * A move, and those like it.
   *
   * @param first the first of them
   * @param count how many are as long and go as fast, for the same reason, it included
   */
  public record Slow(FeedMove first, long count) {}
}

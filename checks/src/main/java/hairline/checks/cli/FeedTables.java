package hairline.checks.cli;

import hairline.checks.motion.Interpreter;
import hairline.checks.motion.ProgramFiles;
import hairline.checks.motion.SheetControl;
import hairline.checks.report.Feeds;
import hairline.checks.setup.Setup;
import hairline.checks.timing.FeedMove;
import hairline.checks.timing.FeedPlanner;
import hairline.checks.timing.FeedsReached;
import hairline.checks.timing.FeedsShown;
import hairline.checks.timing.MotionLimits;
import hairline.checks.timing.PlannedFeed;
import hairline.checks.timing.ProgramTime;
import hairline.checks.timing.TimeTable;
import hairline.checks.timing.Timeline;
import java.io.IOException;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Whether the feeds that the machine reaches are told, and in which reports.
 *
 * @param wanted whether they are told
 * @param summed whether a report tells what they come to
 */
record FeedTables(boolean wanted, boolean summed) {
  /** None are told. */
  static final FeedTables NONE = new FeedTables(false, false);

  /**
   * The feeds of a program, with the block delete switch off.
   *
   * @throws IOException if it can't be read
   */
  Optional<Feeds> of(Summaries.Source source, Setup setup) throws IOException {
    if (!wanted) {
      return Optional.empty();
    }
    Feeds.Moves moves = taker -> run(source, setup, taker);
    return Optional.of(
        new Feeds(summed ? Optional.of(moves.each(move -> {})) : Optional.empty(), moves));
  }

  private static FeedsShown run(Summaries.Source source, Setup setup, Consumer<FeedMove> taker)
      throws IOException {
    ProgramTime time = new ProgramTime();
    PlannedFeed feed = PlannedFeed.withLimits();
    MotionLimits limits = MotionLimits.of(setup);
    TimeTable table = TimeTable.of(setup);
    FeedsReached reached = new FeedsReached(limits, time, feed, taker);
    ProgramFiles files = source.open(event -> {});
    new Interpreter(SheetControl.of(setup), files)
        .run(
            new FeedPlanner(
                limits, table.waitsForSpindle(), feed, new Timeline(table, feed, time, reached)),
            false);
    return reached.shown();
  }
}

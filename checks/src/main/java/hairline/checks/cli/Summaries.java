package hairline.checks.cli;

import hairline.checks.motion.Event;
import hairline.checks.motion.EventSink;
import hairline.checks.motion.Interpreter;
import hairline.checks.motion.ProgramFiles;
import hairline.checks.motion.SheetControl;
import hairline.checks.setup.Setup;
import hairline.checks.timing.FeedPlanner;
import hairline.checks.timing.MotionLimits;
import hairline.checks.timing.PlannedFeed;
import hairline.checks.timing.ProgramSummary;
import hairline.checks.timing.ProgramTime;
import hairline.checks.timing.Summarizer;
import hairline.checks.timing.TimeTable;
import hairline.checks.timing.Timeline;
import java.io.IOException;

/** Runs a program for its summary, with the block delete switch off. */
final class Summaries {
  private Summaries() {}

  /** Where the program comes from. */
  interface Source {
    ProgramFiles open(EventSink sink) throws IOException;
  }

  static ProgramSummary of(Source source, Setup setup) throws IOException {
    ProgramTime time = new ProgramTime();
    PlannedFeed feed = new PlannedFeed();
    Summarizer summarizer = new Summarizer(time, feed);
    TimeTable table = TimeTable.of(setup);
    EventSink stages =
        new FeedPlanner(
            MotionLimits.of(setup),
            table.waitsForSpindle(),
            feed,
            new Timeline(table, feed, time, summarizer));
    // The first look and the run both tell of blocks that can't be read: once is enough.
    ProgramFiles files = source.open(summarizer);
    new Interpreter(SheetControl.of(setup), files)
        .run(
            event -> {
              if (!(event instanceof Event.BlockProblem)) {
                stages.accept(event);
              }
            },
            false);
    return summarizer.summary();
  }
}

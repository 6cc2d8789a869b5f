package hairline.checks.rules;

import hairline.checks.finding.Finding;
import hairline.checks.finding.NotChecked;
import hairline.checks.motion.EventSink;
import java.util.List;

/** Watches a run and may ask, at any event, what the rules have said by then. */
public interface FindingsWatcher extends EventSink {
  /** The run is about to begin; here it is told what is found. */
  void begin(SoFar soFar);

  /**
   * What the rules of a run have said of the blocks that are through. Counts, worst occurrences and
   * last places still grow; a finding may still be explained away by a later one. To be asked only
   * while an event is taken; asking changes nothing.
   */
  interface SoFar {
    /** The findings, accepted ones among them, in the order of their places, then rules. */
    List<Finding> findings();

    /** What could not be decided. */
    List<NotChecked> notChecked();

    /** Names of the files drawn on; {@link hairline.checks.motion.Place#file()} is an index. */
    List<String> files();
  }
}

package hairline.checks.rules;

import hairline.checks.motion.EventSink;
import hairline.checks.stock.DepthsTaken;

/** Watches a run that tells the depths along each move as well, by {@link DepthsTaken}. */
public interface DepthWatcher extends EventSink {}

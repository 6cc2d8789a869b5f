package hairline.checks.rules;

import hairline.checks.motion.EventSink;

/** Watches a run and reads, at each event, what the stages before the rules tell. */
public interface StagesWatcher extends EventSink {
  /** The run is about to begin; these are its stages. */
  void begin(Stages stages);
}

package hairline.checks.timing;

import hairline.checks.setup.Key;
import hairline.checks.setup.MachineKeys;
import hairline.checks.setup.ShopKeys;
import hairline.checks.setup.SpindleKeys;
import java.util.Optional;

/** Why a duration is known only within bounds. */
public enum Cause {
  /** A rapid move, and no rapid rate. */
  RAPID_RATE("the rate of rapid moves is not known", MachineKeys.RAPID_MM_PER_MIN.path(), false),
  /** A move from or to a place that is not known, so that its length is not. */
  POSITION("a move begins or ends at a place that is not known", "", false),
  /** A feed move without a feed. */
  FEED("a feed move has no known feed", "", true),
  /** A dwell whose word has no unit. */
  DWELL_UNIT("the unit of a dwell is not known", "machine.control.dwell", true),
  /** A tool change, and no time for it. */
  TOOL_CHANGE("the time of a tool change is not known", ShopKeys.TOOL_CHANGE_S, true),
  /** A tool is measured, and no time for it. */
  MEASURING("the time of measuring a tool is not known", ShopKeys.MEASURING_S, true),
  /** A warm-up code, and no time for it. */
  WARM_UP("the time of a warm-up is not known", SpindleKeys.WARM_UP_TIME_S, true),
  /** The spindle starts or changes speed, and no time for it. */
  RUN_UP("the run-up time of the spindle is not known", SpindleKeys.RUN_UP_S, false),
  /** Whether the spindle turned in that time is not known. */
  SPINDLE("whether the spindle turned is not known", "", false),
  /** M0 or M60: the operator decides. It counts as longer than any limit. */
  OPERATOR("how long the operator stops is not known", "", true);

  private final String reason;
  private final String key;
  private final boolean unbounded;

  Cause(String reason, Key<?> key, boolean unbounded) {
    this(reason, key.path(), unbounded);
  }

  Cause(String reason, String key, boolean unbounded) {
    this.reason = reason;
    this.key = key;
    this.unbounded = unbounded;
  }

  /** The reason as a clause. */
  public String reason() {
    return reason;
  }

  /** The key of the sheet that would close the gap; empty where none would. */
  public Optional<String> key() {
    return key.isEmpty() ? Optional.empty() : Optional.of(key);
  }

  /** Whether nothing bounds the duration from above. */
  public boolean unbounded() {
    return unbounded;
  }
}

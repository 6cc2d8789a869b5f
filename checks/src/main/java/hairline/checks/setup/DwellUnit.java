package hairline.checks.setup;

/** The unit of a dwell word. */
public enum DwellUnit {
  /** Seconds. */
  S,
  /** Milliseconds. */
  MS
}

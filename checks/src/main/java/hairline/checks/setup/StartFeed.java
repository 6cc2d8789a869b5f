package hairline.checks.setup;

/** Feed mode at power-on. */
public enum StartFeed {
  /** Distance per minute, G94. */
  PER_MINUTE,
  /** Inverse time, G93. */
  INVERSE_TIME,
  /** Distance per revolution, G95. */
  PER_REVOLUTION
}

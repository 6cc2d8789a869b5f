package hairline.checks.budget;

/** Where a part of the error of a step's height comes from. */
public enum Source {
  /** The control rounds what the program says. */
  ROUNDING("rounding", "rounding"),
  /** A lopsided tolerance: the nominal height is not its middle. */
  LOPSIDED_TOLERANCE("lopsidedTolerance", "lopsided tolerance"),
  /** The axis stops anywhere within its smallest step. */
  SMALLEST_STEP("smallestStep", "smallest step"),
  /** The axis comes back to nearly the same place. */
  REPEATABILITY("repeatability", "repeatability"),
  /** The axis turns round between the two levels. */
  REVERSAL("reversal", "reversal"),
  /** The spindle grows between the two levels. */
  GROWTH("growth", "spindle growth"),
  /** Times or speeds that are known within bounds only, and with them the growth. */
  GROWTH_BOUNDS("growthBounds", "growth in doubt"),
  /** The tool tilts and gives more on one level than on the other. */
  TILT("tilt", "tool tilt and give"),
  /** Tool lengths are known within an uncertainty only. */
  SETTING("setting", "tool setting"),
  /** The room warms and cools. */
  ENVIRONMENT("environment", "environment"),
  /** The gauge; never a part of the error, but the guard band can't do without it. */
  GAUGE("gauge", "gauge"),
  /** The tolerance; never a part of the error. */
  TOLERANCE("tolerance", "tolerance");

  private final String key;
  private final String words;

  Source(String key, String words) {
    this.key = key;
    this.words = words;
  }

  /** Its name for readers that are programs, in lower camel case. */
  public String key() {
    return key;
  }

  /** Its name for people. */
  public String words() {
    return words;
  }
}

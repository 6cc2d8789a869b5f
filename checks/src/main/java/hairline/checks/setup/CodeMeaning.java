package hairline.checks.setup;

/** What the sheet says a code of the machine does. */
public enum CodeMeaning {
  /** Warms the spindle up. */
  WARM_UP,
  /** Measures the tool in the spindle. */
  MEASURE_TOOL,
  /** Switches coolant on. */
  COOLANT_ON,
  /** Switches coolant off. */
  COOLANT_OFF,
  /** Known, of no interest. */
  IGNORE
}

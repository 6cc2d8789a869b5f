package hairline.checks.setup;

/** How rounding of incremental words (G91) adds up. */
public enum IncrementalRounding {
  /** Each word is rounded by itself. */
  EACH_WORD,
  /** What rounding cut off is carried into the next word. */
  REMAINDER_KEPT
}

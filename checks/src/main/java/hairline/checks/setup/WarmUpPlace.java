package hairline.checks.setup;

/** Where the spindle is warmed up. */
public enum WarmUpPlace {
  /** In the program. */
  PROGRAM,
  /** Before the program, by hand or by another program. */
  BEFORE
}

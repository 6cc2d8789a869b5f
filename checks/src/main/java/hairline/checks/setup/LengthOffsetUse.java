package hairline.checks.setup;

/** How tool length compensation is switched on. */
public enum LengthOffsetUse {
  /** By the program, G43 H. */
  PROGRAM,
  /** By the control, with the tool. */
  AUTOMATIC
}

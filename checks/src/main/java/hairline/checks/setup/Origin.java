package hairline.checks.setup;

/** Where a value comes from. */
public enum Origin {
  /** From the sheet or the command line. */
  GIVEN,
  /** A stated default or a convention. */
  DEFAULT,
  /** A published value that goes with the material. */
  PUBLISHED,
  /** From nowhere: there is no value. */
  MISSING
}

package hairline.checks.setup;

/** What radius compensation (G41, G42) shifts the path by. */
public enum CompensationShift {
  /** The whole tool radius. */
  RADIUS,
  /** Only the wear of the tool; the program holds the path of the tool's centre. */
  WEAR
}

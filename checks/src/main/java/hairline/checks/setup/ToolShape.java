package hairline.checks.setup;

/** The form of a tool's end. */
public enum ToolShape {
  /** A flat end. */
  FLAT,
  /** A hemisphere. */
  BALL,
  /** A flat end with a corner radius. */
  BULL
}

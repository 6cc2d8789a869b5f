package hairline.checks.stock;

/** Whether the tool removes stock in a move. */
public enum Contact {
  YES,
  NO,
  /** It cannot be told; {@link Cut#contactBy()} says why. */
  UNKNOWN
}

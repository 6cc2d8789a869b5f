package hairline.checks.stock;

/** What stands at a place of the part, seen from above. */
public enum Stands {
  /** A surface of known height. */
  SURFACE("a surface"),
  /** Uncut material of which nobody says how high it stands. */
  TOP_UNKNOWN("uncut, top not known"),
  /** A surface that could not be followed. */
  NOT_KNOWN("height not known"),
  /** Beside the stock. */
  OUTSIDE("outside the stock"),
  /** No material is left: the floor lies at the underside of the stock or below. */
  CUT_THROUGH("cut through");

  private final String words;

  Stands(String words) {
    this.words = words;
  }

  /** The same in words for reports. */
  public String words() {
    return words;
  }
}

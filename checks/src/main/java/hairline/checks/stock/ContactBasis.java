package hairline.checks.stock;

/** What contact was decided by, or why it could not be decided. */
public enum ContactBasis {
  /** The stock box of the setup sheet, and what earlier moves left of it. */
  STOCK_BOX("stock box"),
  /** No stock is declared for this offset: the lowest Z at which this tool was positioned at G0. */
  LOWEST_RAPID_Z("lowest rapid Z"),
  /** A rapid move; one that meets stock is told by {@link RapidMeetsStock}. */
  RAPID("rapid move"),
  /** A coordinate of the move, or the work offset, is not known. */
  POSITION_UNKNOWN("position not known"),
  /** Without stock: this tool was never positioned with G0 at a known Z. */
  NEVER_POSITIONED("no stock, and no rapid move to a known Z"),
  /** With stock: the sheet gives no diameter for this tool, so its footprint is not known. */
  TOOL_UNKNOWN("tool without a known diameter");

  private final String words;

  ContactBasis(String words) {
    this.words = words;
  }

  /** For messages. */
  public String words() {
    return words;
  }
}

package hairline.checks.setup;

import java.util.List;

/** Keys of the uncut part, {@code stock}, in work coordinates. */
public final class StockKeys {
  /** From and to in X. */
  public static final Key<LengthRange> X =
      Key.of(
          "stock.x",
          Types.lengthRange(Bounds.between("-100000", "100000")),
          "[-6 mm, 6 mm]",
          "from and to in X");

  /** From and to in Y. */
  public static final Key<LengthRange> Y =
      Key.of(
          "stock.y",
          Types.lengthRange(Bounds.between("-100000", "100000")),
          "[-4 mm, 4 mm]",
          "from and to in Y");

  /** Z of the top. */
  public static final Key<Length> TOP =
      Key.of(
          "stock.top", Types.length(Bounds.between("-100000", "100000")), "0 mm", "Z of the top");

  /** Z of the bottom. */
  public static final Key<Length> BOTTOM =
      Key.of(
          "stock.bottom",
          Types.length(Bounds.between("-100000", "100000")),
          "-3 mm",
          "Z of the bottom");

  /** Work offset that the stock is given in. */
  public static final Key<String> OFFSET =
      Key.of("stock.offset", new OffsetNameType(), "G54", "work offset that the stock is given in")
          .withDefault("G54", "convention: G54 unless the sheet names another");

  /** All of them, in the order of the sheet. */
  static final List<Key<?>> ALL = List.of(X, Y, TOP, BOTTOM, OFFSET);

  private StockKeys() {}
}

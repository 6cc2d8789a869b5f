package hairline.checks.setup;

import java.util.List;

/** Keys of one work offset of the mapping {@code offsets}. */
public final class OffsetKeys {
  /** X of the work zero in machine coordinates. */
  public static final Key<Length> X =
      Key.of(
          "X",
          Types.length(Bounds.between("-100000", "100000")),
          "-20 mm",
          "X of the work zero in machine coordinates");

  /** Y of the work zero in machine coordinates. */
  public static final Key<Length> Y =
      Key.of(
          "Y",
          Types.length(Bounds.between("-100000", "100000")),
          "5 mm",
          "Y of the work zero in machine coordinates");

  /** Z of the work zero in machine coordinates. */
  public static final Key<Length> Z =
      Key.of(
          "Z",
          Types.length(Bounds.between("-100000", "100000")),
          "-60 mm",
          "Z of the work zero in machine coordinates");

  /** All of them, in the order of the sheet. */
  static final List<Key<?>> ALL = List.of(X, Y, Z);

  private OffsetKeys() {}
}

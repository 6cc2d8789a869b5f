package hairline.checks.setup;

import java.util.List;

/** Keys of one feature of the list {@code job.features}. */
public final class FeatureKeys {
  /** The feature, as the drawing calls it. */
  public static final Key<String> NAME =
      Key.of("name", Types.text(), "mixer cascade", "the feature, as the drawing calls it");

  /** From and to in X, work coordinates. */
  public static final Key<LengthRange> X =
      Key.of(
          "x",
          Types.lengthRange(Bounds.between("-100000", "100000")),
          "[-2 mm, 2 mm]",
          "from and to in X, work coordinates");

  /** From and to in Y, work coordinates. */
  public static final Key<LengthRange> Y =
      Key.of(
          "y",
          Types.lengthRange(Bounds.between("-100000", "100000")),
          "[-1 mm, 1 mm]",
          "from and to in Y, work coordinates");

  /** Height of each step. */
  public static final Key<Length> STEP =
      Key.of("step", Types.length(Bounds.positive("100")), "4 um", "height of each step");

  /** Z of its floors, work coordinates. */
  public static final Key<List<Length>> LEVELS =
      Key.of(
          "levels",
          Types.list(Types.length(Bounds.between("-100000", "100000")), 1, 10_000),
          "[-4 um, -8 um, -14 um]",
          "Z of its floors, work coordinates");

  /** Tolerance of a step height in this feature. */
  public static final Key<Tolerance> TOLERANCE =
      Key.of(
          "tolerance",
          Types.tolerance("10"),
          "±0.5 um",
          "tolerance of a step height in this feature");

  /** All of them, in the order of the sheet. */
  static final List<Key<?>> ALL = List.of(NAME, X, Y, STEP, LEVELS, TOLERANCE);

  private FeatureKeys() {}
}

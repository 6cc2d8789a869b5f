package hairline.checks.setup;

import java.util.List;
import java.util.Optional;

/**
 * A feature that the sheet declares.
 *
 * @param name as the drawing calls it
 * @param x from and to in X, work coordinates
 * @param y from and to in Y
 * @param step height of each of its steps, where declared
 * @param levels Z of its floors, as written; empty where not declared
 * @param tolerance of its step heights, where it has its own
 */
public record Feature(
    String name,
    Optional<LengthRange> x,
    Optional<LengthRange> y,
    Optional<Length> step,
    List<Length> levels,
    Optional<Tolerance> tolerance) {

  /** A feature from its values. */
  static Feature of(Values values) {
    return new Feature(
        values.given(FeatureKeys.NAME).orElse(""),
        values.given(FeatureKeys.X),
        values.given(FeatureKeys.Y),
        values.given(FeatureKeys.STEP),
        values.given(FeatureKeys.LEVELS).orElse(List.of()),
        values.given(FeatureKeys.TOLERANCE));
  }

  /** This feature with other values where these are given. */
  Feature with(Values values) {
    return new Feature(
        name,
        values.given(FeatureKeys.X).or(() -> x),
        values.given(FeatureKeys.Y).or(() -> y),
        values.given(FeatureKeys.STEP).or(() -> step),
        values.given(FeatureKeys.LEVELS).orElse(levels),
        values.given(FeatureKeys.TOLERANCE).or(() -> tolerance));
  }

  /** Whether a place lies in it; a feature without a range in an axis is unbounded there. */
  public boolean contains(long xPm, long yPm) {
    return x.map(range -> range.contains(xPm)).orElse(true)
        && y.map(range -> range.contains(yPm)).orElse(true);
  }
}

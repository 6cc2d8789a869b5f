package hairline.viewer.draw;

import hairline.viewer.model.Along;
import hairline.viewer.model.Trace;

/**
 * What stretch of the height strip is looked at, and how.
 *
 * @param along what runs along it
 * @param trace what is drawn below
 * @param byLevels whether each step takes the same height, see {@link HeightScale}
 * @param from left end, in the unit of {@code along}
 * @param to right end
 * @param low lower end, as a place of the height scale
 * @param high upper end
 */
public record StripView(
    Along along, Trace trace, boolean byLevels, double from, double to, double low, double high) {

  /**
   * Heights closer than this, in places, are not told apart any more: a picometre, true to scale.
   */
  private static final double LEAST_HEIGHT = 1e-7;

  private static final double LEAST_WIDTH = 1e-9;

  /** The view scaled about a place along the strip; below 1 it goes nearer. */
  public StripView zoomedAlong(double factor, double about) {
    double width = (to - from) * factor;
    if (width < LEAST_WIDTH && factor < 1) {
      return this;
    }
    double share = to > from ? (about - from) / (to - from) : 0.5;
    return new StripView(
        along, trace, byLevels, about - share * width, about + (1 - share) * width, low, high);
  }

  /** The view scaled about a place of the height axis; below 1 it goes nearer. */
  public StripView zoomedHeight(double factor, double about) {
    double tall = (high - low) * factor;
    if (tall < LEAST_HEIGHT && factor < 1) {
      return this;
    }
    double share = high > low ? (about - low) / (high - low) : 0.5;
    return new StripView(
        along, trace, byLevels, from, to, about - share * tall, about + (1 - share) * tall);
  }

  /** The view moved. */
  public StripView panned(double alongBy, double heightBy) {
    return new StripView(
        along, trace, byLevels, from + alongBy, to + alongBy, low + heightBy, high + heightBy);
  }

  /** The same stretch with something else below. */
  public StripView with(Trace other) {
    return new StripView(along, other, byLevels, from, to, low, high);
  }

  /** Another stretch along the strip. */
  public StripView between(double newFrom, double newTo) {
    return new StripView(along, trace, byLevels, newFrom, newTo, low, high);
  }

  /** Another stretch of heights. */
  public StripView heights(double newLow, double newHigh) {
    return new StripView(along, trace, byLevels, from, to, newLow, newHigh);
  }
}

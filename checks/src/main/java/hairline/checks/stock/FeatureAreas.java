package hairline.checks.stock;

import hairline.checks.motion.Axis;
import hairline.checks.setup.Feature;
import hairline.checks.setup.Length;
import hairline.checks.setup.LengthRange;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * The declared features as areas of the part. A move lies in a feature when at least half of its
 * path, seen from above, does; of several features the smallest counts.
 */
final class FeatureAreas {
  private static final int ARC_SAMPLES = 32;

  /** Wider than any part: 1000 km. */
  private static final double UNBOUNDED = 1e18;

  private final List<Area> areas = new ArrayList<>();

  private record Area(
      Feature feature, double xLow, double xHigh, double yLow, double yHigh, OptionalLong stepPm) {
    static Area of(Feature feature) {
      return new Area(
          feature,
          low(feature.x()),
          high(feature.x()),
          low(feature.y()),
          high(feature.y()),
          largestStep(feature));
    }

    private static double low(Optional<LengthRange> range) {
      return range.map(r -> (double) r.lo().pm()).orElse(Double.NEGATIVE_INFINITY);
    }

    private static double high(Optional<LengthRange> range) {
      return range.map(r -> (double) r.hi().pm()).orElse(Double.POSITIVE_INFINITY);
    }

    double size() {
      return Math.min(xHigh - xLow, UNBOUNDED) * Math.min(yHigh - yLow, UNBOUNDED);
    }

    boolean contains(double x, double y) {
      return x >= xLow && x <= xHigh && y >= yLow && y <= yHigh;
    }

    /** Share of a straight line that lies inside. */
    double share(Path path) {
      double low = 0;
      double high = 1;
      double[] starts = {path.x0, path.y0};
      double[] runs = {path.x1 - path.x0, path.y1 - path.y0};
      double[] lows = {xLow, yLow};
      double[] highs = {xHigh, yHigh};
      for (int k = 0; k < 2; k++) {
        if (runs[k] == 0) {
          if (starts[k] < lows[k] || starts[k] > highs[k]) {
            return 0;
          }
          continue;
        }
        double a = (lows[k] - starts[k]) / runs[k];
        double b = (highs[k] - starts[k]) / runs[k];
        low = Math.max(low, Math.min(a, b));
        high = Math.min(high, Math.max(a, b));
      }
      return Math.max(0, high - low);
    }
  }

  FeatureAreas(List<Feature> features) {
    features.forEach(feature -> areas.add(Area.of(feature)));
    areas.sort((one, other) -> Double.compare(one.size(), other.size()));
  }

  /** The feature in which a move lies. */
  Optional<Feature> of(Path path) {
    for (Area area : areas) {
      if (share(area, path) >= 0.5) {
        return Optional.of(area.feature());
      }
    }
    return Optional.empty();
  }

  private static double share(Area area, Path path) {
    if (path.straight()) {
      return area.share(path);
    }
    int inside = 0;
    for (int k = 0; k < ARC_SAMPLES; k++) {
      double f = (k + 0.5) / ARC_SAMPLES;
      if (area.contains(path.at(Axis.X, f), path.at(Axis.Y, f))) {
        inside++;
      }
    }
    return (double) inside / ARC_SAMPLES;
  }

  /** The feature in which a point lies. */
  Optional<Feature> at(double x, double y) {
    for (Area area : areas) {
      if (area.contains(x, y)) {
        return Optional.of(area.feature());
      }
    }
    return Optional.empty();
  }

  /** Whether two points that differ in Y only lie in the same features, wherever in X. */
  boolean alike(double y, double otherY) {
    for (Area area : areas) {
      if ((y >= area.yLow && y <= area.yHigh) != (otherY >= area.yLow && otherY <= area.yHigh)) {
        return false;
      }
    }
    return true;
  }

  /** The largest step declared for a feature, directly or as levels below the top at Z0. */
  OptionalLong stepPm(Feature feature) {
    for (Area area : areas) {
      if (area.feature().equals(feature)) {
        return area.stepPm();
      }
    }
    return OptionalLong.empty();
  }

  static OptionalLong largestStep(Feature feature) {
    long largest = feature.step().map(Length::pm).orElse(0L);
    long above = 0;
    for (Length level : feature.levels()) {
      largest = Math.max(largest, Math.abs(above - level.pm()));
      above = level.pm();
    }
    return largest > 0 ? OptionalLong.of(largest) : OptionalLong.empty();
  }
}

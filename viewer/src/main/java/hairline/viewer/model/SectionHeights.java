package hairline.viewer.model;

import hairline.checks.stock.Section;
import java.util.List;
import java.util.OptionalDouble;

/** The height of a section at a distance, between its points on a straight line. */
final class SectionHeights {
  private static final double PM_PER_MM = 1e9;
  private static final double PM_PER_UM = 1e6;

  private final List<Section.Point> points;

  SectionHeights(Section section) {
    this.points = section.points();
  }

  /** The height in µm; empty beyond the ends and where there is no surface. */
  OptionalDouble um(double distanceMm) {
    double at = distanceMm * PM_PER_MM;
    int low = 0;
    int high = points.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (points.get(middle).distancePm() < at) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    if (low == points.size()) {
      return OptionalDouble.empty();
    }
    Section.Point right = points.get(low);
    if (right.distancePm() == at && right.heightPm().isPresent()) {
      return OptionalDouble.of(right.heightPm().getAsLong() / PM_PER_UM);
    }
    if (low == 0) {
      return OptionalDouble.empty();
    }
    Section.Point left = points.get(low - 1);
    if (left.heightPm().isEmpty() || right.heightPm().isEmpty()) {
      return OptionalDouble.empty();
    }
    double share = (at - left.distancePm()) / (right.distancePm() - left.distancePm());
    double from = left.heightPm().getAsLong();
    return OptionalDouble.of((from + share * (right.heightPm().getAsLong() - from)) / PM_PER_UM);
  }
}

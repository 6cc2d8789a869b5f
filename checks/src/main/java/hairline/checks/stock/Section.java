package hairline.checks.stock;

import java.util.List;
import java.util.OptionalLong;

/**
 * The heights along a line, as a profilometer would draw them: points in the order of their
 * distance, to be joined by straight lines. At a wall two points stand one above the other. Heights
 * are those of the cells, exact; a wall stands at most half a cell from its true place, across the
 * wall. Points on a straight line between others are left out where they lie within 2 pm of it.
 *
 * @param line where
 * @param points the points
 * @param gaps where there is no surface, and why; each also stands as two points without height
 * @param complete false where the points were too many and the rest is left out
 */
public record Section(SectionLine line, List<Point> points, List<Gap> gaps, boolean complete) {

  /**
   * A point.
   *
   * @param distancePm distance from the start of the line
   * @param heightPm the height; empty where there is no surface
   */
  public record Point(double distancePm, OptionalLong heightPm) {}

  /** A stretch without surface. */
  public record Gap(double fromPm, double toPm, Stands why) {}

  public Section {
    points = List.copyOf(points);
    gaps = List.copyOf(gaps);
  }
}

package hairline.viewer.model;

import hairline.checks.finding.Figure;
import hairline.checks.finding.Finding;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A finding with the move it concerns.
 *
 * @param finding the finding
 * @param move the first move of its line, or the next one behind it; -1 where there is none
 */
public record FindingMark(Finding finding, long move) {

  /** What figures are called that another one is held against; earlier ones first. */
  private static final List<String> LIMITS =
      List.of(
          "allowed",
          "limit",
          "minimum",
          "asked",
          "declared",
          "failsAbove",
          "edgeRadius",
          "cuttingLength",
          "reach",
          "life",
          "radius",
          "feedNeeded",
          "runUp",
          "tenthOfTool",
          "advance",
          "stepDown",
          "resolution");

  /** Of the digits that a control drops the error counts, not the number it was rounded from. */
  private static final String ROUNDING_LIMIT = "resolution";

  private static final Set<String> ROUNDING_ERRORS = Set.of("error", "drift", "moved");

  /**
   * Whether this is the finding that the other one was or becomes while a program is checked: its
   * count, its worst occurrence and its last place may have grown.
   */
  public boolean isSame(FindingMark other) {
    return finding.rule().equals(other.finding.rule())
        && finding.first().operation() == other.finding.first().operation()
        && finding.first().cause().equals(other.finding.first().cause())
        && finding.at().equals(other.finding.at())
        && finding.acceptedBecause().equals(other.finding.acceptedBecause());
  }

  /** The figure found: the first in the unit of the limit; the first of all where there is none. */
  public Optional<Figure> found() {
    List<Figure> figures = finding.first().figures();
    Optional<Figure> limit = allowed();
    if (limit.isEmpty()) {
      return figures.stream().findFirst();
    }
    return figures.stream()
        .filter(f -> !f.equals(limit.get()) && f.unit().equals(limit.get().unit()))
        .filter(
            f -> !limit.get().name().equals(ROUNDING_LIMIT) || ROUNDING_ERRORS.contains(f.name()))
        .findFirst();
  }

  /** The figure that it is held against; empty where the rule has no such figure of its own. */
  public Optional<Figure> allowed() {
    List<Figure> figures = finding.first().figures();
    return LIMITS.stream()
        .flatMap(name -> figures.stream().filter(f -> f.name().equals(name)))
        .filter(
            limit ->
                figures.stream().anyMatch(f -> !f.equals(limit) && f.unit().equals(limit.unit())))
        .findFirst();
  }
}

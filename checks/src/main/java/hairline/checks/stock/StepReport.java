package hairline.checks.stock;

import hairline.checks.setup.Feature;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The steps of the finished part, in the order in which they came to stand. */
final class StepReport {
  private static final double PM_PER_MM = 1e9;
  private static final int SHORTEST_PER_DIAMETER = 4;

  private final StockModel model;
  private final FeatureAreas features;
  private final Levels levels;
  private boolean capReached;

  StepReport(StockModel model, FeatureAreas features, Levels levels) {
    this.model = model;
    this.features = features;
    this.levels = levels;
  }

  /** Whether not every border was kept. */
  boolean capReached() {
    return capReached;
  }

  /**
   * The steps under all offsets whose surface is known.
   *
   * @param widestCornerPm the largest corner radius that left a floor
   */
  List<StepFound> of(Collection<Surface> surfaces, double widestCornerPm) {
    List<StepFound> steps = new ArrayList<>();
    for (Surface surface : surfaces) {
      if (!surface.lost()) {
        add(surface, widestCornerPm, steps);
      }
    }
    steps.sort(
        Comparator.comparingInt((StepFound step) -> step.later().levelId())
            .thenComparingInt(step -> step.earlier().levelId())
            .thenComparingInt(this::featureIndex));
    return steps;
  }

  private int featureIndex(StepFound step) {
    return step.feature().map(model.features()::indexOf).orElse(-1);
  }

  private void add(Surface surface, double widestCornerPm, List<StepFound> steps) {
    StepFinder finder =
        new StepFinder(
            surface.grid,
            widestCornerPm,
            model.limits().steps(),
            (x, y) -> features.at(x, y).map(model.features()::indexOf).orElse(-1));
    finder
        .find()
        .forEach(
            (border, length) -> {
              Terrace upper = terrace(border.upperId(), surface);
              Terrace lower = terrace(border.lowerId(), surface);
              double borderPm = length.cells() * model.cellPm();
              if (borderPm >= shortestBorderPm(upper, lower)) {
                steps.add(step(border, upper, lower, surface, borderPm / PM_PER_MM));
              }
            });
    capReached |= finder.capReached();
  }

  private StepFound step(
      StepFinder.Border border, Terrace upper, Terrace lower, Surface surface, double borderMm) {
    Optional<Feature> feature =
        border.feature() < 0
            ? Optional.empty()
            : Optional.of(model.features().get(border.feature()));
    Terrace later = upper.levelId() > lower.levelId() ? upper : lower;
    return new StepFound(
        later.first().orElseThrow(),
        upper,
        lower,
        upper.storedZPm() - lower.storedZPm(),
        upper.writtenZPm() - lower.writtenZPm(),
        feature,
        surface.offset,
        borderMm);
  }

  private Terrace terrace(int id, Surface surface) {
    return id == Cut.UNCUT
        ? Terrace.uncutTop(surface.box.orElseThrow().topPm())
        : levels.get(id).terrace();
  }

  /** A quarter of the smaller tool's diameter. */
  private static double shortestBorderPm(Terrace upper, Terrace lower) {
    return Math.min(diameterPm(upper), diameterPm(lower)) / SHORTEST_PER_DIAMETER;
  }

  private static double diameterPm(Terrace terrace) {
    return terrace
        .tool()
        .flatMap(Cutter::of)
        .map(cutter -> 2 * cutter.radiusPm())
        .orElse(Double.POSITIVE_INFINITY);
  }
}

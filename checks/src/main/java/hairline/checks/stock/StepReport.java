package hairline.checks.stock;

import hairline.checks.motion.Event;
import hairline.checks.setup.Feature;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** The steps of the finished part, in the order in which they came to stand. */
final class StepReport {
  private static final double PM_PER_MM = 1e9;
  private static final int SHORTEST_PER_DIAMETER = 4;

  private final StockModel model;
  private final FeatureAreas features;
  private final Levels levels;
  private final List<StepFound> found = new ArrayList<>();
  private final List<StepLost> lost = new ArrayList<>();
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

  /** Tells the steps, those that rounding took away among them. */
  void tell(Consumer<Event> sink) {
    int next = 0;
    for (StepFound step : found) {
      while (next < lost.size() && lost.get(next).later().levelId() < step.later().levelId()) {
        sink.accept(lost.get(next++));
      }
      sink.accept(step);
    }
    lost.subList(next, lost.size()).forEach(sink);
  }

  /**
   * Finds the steps under all offsets whose surface is known.
   *
   * @param widestCornerPm the largest corner radius that left a floor
   */
  void find(Collection<Surface> surfaces, double widestCornerPm) {
    for (Surface surface : surfaces) {
      if (!surface.lost()) {
        add(surface, widestCornerPm);
      }
    }
    found.sort(
        (one, other) -> {
          int order = Integer.compare(one.later().levelId(), other.later().levelId());
          order =
              order != 0
                  ? order
                  : Integer.compare(one.earlier().levelId(), other.earlier().levelId());
          return order != 0 ? order : Integer.compare(featureIndex(one), featureIndex(other));
        });
    lost.sort(
        (one, other) -> {
          int later = Integer.compare(one.later().levelId(), other.later().levelId());
          return later != 0 ? later : Integer.compare(ids(one), ids(other));
        });
  }

  private static int ids(StepLost step) {
    return step.upper().levelId() + step.lower().levelId();
  }

  private int featureIndex(StepFound step) {
    return step.feature().map(model.features()::indexOf).orElse(-1);
  }

  private void add(Surface surface, double widestCornerPm) {
    StepFinder finder =
        new StepFinder(
            surface.grid,
            widestCornerPm,
            model.limits().steps(),
            (x, y) -> features.at(x, y).map(model.features()::indexOf).orElse(-1),
            this::writtenApart);
    finder
        .find()
        .forEach(
            (border, length) -> {
              Terrace upper = terrace(border.upperId(), surface);
              Terrace lower = terrace(border.lowerId(), surface);
              double borderPm = length.cells() * model.cellPm();
              if (borderPm < shortestBorderPm(upper, lower)) {
                return;
              }
              if (upper.storedZPm() == lower.storedZPm()) {
                lose(upper, lower, surface.offset);
              } else {
                found.add(step(border, upper, lower, surface, borderPm / PM_PER_MM));
              }
            });
    capReached |= finder.capReached();
  }

  private boolean writtenApart(int oneId, int otherId) {
    return oneId > 0
        && otherId > 0
        && !Level.writtenAlike(levels.get(oneId).writtenZPm, levels.get(otherId).writtenZPm);
  }

  /** A border in two features is one step. */
  private void lose(Terrace one, Terrace other, String offset) {
    boolean down = one.writtenZPm() > other.writtenZPm();
    Terrace upper = down ? one : other;
    Terrace lower = down ? other : one;
    Terrace later = upper.levelId() > lower.levelId() ? upper : lower;
    StepLost step =
        new StepLost(
            later.first().orElseThrow(),
            upper,
            lower,
            upper.writtenZPm() - lower.writtenZPm(),
            offset);
    if (!lost.contains(step)) {
      lost.add(step);
    }
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

package hairline.checks.rules;

import hairline.checks.budget.BudgetedStep;
import hairline.checks.setup.Feature;
import hairline.checks.setup.Length;
import hairline.checks.stock.StepFound;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * Which of the steps found a budget is drawn up for, and the height asked of each.
 *
 * <p>In a declared feature: every step of it. The uncut top has a step to the feature's first level
 * only, the others stand below it as walls. Of a flight of equal steps those count that are nearest
 * to one step; where two terraces of it meet that lie several steps apart, the drawing asks no such
 * step. Where no feature is declared: the finest step found.
 */
final class BudgetSteps {
  /**
   * A step and what is asked of it.
   *
   * @param found the step
   * @param step the same, as a budget names it
   */
  record Asked(StepFound found, BudgetedStep step) {}

  private BudgetSteps() {}

  /** The steps of a declared feature, out of those found in it. */
  static List<Asked> of(Feature feature, List<StepFound> found) {
    long firstZPm = Long.MIN_VALUE;
    for (StepFound step : found) {
      firstZPm = Math.max(firstZPm, step.lower().storedZPm());
      firstZPm = step.upper().uncut() ? firstZPm : Math.max(firstZPm, step.upper().storedZPm());
    }
    List<Asked> steps = new ArrayList<>();
    for (StepFound step : found) {
      if (step.upper().uncut() && step.lower().storedZPm() < firstZPm) {
        continue;
      }
      if (feature.step().isPresent()) {
        long declaredPm = feature.step().get().pm();
        // Nearest to two steps or more: that is no step of the flight.
        if (2 * step.heightPm() < 3 * declaredPm) {
          steps.add(asked(step, OptionalLong.of(declaredPm)));
        }
      } else {
        steps.add(asked(step, byLevels(feature, step)));
      }
    }
    return steps;
  }

  /** The finest of all steps found; the first of several. */
  static Optional<Asked> finest(List<StepFound> found) {
    return found.stream()
        .min(Comparator.comparingLong(StepFound::heightPm))
        .map(step -> asked(step, OptionalLong.empty()));
  }

  private static Asked asked(StepFound found, OptionalLong declaredPm) {
    return new Asked(
        found,
        new BudgetedStep(
            found.feature().map(Feature::name),
            found.at(),
            found.upper().storedZPm(),
            found.lower().storedZPm(),
            found.upper().uncut(),
            declaredPm.orElse(found.writtenHeightPm()),
            declaredPm.isPresent()));
  }

  /** The declared height between two levels; empty where they are not two declared ones. */
  private static OptionalLong byLevels(Feature feature, StepFound step) {
    OptionalLong lower = declared(feature, step.lower().writtenZPm());
    OptionalLong upper =
        step.upper().uncut()
            ? OptionalLong.of(step.upper().storedZPm())
            : declared(feature, step.upper().writtenZPm());
    return lower.isPresent() && upper.isPresent() && upper.getAsLong() > lower.getAsLong()
        ? OptionalLong.of(upper.getAsLong() - lower.getAsLong())
        : OptionalLong.empty();
  }

  /** The declared level that a level as written is meant to be: the nearest, if it is near. */
  private static OptionalLong declared(Feature feature, long writtenZPm) {
    long nearestPm = Long.MAX_VALUE;
    long distancePm = Long.MAX_VALUE;
    for (Length level : feature.levels()) {
      long here = Math.abs(level.pm() - writtenZPm);
      if (here < distancePm) {
        distancePm = here;
        nearestPm = level.pm();
      }
    }
    return 2 * (double) distancePm < smallestGapPm(feature, nearestPm)
        ? OptionalLong.of(nearestPm)
        : OptionalLong.empty();
  }

  /** How far the nearest other level, or Z0, is from this one. */
  private static double smallestGapPm(Feature feature, long levelPm) {
    double gap = levelPm == 0 ? Double.POSITIVE_INFINITY : Math.abs((double) levelPm);
    for (Length level : feature.levels()) {
      if (level.pm() != levelPm) {
        gap = Math.min(gap, Math.abs((double) level.pm() - levelPm));
      }
    }
    return gap;
  }
}

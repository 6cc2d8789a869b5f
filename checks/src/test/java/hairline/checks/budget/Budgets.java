package hairline.checks.budget;

import hairline.checks.budget.Uncertainty.Contribution;
import hairline.checks.cutting.Band;
import hairline.checks.motion.Place;
import hairline.parser.Span;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Budgets for tests. */
final class Budgets {
  static final BudgetedStep STEP =
      new BudgetedStep(
          Optional.of("cascade"),
          new Place(0, 7, new Span(1, 2)),
          -4_000_000,
          -8_000_000,
          false,
          4_000_000,
          true);

  private Budgets() {}

  static StepBudget of(double toleranceUm, double guardUm, Part... parts) {
    return of(toleranceUm, guardUm, List.of(parts));
  }

  static StepBudget of(double toleranceUm, double guardUm, List<Part> parts) {
    return new StepBudget(
        STEP, parts, List.of(), OptionalDouble.of(toleranceUm), OptionalDouble.of(guardUm));
  }

  static StepBudget without(StepBudget budget, Source source) {
    return new StepBudget(
        budget.step(),
        budget.parts().stream().filter(part -> part.source() != source).toList(),
        List.of(Missing.key(source, "some.key")),
        budget.toleranceUm(),
        budget.guardUm());
  }

  static Part known(Source source, long pm) {
    return new Part.Known(source, pm, "");
  }

  static Part drift(Source source, double low, double typical, double high) {
    return new Part.Drift(source, new Band(low, typical, high), "");
  }

  static Part random(Source source, double standardUm, double times) {
    return new Part.Random(source, new Contribution(standardUm, times), "");
  }
}

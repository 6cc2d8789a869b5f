package hairline.checks.rules;

import hairline.checks.budget.Missing;
import hairline.checks.budget.Part;
import hairline.checks.budget.Source;
import hairline.checks.budget.StepBudget;
import hairline.checks.finding.Quantities;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** A budget as the facts of a finding put it. */
final class BudgetWords {
  private static final int MOST_HALVINGS = 3;

  private BudgetWords() {}

  /** "environment ±0.488 µm, 61 % of it: ±0.5 K …". */
  static String part(StepBudget.Weighed weighed) {
    Part part = weighed.part();
    return part.source().words()
        + " "
        + (part instanceof Part.Random || part instanceof Part.DriftEitherWay ? "±" : "")
        + (part instanceof Part.Drift drift ? Bands.um(drift.um()) : Quantities.um(weighed.um()))
        + ", "
        + Quantities.significant(weighed.shareOfError() * 100, 2)
        + " % of it: "
        + part.basis();
  }

  /** "in sum |0.02 µm| of drifts and 2 × 0.3074 µm of random parts". */
  static String sum(StepBudget budget) {
    double eitherWayUm = 0;
    for (Part part : budget.parts()) {
      if (part instanceof Part.DriftEitherWay drift) {
        eitherWayUm += drift.um();
      }
    }
    return "in sum |"
        + Quantities.um(budget.driftUm())
        + "|"
        + (eitherWayUm > 0 ? " + " + Quantities.um(eitherWayUm) : "")
        + " of what has a sign, and 2 × "
        + Quantities.um(budget.standardUncertaintyUm())
        + " of what is random";
  }

  /** "not known, and not counted: …". */
  static String missing(StepBudget budget) {
    Map<Source, List<String>> reasons = new LinkedHashMap<>();
    for (Missing missing : budget.missing()) {
      reasons.computeIfAbsent(missing.source(), s -> new ArrayList<>()).add(missing.reason());
    }
    return "not known, and not counted: "
        + reasons.entrySet().stream()
            .map(part -> part.getKey().words() + " (" + String.join(", ", part.getValue()) + ")")
            .collect(Collectors.joining(", "));
  }

  /** What halving the largest parts gains. */
  static String cure(StepBudget budget) {
    List<String> halvings = new ArrayList<>();
    for (StepBudget.Weighed weighed : budget.weighed()) {
      if (halvings.size() < MOST_HALVINGS && weighed.halvingGainsUm() > 0) {
        halvings.add(
            weighed.part().source().words()
                + " halved gains "
                + Quantities.um(weighed.halvingGainsUm()));
      }
    }
    return halvings.isEmpty() ? "a wider tolerance" : String.join(", ", halvings);
  }
}

package hairline.checks.rules;

import hairline.checks.budget.StepBudget;
import hairline.checks.finding.Collector;
import hairline.checks.finding.Finding;
import hairline.checks.finding.Finding.BlockDelete;
import hairline.checks.finding.ProgramResult;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Puts the findings of both settings of the block delete switch together. */
final class BlockDeleteMerge {
  private BlockDeleteMerge() {}

  /** What holds either way stands once; what holds one way says which. */
  static List<Finding> of(Run off, Run on) {
    Map<Collector.Key, Finding> whenOff = off.groups();
    Map<Collector.Key, Finding> whenOn = on.groups();
    List<Finding> all = new ArrayList<>();
    whenOff.forEach(
        (key, finding) ->
            all.add(whenOn.containsKey(key) ? finding : only(finding, BlockDelete.ONLY_OFF)));
    whenOn.forEach(
        (key, finding) -> {
          if (!whenOff.containsKey(key)) {
            all.add(only(finding, BlockDelete.ONLY_ON));
          }
        });
    return FindingOrder.sorted(all);
  }

  /** The budgets of one run, or of both settings of the switch: first the one, then the other. */
  static List<ProgramResult.Budget> budgets(List<Run> offThenOn) {
    List<StepBudget> whenOff = offThenOn.get(0).budgets();
    List<StepBudget> whenOn = offThenOn.get(offThenOn.size() - 1).budgets();
    Set<StepBudget> off = new HashSet<>(whenOff);
    Set<StepBudget> on = new HashSet<>(whenOn);
    List<ProgramResult.Budget> all = new ArrayList<>();
    whenOff.forEach(
        budget ->
            all.add(
                new ProgramResult.Budget(
                    budget, on.contains(budget) ? BlockDelete.BOTH : BlockDelete.ONLY_OFF)));
    whenOn.stream()
        .filter(budget -> !off.contains(budget))
        .forEach(budget -> all.add(new ProgramResult.Budget(budget, BlockDelete.ONLY_ON)));
    Comparator<ProgramResult.Budget> byPlace =
        Comparator.comparingInt((ProgramResult.Budget b) -> b.step().step().at().file())
            .thenComparingInt(b -> b.step().step().at().line());
    return all.stream().sorted(byPlace).toList();
  }

  private static Finding only(Finding finding, BlockDelete which) {
    return new Finding(
        finding.first(),
        finding.worst(),
        finding.count(),
        finding.last(),
        which,
        finding.acceptedBecause());
  }
}

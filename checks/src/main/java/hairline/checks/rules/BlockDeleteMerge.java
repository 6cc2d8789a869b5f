package hairline.checks.rules;

import hairline.checks.budget.StepBudget;
import hairline.checks.finding.Collector;
import hairline.checks.finding.Finding;
import hairline.checks.finding.Finding.BlockDelete;
import hairline.checks.finding.ProgramResult;
import hairline.checks.motion.Place;
import java.util.ArrayList;
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
    return all.stream().sorted(BlockDeleteMerge::byPlace).toList();
  }

  private static int byPlace(ProgramResult.Budget one, ProgramResult.Budget other) {
    Place place = one.step().step().at();
    Place otherPlace = other.step().step().at();
    int files = Integer.compare(place.file(), otherPlace.file());
    return files != 0 ? files : Integer.compare(place.line(), otherPlace.line());
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

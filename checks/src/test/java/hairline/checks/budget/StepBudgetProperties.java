package hairline.checks.budget;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.budget.StepBudget.Weighed;
import hairline.checks.cutting.Band;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** What holds of every budget. */
class StepBudgetProperties {
  private static final double TINY = 1e-9;

  @Provide
  Arbitrary<StepBudget> budgets() {
    return Arbitraries.longs().map(seed -> budget(new Random(seed)));
  }

  private static StepBudget budget(Random random) {
    List<Part> parts = new ArrayList<>();
    parts.add(Budgets.known(Source.ROUNDING, random.nextInt(2_000_001) - 1_000_000));
    parts.add(drift(Source.GROWTH, random));
    parts.add(drift(Source.TILT, random));
    parts.add(new Part.DriftEitherWay(Source.REVERSAL, random.nextInt(3) * 0.25, ""));
    for (Source source : List.of(Source.SMALLEST_STEP, Source.REPEATABILITY, Source.ENVIRONMENT)) {
      parts.add(Budgets.random(source, random.nextInt(4) * 0.07, random.nextInt(3)));
    }
    parts.removeIf(part -> random.nextInt(4) == 0);
    return Budgets.of(0.1 + random.nextDouble() * 3, random.nextDouble() * 0.3, parts);
  }

  private static Part drift(Source source, Random random) {
    double typical = random.nextInt(9) * 0.1 - 0.4;
    double below = random.nextInt(3) * 0.1;
    double above = random.nextInt(3) * 0.1;
    return new Part.Drift(source, new Band(typical - below, typical, typical + above), "");
  }

  @Property
  void theOrderOfThePartsDoesNotMatter(@ForAll("budgets") StepBudget budget, @ForAll long seed) {
    List<Part> shuffled = new ArrayList<>(budget.parts());
    Collections.shuffle(shuffled, new Random(seed));
    StepBudget other =
        new StepBudget(
            budget.step(), shuffled, budget.missing(), budget.toleranceUm(), budget.guardUm());
    assertThat(other).isEqualTo(budget);
    assertThat(other.errorUm()).isEqualTo(budget.errorUm());
    assertThat(other.weighed()).isEqualTo(budget.weighed());
  }

  /** Halving gains; but of drifts that undo each other, halving one may lose up to half of it. */
  @Property
  void halvingAPartNeverMakesTheErrorLargerUnlessDriftsUndoEachOther(
      @ForAll("budgets") StepBudget budget) {
    boolean opposed =
        budget.parts().stream().anyMatch(part -> sign(part) > 0)
            && budget.parts().stream().anyMatch(part -> sign(part) < 0);
    for (Weighed weighed : budget.weighed()) {
      double halfUm = Math.abs(weighed.um()) / 2;
      double leastUm = opposed && sign(weighed.part()) != 0 ? -halfUm : 0;
      assertThat(weighed.halvingGainsUm()).isBetween(leastUm - TINY, halfUm + TINY);
    }
  }

  private static double sign(Part part) {
    return part instanceof Part.Known known
        ? Long.signum(known.pm())
        : part instanceof Part.Drift drift ? Math.signum(drift.um().typical()) : 0;
  }

  @Property
  void theSharesAddUp(@ForAll("budgets") StepBudget budget) {
    double sum = budget.weighed().stream().mapToDouble(Weighed::shareOfError).sum();
    assertThat(sum).isCloseTo(budget.errorUm().typical() > 0 ? 1 : 0, within(TINY));
    List<Double> sizes = budget.weighed().stream().map(w -> Math.abs(w.shareOfError())).toList();
    assertThat(sizes).isSortedAccordingTo(Collections.reverseOrder());
  }

  @Property
  void withAPartMissingItNeverHolds(@ForAll("budgets") StepBudget budget) {
    for (Part part : budget.parts()) {
      assertThat(Budgets.without(budget, part.source()).decision()).isNotEqualTo(Decision.HOLDS);
    }
  }

  @Property
  void theMildestDecisionIsNoWorseThanTheTypicalOne(@ForAll("budgets") StepBudget budget) {
    assertThat(budget.decisionAtLeast()).isLessThanOrEqualTo(budget.decision());
  }
}

package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.budget.Decision;
import hairline.checks.budget.Missing;
import hairline.checks.budget.StepBudget;
import hairline.checks.finding.Level;
import hairline.checks.finding.Occurrence;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Event.Ended;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.Feature;
import hairline.checks.setup.JobKeys;
import hairline.checks.setup.MaterialKeys;
import hairline.checks.setup.Resolved;
import hairline.checks.setup.Tolerance;
import hairline.checks.setup.Tool;
import hairline.checks.stock.LevelReached;
import hairline.checks.stock.StepFound;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The error budget of a step does not fit into its tolerance. */
@AutoService(Rule.class)
public final class BudgetExceedsTolerance implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "budget-exceeds-tolerance",
          Level.ERROR,
          Group.BUDGET,
          "what a step's height may suffer does not fit into its tolerance",
          Need.SURFACE,
          Need.TIMING);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  /** So many steps are kept, as many as the stage before tells. */
  private static final int MOST_STEPS = 10_000;

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    LevelHistory history = LevelHistory.follow(context, on);
    List<StepFound> found = new ArrayList<>();
    Set<String> cutIn = new HashSet<>();
    on.event(
        LevelReached.class,
        level -> level.feature().ifPresent(feature -> cutIn.add(feature.name())));
    on.event(
        StepFound.class,
        step -> {
          if (found.size() < MOST_STEPS) {
            found.add(step);
          }
        });
    on.event(Ended.class, end -> judge(context, history, found, cutIn, end));
  }

  private static void judge(
      RuleContext context,
      LevelHistory history,
      List<StepFound> found,
      Set<String> cutIn,
      Ended end) {
    if (context.setup().features().isEmpty()) {
      BudgetSteps.finest(found)
          .ifPresent(
              step -> judge(context, history, step, context.setup().resolve(JobKeys.TOLERANCE)));
      return;
    }
    for (Feature feature : context.setup().features()) {
      List<BudgetSteps.Asked> steps =
          BudgetSteps.of(
              feature,
              found.stream().filter(step -> step.feature().equals(Optional.of(feature))).toList());
      if (steps.isEmpty() && cutIn.contains(feature.name())) {
        context.notChecked("no step was found in " + feature.name(), end.at());
      }
      Resolved<Tolerance> tolerance = context.setup().toleranceOf(feature);
      steps.forEach(step -> judge(context, history, step, tolerance));
    }
  }

  private static void judge(
      RuleContext context,
      LevelHistory history,
      BudgetSteps.Asked asked,
      Resolved<Tolerance> tolerance) {
    StepBudget budget =
        BudgetParts.of(context, history, asked, tolerance.value(), tolerance.path());
    context.budget(budget);
    if (context.need(tolerance, asked.found().at()).isEmpty()) {
      return;
    }
    tellAssumptions(context, asked.found());
    if (budget.decision() == Decision.FAILS) {
      report(context, asked, budget, failsMessage(budget));
    } else if (!budget.missing().isEmpty()) {
      tellMissing(context, asked.found(), budget.missing());
    } else if (budget.decision() == Decision.UNDECIDED) {
      report(context, asked, budget, undecidedMessage(budget));
    }
  }

  /** Names the defaults and published values that the force rests on. */
  private static void tellAssumptions(RuleContext context, StepFound step) {
    for (Optional<Tool> tool : List.of(step.upper().tool(), step.lower().tool())) {
      tool.ifPresent(
          t ->
              BudgetParts.TOOL_KEYS.stream()
                  .filter(key -> t.get(key).isPresent())
                  .forEach(key -> context.need(t, key, step.at())));
    }
    List.of(MaterialKeys.SPECIFIC_FORCE_MPA, MaterialKeys.FORCE_EXPONENT).stream()
        .filter(key -> context.setup().get(key).isPresent())
        .forEach(key -> context.need(key, step.at()));
  }

  private static void tellMissing(RuleContext context, StepFound step, List<Missing> missing) {
    for (Missing part : missing) {
      context.notChecked(
          part.isKey() ? part.reason() + " is not on the sheet" : part.reason(), step.at());
    }
  }

  private static String failsMessage(StepBudget budget) {
    double limitUm = toleranceUm(budget) + guardUm(budget);
    return mayBeOff(budget, limitUm)
        + ", fails above "
        + Quantities.um(limitUm, budget.errorUm().typical())
        + " (tolerance ±"
        + Quantities.um(toleranceUm(budget))
        + " and gauge "
        + Quantities.um(guardUm(budget))
        + ")";
  }

  private static String undecidedMessage(StepBudget budget) {
    double limitUm = toleranceUm(budget) - guardUm(budget);
    return mayBeOff(budget, limitUm)
        + ", holds up to "
        + Quantities.um(limitUm, budget.errorUm().typical())
        + " (tolerance ±"
        + Quantities.um(toleranceUm(budget))
        + " less gauge "
        + Quantities.um(guardUm(budget))
        + ")";
  }

  private static String mayBeOff(StepBudget budget, double limitUm) {
    return "step of "
        + Quantities.um(budget.step().heightPm())
        + budget.step().feature().map(name -> " in " + name).orElse("")
        + " may be off by "
        + Bands.um(budget.errorUm(), limitUm);
  }

  private static double toleranceUm(StepBudget budget) {
    return budget.toleranceUm().orElse(0);
  }

  private static double guardUm(StepBudget budget) {
    return budget.guardUm().orElse(0);
  }

  private static void report(
      RuleContext context, BudgetSteps.Asked asked, StepBudget budget, String message) {
    StepFound step = asked.found();
    // Both the whole band and the typical value: an error. Only the latter, or undecided: less.
    Occurrence.Builder occurrence =
        budget.decisionAtLeast() == Decision.FAILS
            ? context.occurrence(step.at(), message)
            : context.lesserOccurrence(step.at(), message);
    List<StepBudget.Weighed> weighed = budget.weighed();
    for (StepBudget.Weighed part : weighed) {
      if (part.um() != 0) {
        occurrence.fact(BudgetWords.part(part));
      }
    }
    occurrence.fact(BudgetWords.sum(budget));
    if (!budget.missing().isEmpty()) {
      occurrence.fact(BudgetWords.missing(budget));
    }
    context.report(
        occurrence
            .cure(BudgetWords.cure(budget))
            .figure("error", budget.errorUm().typical(), "µm")
            .figure("errorLow", budget.errorUm().low(), "µm")
            .figure("holdsUpTo", toleranceUm(budget) - guardUm(budget), "µm")
            .figure("failsAbove", toleranceUm(budget) + guardUm(budget), "µm")
            .operation(step.later().lastOperation())
            .cause(budget.step().feature().orElse(""))
            .severity(budget.errorUm().typical() / toleranceUm(budget)));
  }
}

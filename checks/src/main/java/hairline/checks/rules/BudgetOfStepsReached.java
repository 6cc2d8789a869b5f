package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Event.StepBudgetReached;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;

/** The interpreter has used up its budget of steps. */
@AutoService(Rule.class)
public final class BudgetOfStepsReached implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "budget-of-steps-reached",
              Level.ERROR,
              Group.STATE,
              "the step budget is used up",
              Need.STATE)
          .withoutLimit("how many steps the program would take is what is not known");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.event(
        StepBudgetReached.class,
        event ->
            context.report(
                context
                    .occurrence(
                        event.at(),
                        event.repeats().isPresent()
                            ? event.repeats().getAsLong()
                                + " repeats are more than the budget of "
                                + event.budget()
                                + " steps; the first of them were followed, the rest is not checked"
                            : "the budget of "
                                + event.budget()
                                + " steps is used up; the rest is not checked")
                    .fact("the budget is machine.control.step_budget; repeats count each time")
                    .cure("fewer repeats, or a larger machine.control.step_budget")
                    .figure("budget", (double) event.budget(), "")));
  }
}

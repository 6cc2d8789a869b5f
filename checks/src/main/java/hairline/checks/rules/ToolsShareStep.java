package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.JobKeys;
import hairline.checks.stock.StepFound;

/** The two levels of a fine step are cut by two tools. */
@AutoService(Rule.class)
public final class ToolsShareStep implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "tools-share-step",
              Level.WARNING,
              Group.STEPS,
              "the two levels of a fine step are cut by two tools",
              Need.SURFACE)
          .withoutLimit("any step that two tools share is one");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.event(
        StepFound.class,
        step -> {
          if (step.byTwoTools() && isFine(context, step)) {
            speak(context, step);
          }
        });
  }

  /** Walls between roughing levels are no step of the drawing. */
  private static boolean isFine(RuleContext context, StepFound step) {
    return step.feature().isPresent()
        || context
            .need(JobKeys.FINE_STEP, step.at())
            .map(fine -> step.heightPm() <= fine.pm())
            .orElse(false);
  }

  private static void speak(RuleContext context, StepFound step) {
    int upper = step.upper().tool().orElseThrow().number();
    int lower = step.lower().tool().orElseThrow().number();
    context.report(
        context
            .occurrence(
                step.at(),
                "step "
                    + Quantities.um(step.heightPm())
                    + ": upper level by tool "
                    + upper
                    + ", lower level by tool "
                    + lower)
            .fact("the setting of both tools enters the step, √2 times that of one")
            .cure("both levels by one tool")
            .figure("step", step.heightPm() / 1e6, "µm")
            .operation(step.later().lastOperation())
            .cause("tools " + upper + " " + lower)
            .severity((double) -step.heightPm()));
  }
}

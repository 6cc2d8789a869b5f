package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.MachineKeys;
import hairline.checks.stock.StepFound;

/** A step of the part is at most twice the repeatability of the axis. */
@AutoService(Rule.class)
public final class StepWithinRepeatability implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "step-within-repeatability",
          Level.WARNING,
          Group.STEPS,
          "a step is within the repeatability of the axis",
          Need.SURFACE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    context
        .need(MachineKeys.REPEATABILITY)
        .ifPresent(
            repeatability ->
                on.event(
                    StepFound.class,
                    step -> {
                      if (step.heightPm() <= 2 * repeatability.pm()) {
                        speak(context, step, repeatability.pm());
                      }
                    }));
  }

  private static void speak(RuleContext context, StepFound step, long repeatabilityPm) {
    context.report(
        context
            .occurrence(
                step.at(),
                "step "
                    + Quantities.um(step.heightPm())
                    + ", twice the repeatability is "
                    + Quantities.um(2 * repeatabilityPm))
            .fact(
                "from "
                    + Quantities.mm(step.upper().storedZPm())
                    + " to "
                    + Quantities.mm(step.lower().storedZPm())
                    + ", machine.repeatability "
                    + Quantities.um(repeatabilityPm))
            .cure("a higher step, or a machine that repeats better")
            .figure("step", step.heightPm() / 1e6, "µm")
            .figure("repeatability", repeatabilityPm / 1e6, "µm")
            .operation(step.later().lastOperation())
            .cause("step")
            .severity((double) -step.heightPm()));
  }
}

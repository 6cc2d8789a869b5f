package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Place;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.Length;
import hairline.checks.setup.LimitKeys;
import hairline.checks.setup.MachineKeys;
import hairline.checks.stock.StepDown;
import hairline.checks.stock.StepFound;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** A step or step-down is smaller than what the axes make reliably. */
@AutoService(Rule.class)
public final class StepBelowSmallest implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "step-below-smallest",
          Level.ERROR,
          Group.STEPS,
          "a step or step-down is smaller than the axes make reliably",
          Need.SURFACE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  /** A step is looked at once, as a step-down when it is cut or as a step when it stands. */
  private record Heights(int upperLevel, int lowerLevel) {}

  /** So many pairs of levels are remembered; later ones may be told twice. */
  private static final int MOST_PAIRS = 100_000;

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    Optional<Length> smallest = context.need(MachineKeys.SMALLEST_STEP);
    Optional<Double> margin = context.need(LimitKeys.STEP_MARGIN);
    if (smallest.isEmpty() || margin.isEmpty()) {
      return;
    }
    Set<Heights> told = new HashSet<>();
    Limit limit = new Limit(smallest.get(), margin.get());
    on.contact(
        cut -> {
          if (!cut.spring() && cut.runsAtLevel()) {
            List<StepDown> stepDowns = cut.stepDowns();
            for (int k = 0; k < stepDowns.size(); k++) {
              StepDown stepDown = stepDowns.get(k);
              if (stepDown.exact() && limit.exceeds(stepDown.storedPm())) {
                if (told.size() < MOST_PAIRS) {
                  told.add(new Heights(stepDown.overLevelId(), cut.levelId()));
                }
                speak(
                    context,
                    limit,
                    cut.at(),
                    "step-down",
                    stepDown.storedPm(),
                    cut.move().modes().operation());
              }
            }
          }
        });
    on.event(
        StepFound.class,
        step -> {
          if (limit.exceeds(step.heightPm())
              && !told.contains(new Heights(step.upper().levelId(), step.lower().levelId()))) {
            speak(context, limit, step.at(), "step", step.heightPm(), step.later().lastOperation());
          }
        });
  }

  private record Limit(Length smallest, double margin) {
    double um() {
      return smallest.um() * margin;
    }

    /** Whether a height is too small; equal figures must stay equal however products round. */
    boolean exceeds(long heightPm) {
      return heightPm < smallest.pm() * margin - 0.5;
    }
  }

  private static void speak(
      RuleContext context, Limit limit, Place at, String what, long heightPm, int operation) {
    context.report(
        context
            .occurrence(
                at,
                what
                    + " "
                    + Quantities.um(heightPm)
                    + ", the axes need "
                    + Quantities.um(limit.um())
                    + " ("
                    + Quantities.significant(limit.margin(), 4)
                    + " × smallest step "
                    + Quantities.um(limit.smallest().pm())
                    + ")")
            .fact("machine.smallest_step times limits.step_margin")
            .cure("a " + what + " of " + Quantities.um(limit.um()) + " or more, or none")
            .figure("height", heightPm / 1e6, "µm")
            .figure("smallestStep", limit.smallest().um(), "µm")
            .figure("margin", limit.margin(), "")
            .figure("limit", limit.um(), "µm")
            .operation(operation)
            .cause(what)
            .severity((double) -heightPm));
  }
}

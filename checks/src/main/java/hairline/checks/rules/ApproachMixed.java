package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Event.Ended;
import hairline.checks.motion.Place;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.Feature;
import hairline.checks.setup.Length;
import hairline.checks.setup.MachineKeys;
import hairline.checks.stock.ApproachDirection;
import hairline.checks.stock.LevelReached;
import hairline.checks.stock.StepFound;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** The levels of one feature are approached in Z from both directions. */
@AutoService(Rule.class)
public final class ApproachMixed implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "approach-mixed",
          Level.WARNING,
          Group.STEPS,
          "the levels of a feature are approached in Z from both directions",
          Need.SURFACE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  /** What is known of one feature. */
  private static final class Seen {
    Optional<LevelReached> fromAbove = Optional.empty();
    Optional<LevelReached> fromBelow = Optional.empty();
    long smallestStepPm = Long.MAX_VALUE;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    if (context.setup().features().isEmpty()) {
      context.notChecked("job.features is not on the sheet");
      return;
    }
    Map<String, Seen> features = new LinkedHashMap<>();
    on.event(
        LevelReached.class,
        level -> level.feature().ifPresent(feature -> note(seen(features, feature), level)));
    on.event(
        StepFound.class,
        step ->
            step.feature()
                .ifPresent(
                    feature -> {
                      Seen seen = seen(features, feature);
                      seen.smallestStepPm = Math.min(seen.smallestStepPm, step.heightPm());
                    }));
    on.event(Ended.class, end -> features.forEach((name, seen) -> judge(context, name, seen)));
  }

  private static Seen seen(Map<String, Seen> features, Feature feature) {
    return features.computeIfAbsent(feature.name(), n -> new Seen());
  }

  private static void note(Seen seen, LevelReached level) {
    if (level.approach() == ApproachDirection.FROM_ABOVE && seen.fromAbove.isEmpty()) {
      seen.fromAbove = Optional.of(level);
    } else if (level.approach() == ApproachDirection.FROM_BELOW && seen.fromBelow.isEmpty()) {
      seen.fromBelow = Optional.of(level);
    }
  }

  private static void judge(RuleContext context, String name, Seen seen) {
    if (seen.fromAbove.isEmpty() || seen.fromBelow.isEmpty()) {
      return;
    }
    Place at = seen.fromBelow.get().at();
    if (seen.smallestStepPm == Long.MAX_VALUE) {
      context.notChecked("no step was found in " + name, at);
      return;
    }
    context
        .need(MachineKeys.REVERSAL, at)
        .filter(reversal -> reversal.pm() * 4 > seen.smallestStepPm)
        .ifPresent(reversal -> speak(context, name, seen, reversal));
  }

  private static void speak(RuleContext context, String name, Seen seen, Length reversal) {
    LevelReached below = seen.fromBelow.orElseThrow();
    context.report(
        context
            .occurrence(
                below.at(),
                "levels of "
                    + name
                    + " are approached from above and from below: reversal "
                    + Quantities.um(reversal.pm())
                    + ", a quarter of the step is "
                    + Quantities.um(seen.smallestStepPm / 4))
            .fact("from above at " + context.line(seen.fromAbove.orElseThrow().at(), below.at()))
            .fact(
                "from below at "
                    + context.line(below.at(), below.at())
                    + "; machine.reversal; step "
                    + Quantities.um(seen.smallestStepPm))
            .cure("every level approached from above: retract first, then go down to it")
            .figure("reversal", reversal.um(), "µm")
            .figure("allowed", seen.smallestStepPm / 4e6, "µm")
            .figure("step", seen.smallestStepPm / 1e6, "µm")
            .operation(below.operation())
            .cause(name));
  }
}

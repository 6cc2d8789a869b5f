package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Modal;
import hairline.checks.motion.Modes.Coolant;
import hairline.checks.motion.Place;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.Feature;
import hairline.checks.stock.Cut;
import java.util.HashMap;
import java.util.Map;

/** Fine cuts of one feature are made with different coolant. */
@AutoService(Rule.class)
public final class CoolantChangedInFineCut implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "coolant-changed-in-fine-cut",
              Level.WARNING,
              Group.WARMTH,
              "fine cuts of one feature are made with different coolant",
              Need.OVERLAP,
              Need.STATE)
          .withoutLimit("coolant states differ or they do not");

  /** What the first fine cut of a feature was made with. */
  private record First(Coolant coolant, Place at) {}

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    boolean noFeatures = context.setup().features().isEmpty();
    Map<String, First> firsts = new HashMap<>();
    FineCuts.each(
        on,
        cut -> {
          if (noFeatures) {
            context.notChecked("job.features is not on the sheet", cut.at());
          } else {
            cut.feature().ifPresent(feature -> judge(context, cut, feature, firsts));
          }
        });
  }

  private static void judge(
      RuleContext context, Cut cut, Feature feature, Map<String, First> firsts) {
    Modal<Coolant> coolant = cut.move().modes().coolant();
    if (coolant.isUnknown()) {
      context.notChecked("coolant is unknown since " + context.line(coolant, cut.at()), cut.at());
      return;
    }
    Coolant now = coolant.value().orElse(Coolant.OFF);
    if (!cut.fine() && !firsts.containsKey(feature.name())) {
      return;
    }
    First first = firsts.computeIfAbsent(feature.name(), name -> new First(now, cut.at()));
    if (first.coolant().equals(now)) {
      return;
    }
    FineCuts.report(
        context,
        cut,
        context
            .occurrence(
                cut.at(),
                "fine cut of "
                    + feature.name()
                    + " with "
                    + Coolants.name(now)
                    + ", the first one at "
                    + context.line(first.at(), cut.at())
                    + " was made with "
                    + Coolants.name(first.coolant()))
            .fact("coolant carries heat away: without it tool and part are warmer, so longer")
            .cure("one coolant for all fine cuts of the feature")
            .operation(cut.move().modes().operation())
            .cause(feature.name()));
  }
}

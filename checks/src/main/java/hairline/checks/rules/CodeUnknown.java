package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Event;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;

/** A G or M code, or a call, without known meaning. */
@AutoService(Rule.class)
public final class CodeUnknown implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "code-unknown", Level.WARNING, Group.STATE, "a code has no known meaning", Need.STATE)
          .withoutLimit("a code has a meaning or it has none");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.event(
        Event.CodeUnknown.class,
        event ->
            context.report(
                context
                    .occurrence(event.at(), event.code() + " has no known meaning")
                    .fact("neither the language nor machine.codes gives it one")
                    .cure("its meaning under machine.codes, or machine.codes.ignore")
                    .cause(event.code())));
  }
}

package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.AcceptSeen;
import hairline.checks.finding.Level;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;

/** An accept comment with no reason, or of an unknown rule. */
@AutoService(Rule.class)
public final class SuppressionWithoutReason implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "suppression-without-reason",
              Level.WARNING,
              Group.STATE,
              "an accept comment without a reason, or of an unknown rule",
              Need.WORDS)
          .withoutLimit("a reason stands there or it does not");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.event(
        AcceptSeen.class,
        seen -> {
          String rule = seen.accept().rule();
          if (Rules.named(rule).isEmpty()) {
            context.report(
                context
                    .occurrence(seen.at(), "no rule has the name " + rule)
                    .fact("the comment accepts nothing")
                    .cure("a name from the list of rules")
                    .cause("unknown " + rule));
          } else if (seen.accept().reason().isEmpty()) {
            context.report(
                context
                    .occurrence(seen.at(), rule + " is to be accepted without a reason")
                    .fact("the comment accepts nothing")
                    .cure("hairline: accept " + rule + ": why")
                    .cause("reasonless " + rule));
          }
        });
  }
}

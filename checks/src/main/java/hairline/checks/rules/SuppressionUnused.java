package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.AcceptUnused;
import hairline.checks.finding.Level;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;

/** An accept comment that nothing needed. */
@AutoService(Rule.class)
public final class SuppressionUnused implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "suppression-unused",
              Level.NOTE,
              Group.STATE,
              "an accept comment that nothing needed",
              Need.WORDS)
          .withoutLimit("a comment is needed or it is not");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.event(
        AcceptUnused.class,
        unused -> {
          // An unknown rule is told by suppression-without-reason, and can never be needed.
          if (Rules.named(unused.accept().rule()).isPresent()) {
            context.report(
                context
                    .occurrence(
                        unused.at(), "nothing here needs " + unused.accept().rule() + " accepted")
                    .cure("the comment taken out")
                    .cause(unused.accept().rule() + " " + unused.at().line()));
          }
        });
  }
}

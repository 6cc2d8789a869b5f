package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.AcceptSeen;
import hairline.checks.finding.Level;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.Nearest;
import java.util.List;
import java.util.Optional;

/** An accept comment with no reason, of an unknown rule, or of another form. */
@AutoService(Rule.class)
public final class SuppressionWithoutReason implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "suppression-without-reason",
              Level.WARNING,
              Group.STATE,
              "an accept comment without a reason, of an unknown rule, or of another form",
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
          Optional<String> problem = seen.accept().problem();
          if (problem.isPresent()) {
            context.report(
                context
                    .occurrence(
                        seen.at(), "a comment to hairline is not understood: " + problem.get())
                    .fact("the comment accepts nothing")
                    .cure(
                        "hairline: accept RULE: why, several rules joined by commas; another first"
                            + " word where it is not meant for hairline")
                    .cause("form: " + problem.get()));
          } else if (Rules.named(rule).isEmpty()) {
            List<String> names = Rules.all().stream().map(r -> r.info().name()).toList();
            context.report(
                context
                    .occurrence(seen.at(), "no rule has the name " + rule)
                    .fact("the comment accepts nothing")
                    .cure(
                        Nearest.of(rule, names)
                            .map(near -> "the nearest name is " + near)
                            .orElse("a name from the list of rules"))
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

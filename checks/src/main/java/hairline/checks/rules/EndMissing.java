package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Event.Ended;
import hairline.checks.motion.Event.SubprogramEndMissing;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;

/** No M2 or M30 ends the program. */
@AutoService(Rule.class)
public final class EndMissing implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "end-missing", Level.ERROR, Group.STATE, "the program has no end code", Need.STATE)
          .withoutLimit("an end stands there or it does not");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.event(
        Ended.class,
        end -> {
          if (end.code().isEmpty()) {
            context.report(
                context
                    .occurrence(end.at(), "the text ends without M2, M30 or M99")
                    .fact("what the control does behind the last block is its own affair")
                    .cure("M30 as the last block"));
          }
        });
    on.event(
        SubprogramEndMissing.class,
        end ->
            context.report(
                context
                    .occurrence(end.at(), "subprogram " + end.name() + " ends without M99")
                    .fact("it is taken to return all the same")
                    .cure("M99 as its last block")
                    .cause(end.name())));
  }
}

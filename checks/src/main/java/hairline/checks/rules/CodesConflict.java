package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Event;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;

/** Two codes of one modal group, or two M codes that exclude each other, in one block. */
@AutoService(Rule.class)
public final class CodesConflict implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "codes-conflict",
              Level.ERROR,
              Group.STATE,
              "two codes that exclude each other stand in one block",
              Need.STATE)
          .withoutLimit("two codes exclude each other or they do not");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.event(
        Event.CodesConflict.class,
        event ->
            context.report(
                context
                    .occurrence(
                        event.at(),
                        event.first() + " and " + event.second() + " in one block: " + event.why())
                    .cure("a block for each")
                    .cause(event.first() + " " + event.second())));
    on.event(
        Event.MotionNotStated.class,
        event ->
            context.report(
                context
                    .lesserOccurrence(
                        event.at(),
                        "axis words with no motion code since G80 in "
                            + context.line(event.cancelled(), event.at())
                            + "; controls differ in what they do then")
                    .fact(
                        event
                            .taken()
                            .map(
                                code ->
                                    "followed as " + code + ", as where G80 ends the cycle only")
                            .orElse("no G0 or G1 stood last before it: the axes are unknown"))
                    .cure("G0 or G1 in this block")
                    .cause("no motion since G80")));
  }
}

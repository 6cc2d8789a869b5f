package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Event.OffsetAssumed;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;

/** The first move in work coordinates relies on an offset left from before. */
@AutoService(Rule.class)
public final class OffsetNotStated implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "offset-not-stated",
              Level.WARNING,
              Group.STATE,
              "the first move relies on a work offset that the program never chose",
              Need.STATE)
          .withoutLimit("an offset was chosen or it was not");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.event(
        OffsetAssumed.class,
        event ->
            context.report(
                context
                    .occurrence(event.at(), "a move in work coordinates, and no work offset chosen")
                    .fact("the offset that the last program left is in force")
                    .cure("G54 or the offset meant, before the first move")));
  }
}

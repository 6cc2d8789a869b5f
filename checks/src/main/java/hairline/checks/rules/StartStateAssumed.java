package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Event.StartAssumed;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;

/** A state that the program never stated is needed. */
@AutoService(Rule.class)
public final class StartStateAssumed implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "start-state-assumed",
              Level.WARNING,
              Group.STATE,
              "units, distance mode, feed mode or plane are left to the state at the start",
              Need.STATE)
          .withoutLimit("a mode was stated or it was not");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.event(
        StartAssumed.class,
        event ->
            context.report(
                context
                    .occurrence(
                        event.at(), event.item() + " not stated, " + event.assumed() + " assumed")
                    .fact("neither the program nor machine.control.start says what holds here")
                    .cure(
                        event.item().equals("motion")
                            ? "G0 or G1 in this block"
                            : "state it in the first blocks")
                    .cause(event.item())));
  }
}

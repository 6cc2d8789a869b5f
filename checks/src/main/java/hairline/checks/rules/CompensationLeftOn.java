package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Event.Ended;
import hairline.checks.motion.Event.ToolChanged;
import hairline.checks.motion.Modal;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Place;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;

/** G41 or G42 still on at a tool change or at the end. */
@AutoService(Rule.class)
public final class CompensationLeftOn implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "compensation-left-on",
              Level.WARNING,
              Group.STATE,
              "radius compensation is still on at a tool change or at the end",
              Need.STATE)
          .withoutLimit("compensation is on or off");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.event(
        ToolChanged.class,
        change -> judge(context, change.at(), change.modes(), "the tool change"));
    on.event(Ended.class, end -> judge(context, end.at(), end.modes(), "the end"));
  }

  private static void judge(RuleContext context, Place at, Modes modes, String when) {
    Modal<Modes.Compensation> compensation = modes.compensation();
    if (compensation.isUnknown()) {
      context.notChecked(
          "radius compensation is unknown since " + context.line(compensation, at), at);
    } else if (compensation.is(Modes.Compensation.LEFT)
        || compensation.is(Modes.Compensation.RIGHT)) {
      String code = compensation.is(Modes.Compensation.LEFT) ? "G41" : "G42";
      context.report(
          context
              .occurrence(at, code + " is still on at " + when)
              .fact("on since " + context.line(compensation, at))
              .cure("G40 in a move off the part, before " + when)
              .operation(modes.operation())
              .cause(when));
    }
  }
}

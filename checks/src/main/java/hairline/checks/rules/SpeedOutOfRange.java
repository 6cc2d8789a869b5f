package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Event.SpindleChanged;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.SpindleKeys;
import java.util.Optional;

/** The commanded speed lies outside the range of the spindle while it runs. */
@AutoService(Rule.class)
public final class SpeedOutOfRange implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "speed-out-of-range",
          Level.ERROR,
          Group.STATE,
          "the spindle is to turn slower or faster than it can",
          Need.STATE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.event(
        SpindleChanged.class,
        change ->
            change
                .after()
                .turningRpm()
                .filter(rpm -> rpm > 0)
                .ifPresent(rpm -> judge(context, change, rpm)));
  }

  private static void judge(RuleContext context, SpindleChanged change, double rpm) {
    Optional<Double> least = context.need(SpindleKeys.MIN_SPEED_RPM, change.at());
    Optional<Double> most = context.need(SpindleKeys.MAX_SPEED_RPM, change.at());
    if (least.isPresent() && rpm < least.get()) {
      speak(context, change, rpm, "lowest speed", least.get(), SpindleKeys.MIN_SPEED_RPM.path());
    } else if (most.isPresent() && rpm > most.get()) {
      speak(context, change, rpm, "highest speed", most.get(), SpindleKeys.MAX_SPEED_RPM.path());
    }
  }

  private static void speak(
      RuleContext context,
      SpindleChanged change,
      double rpm,
      String what,
      double limit,
      String key) {
    context.report(
        context
            .occurrence(
                change.at(),
                "S"
                    + Quantities.significant(rpm, 9)
                    + " asks for "
                    + Quantities.rpm(rpm)
                    + ", "
                    + what
                    + " "
                    + Quantities.rpm(limit))
            .fact("limit from " + key)
            .cure("S" + Quantities.significant(limit, 9) + ", or another spindle")
            .figure("speed", rpm, "rpm")
            .figure("limit", limit, "rpm")
            .operation(change.after().operation())
            .cause(what)
            .severity(Math.abs(rpm - limit)));
  }
}

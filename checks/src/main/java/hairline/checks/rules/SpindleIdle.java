package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Occurrence;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.LimitKeys;
import hairline.checks.stock.Cut;
import hairline.checks.warmth.Measuring;
import hairline.checks.warmth.Stop;

/** The spindle stood too long between measuring a tool and a fine cut with it. */
@AutoService(Rule.class)
public final class SpindleIdle implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "spindle-idle",
          Level.WARNING,
          Group.WARMTH,
          "the spindle stood long between measuring a tool and a fine cut with it",
          Need.OVERLAP,
          Need.TIMING);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    FineCuts.eachMeasured(
        context,
        on,
        (cut, measuring) ->
            context
                .stages()
                .warmth()
                .longestStopSinceMeasuring()
                .ifPresent(stop -> judge(context, cut, measuring, stop)));
  }

  private static void judge(RuleContext context, Cut cut, Measuring measuring, Stop stop) {
    double allowed = context.need(LimitKeys.IDLE_TIME_S, cut.at()).orElseThrow();
    switch (stop.time().exceeds(allowed)) {
      case NO -> {}
      case UNKNOWN -> Unsure.of(context, stop.time());
      case YES -> FineCuts.report(context, cut, idle(context, cut, measuring, stop, allowed));
    }
  }

  private static Occurrence.Builder idle(
      RuleContext context, Cut cut, Measuring measuring, Stop stop, double allowed) {
    Occurrence.Builder occurrence =
        context
            .occurrence(
                cut.at(),
                "the spindle stood from "
                    + context.line(stop.from(), cut.at())
                    + " on for "
                    + Seconds.of(stop.time())
                    + ", between measuring at "
                    + context.line(measuring.at(), cut.at())
                    + " and this fine cut; "
                    + Seconds.of(allowed)
                    + " allowed")
            .fact("allowed by " + LimitKeys.IDLE_TIME_S.path())
            .cure("measuring " + FineCuts.tool(cut) + " again before this line, spindle warm")
            .figure("allowed", allowed, "s")
            .operation(cut.move().modes().operation())
            .cause(FineCuts.tool(cut) + " since line " + stop.from().line())
            .severity(stop.time().atLeastSeconds());
    return stop.time().waitsForOperator()
        ? occurrence.fact("M0 and M60 count as longer than any limit")
        : occurrence.figure("stood", stop.time().atLeastSeconds(), "s");
  }
}

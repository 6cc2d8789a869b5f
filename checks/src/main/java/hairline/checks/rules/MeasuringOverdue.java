package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Occurrence;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.LimitKeys;
import hairline.checks.stock.Cut;
import hairline.checks.timing.TimeTaken;
import hairline.checks.warmth.Measuring;

/** A fine cut comes long after its tool was measured. */
@AutoService(Rule.class)
public final class MeasuringOverdue implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "measuring-overdue",
          Level.WARNING,
          Group.WARMTH,
          "a fine cut comes long after its tool was measured",
          Need.OVERLAP,
          Need.TIMING);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    FineCuts.eachMeasured(context, on, (cut, measuring) -> judge(context, cut, measuring));
  }

  /** Here the operator's time is not known, rather than long: what is known decides. */
  private static void judge(RuleContext context, Cut cut, Measuring measuring) {
    double allowed = context.need(LimitKeys.MEASURE_EVERY_S, cut.at()).orElseThrow();
    TimeTaken since = context.stages().time().since(measuring.end());
    if (TimeTaken.exceeds(since.atLeastSeconds(), allowed)) {
      FineCuts.report(context, cut, overdue(context, cut, measuring, since, allowed));
    } else if (TimeTaken.exceeds(since.atMostSeconds(), allowed)) {
      Unsure.of(context, since);
    }
  }

  private static Occurrence.Builder overdue(
      RuleContext context, Cut cut, Measuring measuring, TimeTaken since, double allowed) {
    return context
        .occurrence(
            cut.at(),
            "fine cut "
                + (since.isKnown() ? "" : "at least ")
                + Seconds.of(since.atLeastSeconds())
                + " after "
                + FineCuts.tool(cut)
                + " was measured at "
                + context.line(measuring.at(), cut.at())
                + ", "
                + Seconds.of(allowed)
                + " allowed")
        .fact("allowed by " + LimitKeys.MEASURE_EVERY_S.path() + "; times as planned")
        .cure("measuring " + FineCuts.tool(cut) + " again before this line")
        .figure("time", since.atLeastSeconds(), "s")
        .figure("allowed", allowed, "s")
        .operation(cut.move().modes().operation())
        .cause(FineCuts.tool(cut) + " measured at line " + measuring.at().line())
        .severity(since.atLeastSeconds());
  }
}

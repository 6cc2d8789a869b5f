package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Occurrence;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.stock.Cut;
import hairline.checks.warmth.Measuring;

/** A tool makes a fine cut and was measured with a spindle that was not warmed up. */
@AutoService(Rule.class)
public final class ToolMeasuredCold implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "tool-measured-cold",
              Level.ERROR,
              Group.WARMTH,
              "a tool makes a fine cut and was measured with no valid warm-up behind it",
              Need.OVERLAP,
              Need.TIMING)
          .withoutLimit(
              "a warm-up was valid or it was not; its time is the matter of warm-up-missing");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    FineCuts.eachMeasured(context, on, (cut, measuring) -> judge(context, cut, measuring));
  }

  private static void judge(RuleContext context, Cut cut, Measuring measuring) {
    switch (measuring.warmUp().valid()) {
      case YES -> {}
      case UNKNOWN -> Unsure.of(context, measuring.warmUp(), measuring.at());
      case NO -> FineCuts.report(context, cut, cold(context, cut, measuring));
    }
  }

  private static Occurrence.Builder cold(RuleContext context, Cut cut, Measuring measuring) {
    return context
        .occurrence(
            cut.at(),
            FineCuts.tool(cut)
                + " makes a fine cut and was measured at "
                + context.line(measuring.at(), cut.at())
                + " with no valid warm-up behind it")
        .fact(
            measuring
                .warmUp()
                .expiredAt()
                .map(at -> "the warm-up had expired at " + context.line(at, cut.at()))
                .orElse("no warm-up stands before " + context.line(measuring.at(), cut.at())))
        .fact("what the spindle grew since goes into the depth of this cut")
        .cure("measuring behind the warm-up and before this line")
        .operation(cut.move().modes().operation())
        .cause(FineCuts.tool(cut) + " measured at line " + measuring.at().line());
  }
}

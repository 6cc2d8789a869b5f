package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.cutting.FeedPerTooth;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.ToolKeys;

/** A tooth moves on by more than the tool bears. */
@AutoService(Rule.class)
public final class ChipAboveLimit implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "chip-above-limit",
          Level.ERROR,
          Group.CHIPS,
          "the feed per tooth is larger than the tool bears",
          Need.OVERLAP);

  /** Equal figures must stay equal however the division rounds. */
  private static final double EQUAL_WITHIN = 1e-9;

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    ToothCuts.judgeEach(context, on, tooth -> judge(context, tooth, ""));
    ToothCuts.eachDown(context, on, tooth -> judge(context, tooth, " straight down"));
  }

  private static void judge(RuleContext context, ToothCuts.ToothCut tooth, String way) {
    context
        .need(tooth.tool(), ToolKeys.MAX_FEED_PER_TOOTH, tooth.cut().at())
        .filter(limit -> tooth.feedPerToothUm() > limit.um() * (1 + EQUAL_WITHIN))
        .ifPresent(limit -> speak(context, tooth, way, limit.um()));
  }

  private static void speak(
      RuleContext context, ToothCuts.ToothCut tooth, String way, double limitUm) {
    double enough =
        StrictMath.floor(
            FeedPerTooth.feedMmPerMin(limitUm, tooth.rpm(), tooth.mill().flutes())
                * (1 + EQUAL_WITHIN));
    context.report(
        context
            .occurrence(
                tooth.cut().at(),
                "feed per tooth"
                    + way
                    + " "
                    + Quantities.um(tooth.feedPerToothUm(), limitUm)
                    + ", the tool bears "
                    + Quantities.um(limitUm))
            .fact(tooth.arithmetic())
            .fact("limit from " + tooth.tool().path(ToolKeys.MAX_FEED_PER_TOOTH))
            .cure(tooth.feedWord(enough) + " or less at this speed")
            .figure("feedPerTooth", tooth.feedPerToothUm(), "µm")
            .figure("limit", limitUm, "µm")
            .figure("feedThatWouldDo", enough, "mm/min")
            .operation(tooth.cut().move().modes().operation())
            .cause(tooth.cause() + way)
            .severity(tooth.feedPerToothUm()));
  }
}

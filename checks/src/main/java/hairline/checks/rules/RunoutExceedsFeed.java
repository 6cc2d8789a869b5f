package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.cutting.Band;
import hairline.checks.cutting.Certainty;
import hairline.checks.cutting.Engagement;
import hairline.checks.cutting.Runout;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.ToolKeys;
import java.util.Optional;

/** The edges run out by more than a tooth moves on, so that one of them never cuts. */
@AutoService(Rule.class)
public final class RunoutExceedsFeed implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "runout-exceeds-feed",
          Level.WARNING,
          Group.CHIPS,
          "runout leaves at least one tooth without a cut",
          Need.OVERLAP);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    ToothCuts.judgeEach(
        context,
        on,
        tooth -> {
          if (tooth.mill().flutes() > 1) {
            context
                .need(tooth.tool(), ToolKeys.RUNOUT, tooth.cut().at())
                .ifPresent(runout -> compare(context, tooth, runout.um()));
          }
        });
  }

  private static void compare(RuleContext context, ToothCuts.ToothCut tooth, Band readingUm) {
    Optional<Engagement> engagement = tooth.engagement();
    double radialUm = tooth.feedPerToothUm() * engagement.map(Engagement::maxSine).orElse(1.0);
    Certainty idle = Runout.leavesToothIdle(radialUm, readingUm, tooth.mill().flutes());
    if (idle == Certainty.NOT_SHOWN && engagement.isEmpty()) {
      context.notChecked(
          "the width of cut is not known, and a full slot would let every tooth cut",
          tooth.cut().at());
      return;
    }
    boolean two = tooth.mill().flutes() == 2;
    double neighbourUm = Runout.neighbourStepUm(readingUm.typical(), tooth.mill().flutes());
    context
        .occurrence(
            idle,
            tooth.cut().at(),
            () ->
                "runout "
                    + Bands.um(readingUm)
                    + (two ? "" : ", between neighbouring teeth " + Quantities.um(neighbourUm))
                    + ", largest advance of a tooth across its edge "
                    + Quantities.um(radialUm))
        .ifPresent(
            occurrence ->
                context.report(
                    occurrence
                        .fact(tooth::arithmetic)
                        .fact(
                            () ->
                                engagement
                                    .map(
                                        e ->
                                            "engagement: largest sine "
                                                + Quantities.significant(e.maxSine(), 4))
                                    .orElse(
                                        "width of cut not known: a full slot is the upper bound"))
                        .fact(() -> "runout from " + tooth.tool().path(ToolKeys.RUNOUT))
                        .cure(
                            () ->
                                "a feed per tooth above "
                                    + Quantities.um(
                                        neighbourUm
                                            / engagement.map(Engagement::maxSine).orElse(1.0))
                                    + ", or a tool clamped to less runout")
                        .figure("runout", readingUm.typical(), "µm")
                        .figure("feedPerTooth", tooth.feedPerToothUm(), "µm")
                        .figure("advance", radialUm, "µm")
                        .operation(tooth.cut().move().modes().operation())
                        .cause(tooth.cause())
                        .severity(-radialUm)));
  }
}

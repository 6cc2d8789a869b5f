package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.cutting.Band;
import hairline.checks.cutting.FeedPerTooth;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.ToolKeys;

/** A tooth moves on by less than its edge is rounded. */
@AutoService(Rule.class)
public final class FeedBelowEdgeRadius implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "feed-below-edge-radius",
          Level.WARNING,
          Group.CHIPS,
          "the feed per tooth is smaller than the rounding of the cutting edge",
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
        tooth ->
            context
                .need(tooth.tool(), ToolKeys.EDGE_RADIUS, tooth.cut().at())
                .ifPresent(edge -> compare(context, tooth, edge.um())));
  }

  private static void compare(RuleContext context, ToothCuts.ToothCut tooth, Band edgeUm) {
    double feedUm = tooth.feedPerToothUm();
    double enough =
        StrictMath.ceil(
            FeedPerTooth.feedMmPerMin(edgeUm.typical(), tooth.rpm(), tooth.mill().flutes()));
    context
        .occurrence(
            Band.ofExact(feedUm).below(edgeUm),
            tooth.cut().at(),
            () ->
                "feed per tooth "
                    + Quantities.um(feedUm, edgeUm.typical())
                    + ", edge radius "
                    + Bands.um(edgeUm, feedUm))
        .ifPresent(
            occurrence ->
                context.report(
                    occurrence
                        .fact(tooth::arithmetic)
                        .fact(() -> "edge radius from " + tooth.tool().path(ToolKeys.EDGE_RADIUS))
                        .cure(
                            () ->
                                tooth.feedWord(enough)
                                    + " or more at this speed, or a sharper edge")
                        .figure("feedPerTooth", feedUm, "µm")
                        .figure("edgeRadius", edgeUm.typical(), "µm")
                        .figure("feedThatWouldDo", enough, "mm/min")
                        .operation(tooth.cut().move().modes().operation())
                        .cause(tooth.cause())
                        .severity(-feedUm)));
  }
}

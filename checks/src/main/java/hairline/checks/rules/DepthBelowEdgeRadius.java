package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.cutting.Band;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.LengthBand;
import hairline.checks.setup.Tool;
import hairline.checks.setup.ToolKeys;
import hairline.checks.stock.Cut;

/** A fine cut is shallower than its edge is rounded. */
@AutoService(Rule.class)
public final class DepthBelowEdgeRadius implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "depth-below-edge-radius",
          Level.WARNING,
          Group.STEPS,
          "a fine cut is shallower than the rounding of the edge",
          Need.SURFACE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    FineDepths.each(context, on, (cut, tool, depthPm) -> judge(context, cut, tool, depthPm));
  }

  private static void judge(RuleContext context, Cut cut, Tool tool, long depthPm) {
    context
        .need(tool, ToolKeys.EDGE_RADIUS, cut.at())
        .map(LengthBand::um)
        .ifPresent(
            edgeUm ->
                context
                    .occurrence(
                        Band.ofExact(depthPm / 1e6).below(edgeUm),
                        cut.at(),
                        () ->
                            "depth " + Quantities.um(depthPm) + ", edge radius " + Bands.um(edgeUm))
                    .ifPresent(
                        occurrence ->
                            context.report(
                                occurrence
                                    .fact(
                                        () -> "edge radius from " + tool.path(ToolKeys.EDGE_RADIUS))
                                    .cure("a deeper pass, or a sharper tool")
                                    .figure("depth", depthPm / 1e6, "µm")
                                    .figure("edgeRadius", edgeUm.typical(), "µm")
                                    .operation(cut.move().modes().operation())
                                    .cause("tool " + tool.number())
                                    .severity((double) -depthPm))));
  }
}

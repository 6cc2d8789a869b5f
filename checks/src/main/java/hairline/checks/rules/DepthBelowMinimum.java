package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.cutting.Band;
import hairline.checks.cutting.MinimumChip;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.LengthBand;
import hairline.checks.setup.MaterialKeys;
import hairline.checks.setup.Tool;
import hairline.checks.setup.ToolKeys;
import hairline.checks.stock.Cut;
import java.util.Optional;

/** A fine cut is shallower than the thinnest chip of the end edge. */
@AutoService(Rule.class)
public final class DepthBelowMinimum implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "depth-below-minimum",
          Level.ERROR,
          Group.STEPS,
          "a fine cut is shallower than a chip of the end edge: it rubs",
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
    Optional<Band> edgeUm = context.need(tool, ToolKeys.EDGE_RADIUS, cut.at()).map(LengthBand::um);
    Optional<Band> ratio = context.need(MaterialKeys.MINIMUM_CHIP_RATIO, cut.at());
    if (edgeUm.isEmpty() || ratio.isEmpty()) {
      return;
    }
    Band minimumUm = MinimumChip.um(ratio.get(), edgeUm.get());
    context
        .occurrence(
            Band.ofExact(depthPm / 1e6).below(minimumUm),
            cut.at(),
            () ->
                "depth "
                    + Quantities.um(depthPm)
                    + ", minimum chip of the end edge "
                    + Bands.um(minimumUm)
                    + " ("
                    + Bands.with(ratio.get(), "")
                    + " × edge radius "
                    + Bands.um(edgeUm.get())
                    + ")")
        .ifPresent(
            occurrence ->
                context.report(
                    occurrence
                        .fact(
                            () ->
                                "edge radius from "
                                    + tool.path(ToolKeys.EDGE_RADIUS)
                                    + ", ratio from "
                                    + MaterialKeys.MINIMUM_CHIP_RATIO.path())
                        .cure(() -> "a depth above " + Bands.um(minimumUm) + ", or a sharper tool")
                        .figure("depth", depthPm / 1e6, "µm")
                        .figure("minimum", minimumUm.typical(), "µm")
                        .operation(cut.move().modes().operation())
                        .cause("tool " + tool.number())
                        .severity((double) -depthPm)));
  }
}

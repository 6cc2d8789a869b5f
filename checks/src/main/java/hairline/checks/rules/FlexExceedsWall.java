package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.cutting.Band;
import hairline.checks.cutting.Certainty;
import hairline.checks.cutting.CuttingForce;
import hairline.checks.cutting.Flex;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.JobKeys;
import hairline.checks.setup.LimitKeys;
import hairline.checks.setup.Tolerance;
import java.util.Optional;

/** A wall moves by the sideways flex of the tool. */
@AutoService(Rule.class)
public final class FlexExceedsWall implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "flex-exceeds-wall",
          Level.ERROR,
          Group.STEPS,
          "the tool bends away from a wall by more than its share of the tolerance",
          Need.SURFACE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    Optional<Tolerance> tolerance = context.need(JobKeys.WALL_TOLERANCE);
    if (tolerance.isEmpty()) {
      return;
    }
    double toleranceUm = tolerance.get().halfWidthUm();
    ToolLoads.each(
        context,
        on,
        (tooth, load) -> {
          if (leavesWall(tooth) && load.force() instanceof CuttingForce.Cutting force) {
            context
                .need(LimitKeys.FLEX_SHARE, tooth.cut().at())
                .ifPresent(share -> judge(context, tooth, load, force, share, toleranceUm));
          }
        });
  }

  /** Roughing walls are cut away later; the ones that stay are those of fine cuts and features. */
  private static boolean leavesWall(ToothCuts.ToothCut tooth) {
    return tooth.cut().runsAtLevel() && (tooth.cut().fine() || tooth.cut().feature().isPresent());
  }

  private static void judge(
      RuleContext context,
      ToothCuts.ToothCut tooth,
      ToolLoads.Load load,
      CuttingForce.Cutting force,
      double share,
      double toleranceUm) {
    Band flexUm = load.flex().sidewaysUm(force);
    double allowedUm = share * toleranceUm;
    Certainty over = flexUm.above(allowedUm);
    if (over == Certainty.NOT_SHOWN) {
      return;
    }
    if (load.bound()) {
      context.notChecked(ToolLoads.WIDTH_UNKNOWN, tooth.cut().at());
      return;
    }
    String side =
        tooth
            .cut()
            .climb()
            .map(climb -> climb ? "climb: stock is left" : "conventional: the wall is overcut")
            .orElse("slot: one wall is left, the other overcut");
    context
        .occurrence(
            over,
            tooth.cut().at(),
            () ->
                "the tool flexes sideways by "
                    + Bands.um(flexUm, allowedUm)
                    + ", allowed "
                    + Quantities.um(allowedUm, flexUm.typical())
                    + "; "
                    + side)
        .ifPresent(
            occurrence ->
                context.report(
                    occurrence
                        .fact(() -> load.arithmetic(tooth, force))
                        .fact(
                            () ->
                                "allowed is "
                                    + LimitKeys.FLEX_SHARE.path()
                                    + " "
                                    + Quantities.significant(share, 4)
                                    + " of "
                                    + JobKeys.WALL_TOLERANCE.path()
                                    + " ±"
                                    + Quantities.um(toleranceUm))
                        .cure(
                            () ->
                                load.neckThatWouldDo(
                                            beam ->
                                                new Flex(
                                                        beam,
                                                        load.flex().youngsModulusGPa(),
                                                        load.flex().forceAtMm())
                                                    .sidewaysUm(force)
                                                    .typical(),
                                            allowedUm)
                                        .orElse("a stiffer tool")
                                    + ", a lower force, or a last pass at a thin strip")
                        .figure("flex", flexUm.typical(), "µm")
                        .figure("flexLow", flexUm.low(), "µm")
                        .figure("allowed", allowedUm, "µm")
                        .figure("force", force.tangentialN().typical(), "N")
                        .operation(tooth.cut().move().modes().operation())
                        .cause(tooth.cause())
                        .severity(flexUm.typical())));
  }
}

package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.cutting.Band;
import hairline.checks.cutting.Certainty;
import hairline.checks.cutting.CuttingForce;
import hairline.checks.cutting.ToolBeam;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.rules.RuleInfo.Scope;
import hairline.checks.setup.ToolKeys;

/** At the peak force the tool bends beyond half of its rupture strength. */
@AutoService(Rule.class)
public final class ToolOverstressed implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "tool-overstressed",
              Level.ERROR,
              Group.STEPS,
              "the tool bends beyond half of its rupture strength",
              Need.SURFACE)
          .hiding(Scope.OPERATION, "flex-exceeds-step", "flex-exceeds-wall");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    ToolLoads.each(
        context,
        on,
        (tooth, load) -> {
          if (load.force() instanceof CuttingForce.Cutting force) {
            context
                .need(tooth.tool(), ToolKeys.RUPTURE_STRENGTH_MPA, tooth.cut().at())
                .ifPresent(strength -> judge(context, tooth, load, force, strength));
          }
        });
  }

  private static void judge(
      RuleContext context,
      ToothCuts.ToothCut tooth,
      ToolLoads.Load load,
      CuttingForce.Cutting force,
      Band strengthMPa) {
    Band stressMPa = load.flex().stressMPa(force);
    Band allowedMPa = strengthMPa.scale(0.5);
    Certainty over = stressMPa.above(allowedMPa);
    if (over == Certainty.NOT_SHOWN) {
      return;
    }
    if (load.bound()) {
      context.notChecked(ToolLoads.WIDTH_UNKNOWN, tooth.cut().at());
      return;
    }
    ToolBeam.Stress worst = load.flex().largestStress();
    context
        .occurrence(
            over,
            tooth.cut().at(),
            () ->
                "bending stress "
                    + Bands.with(stressMPa, "MPa", allowedMPa.typical())
                    + ", allowed "
                    + Bands.with(allowedMPa, "MPa", stressMPa.typical())
                    + ", half of the rupture strength")
        .ifPresent(
            occurrence ->
                context.report(
                    occurrence
                        .fact(() -> load.arithmetic(tooth, force))
                        .fact(
                            () ->
                                "largest at the "
                                    + worst.part().name().toLowerCase(java.util.Locale.ROOT)
                                    + ", "
                                    + Quantities.mm(worst.atMm())
                                    + " from the tip; strength from "
                                    + tooth.tool().path(ToolKeys.RUPTURE_STRENGTH_MPA))
                        .cure(
                            () ->
                                load.neckThatWouldDo(
                                            beam ->
                                                beam.largestStress(load.flex().forceAtMm())
                                                        .mPaPerN()
                                                    * force.tangentialN().typical(),
                                            allowedMPa.typical())
                                        .orElse("a stiffer tool")
                                    + ", a shallower pass, or a lower feed")
                        .figure("stress", stressMPa.typical(), "MPa")
                        .figure("allowed", allowedMPa.typical(), "MPa")
                        .figure("force", force.tangentialN().typical(), "N")
                        .operation(tooth.cut().move().modes().operation())
                        .cause(tooth.cause())
                        .severity(stressMPa.typical())));
  }
}

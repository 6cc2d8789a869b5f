package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.cutting.Band;
import hairline.checks.cutting.Certainty;
import hairline.checks.cutting.CuttingForce;
import hairline.checks.cutting.Flex;
import hairline.checks.cutting.FloorError;
import hairline.checks.cutting.ToolBeam;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.LimitKeys;
import hairline.checks.stock.Cut;
import hairline.checks.stock.StepFound;
import hairline.checks.stock.Terrace;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** The bending tool leaves the two levels of a step at different errors. */
@AutoService(Rule.class)
public final class FlexExceedsStep implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "flex-exceeds-step",
          Level.ERROR,
          Group.STEPS,
          "the bending tool changes a step by more than its share",
          Need.SURFACE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  /** So many levels are followed; steps of later ones are not checked. */
  private static final int MOST_LEVELS = 100_000;

  /** The largest error that a level's cuts left on its floor. */
  private record Floor(
      FloorError error,
      int tool,
      ToolLoads.Load load,
      CuttingForce.Cutting force,
      String arithmetic) {}

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    Map<Integer, Floor> floors = new HashMap<>();
    ToolLoads.each(
        context,
        on,
        (tooth, load) -> {
          if (tooth.cut().runsAtLevel()
              && tooth.cut().levelId() > Cut.UNCUT
              && load.force() instanceof CuttingForce.Cutting force
              && floors.size() < MOST_LEVELS) {
            FloorError error = load.flex().floorError(force, load.mill().floorRadiusMm());
            Floor known = floors.get(tooth.cut().levelId());
            if (known == null || isLarger(error, known.error())) {
              floors.put(
                  tooth.cut().levelId(),
                  new Floor(
                      error, tooth.tool().number(), load, force, load.arithmetic(tooth, force)));
            }
          }
        });
    on.event(
        StepFound.class,
        step ->
            context
                .need(LimitKeys.FLEX_SHARE, step.at())
                .ifPresent(share -> judge(context, floors, step, share)));
  }

  private static boolean isLarger(FloorError one, FloorError other) {
    return Math.abs(one.typicalUm()) > Math.abs(other.typicalUm());
  }

  private static void judge(
      RuleContext context, Map<Integer, Floor> floors, StepFound step, double share) {
    Optional<Floor> lower = Optional.ofNullable(floors.get(step.lower().levelId()));
    Optional<Floor> upper = Optional.ofNullable(floors.get(step.upper().levelId()));
    if (lower.isEmpty() || (upper.isEmpty() && !step.upper().uncut())) {
      Terrace missing = lower.isEmpty() ? step.lower() : step.upper();
      context.notChecked(
          "the force on the level at " + Quantities.mm(missing.storedZPm()) + " is not known",
          step.at());
      return;
    }
    Band errorUm = FloorError.ofStepUm(lower.get().error(), upper.map(Floor::error));
    double allowedUm = step.heightPm() / 1e6 * share;
    boolean bound = lower.get().load().bound() || upper.map(f -> f.load().bound()).orElse(false);
    if (bound) {
      double worstUm =
          Math.max(
              Math.abs(lower.get().error().deeperUm().typical()),
              upper.map(f -> Math.abs(f.error().deeperUm().typical())).orElse(0.0));
      if (worstUm > allowedUm) {
        context.notChecked(ToolLoads.WIDTH_UNKNOWN, step.at());
      }
      return;
    }
    Certainty over = errorUm.above(allowedUm);
    context
        .occurrence(
            over,
            step.at(),
            () ->
                "the tool's flex changes the step of "
                    + Quantities.um(step.heightPm())
                    + " by "
                    + Bands.um(errorUm, allowedUm)
                    + ", allowed "
                    + Quantities.um(allowedUm, errorUm.typical()))
        .ifPresent(
            occurrence -> {
              occurrence
                  .fact(
                      "lower level: floor "
                          + Bands.um(lower.get().error().deeperUm())
                          + " too deep ("
                          + lower.get().arithmetic()
                          + ")")
                  .fact(
                      upper
                          .map(
                              f ->
                                  "upper level: floor "
                                      + Bands.um(f.error().deeperUm())
                                      + " too deep")
                          .orElse("upper level: uncut, no error"))
                  .fact(
                      "allowed is "
                          + LimitKeys.FLEX_SHARE.path()
                          + " "
                          + Quantities.significant(share, 4)
                          + " of the step")
                  .cure(cure(lower.get(), upper, allowedUm))
                  .figure("flex", errorUm.typical(), "µm")
                  .figure("flexLow", errorUm.low(), "µm")
                  .figure("allowed", allowedUm, "µm")
                  .figure("step", step.heightPm() / 1e6, "µm")
                  .operation(step.later().lastOperation())
                  .cause("step")
                  .severity(errorUm.typical() / allowedUm);
              context.report(occurrence);
            });
  }

  private static String cure(Floor lower, Optional<Floor> upper, double allowedUm) {
    boolean twoTools = upper.isPresent() && upper.get().tool() != lower.tool();
    return lower
        .load()
        .neckThatWouldDo(beam -> stepErrorUm(beam, lower, upper), allowedUm)
        .map(neck -> neck + (twoTools ? " on tool " + lower.tool() : "") + ", or a lower force")
        .orElse("a stiffer tool, or a lower force: a shallower last pass over both levels");
  }

  /** With another beam for the tool of the lower level; what another tool cut stays as it is. */
  private static double stepErrorUm(ToolBeam beam, Floor lower, Optional<Floor> upper) {
    return FloorError.ofStepUm(
            errorWith(beam, lower),
            upper.map(u -> u.tool() == lower.tool() ? errorWith(beam, u) : u.error()))
        .typical();
  }

  private static FloorError errorWith(ToolBeam beam, Floor floor) {
    Flex flex = floor.load().flex();
    return new Flex(beam, flex.youngsModulusGPa(), flex.forceAtMm())
        .floorError(floor.force(), floor.load().mill().floorRadiusMm());
  }
}

package hairline.checks.rules;

import hairline.checks.cutting.Band;
import hairline.checks.cutting.CuttingForce;
import hairline.checks.cutting.EndMill;
import hairline.checks.cutting.Engagement;
import hairline.checks.cutting.Flex;
import hairline.checks.cutting.Kienzle;
import hairline.checks.cutting.ToolBody;
import hairline.checks.cutting.ToothLoad;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Place;
import hairline.checks.setup.Length;
import hairline.checks.setup.MaterialKeys;
import hairline.checks.setup.Tool;
import hairline.checks.setup.ToolKeys;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiConsumer;

/** The force of each cut and the tool that bears it, for the rules about flex and strength. */
final class ToolLoads {
  /** Why a bound does not decide. */
  static final String WIDTH_UNKNOWN =
      "the width of cut is not known, and the force of a full slot would be too much";

  /** So many different cuts are remembered before the memory is emptied. */
  private static final int MOST_REMEMBERED = 4096;

  /**
   * A cut's force and the tool that bears it.
   *
   * @param force on the most loaded tooth, where its chip is thickest
   * @param bound whether the width of cut is not known and a full slot was taken
   */
  record Load(EndMill mill, ToolBody body, Flex flex, CuttingForce force, boolean bound) {
    /** The force in words, for the facts of a finding. */
    String arithmetic(ToothCuts.ToothCut tooth, CuttingForce.Cutting cutting) {
      return tooth.conditions()
          + ": depth "
          + Quantities.um(tooth.depthMm().orElse(0) * 1000)
          + ", largest chip "
          + Bands.um(cutting.chipUm())
          + ", force "
          + Bands.with(cutting.tangentialN(), "N");
    }
  }

  private record Key(int tool, double feedPerToothUm, double depthMm, double radialMm) {}

  private record Body(ToolBody body, Band youngsModulusGPa) {}

  private final RuleContext context;
  private final Map<Integer, Optional<Body>> bodies = new HashMap<>();
  private final Map<Key, Load> remembered = new HashMap<>();

  private ToolLoads(RuleContext context) {
    this.context = context;
  }

  /** Calls the taker for each cut whose force can be told. */
  static void each(
      RuleContext context, Subscriptions on, BiConsumer<ToothCuts.ToothCut, Load> taker) {
    ToolLoads loads = new ToolLoads(context);
    ToothCuts.eachByStretch(
        context, on, tooth -> loads.load(tooth).ifPresent(load -> taker.accept(tooth, load)));
  }

  private Optional<Load> load(ToothCuts.ToothCut tooth) {
    Place at = tooth.cut().at();
    OptionalDouble depthMm = tooth.depthMm();
    if (depthMm.isEmpty()) {
      context.notChecked("the depth of cut is not known, so no force is reckoned", at);
      return Optional.empty();
    }
    Optional<Band> specificForce = context.need(MaterialKeys.SPECIFIC_FORCE_MPA, at);
    Optional<Band> exponent = context.need(MaterialKeys.FORCE_EXPONENT, at);
    Optional<Body> body =
        bodies.computeIfAbsent(tooth.tool().number(), n -> body(tooth.tool(), at));
    if (specificForce.isEmpty() || exponent.isEmpty() || body.isEmpty()) {
      return Optional.empty();
    }
    Optional<Engagement> engagement = tooth.loadedEngagement();
    Key key =
        new Key(
            tooth.tool().number(),
            tooth.feedPerToothUm(),
            depthMm.getAsDouble(),
            engagement.map(Engagement::maxSine).orElse(-1.0));
    Load known = remembered.get(key);
    if (known == null) {
      known =
          compute(
              tooth,
              depthMm.getAsDouble(),
              engagement,
              new Kienzle(specificForce.get(), exponent.get()),
              body.get());
      if (remembered.size() == MOST_REMEMBERED) {
        remembered.clear();
      }
      remembered.put(key, known);
    }
    return Optional.of(known);
  }

  private Load compute(
      ToothCuts.ToothCut tooth,
      double depthMm,
      Optional<Engagement> engagement,
      Kienzle kienzle,
      Body body) {
    ToothLoad load =
        new ToothLoad(
            tooth.mill(), depthMm, tooth.feedPerToothUm(), engagement.orElseGet(Engagement::slot));
    Optional<Band> minimumUm =
        context.setup().get(MaterialKeys.MINIMUM_CHIP_RATIO).flatMap(load::minimumChipUm);
    return new Load(
        tooth.mill(),
        body.body(),
        new Flex(body.body().beam(), body.youngsModulusGPa(), body.body().forceAtMm(depthMm)),
        load.peakForce(kienzle, minimumUm),
        engagement.isEmpty());
  }

  private Optional<Body> body(Tool tool, Place at) {
    Optional<Length> diameter = context.need(tool, ToolKeys.DIAMETER, at);
    Optional<Length> cuttingLength = context.need(tool, ToolKeys.CUTTING_LENGTH, at);
    Optional<Length> shankDiameter = context.need(tool, ToolKeys.SHANK_DIAMETER, at);
    Optional<Length> shankLength = context.need(tool, ToolKeys.SHANK_LENGTH, at);
    Optional<Band> youngsModulus = context.need(tool, ToolKeys.YOUNGS_MODULUS_GPA, at);
    if (diameter.isEmpty()
        || cuttingLength.isEmpty()
        || shankDiameter.isEmpty()
        || shankLength.isEmpty()
        || youngsModulus.isEmpty()) {
      return Optional.empty();
    }
    Optional<ToolBody.Neck> neck =
        tool.get(ToolKeys.NECK_DIAMETER)
            .flatMap(
                neckDiameter ->
                    tool.get(ToolKeys.NECK_LENGTH)
                        .map(length -> new ToolBody.Neck(neckDiameter.mm(), length.mm())));
    return Optional.of(
        new Body(
            new ToolBody(
                diameter.get().mm(),
                cuttingLength.get().mm(),
                neck,
                tool.get(ToolKeys.TAPER_LENGTH).map(Length::mm).orElse(0.0),
                new ToolBody.Shank(shankDiameter.get().mm(), shankLength.get().mm())),
            youngsModulus.get()));
  }
}

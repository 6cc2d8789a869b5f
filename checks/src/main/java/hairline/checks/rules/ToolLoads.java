package hairline.checks.rules;

import hairline.checks.cutting.Band;
import hairline.checks.cutting.CuttingForce;
import hairline.checks.cutting.EndMill;
import hairline.checks.cutting.Engagement;
import hairline.checks.cutting.Flex;
import hairline.checks.cutting.Kienzle;
import hairline.checks.cutting.ToolBeam;
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
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

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
   * @param kienzle the constants it was reckoned with
   * @param bound whether the width of cut is not known and a full slot was taken
   */
  record Load(
      EndMill mill, ToolBody body, Flex flex, CuttingForce force, Kienzle kienzle, boolean bound) {
    /** The force as a sum that can be done by hand, with typical values, for the facts. */
    String arithmetic(ToothCuts.ToothCut tooth, CuttingForce.Cutting cutting) {
      double depthMm = tooth.depthMm().orElse(0);
      double chipUm = cutting.chipUm().typical();
      Band factor = cutting.range().factor();
      return tooth.conditions()
          + ", depth "
          + Quantities.um(depthMm * 1000)
          + ": largest chip "
          + Bands.um(cutting.chipUm())
          + " × chip width "
          + Quantities.mm(depthMm / mill.sinKappa(depthMm).typical())
          + " × specific force "
          + Quantities.significant(kienzle.kcMPa(chipUm).typical(), 4)
          + " MPa"
          + (factor.isExact() ? "" : " × " + Quantities.significant(factor.typical(), 4))
          + " = force "
          + Bands.with(cutting.tangentialN(), "N")
          + (factor.isExact()
              ? ""
              : "; for chips below 10 µm the formula is taken × "
                  + Quantities.significant(factor.low(), 4)
                  + ", typically "
                  + Quantities.significant(factor.typical(), 4)
                  + ", at most "
                  + Quantities.significant(factor.high(), 4)
                  + " (our choice, no source)");
    }

    /**
     * A neck that would do, as a cure names it; empty without a neck, or where none would do.
     *
     * @param error of a beam under the typical force; must not fall as the neck grows
     */
    Optional<String> neckThatWouldDo(ToDoubleFunction<ToolBeam> error, double allowed) {
      OptionalDouble neckMm = body.longestNeckMm(error, allowed);
      return neckMm.isEmpty()
          ? Optional.empty()
          : Optional.of(
              "a neck "
                  + Quantities.significant(StrictMath.floor(neckMm.getAsDouble() * 1000) / 1000, 9)
                  + " mm long or shorter");
    }
  }

  private record Key(int tool, double feedPerToothUm, double depthMm, double radialMm) {}

  /** The constants of the material, as they were last asked for. */
  private @Nullable Kienzle kienzle;

  private record Body(ToolBody body, Band youngsModulusGPa) {}

  private final RuleContext context;
  private final Map<Integer, Optional<Body>> bodies = new HashMap<>();
  private final Map<Key, Load> remembered = new HashMap<>();

  private ToolLoads(RuleContext context) {
    this.context = context;
  }

  /**
   * Calls the taker for each cut whose force can be told; behind one of which it said nothing, it
   * is spared those that are {@linkplain ToothCuts.ToothCut#alike alike}.
   */
  static void each(
      RuleContext context, Subscriptions on, BiConsumer<ToothCuts.ToothCut, Load> taker) {
    ToolLoads loads = new ToolLoads(context);
    ToothCuts.judgeEachByStretch(
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
    Optional<Body> body = bodies.get(tooth.tool().number());
    if (body == null) {
      body = body(tooth.tool(), at);
      bodies.put(tooth.tool().number(), body);
    }
    if (specificForce.isEmpty() || exponent.isEmpty() || body.isEmpty()) {
      return Optional.empty();
    }
    Kienzle material = kienzle(specificForce.get(), exponent.get());
    Body bears = body.get();
    return Optional.of(tooth.load(() -> remembered(tooth, depthMm.getAsDouble(), material, bears)));
  }

  private Kienzle kienzle(Band specificForce, Band exponent) {
    Kienzle known = kienzle;
    if (known == null || !known.kc11MPa().equals(specificForce) || !known.mc().equals(exponent)) {
      known = new Kienzle(specificForce, exponent);
      kienzle = known;
    }
    return known;
  }

  private Load remembered(ToothCuts.ToothCut tooth, double depthMm, Kienzle kienzle, Body body) {
    Optional<Engagement> engagement = tooth.loadedEngagement();
    Key key =
        new Key(
            tooth.tool().number(),
            tooth.feedPerToothUm(),
            depthMm,
            engagement.map(Engagement::maxSine).orElse(-1.0));
    Load known = remembered.get(key);
    if (known == null) {
      known = compute(tooth, depthMm, engagement, kienzle, body);
      if (remembered.size() == MOST_REMEMBERED) {
        remembered.clear();
      }
      remembered.put(key, known);
    }
    return known;
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
        kienzle,
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

package hairline.checks.rules;

import hairline.checks.budget.BudgetedStep;
import hairline.checks.budget.Missing;
import hairline.checks.budget.Part;
import hairline.checks.budget.Source;
import hairline.checks.budget.StepBudget;
import hairline.checks.budget.Uncertainty;
import hairline.checks.budget.Uncertainty.Contribution;
import hairline.checks.cutting.Band;
import hairline.checks.cutting.FloorError;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Place;
import hairline.checks.setup.Key;
import hairline.checks.setup.Length;
import hairline.checks.setup.MachineKeys;
import hairline.checks.setup.MaterialKeys;
import hairline.checks.setup.Setup;
import hairline.checks.setup.ShopKeys;
import hairline.checks.setup.SpindleKeys;
import hairline.checks.setup.Tolerance;
import hairline.checks.setup.Tool;
import hairline.checks.setup.ToolKeys;
import hairline.checks.stock.ApproachDirection;
import hairline.checks.stock.StepFound;
import hairline.checks.stock.Terrace;
import hairline.checks.warmth.Doubt;
import hairline.checks.warmth.GrowthFigures;
import hairline.checks.warmth.LevelGrowth;
import hairline.checks.warmth.LevelGrowths;
import hairline.checks.warmth.StepGrowth;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/** Draws up the budget of one step, part by part. */
final class BudgetParts {
  private static final double ROOT_2 = StrictMath.sqrt(2);
  private static final String AT_TWO_LEVELS = " × √2 (two levels)";

  private final RuleContext context;
  private final Setup setup;
  private final LevelHistory history;
  private final LevelGrowths growths;
  private final StepFound found;
  private final List<Part> parts = new ArrayList<>();
  private final List<Missing> missing = new ArrayList<>();

  private BudgetParts(RuleContext context, LevelHistory history, StepFound found) {
    this.context = context;
    this.setup = context.setup();
    this.history = history;
    this.growths = context.stages().growth();
    this.found = found;
  }

  /**
   * The budget of a step.
   *
   * @param toleranceKey the key that holds its tolerance, or would
   */
  static StepBudget of(
      RuleContext context,
      LevelHistory history,
      BudgetSteps.Asked asked,
      Optional<Tolerance> tolerance,
      String toleranceKey) {
    BudgetParts budget = new BudgetParts(context, history, asked.found());
    budget.rounding(asked.step());
    tolerance.ifPresentOrElse(
        budget::lopsided, () -> budget.missing.add(Missing.key(Source.TOLERANCE, toleranceKey)));
    budget.axes();
    budget.reversal();
    budget.growth();
    budget.tilt();
    budget.setting();
    budget.environment();
    Optional<Length> gauge = context.setup().get(ShopKeys.GAUGE_UNCERTAINTY);
    if (gauge.isEmpty()) {
      budget.missing.add(Missing.key(Source.GAUGE, ShopKeys.GAUGE_UNCERTAINTY.path()));
    }
    return new StepBudget(
        asked.step(),
        budget.parts,
        budget.missing,
        tolerance.map(t -> OptionalDouble.of(t.halfWidthUm())).orElse(OptionalDouble.empty()),
        gauge.map(g -> OptionalDouble.of(g.um())).orElse(OptionalDouble.empty()));
  }

  private void random(Source source, double standardUm, double times, String basis) {
    parts.add(new Part.Random(source, new Contribution(standardUm, times), basis));
  }

  private <T> Optional<T> value(Source source, Key<T> key) {
    Optional<T> value = setup.get(key);
    if (value.isEmpty()) {
      missing.add(Missing.key(source, key.path()));
    }
    return value;
  }

  private void rounding(BudgetedStep step) {
    if (setup.get(MachineKeys.INCH_RESOLUTION).isEmpty()
        && value(Source.ROUNDING, MachineKeys.RESOLUTION).isEmpty()) {
      return;
    }
    parts.add(
        new Part.Known(
            Source.ROUNDING,
            step.heightPm() - step.nominalPm(),
            "stored "
                + Quantities.um(step.heightPm())
                + (step.declared() ? ", declared " : ", written ")
                + Quantities.um(step.nominalPm())));
  }

  private void lopsided(Tolerance tolerance) {
    long middlePm = (tolerance.lo().pm() + tolerance.hi().pm()) / 2;
    if (middlePm != 0) {
      parts.add(
          new Part.Known(
              Source.LOPSIDED_TOLERANCE,
              -middlePm,
              "the middle of ["
                  + Quantities.um(tolerance.lo().pm())
                  + ", "
                  + Quantities.um(tolerance.hi().pm())
                  + "] lies "
                  + Quantities.um(middlePm)
                  + " from the nominal height"));
    }
  }

  private void axes() {
    value(Source.SMALLEST_STEP, MachineKeys.SMALLEST_STEP)
        .ifPresent(
            smallest ->
                random(
                    Source.SMALLEST_STEP,
                    Uncertainty.ofRectangle(smallest.um() / 2),
                    ROOT_2,
                    "2 × " + Quantities.um(smallest.pm()) + " / 2 / √3" + AT_TWO_LEVELS));
    value(Source.REPEATABILITY, MachineKeys.REPEATABILITY)
        .ifPresent(
            repeatability ->
                random(
                    Source.REPEATABILITY,
                    repeatability.um() / 4,
                    ROOT_2,
                    "2 × " + Quantities.um(repeatability.pm()) + " / 4" + AT_TWO_LEVELS));
  }

  private void reversal() {
    if (found.upper().uncut()) {
      nothing(Source.REVERSAL, "the upper level is uncut");
      return;
    }
    Set<ApproachDirection> sides = EnumSet.copyOf(history.approaches(found.upper()));
    sides.addAll(history.approaches(found.lower()));
    if (sides.equals(EnumSet.of(ApproachDirection.FROM_ABOVE))) {
      nothing(Source.REVERSAL, "both levels from above");
    } else if (sides.equals(EnumSet.of(ApproachDirection.FROM_BELOW))) {
      nothing(Source.REVERSAL, "both levels from below");
    } else if (sides.contains(ApproachDirection.FROM_ABOVE)
        && sides.contains(ApproachDirection.FROM_BELOW)) {
      value(Source.REVERSAL, MachineKeys.REVERSAL)
          .ifPresent(
              reversal ->
                  parts.add(
                      new Part.DriftEitherWay(
                          Source.REVERSAL,
                          reversal.um(),
                          "levels approached from above and from below")));
    } else {
      missing.add(
          Missing.unknown(
              Source.REVERSAL, "from where the levels were approached in Z is not known"));
    }
  }

  private void nothing(Source source, String why) {
    parts.add(new Part.Known(source, 0, why));
  }

  private void growth() {
    boolean none =
        setup.get(SpindleKeys.GROWTH_AMOUNT).map(a -> a.um().equals(Band.ofExact(0))).orElse(false)
            && setup.get(SpindleKeys.GROWTH_INSTANT).map(i -> i.pm() == 0).orElse(true);
    if (none) {
      nothing(Source.GROWTH, "the spindle does not grow");
      return;
    }
    if (!GrowthFigures.NEEDED.stream()
        .map(key -> value(Source.GROWTH, key).isPresent())
        .reduce(true, Boolean::logicalAnd)) {
      return;
    }
    StepGrowth growth = StepGrowth.of(found, growths);
    if (growth instanceof StepGrowth.NotTold unknown) {
      missing.add(Missing.unknown(Source.GROWTH, unknown.reason()));
    } else if (growth instanceof StepGrowth.Told told) {
      Optional<Band> um = told.drift().middleUm();
      if (um.isEmpty()) {
        told.drift().doubts().forEach(this::growthUnknown);
        return;
      }
      parts.add(new Part.Drift(Source.GROWTH, um.get(), basis(told)));
      if (told.drift().slackUm() > 0) {
        parts.add(
            new Part.DriftEitherWay(
                Source.GROWTH_BOUNDS,
                told.drift().slackUm(),
                told.drift().doubts().stream()
                    .map(Doubt::reason)
                    .collect(Collectors.joining(", "))));
      }
    }
  }

  private void growthUnknown(Doubt doubt) {
    missing.add(
        doubt.key().isPresent()
            ? Missing.key(Source.GROWTH, doubt.key().get())
            : Missing.unknown(Source.GROWTH, doubt.reason()));
  }

  private String basis(StepGrowth.Told told) {
    String lower = line(told.lower().at());
    String upper = told.upper().map(contact -> line(contact.at())).orElse("");
    return switch (told.kind()) {
          case BETWEEN_LEVELS ->
              "from " + upper + " on the upper level to " + lower + " on the lower";
          case UNCUT_UPPER -> "from" + measuring(told.lower()) + " to " + lower;
          case TWO_MEASURINGS ->
              "lower level from"
                  + measuring(told.lower())
                  + " to "
                  + lower
                  + ", upper level from"
                  + told.upper().map(this::measuring).orElse("")
                  + " to "
                  + upper;
        }
        + (told.cold() ? "; cut with no valid warm-up" : "");
  }

  private String line(Place at) {
    return context.line(at, found.at());
  }

  private String measuring(LevelGrowth.Contact contact) {
    return " measuring" + contact.measuring().map(m -> " at " + line(m.at())).orElse("");
  }

  private void tilt() {
    Optional<LevelHistory.Floor> lower = floor(found.lower());
    Optional<LevelHistory.Floor> upper =
        found.upper().uncut() ? Optional.empty() : floor(found.upper());
    if (lower.isEmpty() || (upper.isEmpty() && !found.upper().uncut())) {
      return;
    }
    FloorError lowerError = lower.get().error();
    Band um = FloorError.heightOfStepUm(lowerError, upper.map(LevelHistory.Floor::error));
    parts.add(
        new Part.Drift(
            Source.TILT,
            um,
            "lower floor "
                + Quantities.um(lowerError.deeperUm().typical())
                + " too deep, "
                + upper
                    .map(f -> "upper floor " + Quantities.um(f.error().deeperUm().typical()))
                    .orElse("upper level uncut")));
  }

  /** The error of a floor; where it is not known, why. */
  private Optional<LevelHistory.Floor> floor(Terrace terrace) {
    if (missing.stream().anyMatch(m -> m.source() == Source.TILT)) {
      return Optional.empty();
    }
    String level = "the level at " + Quantities.mm(terrace.storedZPm());
    Optional<LevelHistory.Floor> floor = history.floor(terrace);
    if (floor.isPresent() && !floor.get().bound()) {
      return floor;
    }
    if (floor.isPresent()) {
      missing.add(Missing.unknown(Source.TILT, "the width of cut on " + level + " is not known"));
      return Optional.empty();
    }
    if (terrace.tool().isEmpty()) {
      missing.add(
          Missing.unknown(
              Source.TILT, "the tool on " + level + " is not known or not on the sheet"));
      return Optional.empty();
    }
    List<String> keys = missingForForce(terrace.tool().get());
    keys.forEach(key -> missing.add(Missing.key(Source.TILT, key)));
    if (keys.isEmpty()) {
      missing.add(Missing.unknown(Source.TILT, "the force on " + level + " is not known"));
    }
    return Optional.empty();
  }

  /** The keys of a tool that its force and flex can't do without. */
  static final List<Key<?>> TOOL_KEYS =
      List.of(
          ToolKeys.SHAPE,
          ToolKeys.DIAMETER,
          ToolKeys.FLUTES,
          ToolKeys.CUTTING_LENGTH,
          ToolKeys.SHANK_DIAMETER,
          ToolKeys.SHANK_LENGTH,
          ToolKeys.YOUNGS_MODULUS_GPA);

  private List<String> missingForForce(Tool tool) {
    List<String> keys = new ArrayList<>();
    for (Key<?> key : TOOL_KEYS) {
      if (tool.get(key).isEmpty()) {
        keys.add(tool.resolve(key).path());
      }
    }
    for (Key<?> key : List.of(MaterialKeys.SPECIFIC_FORCE_MPA, MaterialKeys.FORCE_EXPONENT)) {
      if (setup.get(key).isEmpty()) {
        keys.add(key.path());
      }
    }
    return keys;
  }

  private void setting() {
    boolean datum = found.upper().uncut();
    boolean again = !datum && history.measuredBetween(found.upper(), found.lower());
    if (!datum && !found.byTwoTools() && !again) {
      nothing(Source.SETTING, "one tool on both levels, measured once: it cancels");
      return;
    }
    value(Source.SETTING, ShopKeys.SETTING_UNCERTAINTY)
        .ifPresent(
            uncertainty ->
                random(
                    Source.SETTING,
                    uncertainty.um() / 2,
                    datum ? 1 : ROOT_2,
                    "2 × "
                        + Quantities.um(uncertainty.pm())
                        + (datum
                            ? " / 2 (once, against the uncut top)"
                            : found.byTwoTools()
                                ? " / 2 × √2 (two tools)"
                                : " / 2 × √2 (measured again between the levels)")));
  }

  private void environment() {
    Optional<Double> swing = value(Source.ENVIRONMENT, ShopKeys.SWING_K);
    Optional<Double> expansion = value(Source.ENVIRONMENT, ShopKeys.LOOP_EXPANSION_UM_PER_M_K);
    Optional<Length> loop = value(Source.ENVIRONMENT, ShopKeys.LOOP);
    if (swing.isEmpty() || expansion.isEmpty() || loop.isEmpty()) {
      return;
    }
    double halfRangeUm = swing.get() * Math.abs(expansion.get()) * loop.get().mm() / 1000;
    random(
        Source.ENVIRONMENT,
        halfRangeUm / ROOT_2,
        1,
        "2 × "
            + Quantities.significant(swing.get(), 4)
            + " K / √2 × "
            + Quantities.significant(expansion.get(), 4)
            + " µm/(m K) × "
            + Quantities.mm(loop.get().pm()));
  }
}

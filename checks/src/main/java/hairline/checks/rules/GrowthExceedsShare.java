package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.cutting.Band;
import hairline.checks.cutting.Certainty;
import hairline.checks.finding.Level;
import hairline.checks.finding.Occurrence;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Place;
import hairline.checks.rules.Growths.Allowed;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.JobKeys;
import hairline.checks.setup.SpindleKeys;
import hairline.checks.stock.Cut;
import hairline.checks.stock.StepFound;
import hairline.checks.warmth.GrowthCures;
import hairline.checks.warmth.LevelGrowth.Contact;
import hairline.checks.warmth.Measuring;
import hairline.checks.warmth.StepGrowth;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The spindle grows between the two levels of a step, or since the tool was measured. */
@AutoService(Rule.class)
public final class GrowthExceedsShare implements Rule {
  /** Cause of findings where a fine cut was made with no valid warm-up. */
  static final String NO_WARM_UP = "no valid warm-up";

  private static final RuleInfo INFO =
      RuleInfo.of(
          "growth-exceeds-share",
          Level.ERROR,
          Group.WARMTH,
          "spindle growth changes a step by more than its share of the tolerance",
          Need.SURFACE,
          Need.TIMING);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    // Told by the cuts themselves: without growth on the sheet no level is followed.
    BitSet fineLevels = new BitSet();
    on.event(
        Cut.class,
        cut -> {
          if (cut.fine() && cut.levelId() > Cut.UNCUT) {
            fineLevels.set(cut.levelId());
          }
        });
    on.event(
        StepFound.class,
        step -> {
          if (isFine(context, step, fineLevels) && Growths.told(context, step.at())) {
            Growths.allowed(context, step.feature(), step.at())
                .ifPresent(allowed -> judge(context, step, allowed));
          }
        });
  }

  /** Walls between roughing levels are no step of the drawing. */
  private static boolean isFine(RuleContext context, StepFound step, BitSet fineLevels) {
    return step.feature().isPresent()
        || context
            .need(JobKeys.FINE_STEP, step.at())
            .map(fine -> step.heightPm() <= fine.pm())
            .orElse(false)
        || fineLevels.get(step.lower().levelId());
  }

  private static void judge(RuleContext context, StepFound step, Allowed allowed) {
    StepGrowth growth = StepGrowth.of(step, context.stages().growth());
    if (growth instanceof StepGrowth.NotTold notTold) {
      context.notChecked(
          notTold.reason() + notTold.key().map(key -> " (" + key + " would tell)").orElse(""),
          step.at());
      return;
    }
    StepGrowth.Told told = (StepGrowth.Told) growth;
    Certainty beyond = told.drift().beyond(allowed.um());
    if (beyond == Certainty.NOT_SHOWN) {
      if (!told.drift().isKnown() && told.drift().mayBeBeyond(allowed.um())) {
        Unsure.of(context, told.drift().doubts(), step.at());
      }
      return;
    }
    Band size = Growths.sizeUm(told.drift());
    Occurrence.Builder occurrence =
        context
            .occurrence(
                beyond,
                step.at(),
                () ->
                    "spindle growth makes the step of "
                        + Quantities.um(step.heightPm())
                        + " "
                        + Growths.size(told.drift(), allowed)
                        + (Growths.deeper(told.drift()) ? " higher" : " lower")
                        + ", allowed "
                        + Quantities.um(allowed.um(), size.typical()))
            .orElseThrow();
    facts(context, told, step.at()).forEach(occurrence::fact);
    occurrence
        .fact(allowed.fact())
        .cure(cure(context, step, told, allowed))
        .figure("growth", size.typical(), "µm")
        .figure("growthLow", size.low(), "µm")
        .figure("growthHigh", size.high(), "µm")
        .figure("allowed", allowed.um(), "µm")
        .figure("step", step.heightPm() / 1e6, "µm")
        .operation(step.later().lastOperation())
        .cause(told.cold() ? NO_WARM_UP : told.kind().name())
        .severity(size.typical() / allowed.um());
    context.report(occurrence);
  }

  private static List<String> facts(RuleContext context, StepGrowth.Told told, Place finding) {
    List<String> facts = new ArrayList<>();
    switch (told.kind()) {
      case BETWEEN_LEVELS ->
          facts.add("upper level: " + Growths.at(context, told.upper().orElseThrow(), finding));
      case UNCUT_UPPER ->
          facts.add("upper level uncut; measuring: " + measured(context, told.lower(), finding));
      case TWO_MEASURINGS -> {
        Contact upper = told.upper().orElseThrow();
        facts.add(
            "upper level: "
                + Growths.at(context, upper, finding)
                + "; its measuring: "
                + measured(context, upper, finding));
        facts.add("measuring for the lower level: " + measured(context, told.lower(), finding));
      }
    }
    facts.add("lower level: " + Growths.at(context, told.lower(), finding));
    return facts;
  }

  private static String measured(RuleContext context, Contact contact, Place finding) {
    Measuring measuring = contact.measuring().orElseThrow();
    return Growths.at(context, measuring, finding)
        + measuring.rpm().stream().mapToObj(rpm -> " " + Growths.speed(rpm)).findFirst().orElse("");
  }

  private static String cure(
      RuleContext context, StepFound step, StepGrowth.Told told, Allowed allowed) {
    List<String> cures = new ArrayList<>();
    OptionalDouble rpm = told.lower().growth().rpm();
    OptionalDouble more = GrowthCures.moreWarmUpSeconds(told, allowed.um());
    if (more.isPresent() && rpm.isPresent()) {
      cures.add(
          minutes(more.getAsDouble())
              + " more of warm-up "
              + Growths.speed(rpm.getAsDouble())
              + (told.kind() == StepGrowth.Kind.UNCUT_UPPER ? " ahead of measuring" : ""));
    }
    Optional<Double> time = context.setup().get(SpindleKeys.WARM_UP_TIME_S);
    if (time.isPresent()
        && rpm.isPresent()
        && GrowthCures.warmUpAtWorkingSpeed(told, time.get(), allowed.um())) {
      cures.add(
          "a warm-up of "
              + minutes(time.get())
              + " at the working speed of "
              + Quantities.rpm(rpm.getAsDouble()));
    }
    context
        .stages()
        .growth()
        .of(step.lower().levelId())
        .filter(lower -> GrowthCures.measuringAgain(told, lower, allowed.um()))
        .ifPresent(
            lower ->
                cures.add(
                    "measuring "
                        + step.lower().tool().map(t -> "tool " + t.number()).orElse("the tool")
                        + " again before "
                        + context.line(lower.first().at(), step.at())));
    return cures.isEmpty()
        ? "both levels in one run of the spindle at one speed, and shorter cuts at each"
        : String.join("; or ", cures);
  }

  private static String minutes(double seconds) {
    return Quantities.significant(StrictMath.ceil(seconds / 6 - 1e-9) / 10, 6) + " min";
  }
}

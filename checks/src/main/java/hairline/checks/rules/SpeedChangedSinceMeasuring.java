package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.cutting.Band;
import hairline.checks.cutting.Certainty;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.rules.Growths.Allowed;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.stock.Cut;
import hairline.checks.warmth.Drift;
import hairline.checks.warmth.GrowthPoint;
import hairline.checks.warmth.Measuring;

/** A fine cut at another speed than that at measuring, and the spindle has grown since. */
@AutoService(Rule.class)
public final class SpeedChangedSinceMeasuring implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "speed-changed-since-measuring",
          Level.WARNING,
          Group.WARMTH,
          "a fine cut at another speed than at measuring, and growth since exceeds its share",
          Need.OVERLAP,
          Need.TIMING);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    FineCuts.eachMeasured(
        context,
        on,
        (cut, measuring) -> {
          if (mayDiffer(measuring, cut) && Growths.told(context, cut.at())) {
            context
                .stages()
                .warmth()
                .growth()
                .ifPresent(now -> judge(context, cut, measuring, now));
          }
        });
  }

  /** Whether the speed may be another one now, for all that is known. */
  private static boolean mayDiffer(Measuring measuring, Cut cut) {
    return measuring.rpm().isEmpty()
        || cut.move().modes().turningRpm().isEmpty()
        || measuring.rpm().getAsDouble() != cut.move().modes().turningRpm().get();
  }

  private static void judge(RuleContext context, Cut cut, Measuring measuring, GrowthPoint now) {
    Growths.allowed(context, cut.feature(), cut.at())
        .ifPresent(allowed -> judge(context, cut, measuring, now, allowed));
  }

  private static void judge(
      RuleContext context, Cut cut, Measuring measuring, GrowthPoint now, Allowed allowed) {
    GrowthPoint then = measuring.growth().orElseThrow();
    Drift drift = Drift.between(then, now);
    boolean speedsKnown = measuring.rpm().isPresent() && now.rpm().isPresent();
    Certainty beyond = speedsKnown ? drift.beyond(allowed.um()) : Certainty.NOT_SHOWN;
    if (beyond == Certainty.NOT_SHOWN) {
      if (!(drift.isKnown() && speedsKnown) && drift.mayBeBeyond(allowed.um())) {
        Unsure.of(context, drift.doubts(), cut.at());
      }
      return;
    }
    double speed = now.rpm().orElseThrow();
    double speedThen = measuring.rpm().orElseThrow();
    Band size = Growths.sizeUm(drift);
    context
        .occurrence(
            beyond,
            cut.at(),
            () ->
                "fine cut "
                    + Growths.speed(speed)
                    + ", "
                    + FineCuts.tool(cut)
                    + " measured "
                    + Growths.speed(speedThen)
                    + " at "
                    + context.line(measuring.at(), cut.at())
                    + ": the spindle is "
                    + Growths.size(drift, allowed)
                    + (Growths.deeper(drift) ? " longer" : " shorter")
                    + " since, allowed "
                    + Quantities.um(allowed.um(), size.typical()))
        .ifPresent(
            occurrence ->
                FineCuts.report(
                    context,
                    cut,
                    occurrence
                        .fact("measuring: " + Growths.at(context, measuring, cut.at()))
                        .fact(
                            "now: growth "
                                + Growths.um(now)
                                + " ("
                                + Seconds.of(context.stages().time().secondsNow())
                                + ")"
                                + now.toComeUm(speed)
                                    .map(
                                        toCome ->
                                            ", "
                                                + Bands.um(toCome)
                                                + " still to come at this speed")
                                    .orElse(""))
                        .fact(allowed.fact())
                        .cure(
                            "measuring "
                                + FineCuts.tool(cut)
                                + " again "
                                + Growths.speed(speed)
                                + " before "
                                + context.line(cut.at(), cut.at()))
                        .figure("growth", size.typical(), "µm")
                        .figure("growthLow", size.low(), "µm")
                        .figure("allowed", allowed.um(), "µm")
                        .figure("speed", speed, "rpm")
                        .figure("speedAtMeasuring", speedThen, "rpm")
                        .operation(cut.move().modes().operation())
                        .cause(FineCuts.tool(cut) + " measured at line " + measuring.at().line())
                        .severity(size.typical() / allowed.um())));
  }
}

package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.cutting.Band;
import hairline.checks.finding.Level;
import hairline.checks.finding.Occurrence;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Place;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.LimitKeys;
import hairline.checks.setup.SpindleKeys;
import hairline.checks.stock.Cut;
import hairline.checks.timing.TimeTaken;
import hairline.checks.warmth.GrowthCures;
import hairline.checks.warmth.GrowthPoint;
import hairline.checks.warmth.Run;
import hairline.checks.warmth.SpindleWarmth;
import hairline.checks.warmth.WarmUp;
import java.util.Optional;
import java.util.OptionalDouble;

/** The program warms the spindle up, but not as long or not as fast as the sheet asks. */
@AutoService(Rule.class)
public final class WarmUpShort implements Rule {
  /** A spindle that turns so long and cuts nothing is warming up (our choice, no source). */
  static final double ATTEMPT_SECONDS = 30;

  private static final RuleInfo INFO =
      RuleInfo.of(
          "warm-up-short",
          Level.WARNING,
          Group.WARMTH,
          "a warm-up in the program is shorter or slower than the sheet asks",
          Need.OVERLAP,
          Need.TIMING);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.contact(new FirstContacts(context)::take);
  }

  /** Looks at the first contact of each run of the spindle. */
  private static final class FirstContacts {
    private final RuleContext context;
    private int runSeen;

    FirstContacts(RuleContext context) {
      this.context = context;
    }

    void take(Cut cut) {
      if (context.stages().warmth().runNumber() == runSeen) {
        return;
      }
      Run run = context.stages().warmth().run();
      runSeen = run.number();
      WarmUp warmUp = context.stages().warmth().warmUp();
      switch (warmUp.valid()) {
        case YES -> {}
        case UNKNOWN -> Unsure.of(context, warmUp, cut.at());
        case NO -> {
          if (TimeTaken.reaches(run.turning().atLeastSeconds(), ATTEMPT_SECONDS)) {
            speak(cut, run, run.from().orElse(cut.at()));
          } else if (TimeTaken.reaches(run.turning().atMostSeconds(), ATTEMPT_SECONDS)) {
            Unsure.of(context, run.turning());
          }
        }
      }
    }

    private void speak(Cut cut, Run run, Place from) {
      Optional<Double> asked = context.need(SpindleKeys.WARM_UP_TIME_S, from);
      Optional<Double> speed = context.need(SpindleKeys.WARM_UP_MIN_SPEED_RPM, from);
      if (asked.isEmpty() || speed.isEmpty()) {
        return;
      }
      double fastest = run.fastestRpm().orElse(0);
      boolean slow = fastest < speed.get();
      TimeTaken time = slow ? run.turning() : run.atSpeed();
      Occurrence.Builder occurrence =
          context
              .occurrence(
                  from,
                  "warm-up of "
                      + Seconds.of(time)
                      + (slow
                          ? " at " + Quantities.rpm(fastest) + " at most, "
                          : " at " + Quantities.rpm(speed.get()) + " or more, ")
                      + Seconds.of(asked.get())
                      + " at "
                      + Quantities.rpm(speed.get())
                      + " asked")
              .fact(
                  "the spindle turns "
                      + Seconds.of(run.turning())
                      + " before it first cuts at "
                      + context.line(cut.at(), from))
              .fact(
                  "asked by "
                      + SpindleKeys.WARM_UP_TIME_S.path()
                      + " and "
                      + SpindleKeys.WARM_UP_MIN_SPEED_RPM.path())
              .figure("time", time.atLeastSeconds(), "s")
              .figure("asked", asked.get(), "s")
              .figure("speed", fastest, "rpm")
              .figure("minSpeed", speed.get(), "rpm")
              .operation(cut.move().modes().operation())
              .cause("run " + run.number())
              .severity(asked.get() - time.atLeastSeconds());
      String cure =
          slow
              ? "S" + Quantities.significant(speed.get(), 9) + " or more"
              : Seconds.of(asked.get() - time.atLeastSeconds()) + " more";
      occurrence.cure(cure + ladder(cut, run, occurrence, speed.get()));
      context.report(occurrence);
    }

    /** Says how far a ladder of speeds is from being a warm-up, and what it would take. */
    private String ladder(Cut cut, Run run, Occurrence.Builder occurrence, double minRpm) {
      SpindleWarmth warmth = context.stages().warmth();
      Optional<GrowthPoint> growth = warmth.growth();
      Optional<Double> rpm = cut.move().modes().turningRpm();
      if (!run.isLadder()
          || growth.isEmpty()
          || warmth.warmWithinUm().isEmpty()
          || rpm.isEmpty()
          || rpm.get() < minRpm) {
        return "";
      }
      double nearUm = warmth.warmWithinUm().getAsDouble();
      OptionalDouble more = GrowthCures.secondsUntilNear(growth.get(), rpm.get(), nearUm);
      if (more.isEmpty()) {
        return "";
      }
      Band toComeUm = growth.get().toComeUm(rpm.get()).orElseThrow();
      occurrence
          .fact(
              "a ladder of speeds: growth has "
                  + Bands.um(toComeUm, nearUm)
                  + " to come to its end value at "
                  + Quantities.rpm(rpm.get())
                  + ", and would be a warm-up with "
                  + Quantities.um(nearUm)
                  + " or less ("
                  + LimitKeys.GROWTH_SHARE.path()
                  + " of the tightest tolerance of a step)")
          .figure("toCome", toComeUm.typical(), "µm")
          .figure("near", nearUm, "µm");
      return ", or as a ladder "
          + Seconds.of(StrictMath.ceil(more.getAsDouble() * 10 - 1e-6) / 10)
          + " more at "
          + Quantities.rpm(rpm.get());
    }
  }
}

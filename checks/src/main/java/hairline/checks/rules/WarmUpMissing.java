package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Occurrence;
import hairline.checks.finding.Quantities;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.rules.RuleInfo.Scope;
import hairline.checks.setup.SpindleKeys;
import hairline.checks.setup.WarmUpPlace;
import hairline.checks.stock.Cut;
import hairline.checks.timing.TimeTaken;
import hairline.checks.warmth.Run;
import hairline.checks.warmth.WarmUp;
import java.util.Optional;

/** A fine cut is made with a spindle that is not warmed up. */
@AutoService(Rule.class)
public final class WarmUpMissing implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "warm-up-missing",
              Level.ERROR,
              Group.WARMTH,
              "a fine cut with no valid warm-up of the spindle before it",
              Need.OVERLAP,
              Need.TIMING)
          .hiding(Scope.BLOCK, "tool-measured-cold", "speed-changed-since-measuring")
          .hidingCause("growth-exceeds-share", GrowthExceedsShare.NO_WARM_UP)
          .hiding(Scope.PROGRAM, "warm-up-short");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    if (context.setup().get(SpindleKeys.WARM_UP_WHERE).orElseThrow() == WarmUpPlace.BEFORE) {
      return;
    }
    Attempt attempt = new Attempt();
    on.contact(cut -> attempt.contact(context));
    FineCuts.each(
        on,
        cut -> {
          WarmUp warmUp = context.stages().warmth().warmUp();
          switch (warmUp.valid()) {
            case YES -> {}
            case UNKNOWN -> Unsure.of(context, warmUp, cut.at());
            case NO ->
                FineCuts.report(
                    context, cut, 0, cause(warmUp), () -> missing(context, cut, warmUp, attempt));
          }
        });
  }

  /** What the spindle had run when it first cut: long enough, it was meant as a warm-up. */
  private static final class Attempt {
    private int runSeen;
    private Optional<Run> before = Optional.empty();

    void contact(RuleContext context) {
      if (context.stages().warmth().runNumber() != runSeen) {
        Run run = context.stages().warmth().run();
        runSeen = run.number();
        before =
            Optional.of(run)
                .filter(
                    r ->
                        TimeTaken.reaches(
                            r.turning().atLeastSeconds(), WarmUpShort.ATTEMPT_SECONDS));
      }
    }

    /** The attempt in this run. */
    Optional<Run> in(Run run) {
      return before.filter(b -> b.number() == run.number());
    }
  }

  private static String cause(WarmUp warmUp) {
    return warmUp.expiredAt().map(at -> "expired at line " + at.line()).orElse("none");
  }

  /** What is wrong: there is no warm-up, or what there is is too slow or too short. */
  private static String message(
      Run run, Optional<Run> attempt, Optional<Double> asked, Optional<Double> speed) {
    String what = "fine cut with no valid warm-up";
    if (attempt.isPresent() && asked.isPresent() && speed.isPresent()) {
      double fastest = attempt.get().fastestRpm().orElse(0);
      what =
          fastest < speed.get()
              ? "fine cut after a warm-up that is too slow, "
                  + Seconds.of(attempt.get().turning())
                  + " at "
                  + Quantities.rpm(fastest)
                  + " at most"
              : "fine cut after a warm-up that is too short";
    }
    return what
        + ": the spindle ran "
        + Seconds.of(run.atSpeed())
        + speed.map(rpm -> " at " + Quantities.rpm(rpm) + " or more").orElse("")
        + asked.map(seconds -> ", " + Seconds.of(seconds) + " asked").orElse("");
  }

  private static Occurrence.Builder missing(
      RuleContext context, Cut cut, WarmUp warmUp, Attempt attempts) {
    context.need(SpindleKeys.WARM_UP_WHERE, cut.at());
    Run run = context.stages().warmth().run();
    Optional<Run> attempt = warmUp.expiredAt().isPresent() ? Optional.empty() : attempts.in(run);
    Optional<Double> asked = context.setup().get(SpindleKeys.WARM_UP_TIME_S);
    Optional<Double> speed = context.setup().get(SpindleKeys.WARM_UP_MIN_SPEED_RPM);
    Occurrence.Builder occurrence =
        context.occurrence(cut.at(), () -> message(run, attempt, asked, speed));
    warmUp
        .expiredAt()
        .ifPresent(
            at ->
                occurrence.fact(
                    () ->
                        "the last warm-up expired at "
                            + context.line(at, cut.at())
                            + ": the spindle stood longer than it outlives"
                            + context
                                .setup()
                                .get(SpindleKeys.WARM_UP_VALID_FOR_S)
                                .map(
                                    seconds ->
                                        " ("
                                            + Seconds.of(seconds)
                                            + ", "
                                            + SpindleKeys.WARM_UP_VALID_FOR_S.path()
                                            + ")")
                                .orElse("")
                            + "; M0 and M60 count as longer"));
    run.from()
        .ifPresent(
            from ->
                occurrence.fact(
                    () ->
                        "counted from "
                            + context.line(from, cut.at())
                            + " on, with no longer stop between"));
    if (asked.isPresent() && speed.isPresent()) {
      occurrence.fact(
          () ->
              "asked by "
                  + SpindleKeys.WARM_UP_TIME_S.path()
                  + " and "
                  + SpindleKeys.WARM_UP_MIN_SPEED_RPM.path());
    }
    occurrence
        .cure(
            () ->
                (attempt.isPresent() ? "a longer or faster warm-up" : "a warm-up")
                    + " before this line, measuring behind it; or"
                    + " machine.spindle.warm_up.where: before")
        .figure("run", run.atSpeed().atLeastSeconds(), "s");
    asked.ifPresent(seconds -> occurrence.figure("asked", seconds, "s"));
    return occurrence;
  }
}

package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Place;
import hairline.checks.motion.Position;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.SpindleKeys;
import hairline.checks.stock.Cut;
import hairline.checks.timing.TimeTaken;
import java.util.Optional;

/** The tool cuts before the spindle can have reached its speed. */
@AutoService(Rule.class)
public final class SpindleNotUpToSpeed implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "spindle-not-up-to-speed",
          Level.WARNING,
          Group.WARMTH,
          "the tool cuts before the spindle can have reached its speed",
          Need.OVERLAP,
          Need.TIMING);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    if (context.setup().get(SpindleKeys.WAITS).orElseThrow()) {
      return;
    }
    on.contact(
        cut -> {
          if (cut.move().isFeed()) {
            context
                .stages()
                .warmth()
                .speedChangedAt()
                .ifPresent(changed -> judge(context, cut, changed));
          }
        });
  }

  private static void judge(RuleContext context, Cut cut, Place changed) {
    Optional<Double> runUp = context.need(SpindleKeys.RUN_UP_S, cut.at());
    if (runUp.isEmpty()) {
      return;
    }
    TimeTaken ahead = context.stages().time().ofThisEvent();
    double part = partBeforeContact(cut);
    TimeTaken since = context.stages().warmth().timeSinceSpeedChange();
    double soonest = since.atLeastSeconds() + part * ahead.atLeastSeconds();
    double latest = since.atMostSeconds() + (part > 0 ? part * ahead.atMostSeconds() : 0);
    if (TimeTaken.reaches(soonest, runUp.get())) {
      return;
    }
    if (TimeTaken.reaches(latest, runUp.get())) {
      Unsure.of(context, since.plus(ahead));
      return;
    }
    context.report(
        context
            .occurrence(
                cut.at(),
                "the tool cuts from "
                    + Seconds.of(soonest)
                    + " after "
                    + context.line(changed, cut.at())
                    + (cut.move().modes().turningRpm().isPresent()
                        ? " asked for " + Quantities.rpm(cut.move().modes().turningRpm().get())
                        : " changed the speed")
                    + ", run-up takes "
                    + Seconds.of(runUp.get()))
            .fact(
                "run-up from "
                    + SpindleKeys.RUN_UP_S.path()
                    + "; the control does not wait for it ("
                    + SpindleKeys.WAITS.path()
                    + ")")
            .cure("a dwell of " + Seconds.of(runUp.get() - soonest) + " or more before this line")
            .figure("time", soonest, "s")
            .figure("runUp", runUp.get(), "s")
            .operation(cut.move().modes().operation())
            .cause("speed of line " + changed.line())
            .severity(-soonest));
  }

  /**
   * The part of the move that lies above the surface it cuts into; nothing of it where that is not
   * known.
   */
  private static double partBeforeContact(Cut cut) {
    Position from = cut.move().from();
    Position to = cut.move().to();
    if (cut.stepDownPm().isEmpty()
        || cut.surfacePartlyUnknown()
        || cut.move().arc().isPresent()
        || !from.knowsXyz()
        || !to.knowsXyz()
        || from.zPm() <= to.zPm()) {
      return 0;
    }
    double fall = (double) from.zPm() - to.zPm();
    return Math.max(0, (fall - cut.stepDownPm().getAsLong()) / fall);
  }
}

package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Event.Indexed;
import hairline.checks.motion.Event.Stopped;
import hairline.checks.motion.Place;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.CodeKeys;
import hairline.checks.stock.Cut;
import hairline.checks.timing.Answer;
import hairline.checks.warmth.Measuring;
import hairline.checks.warmth.Run;
import hairline.checks.warmth.WarmUp;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** A warm-up or measuring that a fine cut needs hangs on a switch at the panel. */
@AutoService(Rule.class)
public final class WarmUpDeletable implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "warm-up-deletable",
              Level.WARNING,
              Group.WARMTH,
              "a warm-up or measuring hangs on block delete or on M1",
              Need.OVERLAP,
              Need.TIMING)
          .withoutLimit("a block may be left out or it may not");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    Watch watch = new Watch(context);
    on.event(Indexed.class, file -> watch.mayBeLeftOut |= file.index().deletableBlocks());
    on.event(Stopped.class, stop -> watch.mayBeLeftOut |= stop.code().equals("M1"));
    on.contact(cut -> watch.contact());
    FineCuts.each(on, watch::fineCut);
  }

  /** What one run of the program has shown so far. */
  private static final class Watch {
    private final RuleContext context;
    private final Map<String, Place> told = new HashMap<>();
    private int runSeen;

    /** Whether there is anything so far that a switch of the control leaves out. */
    private boolean mayBeLeftOut;

    private Optional<Place> pauseBeforeContact = Optional.empty();

    Watch(RuleContext context) {
      this.context = context;
    }

    /** An M1 at which the spindle turned before a run first cut is a pause for warming up. */
    void contact() {
      if (context.stages().warmth().runNumber() != runSeen) {
        Run run = context.stages().warmth().run();
        runSeen = run.number();
        pauseBeforeContact = run.optionalStopAt();
      }
    }

    void fineCut(Cut cut) {
      WarmUp warmUp = context.stages().warmth().warmUp();
      if (mayBeLeftOut && warmUp.valid() == Answer.UNKNOWN) {
        Unsure.of(context, warmUp, cut.at());
      }
      if (mayBeLeftOut) {
        context.need(CodeKeys.MEASURE_TOOL, cut.at());
      }
      warmUp.deletableAt().ifPresent(at -> speak(cut, at, "warm-up", "stands behind block delete"));
      warmUp.optionalStopAt().ifPresent(at -> speak(cut, at, "warm-up", "stands beside M1"));
      if (warmUp.valid() == Answer.NO) {
        pauseBeforeContact.ifPresent(
            at -> speak(cut, at, "warm-up", "is the pause at M1 with the spindle turning"));
      }
      context.stages().warmth().measuring().ifPresent(measuring -> measured(cut, measuring));
    }

    private void measured(Cut cut, Measuring measuring) {
      if (measuring.deletable()) {
        speak(cut, measuring.at(), "measuring", "stands behind block delete");
      }
      measuring
          .optionalStopAt()
          .ifPresent(at -> speak(cut, measuring.at(), "measuring", "stands beside M1"));
    }

    /** Once for each place, and not again at each fine cut that needs it. */
    private void speak(Cut cut, Place at, String what, String how) {
      if (at.equals(told.put(what, at))) {
        return;
      }
      String article = what.equals("measuring") ? "" : "the ";
      FineCuts.report(
          context,
          cut,
          context
              .occurrence(
                  at,
                  article
                      + what
                      + " that the fine cut at "
                      + context.line(cut.at(), at)
                      + " needs "
                      + how)
              .fact("with the switch the other way the fine cut is made without")
              .cure(article + what + " in a block of its own, without / and M1")
              .operation(cut.move().modes().operation())
              .cause(what));
    }
  }
}

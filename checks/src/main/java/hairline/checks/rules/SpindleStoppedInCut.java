package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Event.BlockStarted;
import hairline.checks.motion.Event.SpindleChanged;
import hairline.checks.motion.Event.Stopped;
import hairline.checks.motion.Modal;
import hairline.checks.motion.Modes;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.rules.RuleInfo.Scope;
import hairline.checks.stock.Cut;
import hairline.parser.Value;
import hairline.parser.Word;
import java.math.BigDecimal;
import java.util.Optional;

/** The tool cuts while the spindle stands. */
@AutoService(Rule.class)
public final class SpindleStoppedInCut implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "spindle-stopped-in-cut",
              Level.ERROR,
              Group.STATE,
              "the tool cuts while the spindle stands",
              Need.OVERLAP)
          .withoutLimit("the spindle turns or it stands")
          .hiding(
              Scope.BLOCK,
              "chip-below-minimum",
              "feed-below-edge-radius",
              "chip-above-limit",
              "runout-exceeds-feed");

  private static final BigDecimal M3 = BigDecimal.valueOf(3);
  private static final BigDecimal M4 = BigDecimal.valueOf(4);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    Waited waited = new Waited();
    on.event(Stopped.class, waited::stop);
    on.event(SpindleChanged.class, change -> waited.stop = Optional.empty());
    on.event(BlockStarted.class, waited::block);
    on.contact(
        cut -> {
          if (cut.move().isFeed()) {
            judge(context, cut, waited);
          }
        });
  }

  /** Whether the program has waited for the operator since the spindle was started. */
  private static final class Waited {
    private Optional<Stopped> stop = Optional.empty();

    void stop(Stopped stopped) {
      Modal<Modes.Spindle> spindle = stopped.modes().spindle();
      boolean turns =
          spindle.is(Modes.Spindle.CLOCKWISE) || spindle.is(Modes.Spindle.COUNTER_CLOCKWISE);
      if (turns && !stopped.code().equals("M1")) {
        stop = Optional.of(stopped);
      }
    }

    /** A start that changes nothing in the modal state is one all the same. */
    void block(BlockStarted started) {
      if (stop.isPresent() && started.block().words().stream().anyMatch(Waited::starts)) {
        stop = Optional.empty();
      }
    }

    private static boolean starts(Word word) {
      return word.letter() == 'M'
          && word.value() instanceof Value.Literal number
          && (number.toBigDecimal().compareTo(M3) == 0 || number.toBigDecimal().compareTo(M4) == 0);
    }
  }

  private static void judge(RuleContext context, Cut cut, Waited waited) {
    Modal<Modes.Spindle> spindle = cut.move().modes().spindle();
    if (spindle.isUnknown()) {
      context.notChecked(
          "whether the spindle turns is unknown since " + context.line(spindle, cut.at()),
          cut.at());
    } else if (spindle.value().isEmpty() || spindle.is(Modes.Spindle.STOPPED)) {
      context.report(
          context
              .occurrence(cut.at(), "the tool cuts and the spindle stands")
              .fact(
                  spindle.line() > 0
                      ? "stopped since " + context.line(spindle, cut.at())
                      : "no M3 or M4 stands before")
              .cure("S and M3 before this move")
              .operation(cut.move().modes().operation())
              .cause("stopped"));
    } else if (waited.stop.isPresent()) {
      Stopped stop = waited.stop.get();
      context.report(
          context
              .lesserOccurrence(
                  cut.at(),
                  "the tool cuts behind "
                      + stop.code()
                      + " at "
                      + context.line(stop.at(), cut.at())
                      + ", and no M3 or M4 stands between")
              .fact(
                  "M0 cancels the spindle command (ISO 6983-1, from memory); some controls start"
                      + " the spindle again when the program goes on, others do not (common"
                      + " practice, no source)")
              .cure("S and M3 behind " + stop.code())
              .operation(cut.move().modes().operation())
              .cause("waited"));
    }
  }
}

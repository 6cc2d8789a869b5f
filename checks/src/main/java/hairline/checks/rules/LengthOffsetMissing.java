package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Axis;
import hairline.checks.motion.Event.LengthOffsetSet;
import hairline.checks.motion.Event.ToolChanged;
import hairline.checks.motion.Move;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.ControlKeys;
import hairline.checks.setup.LengthOffsetUse;
import hairline.checks.stock.Cut;
import java.util.Optional;

/** A tool moves in Z, or cuts, without G43 since it was put in the spindle. */
@AutoService(Rule.class)
public final class LengthOffsetMissing implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "length-offset-missing",
              Level.ERROR,
              Group.STATE,
              "a tool moves Z in work coordinates without its length offset",
              Need.OVERLAP,
              Need.STATE)
          .withoutLimit("an offset is in force or it is not");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  /** Which tool waits for its length offset. */
  private static final class Waiting {
    Optional<ToolChanged> change = Optional.empty();
    Optional<LengthOffsetSet> takenBack = Optional.empty();
    boolean offset;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    if (!context.need(ControlKeys.LENGTH_OFFSET).equals(Optional.of(LengthOffsetUse.PROGRAM))) {
      return;
    }
    Waiting waiting = new Waiting();
    on.event(
        ToolChanged.class,
        change -> {
          waiting.change = Optional.of(change);
          waiting.takenBack = Optional.empty();
          waiting.offset = false;
        });
    on.event(
        LengthOffsetSet.class,
        set -> {
          if (waiting.offset && set.number() == 0) {
            waiting.takenBack = Optional.of(set);
          }
          waiting.offset = set.number() != 0;
        });
    on.event(
        Cut.class,
        cut -> {
          if (!waiting.offset && waiting.change.isPresent() && movesZ(cut)) {
            speak(context, cut, waiting.change.get(), waiting.takenBack);
            waiting.change = Optional.empty();
          }
        });
  }

  private static boolean movesZ(Cut cut) {
    Move move = cut.move();
    return move.source() != Move.Source.MACHINE
        && (cut.inContact()
            || (move.to().knows(Axis.Z)
                && (!move.from().knows(Axis.Z) || move.from().zPm() != move.to().zPm())));
  }

  private static void speak(
      RuleContext context, Cut cut, ToolChanged change, Optional<LengthOffsetSet> takenBack) {
    String tool = change.after().value().map(n -> "tool " + n).orElse("the tool");
    context.report(
        context
            .occurrence(
                cut.at(),
                tool
                    + " moves in Z "
                    + (takenBack.isPresent()
                        ? "after its length offset was taken back"
                        : "without a length offset since its change"))
            .fact(
                "put in the spindle at "
                    + context.line(change.at(), cut.at())
                    + ", "
                    + takenBack
                        .map(
                            set ->
                                "G49 or H0 at "
                                    + context.line(set.at(), cut.at())
                                    + " took G43 back")
                        .orElse("no G43 since"))
            .cure(
                change.after().value().map(n -> "G43 H" + n).orElse("G43 with the tool's H number")
                    + " before this move")
            .operation(cut.move().modes().operation())
            .cause(tool));
  }
}

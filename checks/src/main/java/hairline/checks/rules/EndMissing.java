package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Occurrence;
import hairline.checks.motion.Event.Ended;
import hairline.checks.motion.Event.SpindleChanged;
import hairline.checks.motion.Event.SubprogramEndMissing;
import hairline.checks.motion.Event.ToolChanged;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import java.util.Optional;

/** No M2 or M30 ends the program. */
@AutoService(Rule.class)
public final class EndMissing implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "end-missing", Level.ERROR, Group.STATE, "the program has no end code", Need.STATE)
          .withoutLimit("an end stands there or it does not");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    Seen seen = new Seen();
    on.event(SpindleChanged.class, change -> seen.started = true);
    on.event(ToolChanged.class, change -> seen.started = true);
    on.event(
        Ended.class,
        end -> {
          if (end.code().equals(Optional.of("M99")) && seen.started) {
            context.report(againFromTheStart(context, end));
          }
          if (end.code().isEmpty()) {
            context.report(
                context
                    .occurrence(end.at(), "the text ends without M2, M30 or M99")
                    .fact("what the control does behind the last block is its own affair")
                    .cure("M30 as the last block"));
          }
        });
    on.event(
        SubprogramEndMissing.class,
        end ->
            context.report(
                context
                    .occurrence(end.at(), "subprogram " + end.name() + " ends without M99")
                    .fact("it is taken to return all the same")
                    .cure("M99 as its last block")
                    .cause(end.name())));
  }

  /** What the program has done so far. */
  private static final class Seen {
    /** Whether it has changed a tool or started the spindle. */
    private boolean started;
  }

  private static Occurrence.Builder againFromTheStart(RuleContext context, Ended end) {
    return context
        .lesserOccurrence(
            end.at(),
            "the program ends with M99, not with M2 or M30: run by itself it begins again, without"
                + " end")
        .fact(
            "M99 returns from a subprogram; in a main program it goes back to the first block"
                + " (common practice, no source); this one starts the spindle or changes a tool, as"
                + " main programs do")
        .cure("M30 as the last block, where it is a main program")
        .cause("M99");
  }
}

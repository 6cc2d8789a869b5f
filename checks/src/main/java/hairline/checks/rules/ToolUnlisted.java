package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Event.ToolChanged;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;

/** A tool is called that the sheet does not list. */
@AutoService(Rule.class)
public final class ToolUnlisted implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "tool-unlisted",
              Level.WARNING,
              Group.STATE,
              "a tool that the sheet does not list",
              Need.STATE)
          .withoutLimit("a tool is listed or it is not");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    Set<Integer> told = new HashSet<>();
    on.event(
        ToolChanged.class,
        change -> {
          Optional<Integer> tool = change.after().value();
          // T0 takes the tool out and puts none in (common practice, no source).
          if (tool.isEmpty() || tool.get() == 0 || context.setup().tool(tool.get()).isPresent()) {
            return;
          }
          if (context.setup().embedded()) {
            context.notChecked("no sheet of the job's own lists tools", change.at());
          } else if (told.add(tool.get())) {
            context.report(
                context
                    .occurrence(change.at(), "tool " + tool.get() + " is not on the sheet")
                    .fact("nothing that depends on this tool is checked")
                    .cure("the tool under tools, with its number " + tool.get())
                    .operation(change.modes().operation())
                    .cause("tool " + tool.get()));
          }
        });
  }
}

package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Event.LengthOffsetSet;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.Tool;
import hairline.checks.setup.ToolKeys;
import java.util.Optional;

/** G43 names the offset of another tool. */
@AutoService(Rule.class)
public final class LengthOffsetMismatch implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "length-offset-mismatch",
              Level.ERROR,
              Group.STATE,
              "the H number is not the one of the tool",
              Need.STATE)
          .withoutLimit("a number is the one of the tool or it is not");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.event(
        LengthOffsetSet.class,
        set -> {
          Optional<Integer> tool = set.modes().tool().value();
          if (set.number() != 0 && tool.isPresent()) {
            judge(context, set, tool.get());
          }
        });
  }

  private static void judge(RuleContext context, LengthOffsetSet set, int tool) {
    Optional<Tool> listed = context.setup().tool(tool);
    int expected = listed.flatMap(t -> t.get(ToolKeys.LENGTH_OFFSET)).orElse(tool);
    if (set.number() == expected) {
      return;
    }
    context.report(
        context
            .occurrence(
                set.at(), "H" + set.number() + " with tool " + tool + ", expected H" + expected)
            .fact(
                listed.flatMap(t -> t.positionOf(ToolKeys.LENGTH_OFFSET)).isPresent()
                    ? "tools." + tool + ".length_offset"
                    : "a tool's offset has its own number unless tools."
                        + tool
                        + ".length_offset says otherwise")
            .cure("H" + expected)
            .operation(set.modes().operation())
            .cause("H" + set.number() + " T" + tool));
  }
}

package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Event.BlockProblem;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.rules.RuleInfo.Scope;
import hairline.parser.Problem;

/** A statement of a macro language beyond the grammar. */
@AutoService(Rule.class)
public final class MacroUnread implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "macro-unread",
              Level.WARNING,
              Group.STATE,
              "a statement of a macro language is not read",
              Need.WORDS)
          .withoutLimit("a statement can be read or it cannot")
          .hiding(Scope.BLOCK, "*");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.event(
        BlockProblem.class,
        event -> {
          Problem problem = event.problem();
          if (problem.kind() == Problem.Kind.MACRO) {
            context.report(
                context
                    .occurrence(event.at(), problem.expected() + " is not read: " + problem.found())
                    .fact(
                        "what it may change is unknown from here on: every axis, every parameter,"
                            + " the order of the blocks")
                    .cure("the same spelled out in words and calls, or a second look by hand")
                    .cause(problem.expected()));
          }
        });
  }
}

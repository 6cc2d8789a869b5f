package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Event.BlockProblem;
import hairline.checks.motion.Event.WordRefused;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.rules.RuleInfo.Scope;
import hairline.parser.Problem;

/** A block that the grammar cannot read, or a word with a value that it cannot take. */
@AutoService(Rule.class)
public final class Syntax implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "syntax",
              Level.ERROR,
              Group.STATE,
              "a block is not ISO 6983 as the grammar has it",
              Need.WORDS)
          .withoutLimit("a block is one of the grammar or it is not")
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
          if (problem.kind() == Problem.Kind.SYNTAX) {
            context.report(
                context
                    .occurrence(event.at(), problem.found() + ", expected " + problem.expected())
                    .fact("the block is not read; the axes are unknown until their next words")
                    .cause(problem.expected()));
          }
        });
    on.event(
        WordRefused.class,
        event ->
            context.report(
                context
                    .occurrence(event.at(), event.word() + ": " + event.why())
                    .cause(event.why())));
  }
}

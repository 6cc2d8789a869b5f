package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Event.BlockProblem;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.parser.Problem;

/** Blanks inside a number: they are passed over, so two numbers become one. */
@AutoService(Rule.class)
public final class SpaceInsideNumber implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "space-inside-number",
              Level.WARNING,
              Group.STATE,
              "blanks stand inside a number",
              Need.WORDS)
          .withoutLimit("blanks stand inside the number or they do not");

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
          if (problem.kind() == Problem.Kind.SPACE_INSIDE_NUMBER) {
            context.report(
                context
                    .occurrence(event.at(), problem.found() + " is read as " + problem.expected())
                    .fact("blanks inside a number are passed over (NISTIR 6556 section 3.3)")
                    .cure("one number without blanks, or the letter of a second word"));
          }
        });
  }
}

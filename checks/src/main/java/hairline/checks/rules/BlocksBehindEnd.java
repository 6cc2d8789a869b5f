package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Event;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;

/** Blocks behind the end of a program, which nothing executes. */
@AutoService(Rule.class)
public final class BlocksBehindEnd implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "blocks-behind-end",
              Level.WARNING,
              Group.STATE,
              "blocks behind the end of a program are never executed",
              Need.WORDS)
          .withoutLimit("blocks stand there or they do not");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.event(
        Event.BlocksBehindEnd.class,
        behind ->
            context.report(
                context
                    .occurrence(
                        behind.at(),
                        "from here on no block is executed: "
                            + behind.code()
                            + " at "
                            + context.line(behind.end(), behind.at())
                            + " ends the program before")
                    .fact(
                        "M2 and M30 end a program (NISTIR 6556 section 3.6.1), M99 a subprogram, or"
                            + " it begins the program again (common practice, no source)")
                    .cure("the end behind the last block, or these blocks left out")
                    .cause("behind end")));
  }
}

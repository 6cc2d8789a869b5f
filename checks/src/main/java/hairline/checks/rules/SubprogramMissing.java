package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Event;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;

/** A call whose program is neither in the file nor beside it. */
@AutoService(Rule.class)
public final class SubprogramMissing implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "subprogram-missing",
              Level.ERROR,
              Group.STATE,
              "a called program is not found",
              Need.STATE)
          .withoutLimit("a program is found or it is not");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.event(
        Event.SubprogramMissing.class,
        call ->
            context.report(
                context
                    .occurrence(call.at(), call.name() + " is called and not found")
                    .fact(
                        call.lookedAt().isEmpty()
                            ? "looked for in the program's own text"
                            : "looked for in the program's own text and as "
                                + String.join(", ", call.lookedAt())
                                + " beside it")
                    .cure("the subprogram in the same file or in a file beside it")
                    .cause(call.name())));
  }
}

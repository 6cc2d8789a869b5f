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

  /** So many digits of P are the number of the program; what stands before is a count. */
  private static final int DIGITS = 4;

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
                            : "looked for in the program's own text, and beside it as "
                                + String.join(", ", call.lookedAt()))
                    .cure("the subprogram in the same file or in a file beside it" + packed(call))
                    .cause(call.name())));
  }

  /** P50100 calls O0100 five times where the control reads it so (common practice, no source). */
  private static String packed(Event.SubprogramMissing call) {
    String digits = call.name().substring(1);
    return digits.length() <= DIGITS
        ? ""
        : "; O"
            + digits.substring(digits.length() - DIGITS)
            + " where the control reads a count of "
            + digits.substring(0, digits.length() - DIGITS)
            + " in front of it";
  }
}

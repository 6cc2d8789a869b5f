package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Event.SequenceRepeated;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;

/** An N number stands twice in one program. */
@AutoService(Rule.class)
public final class SequenceNumberRepeated implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "sequence-number-repeated",
              Level.NOTE,
              Group.STATE,
              "a sequence number stands twice",
              Need.WORDS)
          .withoutLimit("a number stands once or more often");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    on.event(
        SequenceRepeated.class,
        event ->
            context.report(
                context
                    .occurrence(
                        event.at(),
                        "N"
                            + event.number()
                            + " stands here and at "
                            + context.line(event.first(), event.at()))
                    .cure("numbers that rise")
                    .cause("repeated")));
  }
}

package hairline.checks.rules;

import hairline.checks.finding.Occurrence;
import hairline.checks.setup.JobKeys;
import hairline.checks.stock.Cut;
import java.util.function.Consumer;

/** The fine cuts of a program: what the rules about warmth look at. */
final class FineCuts {
  private FineCuts() {}

  /** Calls the consumer for each move that is a fine cut, or may be one for all that is known. */
  static void each(Subscriptions on, Consumer<Cut> consumer) {
    on.event(
        Cut.class,
        cut -> {
          if (cut.fine() || cut.fineUndecided()) {
            consumer.accept(cut);
          }
        });
  }

  /** Speaks of a fine cut; of one that may be none, says that it could not be checked. */
  static void report(RuleContext context, Cut cut, Occurrence.Builder occurrence) {
    context.need(JobKeys.FINE_STEP, cut.at());
    context.need(JobKeys.FINE_TOOL, cut.at());
    if (cut.fine()) {
      context.report(occurrence);
    } else {
      context.notChecked("the height that this cut takes is not known", cut.at());
    }
  }

  /** "tool 3", or "the tool" where its number is not known. */
  static String tool(Cut cut) {
    return cut.move().modes().tool().value().map(number -> "tool " + number).orElse("the tool");
  }
}

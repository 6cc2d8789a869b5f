package hairline.checks.rules;

import hairline.checks.finding.Occurrence;
import hairline.checks.setup.CodeKeys;
import hairline.checks.setup.JobKeys;
import hairline.checks.stock.Cut;
import hairline.checks.warmth.Measuring;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Supplier;

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

  /**
   * Calls the consumer for each such cut whose tool the program measured before, with its last
   * measuring; the codes that measure are on the sheet then.
   */
  static void eachMeasured(
      RuleContext context, Subscriptions on, BiConsumer<Cut, Measuring> consumer) {
    each(
        on,
        cut -> {
          if (context.need(CodeKeys.MEASURE_TOOL, cut.at()).isPresent()) {
            Optional<Measuring> measuring = context.stages().warmth().measuring();
            if (measuring.isPresent()) {
              consumer.accept(cut, measuring.get());
            }
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

  /**
   * The same, whose occurrence is made only where its words may be read; {@code cause} and
   * operation are what {@link Occurrence} says.
   */
  static void report(
      RuleContext context,
      Cut cut,
      int operation,
      String cause,
      Supplier<Occurrence.Builder> occurrence) {
    if (!cut.fine() || !context.repeats(cut.at(), operation, cause)) {
      report(context, cut, occurrence.get().operation(operation).cause(cause));
    }
  }

  /** "tool 3", or "the tool" where its number is not known. */
  static String tool(Cut cut) {
    return cut.move().modes().tool().value().map(number -> "tool " + number).orElse("the tool");
  }
}

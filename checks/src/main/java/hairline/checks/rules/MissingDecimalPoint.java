package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Event.Indexed;
import hairline.checks.motion.Event.PointMissing;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.ControlKeys;
import hairline.checks.setup.DecimalPoint;

/** A coordinate other than zero without a decimal point. */
@AutoService(Rule.class)
public final class MissingDecimalPoint implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "missing-decimal-point",
              Level.ERROR,
              Group.NUMBERS,
              "a coordinate without a decimal point",
              Need.WORDS)
          .withoutLimit("a point stands there or it does not");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  /** Whether the program mixes both styles. */
  private static final class Style {
    boolean mixed;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    boolean increments =
        context
            .setup()
            .get(ControlKeys.DECIMAL_POINT)
            .filter(read -> read == DecimalPoint.INCREMENTS)
            .isPresent();
    if (increments && !context.knowsIncrement()) {
      return;
    }
    Style style = new Style();
    on.event(Indexed.class, indexed -> style.mixed |= indexed.index().mixesDecimalPoints());
    on.event(
        PointMissing.class,
        word -> {
          if (word.reading().isEmpty()) {
            context.need(ControlKeys.DECIMAL_POINT, word.at());
          } else if (!word.readAsIncrements() || style.mixed) {
            speak(context, word);
          }
        });
  }

  private static void speak(RuleContext context, PointMissing word) {
    String text = word.letter() + word.written().toPlainString();
    context.report(
        context
            .occurrence(
                word.at(),
                text
                    + " has no decimal point and is read as "
                    + Quantities.mm(word.readAsPm())
                    + (word.readAsIncrements() ? ", a number of increments" : ""))
            .fact(
                word.readAsIncrements()
                    ? "machine.control.decimal_point is increments, and other words have a point"
                    : "machine.control.decimal_point is required")
            .cure(text + ".")
            .figure("readAs", word.readAsPm() / 1e9, "mm")
            .cause(String.valueOf(word.letter())));
  }
}

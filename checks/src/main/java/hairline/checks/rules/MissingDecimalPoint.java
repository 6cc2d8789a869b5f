package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Event.Indexed;
import hairline.checks.motion.Event.PointMissing;
import hairline.checks.motion.Place;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.ControlKeys;
import hairline.checks.setup.DecimalPoint;
import java.util.HashSet;
import java.util.Set;

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
    final Set<Integer> mixing = new HashSet<>();

    /** The whole program mixes where its own file does, of which subprograms may be a part. */
    boolean isMixed(Place at) {
      return mixing.contains(0) || mixing.contains(at.file());
    }
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
    on.event(
        Indexed.class,
        file -> {
          if (file.index().mixesDecimalPoints()) {
            style.mixing.add(file.at().file());
          }
        });
    on.event(
        PointMissing.class,
        word -> {
          if (word.reading().isEmpty()) {
            context.need(ControlKeys.DECIMAL_POINT, word.at());
          } else if (!word.readAsIncrements() || style.isMixed(word.at())) {
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

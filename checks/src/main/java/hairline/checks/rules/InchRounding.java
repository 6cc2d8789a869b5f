package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Event.WordRounded;
import hairline.checks.motion.Modes.Units;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;

/** An inch word is no whole number of the control's increment. */
@AutoService(Rule.class)
public final class InchRounding implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "inch-rounding",
          Level.NOTE,
          Group.NUMBERS,
          "an inch word is no whole number of increments",
          Need.WORDS);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    if (!context.knowsIncrement()) {
      return;
    }
    on.event(
        WordRounded.class,
        word -> {
          if (word.units() == Units.INCH) {
            speak(context, word);
          }
        });
  }

  private static void speak(RuleContext context, WordRounded word) {
    long errorPm = Math.subtractExact(word.storedPm(), word.writtenPm());
    context.report(
        context
            .occurrence(
                word.at(),
                word.letter()
                    + word.written().toPlainString()
                    + " inch is "
                    + Quantities.mm(word.writtenPm())
                    + ", stored as "
                    + Quantities.mm(word.storedPm())
                    + ", error "
                    + Quantities.um(errorPm))
            .fact(
                "an inch is 25.4 mm (exact); increment from machine.inch_resolution, else"
                    + " machine.resolution")
            .figure("written", word.writtenPm() / 1e6, "µm")
            .figure("stored", word.storedPm() / 1e6, "µm")
            .figure("error", errorPm / 1e6, "µm")
            .operation(word.modes().operation())
            .cause(String.valueOf(word.letter()))
            .severity(Math.abs((double) errorPm)));
  }
}

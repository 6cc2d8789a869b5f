package hairline.checks.rules;

import static hairline.checks.finding.Quantities.mm;
import static hairline.checks.finding.Quantities.um;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Event.WordRounded;
import hairline.checks.motion.Modes.Units;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.MachineKeys;

/** A word has digits that the control rounds away; inch words have a rule of their own. */
@AutoService(Rule.class)
public final class DigitsBelowResolution implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "digits-below-resolution",
          Level.WARNING,
          Group.NUMBERS,
          "a word has digits finer than the control keeps",
          Need.WORDS);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    context
        .need(MachineKeys.RESOLUTION)
        .ifPresent(
            resolution ->
                on.event(
                    WordRounded.class,
                    word -> {
                      if (word.units() == Units.MM) {
                        speak(context, word, resolution.pm());
                      }
                    }));
  }

  private static void speak(RuleContext context, WordRounded word, long resolutionPm) {
    long errorPm = Math.subtractExact(word.storedPm(), word.writtenPm());
    context.report(
        context
            .occurrence(
                word.at(),
                word.letter()
                    + word.written().toPlainString()
                    + " is stored as "
                    + mm(word.storedPm())
                    + ", error "
                    + um(errorPm))
            .fact(
                "the control keeps whole increments of "
                    + um(resolutionPm)
                    + " (machine.resolution)")
            .cure("no digit finer than " + um(resolutionPm))
            .figure("written", word.writtenPm() / 1e6, "µm")
            .figure("stored", word.storedPm() / 1e6, "µm")
            .figure("error", errorPm / 1e6, "µm")
            .figure("resolution", resolutionPm / 1e6, "µm")
            .operation(word.modes().operation())
            .cause(String.valueOf(word.letter()))
            .severity(Math.abs((double) errorPm)));
  }
}

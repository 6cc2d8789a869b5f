package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.stock.LevelReached;
import java.util.Optional;

/** Successive step-downs that are equal as written come out unequal as stored. */
@AutoService(Rule.class)
public final class StepUnevenAfterRounding implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "step-uneven-after-rounding",
          Level.WARNING,
          Group.NUMBERS,
          "equal steps as written come out unequal as stored",
          Need.OVERLAP);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  /** Heights as written count as equal within a nanometre. */
  private static final long EQUAL_WITHIN_PM = 1_000;

  private static final class Last {
    Optional<LevelReached> level = Optional.empty();
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    Last last = new Last();
    on.event(
        LevelReached.class,
        level -> {
          if (level.again() || level.stepDownPm().isEmpty()) {
            return;
          }
          last.level
              .filter(before -> follows(before, level))
              .ifPresent(before -> judge(context, before, level));
          last.level = Optional.of(level);
        });
  }

  private static boolean follows(LevelReached before, LevelReached level) {
    return before.operation() == level.operation() && before.offset().equals(level.offset());
  }

  private static void judge(RuleContext context, LevelReached before, LevelReached level) {
    if (before.writtenStepDownPm().isEmpty() || level.writtenStepDownPm().isEmpty()) {
      return;
    }
    long written = level.writtenStepDownPm().getAsLong();
    long stored = level.stepDownPm().getAsLong();
    long storedBefore = before.stepDownPm().getAsLong();
    if (Math.abs(written - before.writtenStepDownPm().getAsLong()) > EQUAL_WITHIN_PM
        || stored == storedBefore) {
      return;
    }
    context.report(
        context
            .occurrence(
                level.at(),
                "steps of "
                    + Quantities.um(written)
                    + " as written are stored as "
                    + Quantities.um(storedBefore)
                    + ", then "
                    + Quantities.um(stored))
            .fact("the step before begins at line " + before.at().line())
            .cure("a pitch that is a whole number of increments of machine.resolution")
            .figure("pitch", written / 1e6, "µm")
            .figure("storedBefore", storedBefore / 1e6, "µm")
            .figure("stored", stored / 1e6, "µm")
            .operation(level.operation())
            .cause("pitch " + written)
            .severity(Math.abs((double) stored - storedBefore)));
  }
}

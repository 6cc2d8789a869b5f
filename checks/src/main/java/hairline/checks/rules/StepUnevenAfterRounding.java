package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Occurrence;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Place;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.stock.LevelReached;
import hairline.checks.stock.StepFound;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Successive steps or step-downs that are equal as written come out unequal as stored. */
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

  /** So many steps of one level are compared with those that go on from it. */
  private static final int MOST_STEPS_OF_A_LEVEL = 1_000;

  /** So many blocks are remembered for which step-downs were told. */
  private static final int MOST_TOLD = 100_000;

  /** What one run has seen. */
  private static final class Seen {
    Optional<LevelReached> last = Optional.empty();
    final Set<Place> told = new HashSet<>();
    final Map<Integer, List<StepFound>> byUpper = new HashMap<>();
    final Map<Integer, List<StepFound>> byLower = new HashMap<>();
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    Seen seen = new Seen();
    on.event(LevelReached.class, level -> reached(context, seen, level));
    on.event(StepFound.class, step -> found(context, seen, step));
  }

  private static void reached(RuleContext context, Seen seen, LevelReached level) {
    if (level.again() || level.stepDownPm().isEmpty()) {
      return;
    }
    seen.last
        .filter(before -> follows(before, level))
        .ifPresent(before -> judge(context, seen, before, level));
    seen.last = Optional.of(level);
  }

  private static boolean follows(LevelReached before, LevelReached level) {
    return before.operation() == level.operation() && before.offset().equals(level.offset());
  }

  private static void judge(
      RuleContext context, Seen seen, LevelReached before, LevelReached level) {
    if (before.writtenStepDownPm().isEmpty() || level.writtenStepDownPm().isEmpty()) {
      return;
    }
    long written = level.writtenStepDownPm().getAsLong();
    long stored = level.stepDownPm().getAsLong();
    long storedBefore = before.stepDownPm().getAsLong();
    if (uneven(before.writtenStepDownPm().getAsLong(), storedBefore, written, stored)) {
      if (seen.told.size() < MOST_TOLD) {
        seen.told.add(level.at());
      }
      context.report(
          occurrence(context, level.at(), written, storedBefore, stored)
              .fact("the step before begins at " + context.line(before.at(), level.at()))
              .operation(level.operation()));
    }
  }

  /** Two steps of the finished part follow each other where one ends on the level of the other. */
  private static void found(RuleContext context, Seen seen, StepFound step) {
    for (StepFound above : seen.byLower.getOrDefault(step.upper().levelId(), List.of())) {
      judge(context, seen, above, step);
    }
    for (StepFound below : seen.byUpper.getOrDefault(step.lower().levelId(), List.of())) {
      judge(context, seen, step, below);
    }
    keep(context, seen.byUpper, step.upper().levelId(), step);
    keep(context, seen.byLower, step.lower().levelId(), step);
  }

  private static void keep(
      RuleContext context, Map<Integer, List<StepFound>> steps, int levelId, StepFound step) {
    List<StepFound> ofLevel = steps.computeIfAbsent(levelId, id -> new ArrayList<>());
    if (ofLevel.size() < MOST_STEPS_OF_A_LEVEL) {
      ofLevel.add(step);
    } else {
      context.notChecked("more than " + MOST_STEPS_OF_A_LEVEL + " steps of one level", step.at());
    }
  }

  private static void judge(RuleContext context, Seen seen, StepFound above, StepFound below) {
    StepFound later = above.later().levelId() > below.later().levelId() ? above : below;
    if (!above.offset().equals(below.offset())
        || seen.told.contains(later.at())
        || !uneven(
            above.writtenHeightPm(), above.heightPm(), below.writtenHeightPm(), below.heightPm())) {
      return;
    }
    context.report(
        occurrence(context, later.at(), below.writtenHeightPm(), above.heightPm(), below.heightPm())
            .fact(
                "levels side by side, stored at "
                    + Quantities.mm(above.upper().storedZPm())
                    + ", "
                    + Quantities.mm(above.lower().storedZPm())
                    + " and "
                    + Quantities.mm(below.lower().storedZPm()))
            .operation(later.later().lastOperation()));
  }

  private static boolean uneven(
      long writtenBeforePm, long storedBeforePm, long writtenPm, long storedPm) {
    return Math.abs(writtenPm - writtenBeforePm) <= EQUAL_WITHIN_PM && storedPm != storedBeforePm;
  }

  private static Occurrence.Builder occurrence(
      RuleContext context, Place at, long writtenPm, long storedBeforePm, long storedPm) {
    return context
        .occurrence(
            at,
            "steps of "
                + Quantities.um(writtenPm)
                + " as written are stored as "
                + Quantities.um(storedBeforePm)
                + ", then "
                + Quantities.um(storedPm))
        .cure("a pitch that is a whole number of increments of machine.resolution")
        .figure("pitch", writtenPm / 1e6, "µm")
        .figure("storedBefore", storedBeforePm / 1e6, "µm")
        .figure("stored", storedPm / 1e6, "µm")
        .cause("pitch " + writtenPm)
        .severity(Math.abs((double) storedPm - storedBeforePm));
  }
}

package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Occurrence;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Place;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.stock.LevelReached;
import hairline.checks.stock.PassLost;
import hairline.checks.stock.StepFound;
import hairline.checks.stock.StepLost;
import hairline.checks.stock.Terrace;
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
          Need.SURFACE);

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

  /**
   * What a pass takes.
   *
   * @param zPm where it runs, as stored
   * @param writtenZPm where it runs, as written
   * @param heightPm what it takes, from stored values
   * @param writtenPm the same from values as written
   * @param lost whether rounding put it onto a floor that was there already
   */
  private record Down(
      Place at,
      int operation,
      String offset,
      long zPm,
      long writtenZPm,
      long heightPm,
      long writtenPm,
      boolean lost) {

    boolean follows(Down before) {
      return before.operation == operation && before.offset.equals(offset);
    }
  }

  /** A step of the finished part; of height 0 where rounding took it away. */
  private record Step(
      Place at, Terrace upper, Terrace lower, long heightPm, long writtenPm, String offset) {

    Terrace later() {
      return upper.levelId() > lower.levelId() ? upper : lower;
    }
  }

  /** What one run has seen. */
  private static final class Seen {
    Optional<Down> last = Optional.empty();
    final Set<Place> told = new HashSet<>();
    final Map<Integer, List<Step>> byUpper = new HashMap<>();
    final Map<Integer, List<Step>> byLower = new HashMap<>();
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    if (!context.knowsIncrement()) {
      return;
    }
    Seen seen = new Seen();
    on.event(LevelReached.class, level -> reached(context, seen, level));
    on.event(PassLost.class, pass -> lost(context, seen, pass));
    on.event(
        StepFound.class,
        step ->
            stands(
                context,
                seen,
                new Step(
                    step.at(),
                    step.upper(),
                    step.lower(),
                    step.heightPm(),
                    step.writtenHeightPm(),
                    step.offset())));
    on.event(
        StepLost.class,
        step ->
            stands(
                context,
                seen,
                new Step(
                    step.at(),
                    step.upper(),
                    step.lower(),
                    0,
                    step.writtenHeightPm(),
                    step.offset())));
  }

  private static void reached(RuleContext context, Seen seen, LevelReached level) {
    if (level.again() || level.stepDownPm().isEmpty()) {
      return;
    }
    if (level.writtenStepDownPm().isEmpty()) {
      seen.last = Optional.empty();
      return;
    }
    long height = level.stepDownPm().getAsLong();
    // From a floor onto which a pass was rounded, the step as written is the one from that pass.
    long written =
        seen.last
            .filter(
                before ->
                    before.lost
                        && before.zPm - level.storedZPm() == height
                        && before.operation == level.operation()
                        && before.offset.equals(level.offset()))
            .map(before -> before.writtenZPm - level.writtenZPm())
            .orElse(level.writtenStepDownPm().getAsLong());
    take(
        context,
        seen,
        new Down(
            level.at(),
            level.operation(),
            level.offset(),
            level.storedZPm(),
            level.writtenZPm(),
            height,
            written,
            false));
  }

  /** A pass that was rounded onto a floor takes nothing, whatever was written. */
  private static void lost(RuleContext context, Seen seen, PassLost pass) {
    long from =
        seen.last
            .filter(
                before ->
                    before.zPm == pass.storedZPm()
                        && before.operation == pass.operation()
                        && before.offset.equals(pass.offset()))
            .map(Down::writtenZPm)
            .orElse(pass.floorWrittenZPm());
    long written = from - pass.writtenZPm();
    if (Math.abs(written) <= EQUAL_WITHIN_PM) {
      return;
    }
    take(
        context,
        seen,
        new Down(
            pass.at(),
            pass.operation(),
            pass.offset(),
            pass.storedZPm(),
            pass.writtenZPm(),
            0,
            written,
            true));
  }

  private static void take(RuleContext context, Seen seen, Down down) {
    seen.last.filter(down::follows).ifPresent(before -> judge(context, seen, before, down));
    seen.last = Optional.of(down);
  }

  private static void judge(RuleContext context, Seen seen, Down before, Down down) {
    if (uneven(before.writtenPm, before.heightPm, down.writtenPm, down.heightPm)) {
      if (seen.told.size() < MOST_TOLD) {
        seen.told.add(down.at());
      }
      context.report(
          occurrence(context, down.at(), down.writtenPm, before.heightPm, down.heightPm)
              .fact("the step before begins at " + context.line(before.at(), down.at()))
              .operation(down.operation()));
    }
  }

  /** Two steps of the finished part follow each other where one ends on the level of the other. */
  private static void stands(RuleContext context, Seen seen, Step step) {
    for (Step above : seen.byLower.getOrDefault(step.upper().levelId(), List.of())) {
      judge(context, seen, above, step);
    }
    for (Step below : seen.byUpper.getOrDefault(step.lower().levelId(), List.of())) {
      judge(context, seen, step, below);
    }
    keep(context, seen.byUpper, step.upper().levelId(), step);
    keep(context, seen.byLower, step.lower().levelId(), step);
  }

  private static void keep(
      RuleContext context, Map<Integer, List<Step>> steps, int levelId, Step step) {
    List<Step> ofLevel = steps.computeIfAbsent(levelId, id -> new ArrayList<>());
    if (ofLevel.size() < MOST_STEPS_OF_A_LEVEL) {
      ofLevel.add(step);
    } else {
      context.notChecked("more than " + MOST_STEPS_OF_A_LEVEL + " steps of one level", step.at());
    }
  }

  private static void judge(RuleContext context, Seen seen, Step above, Step below) {
    Step later = above.later().levelId() > below.later().levelId() ? above : below;
    if (!above.offset().equals(below.offset())
        || seen.told.contains(later.at())
        || !uneven(above.writtenPm(), above.heightPm(), below.writtenPm(), below.heightPm())) {
      return;
    }
    context.report(
        occurrence(context, later.at(), below.writtenPm(), above.heightPm(), below.heightPm())
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

package hairline.checks.warmth;

import hairline.checks.setup.CodeKeys;
import hairline.checks.stock.StepFound;
import hairline.checks.stock.Terrace;
import hairline.checks.warmth.LevelGrowth.Contact;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What spindle growth makes of a step.
 *
 * <p>Between two levels of one tool, measured once, only the growth from the one to the other
 * counts. Where the upper level is uncut stock, growth since measuring does; where the levels were
 * cut by two tools, or one that was measured again between, that of each since its own measuring.
 * Of the first and the last contacts those count that lie farthest apart.
 */
public sealed interface StepGrowth {
  /** What is held against what. */
  enum Kind {
    /** One tool cut both levels and was not measured between. */
    BETWEEN_LEVELS,
    /** The upper level is uncut stock. */
    UNCUT_UPPER,
    /** Both levels, each with a measuring of its own. */
    TWO_MEASURINGS
  }

  /**
   * Growth makes the step so much higher; lower where negative.
   *
   * @param kind what counts
   * @param drift how much
   * @param upper the contact with the upper level that counts; empty where that is uncut
   * @param lower the contact with the lower level that counts
   * @param cold whether a fine cut of either was made with no valid warm-up
   */
  record Told(Kind kind, Drift drift, Optional<Contact> upper, Contact lower, boolean cold)
      implements StepGrowth {}

  /**
   * It cannot be told.
   *
   * @param reason as a clause
   * @param key the key of the sheet that would help, where one would
   */
  record NotTold(String reason, Optional<String> key) implements StepGrowth {}

  /** The growth of a step of the finished part. */
  static StepGrowth of(StepFound step, LevelGrowths levels) {
    Optional<LevelGrowth> lower = levels.of(step.lower().levelId());
    Optional<LevelGrowth> upper = levels.of(step.upper().levelId());
    if (lower.isEmpty() || (upper.isEmpty() && !step.upper().uncut())) {
      return new NotTold("growth while a level was cut is not known", Optional.empty());
    }
    List<Told> all = new ArrayList<>();
    for (Contact low : List.of(lower.get().first(), lower.get().last())) {
      if (upper.isEmpty()) {
        Optional<Drift> drift = low.sinceMeasuring();
        if (drift.isEmpty()) {
          return unmeasured(step.lower());
        }
        all.add(new Told(Kind.UNCUT_UPPER, drift.get(), Optional.empty(), low, lower.get().cold()));
        continue;
      }
      for (Contact up : List.of(upper.get().first(), upper.get().last())) {
        StepGrowth growth = between(step, up, low, upper.get().cold() || lower.get().cold());
        if (growth instanceof Told told) {
          all.add(told);
        } else {
          return growth;
        }
      }
    }
    Told largest = all.get(0);
    for (Told told : all) {
      if (told.drift().sizeUm() > largest.drift().sizeUm()) {
        largest = told;
      }
    }
    return largest;
  }

  private static StepGrowth between(StepFound step, Contact up, Contact low, boolean cold) {
    if (sameMeasuring(up, low) && !step.byTwoTools()) {
      return new Told(
          Kind.BETWEEN_LEVELS,
          Drift.between(up.growth(), low.growth()),
          Optional.of(up),
          low,
          cold);
    }
    Optional<GrowthPoint> upMeasured = up.measuring().flatMap(Measuring::growth);
    Optional<GrowthPoint> lowMeasured = low.measuring().flatMap(Measuring::growth);
    if (upMeasured.isEmpty() || lowMeasured.isEmpty()) {
      return unmeasured(upMeasured.isEmpty() ? step.upper() : step.lower());
    }
    return new Told(
        Kind.TWO_MEASURINGS,
        Drift.of(List.of(low.growth(), upMeasured.get()), List.of(lowMeasured.get(), up.growth())),
        Optional.of(up),
        low,
        cold);
  }

  private static boolean sameMeasuring(Contact up, Contact low) {
    return up.measuring().map(Measuring::end).equals(low.measuring().map(Measuring::end));
  }

  private static NotTold unmeasured(Terrace terrace) {
    return new NotTold(
        terrace.tool().map(tool -> "tool " + tool.number()).orElse("the tool")
            + " is not measured in the program before it cuts, so growth since is not known",
        Optional.of(CodeKeys.MEASURE_TOOL.path()));
  }
}

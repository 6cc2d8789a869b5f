package hairline.checks.warmth;

import hairline.checks.cutting.Band;
import hairline.checks.cutting.Certainty;
import hairline.checks.warmth.LevelGrowth.Contact;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What would bring the growth of a step within its share. */
public final class GrowthCures {
  private GrowthCures() {}

  /**
   * How much longer the spindle would have to turn at the working speed beforehand, for a drift
   * that with typical figures, by which a rule speaks, is as large as allowed: each time constant
   * takes growth still to come, and so the drift, to 1/e of itself. Empty where the spindle did not
   * go on alike between the two points, so that this does not hold.
   */
  public static OptionalDouble moreWarmUpSeconds(StepGrowth.Told told, double allowedUm) {
    Optional<GrowthPoint> from = from(told);
    double part = told.drift().sizeUm() / allowedUm;
    return from.isPresent()
            && from.get().sameStretch(told.lower().growth())
            && part > 1
            && Double.isFinite(part)
        ? OptionalDouble.of(told.lower().growth().growth().tauS(0) * StrictMath.log(part))
        : OptionalDouble.empty();
  }

  /**
   * How much longer the spindle would have to turn at this speed for its growth to come so near to
   * its end value, with typical figures; empty where growth is not known or near enough.
   */
  public static OptionalDouble secondsUntilNear(GrowthPoint point, double rpm, double nearUm) {
    double part =
        point.toComeUm(rpm).map(toCome -> Math.abs(toCome.typical()) / nearUm).orElse(0.0);
    return part > 1
        ? OptionalDouble.of(point.growth().tauS(0) * StrictMath.log(part))
        : OptionalDouble.empty();
  }

  /** Whether a warm-up of this time from cold at the working speed alone would do. */
  public static boolean warmUpAtWorkingSpeed(
      StepGrowth.Told told, double warmUpSeconds, double allowedUm) {
    Optional<GrowthPoint> from = from(told);
    GrowthPoint to = told.lower().growth();
    if (from.isEmpty() || !from.get().sameStretch(to) || to.rpm().isEmpty()) {
      return false;
    }
    double rpm = to.rpm().getAsDouble();
    double between = to.stretchSeconds() - from.get().stretchSeconds();
    GrowthPoint warm = to.from(SpindleGrowth.cold(to.figures()).after(rpm, warmUpSeconds));
    return within(
        Drift.between(warm, to.from(warm.growth().after(rpm, Math.abs(between)))), allowedUm);
  }

  /** Whether measuring the tool again just before it first cuts the lower level would do. */
  public static boolean measuringAgain(StepGrowth.Told told, LevelGrowth lower, double allowedUm) {
    GrowthPoint low = told.lower().growth();
    GrowthPoint start = lower.first().growth();
    if (told.upper().isEmpty()) {
      return within(Drift.between(start, low), allowedUm);
    }
    Contact upper = told.upper().get();
    Optional<GrowthPoint> measured = upper.measuring().flatMap(Measuring::growth);
    return measured.isPresent()
        && within(
            Drift.of(List.of(low, measured.get()), List.of(start, upper.growth())), allowedUm);
  }

  /** Whether its size is within the limit for all figures and all that is not known. */
  private static boolean within(Drift drift, double allowedUm) {
    return drift
        .rangeUm()
        .map(range -> Math.max(range.high(), -range.low()))
        .filter(largest -> Band.ofExact(largest).above(allowedUm) == Certainty.NOT_SHOWN)
        .isPresent();
  }

  private static Optional<GrowthPoint> from(StepGrowth.Told told) {
    return switch (told.kind()) {
      case BETWEEN_LEVELS -> told.upper().map(Contact::growth);
      case UNCUT_UPPER -> told.lower().measuring().flatMap(Measuring::growth);
      case TWO_MEASURINGS -> Optional.empty();
    };
  }
}

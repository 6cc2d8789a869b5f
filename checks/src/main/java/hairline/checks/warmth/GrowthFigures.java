package hairline.checks.warmth;

import hairline.checks.cutting.Band;
import hairline.checks.setup.JobKeys;
import hairline.checks.setup.Key;
import hairline.checks.setup.LimitKeys;
import hairline.checks.setup.Setup;
import hairline.checks.setup.SpindleKeys;
import hairline.checks.setup.WarmUpPlace;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * What the sheet says of spindle growth: the outcome of a spindle test as in ISO 230-3.
 *
 * @param atRpm speed of the test ({@code growth.at})
 * @param amountUm growth in the end at that speed, positive towards the part ({@code
 *     growth.amount})
 * @param timeConstantS time to 63 % of it ({@code growth.time_constant})
 * @param exponent growth in the end goes with speed to this power ({@code growth.exponent})
 * @param instantUm shift of the bearings at once with speed, at that speed ({@code growth.instant})
 * @param slowestRpm slowest speed at which the spindle turns ({@code spindle.min_speed}, else 0)
 * @param fastestRpm fastest speed ({@code spindle.max_speed}); without it an unknown speed leaves
 *     growth without bounds
 * @param before whether the spindle was warmed up before the program ({@code warm_up.where})
 * @param warmUpRpm speed of that warm-up: {@code warm_up.speed}, else {@code warm_up.min_speed}
 * @param warmWithinUm how near to its end value growth must come for a ladder of speeds to be a
 *     warm-up: {@code limits.growth_share} of the tightest tolerance of a step height; empty where
 *     the sheet gives no tolerance
 */
public record GrowthFigures(
    double atRpm,
    Band amountUm,
    Band timeConstantS,
    Band exponent,
    double instantUm,
    double slowestRpm,
    OptionalDouble fastestRpm,
    boolean before,
    OptionalDouble warmUpRpm,
    OptionalDouble warmWithinUm) {

  /** The keys without which nothing can be told of growth. */
  public static final List<Key<?>> NEEDED =
      List.of(
          SpindleKeys.GROWTH_AT_RPM, SpindleKeys.GROWTH_AMOUNT, SpindleKeys.GROWTH_TIME_CONSTANT_S);

  /**
   * The figures of a test alone: a spindle that starts cold, its slowest and fastest speed open.
   */
  public static GrowthFigures ofTest(
      double atRpm, Band amountUm, Band timeConstantS, Band exponent, double instantUm) {
    return new GrowthFigures(
        atRpm,
        amountUm,
        timeConstantS,
        exponent,
        instantUm,
        0,
        OptionalDouble.empty(),
        false,
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }

  /** The figures of a sheet; empty where one of {@link #NEEDED} is missing. */
  public static Optional<GrowthFigures> of(Setup setup) {
    if (!NEEDED.stream().allMatch(key -> setup.get(key).isPresent())) {
      return Optional.empty();
    }
    return Optional.of(
        new GrowthFigures(
            setup.get(SpindleKeys.GROWTH_AT_RPM).orElseThrow(),
            setup.get(SpindleKeys.GROWTH_AMOUNT).orElseThrow().um(),
            setup.get(SpindleKeys.GROWTH_TIME_CONSTANT_S).orElseThrow(),
            setup.get(SpindleKeys.GROWTH_EXPONENT).orElseThrow(),
            setup.get(SpindleKeys.GROWTH_INSTANT).map(length -> length.um()).orElse(0.0),
            setup.get(SpindleKeys.MIN_SPEED_RPM).orElse(0.0),
            number(setup.get(SpindleKeys.MAX_SPEED_RPM)),
            setup.get(SpindleKeys.WARM_UP_WHERE).orElseThrow() == WarmUpPlace.BEFORE,
            number(
                setup
                    .get(SpindleKeys.WARM_UP_SPEED_RPM)
                    .or(() -> setup.get(SpindleKeys.WARM_UP_MIN_SPEED_RPM))),
            warmWithinUm(setup)));
  }

  private static OptionalDouble warmWithinUm(Setup setup) {
    double share = setup.get(LimitKeys.GROWTH_SHARE).orElseThrow();
    return Stream.concat(
            setup.get(JobKeys.TOLERANCE).stream(),
            setup.features().stream().flatMap(feature -> feature.tolerance().stream()))
        .mapToDouble(tolerance -> share * tolerance.halfWidthUm())
        .min();
  }

  private static OptionalDouble number(Optional<Double> value) {
    return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
  }

  /** The shift of the bearings at this speed, in micrometres: it goes with the square of speed. */
  double instantUmAt(double rpm) {
    double ratio = rpm / atRpm;
    return instantUm * ratio * ratio;
  }
}

package hairline.checks.warmth;

import hairline.checks.setup.CodeMeaning;
import hairline.checks.setup.LimitKeys;
import hairline.checks.setup.Setup;
import hairline.checks.setup.SpindleKeys;
import hairline.checks.setup.WarmUpPlace;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the sheet asks of a warm-up.
 *
 * @param timeSeconds how long it lasts ({@code machine.spindle.warm_up.time})
 * @param minRpm slowest speed that warms up ({@code machine.spindle.warm_up.min_speed})
 * @param codeRpm speed of a warm-up code, where it is not the commanded one ({@code
 *     machine.spindle.warm_up.speed})
 * @param validForSeconds how long a stop it outlives ({@code machine.spindle.warm_up.valid_for})
 * @param idleSeconds longest stop within a warm-up ({@code limits.idle_time})
 * @param before whether it is done before the program ({@code machine.spindle.warm_up.where})
 * @param codesNamed whether the sheet names a warm-up code ({@code machine.codes.warm_up}), so that
 *     no other code is one
 */
public record WarmUpDemand(
    OptionalDouble timeSeconds,
    OptionalDouble minRpm,
    OptionalDouble codeRpm,
    OptionalDouble validForSeconds,
    double idleSeconds,
    boolean before,
    boolean codesNamed) {

  /** The demand of a sheet. */
  public static WarmUpDemand of(Setup setup) {
    return new WarmUpDemand(
        number(setup.get(SpindleKeys.WARM_UP_TIME_S)),
        number(setup.get(SpindleKeys.WARM_UP_MIN_SPEED_RPM)),
        number(setup.get(SpindleKeys.WARM_UP_SPEED_RPM)),
        number(setup.get(SpindleKeys.WARM_UP_VALID_FOR_S)),
        setup.get(LimitKeys.IDLE_TIME_S).orElseThrow(),
        setup.get(SpindleKeys.WARM_UP_WHERE).orElseThrow() == WarmUpPlace.BEFORE,
        setup.codes().names(CodeMeaning.WARM_UP));
  }

  private static OptionalDouble number(Optional<Double> value) {
    return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
  }
}

package hairline.checks.timing;

import hairline.checks.setup.AxisValues;
import hairline.checks.setup.MachineKeys;
import hairline.checks.setup.Setup;
import hairline.checks.setup.ShopKeys;
import hairline.checks.setup.SpindleKeys;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the sheet says about durations.
 *
 * @param rapidMmPerMin rate of rapid moves ({@code machine.rapid})
 * @param toolChangeSeconds time of a tool change ({@code times.tool_change})
 * @param measuringSeconds time of measuring a tool ({@code times.measuring})
 * @param warmUpSeconds time of a warm-up code ({@code machine.spindle.warm_up.time})
 * @param runUpSeconds time in which the spindle reaches a new speed ({@code
 *     machine.spindle.run_up})
 * @param waitsForSpindle whether the control holds motion for that time ({@code
 *     machine.spindle.waits})
 */
public record TimeTable(
    Optional<AxisValues> rapidMmPerMin,
    OptionalDouble toolChangeSeconds,
    OptionalDouble measuringSeconds,
    OptionalDouble warmUpSeconds,
    OptionalDouble runUpSeconds,
    boolean waitsForSpindle) {

  /** The table of a sheet. */
  public static TimeTable of(Setup setup) {
    return new TimeTable(
        setup.get(MachineKeys.RAPID_MM_PER_MIN),
        number(setup.get(ShopKeys.TOOL_CHANGE_S)),
        number(setup.get(ShopKeys.MEASURING_S)),
        number(setup.get(SpindleKeys.WARM_UP_TIME_S)),
        number(setup.get(SpindleKeys.RUN_UP_S)),
        setup.get(SpindleKeys.WAITS).orElse(true));
  }

  private static OptionalDouble number(Optional<Double> value) {
    return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
  }
}

package hairline.checks.timing;

import hairline.checks.setup.AxisValues;
import hairline.checks.setup.LengthRange;
import hairline.checks.setup.MachineKeys;
import hairline.checks.setup.Setup;
import hairline.checks.setup.ShopKeys;
import hairline.checks.setup.SpindleKeys;
import java.util.List;
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
 * @param longestRapidSeconds longest time of a rapid move of unknown length: across the travel of
 *     all axes ({@code machine.travel}, {@code machine.acceleration}); empty where not known
 */
public record TimeTable(
    Optional<AxisValues> rapidMmPerMin,
    OptionalDouble toolChangeSeconds,
    OptionalDouble measuringSeconds,
    OptionalDouble warmUpSeconds,
    OptionalDouble runUpSeconds,
    boolean waitsForSpindle,
    OptionalDouble longestRapidSeconds) {
  private static final double SECONDS_PER_MINUTE = 60;

  /** A table that does not know the travel. */
  public TimeTable(
      Optional<AxisValues> rapidMmPerMin,
      OptionalDouble toolChangeSeconds,
      OptionalDouble measuringSeconds,
      OptionalDouble warmUpSeconds,
      OptionalDouble runUpSeconds,
      boolean waitsForSpindle) {
    this(
        rapidMmPerMin,
        toolChangeSeconds,
        measuringSeconds,
        warmUpSeconds,
        runUpSeconds,
        waitsForSpindle,
        OptionalDouble.empty());
  }

  /** The table of a sheet. */
  public static TimeTable of(Setup setup) {
    return new TimeTable(
        setup.get(MachineKeys.RAPID_MM_PER_MIN),
        number(setup.get(ShopKeys.TOOL_CHANGE_S)),
        number(setup.get(ShopKeys.MEASURING_S)),
        number(setup.get(SpindleKeys.WARM_UP_TIME_S)),
        number(setup.get(SpindleKeys.RUN_UP_S)),
        setup.get(SpindleKeys.WAITS).orElse(true),
        longestRapid(setup));
  }

  /**
   * From rest to rest across the travel: L / v + v / a + a / j (exact where rate and acceleration
   * are reached, which takes longest), with the slowest of the axes.
   */
  private static OptionalDouble longestRapid(Setup setup) {
    Optional<LengthRange> x = setup.get(MachineKeys.TRAVEL_X);
    Optional<LengthRange> y = setup.get(MachineKeys.TRAVEL_Y);
    Optional<LengthRange> z = setup.get(MachineKeys.TRAVEL_Z);
    OptionalDouble rate = slowest(setup.get(MachineKeys.RAPID_MM_PER_MIN));
    OptionalDouble acceleration = slowest(setup.get(MachineKeys.ACCELERATION_MM_PER_S2));
    Optional<AxisValues> jerks = setup.get(MachineKeys.JERK_MM_PER_S3);
    OptionalDouble jerk =
        jerks.isPresent() ? slowest(jerks) : OptionalDouble.of(Double.POSITIVE_INFINITY);
    if (x.isEmpty()
        || y.isEmpty()
        || z.isEmpty()
        || rate.isEmpty()
        || acceleration.isEmpty()
        || jerk.isEmpty()) {
      return OptionalDouble.empty();
    }
    double acrossMm = StrictMath.sqrt(square(x.get()) + square(y.get()) + square(z.get()));
    double mmPerS = rate.getAsDouble() / SECONDS_PER_MINUTE;
    return OptionalDouble.of(
        acrossMm / mmPerS
            + mmPerS / acceleration.getAsDouble()
            + acceleration.getAsDouble() / jerk.getAsDouble());
  }

  /** The least of the values along X, Y and Z; empty where one is missing. */
  private static OptionalDouble slowest(Optional<AxisValues> values) {
    if (values.isEmpty() || values.get().alongPath().isPresent()) {
      return values.map(AxisValues::alongPath).orElse(OptionalDouble.empty());
    }
    double slowest = Double.POSITIVE_INFINITY;
    for (OptionalDouble axis : List.of(values.get().x(), values.get().y(), values.get().z())) {
      if (axis.isEmpty()) {
        return OptionalDouble.empty();
      }
      slowest = Math.min(slowest, axis.getAsDouble());
    }
    return OptionalDouble.of(slowest);
  }

  private static double square(LengthRange range) {
    double mm = range.hi().mm() - range.lo().mm();
    return mm * mm;
  }

  private static OptionalDouble number(Optional<Double> value) {
    return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
  }
}

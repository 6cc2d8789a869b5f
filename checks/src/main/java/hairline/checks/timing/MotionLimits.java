package hairline.checks.timing;

import hairline.checks.setup.AxisValues;
import hairline.checks.setup.ControlKeys;
import hairline.checks.setup.Length;
import hairline.checks.setup.MachineKeys;
import hairline.checks.setup.Setup;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What the sheet says of how the axes and the control can move.
 *
 * @param rapidMmPerMin highest speed of the axes ({@code machine.rapid})
 * @param accelerationMmPerS2 {@code machine.acceleration}
 * @param jerkMmPerS3 {@code machine.jerk}; absent: not limited
 * @param blockTimeS {@code machine.control.block_time}; absent: not limited
 * @param pathToleranceMm {@code machine.control.path_tolerance}
 * @param lookAheadBlocks {@code machine.control.look_ahead}
 */
public record MotionLimits(
    Optional<AxisValues> rapidMmPerMin,
    Optional<AxisValues> accelerationMmPerS2,
    Optional<AxisValues> jerkMmPerS3,
    OptionalDouble blockTimeS,
    OptionalDouble pathToleranceMm,
    OptionalInt lookAheadBlocks) {

  /** The limits of a sheet. */
  public static MotionLimits of(Setup setup) {
    return new MotionLimits(
        setup.get(MachineKeys.RAPID_MM_PER_MIN),
        setup.get(MachineKeys.ACCELERATION_MM_PER_S2),
        setup.get(MachineKeys.JERK_MM_PER_S3),
        number(setup.get(ControlKeys.BLOCK_TIME_S)),
        number(setup.get(ControlKeys.PATH_TOLERANCE).map(Length::mm)),
        setup.get(ControlKeys.LOOK_AHEAD_BLOCKS).map(OptionalInt::of).orElse(OptionalInt.empty()));
  }

  private static OptionalDouble number(Optional<Double> value) {
    return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
  }

  /** Whether they are enough to plan a feed: acceleration and path tolerance are known. */
  public boolean enoughToPlan() {
    return accelerationMmPerS2.isPresent() && pathToleranceMm.isPresent();
  }

  /** The keys that are not on the sheet, and without which nothing is planned. */
  List<String> missing() {
    List<String> keys = new ArrayList<>();
    if (accelerationMmPerS2.isEmpty()) {
      keys.add(MachineKeys.ACCELERATION_MM_PER_S2.path());
    }
    if (pathToleranceMm.isEmpty()) {
      keys.add(ControlKeys.PATH_TOLERANCE.path());
    }
    return keys;
  }

  /**
   * The limit along a direction: that of the path, or the one at which the first axis reaches its
   * own.
   *
   * @param values the limits; an axis without one does not limit
   * @param x part of the motion along X, from -1 to 1
   * @param y along Y
   * @param z along Z
   */
  static double along(AxisValues values, double x, double y, double z) {
    if (values.alongPath().isPresent()) {
      return values.alongPath().getAsDouble();
    }
    return Math.min(part(values.x(), x), Math.min(part(values.y(), y), part(values.z(), z)));
  }

  private static double part(OptionalDouble limit, double share) {
    return limit.isPresent() && share != 0
        ? limit.getAsDouble() / Math.abs(share)
        : Double.POSITIVE_INFINITY;
  }
}

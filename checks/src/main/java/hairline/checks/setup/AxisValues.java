package hairline.checks.setup;

import java.util.OptionalDouble;

/**
 * A rate (speed, acceleration, jerk) in the unit that its key names: one value holds along the
 * path, a mapping holds per axis; so either {@code alongPath} stands alone or some of the axes do.
 */
public record AxisValues(
    OptionalDouble alongPath, OptionalDouble x, OptionalDouble y, OptionalDouble z) {

  /** One value along the path. */
  public static AxisValues alongPath(double value) {
    return new AxisValues(
        OptionalDouble.of(value),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }

  /** One value per axis. */
  public static AxisValues perAxis(OptionalDouble x, OptionalDouble y, OptionalDouble z) {
    return new AxisValues(OptionalDouble.empty(), x, y, z);
  }
}

package hairline.checks.setup;

import java.util.List;

/** Keys of the machine's axes, {@code machine}. */
public final class MachineKeys {
  /** The machine, as the shop calls it. */
  public static final Key<String> NAME =
      Key.of("machine.name", Types.text(), "bench mill 2", "the machine, as the shop calls it");

  /** Least input increment: the control rounds finer digits away. */
  public static final Key<Length> RESOLUTION =
      Key.of(
          "machine.resolution",
          Types.length(Bounds.positive("0.1")),
          "0.1 um",
          "least input increment: the control rounds finer digits away");

  /** Least input increment under inch, where it has its own. */
  public static final Key<Length> INCH_RESOLUTION =
      Key.of(
          "machine.inch_resolution",
          Types.length(Bounds.positive("0.1")),
          "0.00001 in",
          "least input increment under inch, where it has its own");

  /** What happens to finer digits: nearest (ties away from zero) | truncate. */
  public static final Key<Rounding> ROUNDING =
      Key.of(
          "machine.rounding",
          Types.choice(Rounding.class),
          "nearest",
          "what happens to finer digits: nearest (ties away from zero) | truncate");

  /** The smallest move the axes make reliably. */
  public static final Key<Length> SMALLEST_STEP =
      Key.of(
          "machine.smallest_step",
          Types.length(Bounds.positive("1")),
          "0.3 um",
          "the smallest move the axes make reliably");

  /** ISO 230-2 unidirectional repeatability. */
  public static final Key<Length> REPEATABILITY =
      Key.of(
          "machine.repeatability",
          Types.length(Bounds.fromZero("1")),
          "0.4 um",
          "ISO 230-2 unidirectional repeatability");

  /** ISO 230-2 reversal value: lost motion when an axis turns round. */
  public static final Key<Length> REVERSAL =
      Key.of(
          "machine.reversal",
          Types.length(Bounds.fromZero("1")),
          "0.5 um",
          "ISO 230-2 reversal value: lost motion when an axis turns round");

  /** Travel of X in machine coordinates. */
  public static final Key<LengthRange> TRAVEL_X =
      Key.of(
          "machine.travel.X",
          Types.lengthRange(Bounds.between("-100000", "100000")),
          "[-150 mm, 150 mm]",
          "travel of X in machine coordinates");

  /** Travel of Y in machine coordinates. */
  public static final Key<LengthRange> TRAVEL_Y =
      Key.of(
          "machine.travel.Y",
          Types.lengthRange(Bounds.between("-100000", "100000")),
          "[-110 mm, 110 mm]",
          "travel of Y in machine coordinates");

  /** Travel of Z in machine coordinates. */
  public static final Key<LengthRange> TRAVEL_Z =
      Key.of(
          "machine.travel.Z",
          Types.lengthRange(Bounds.between("-100000", "100000")),
          "[-120 mm, 5 mm]",
          "travel of Z in machine coordinates");

  /** Rapid feed: one value along the path, or one per axis. */
  public static final Key<AxisValues> RAPID_MM_PER_MIN =
      Key.of(
          "machine.rapid",
          Types.axisValues(Dimension.FEED, Bounds.positive("1000000")),
          "15 m/min",
          "rapid feed: one value along the path, or one per axis");

  /** Acceleration: one value along the path, or one per axis. */
  public static final Key<AxisValues> ACCELERATION_MM_PER_S2 =
      Key.of(
          "machine.acceleration",
          Types.axisValues(Dimension.ACCELERATION, Bounds.positive("1000000")),
          "8 m/s^2",
          "acceleration: one value along the path, or one per axis");

  /** Jerk: one value along the path, or one per axis; without it, unlimited. */
  public static final Key<AxisValues> JERK_MM_PER_S3 =
      Key.of(
          "machine.jerk",
          Types.axisValues(Dimension.JERK, Bounds.positive("1000000000000")),
          "400 m/s^3",
          "jerk: one value along the path, or one per axis; without it, unlimited");

  /** All of them, in the order of the sheet. */
  static final List<Key<?>> ALL =
      List.of(
          NAME,
          RESOLUTION,
          INCH_RESOLUTION,
          ROUNDING,
          SMALLEST_STEP,
          REPEATABILITY,
          REVERSAL,
          TRAVEL_X,
          TRAVEL_Y,
          TRAVEL_Z,
          RAPID_MM_PER_MIN,
          ACCELERATION_MM_PER_S2,
          JERK_MM_PER_S3);

  private MachineKeys() {}
}

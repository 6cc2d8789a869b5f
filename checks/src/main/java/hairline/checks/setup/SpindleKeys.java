package hairline.checks.setup;

import hairline.checks.cutting.Band;
import java.util.List;

/** Keys of the spindle, {@code machine.spindle}. */
public final class SpindleKeys {
  /** Slowest speed. */
  public static final Key<Double> MIN_SPEED_RPM =
      Key.of(
          "machine.spindle.min_speed",
          Types.quantity(Dimension.ROTATION, Bounds.fromZero("1000000")),
          "4000 rpm",
          "slowest speed");

  /** Fastest speed. */
  public static final Key<Double> MAX_SPEED_RPM =
      Key.of(
          "machine.spindle.max_speed",
          Types.quantity(Dimension.ROTATION, Bounds.positive("1000000")),
          "60000 rpm",
          "fastest speed");

  /** Time to reach a new speed. */
  public static final Key<Double> RUN_UP_S =
      Key.of(
          "machine.spindle.run_up",
          Types.quantity(Dimension.TIME, Bounds.fromZero("3600")),
          "1.5 s",
          "time to reach a new speed");

  /** Whether the control holds motion until the speed is reached. */
  public static final Key<Boolean> WAITS =
      Key.of(
              "machine.spindle.waits",
              Types.flag(),
              "true",
              "whether the control holds motion until the speed is reached")
          .withDefault(true, "convention: the control waits unless the sheet says otherwise");

  /** ISO 230-3 spindle test: its speed. */
  public static final Key<Double> GROWTH_AT_RPM =
      Key.of(
          "machine.spindle.growth.at",
          Types.quantity(Dimension.ROTATION, Bounds.positive("1000000")),
          "50000 rpm",
          "ISO 230-3 spindle test: its speed");

  /** ISO 230-3 spindle test: growth in the end, positive towards the part. */
  public static final Key<LengthBand> GROWTH_AMOUNT =
      Key.of(
          "machine.spindle.growth.amount",
          Types.lengthBand(Bounds.between("-1", "1")),
          "9 um",
          "ISO 230-3 spindle test: growth in the end, positive towards the part");

  /** ISO 230-3 spindle test: time to 63 % of the growth. */
  public static final Key<Band> GROWTH_TIME_CONSTANT_S =
      Key.of(
          "machine.spindle.growth.time_constant",
          Types.band(Dimension.TIME, Bounds.positive("86400")),
          "6 min",
          "ISO 230-3 spindle test: time to 63 % of the growth");

  /** Growth goes with speed to this power. */
  public static final Key<Band> GROWTH_EXPONENT =
      Key.of(
              "machine.spindle.growth.exponent",
              Types.band(Dimension.NUMBER, Bounds.between("0", "4")),
              "1.5",
              "growth goes with speed to this power")
          .withDefault(Band.ofExact(1.5), "convention: growth goes with speed to the power 1.5");

  /** Axial shift of the bearings at once with speed, at the speed of the test. */
  public static final Key<Length> GROWTH_INSTANT =
      Key.of(
          "machine.spindle.growth.instant",
          Types.length(Bounds.between("-1", "1")),
          "0 um",
          "axial shift of the bearings at once with speed, at the speed of the test");

  /** How long a warm-up lasts. */
  public static final Key<Double> WARM_UP_TIME_S =
      Key.of(
          "machine.spindle.warm_up.time",
          Types.quantity(Dimension.TIME, Bounds.positive("86400")),
          "12 min",
          "how long a warm-up lasts");

  /** Slowest speed that warms up. */
  public static final Key<Double> WARM_UP_MIN_SPEED_RPM =
      Key.of(
          "machine.spindle.warm_up.min_speed",
          Types.quantity(Dimension.ROTATION, Bounds.positive("1000000")),
          "20000 rpm",
          "slowest speed that warms up");

  /** Speed of a warm-up code, where it is not the speed then commanded. */
  public static final Key<Double> WARM_UP_SPEED_RPM =
      Key.of(
          "machine.spindle.warm_up.speed",
          Types.quantity(Dimension.ROTATION, Bounds.positive("1000000")),
          "30000 rpm",
          "speed of a warm-up code, where it is not the speed then commanded");

  /** How long a warm-up outlives a standing spindle. */
  public static final Key<Double> WARM_UP_VALID_FOR_S =
      Key.of(
          "machine.spindle.warm_up.valid_for",
          Types.quantity(Dimension.TIME, Bounds.fromZero("86400")),
          "20 min",
          "how long a warm-up outlives a standing spindle");

  /** Where the warm-up is done: program | before. */
  public static final Key<WarmUpPlace> WARM_UP_WHERE =
      Key.of(
              "machine.spindle.warm_up.where",
              Types.choice(WarmUpPlace.class),
              "program",
              "where the warm-up is done: program | before")
          .withDefault(
              WarmUpPlace.PROGRAM, "convention: the program warms up unless the sheet says before");

  /** All of them, in the order of the sheet. */
  static final List<Key<?>> ALL =
      List.of(
          MIN_SPEED_RPM,
          MAX_SPEED_RPM,
          RUN_UP_S,
          WAITS,
          GROWTH_AT_RPM,
          GROWTH_AMOUNT,
          GROWTH_TIME_CONSTANT_S,
          GROWTH_EXPONENT,
          GROWTH_INSTANT,
          WARM_UP_TIME_S,
          WARM_UP_MIN_SPEED_RPM,
          WARM_UP_SPEED_RPM,
          WARM_UP_VALID_FOR_S,
          WARM_UP_WHERE);

  private SpindleKeys() {}
}

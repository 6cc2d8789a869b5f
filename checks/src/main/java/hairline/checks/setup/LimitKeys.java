package hairline.checks.setup;

import java.util.List;

/** Keys of the limits, {@code limits}: where a rule turns from silence to a finding. */
public final class LimitKeys {
  /** Part of a step that flex may take. */
  public static final Key<Double> FLEX_SHARE =
      Key.of(
              "limits.flex_share",
              Types.number(Bounds.positive("10")),
              "0.33",
              "part of a step that flex may take")
          .withDefault(0.33, "default of the sheet");

  /** Part of the tolerance that spindle growth may take. */
  public static final Key<Double> GROWTH_SHARE =
      Key.of(
              "limits.growth_share",
              Types.number(Bounds.positive("10")),
              "0.33",
              "part of the tolerance that spindle growth may take")
          .withDefault(0.33, "default of the sheet");

  /** A step must be this many smallest steps. */
  public static final Key<Double> STEP_MARGIN =
      Key.of(
              "limits.step_margin",
              Types.number(Bounds.positive("1000")),
              "2",
              "a step must be this many smallest steps")
          .withDefault(2.0, "default of the sheet");

  /** Longest spindle stop between measuring and a fine cut. */
  public static final Key<Double> IDLE_TIME_S =
      Key.of(
              "limits.idle_time",
              Types.quantity(Dimension.TIME, Bounds.fromZero("86400")),
              "60 s",
              "longest spindle stop between measuring and a fine cut")
          .withDefault(60.0, "default of the sheet");

  /** Longest time between measuring and a fine cut. */
  public static final Key<Double> MEASURE_EVERY_S =
      Key.of(
              "limits.measure_every",
              Types.quantity(Dimension.TIME, Bounds.positive("864000")),
              "45 min",
              "longest time between measuring and a fine cut")
          .withDefault(2700.0, "default of the sheet");

  /** Part of an operation's feed length that may touch nothing. */
  public static final Key<Double> AIR_SHARE =
      Key.of(
              "limits.air_share",
              Types.number(Bounds.between("0", "1")),
              "0.5",
              "part of an operation's feed length that may touch nothing")
          .withDefault(0.5, "default of the sheet");

  /** All of them, in the order of the sheet. */
  static final List<Key<?>> ALL =
      List.of(FLEX_SHARE, GROWTH_SHARE, STEP_MARGIN, IDLE_TIME_S, MEASURE_EVERY_S, AIR_SHARE);

  private LimitKeys() {}
}

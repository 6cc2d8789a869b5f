package hairline.checks.setup;

import java.util.List;

/** Keys of the surroundings: {@code environment}, {@code gauge}, {@code setting}, {@code times}. */
public final class ShopKeys {
  /** Temperature of the room. */
  public static final Key<Double> TEMPERATURE_DEG_C =
      Key.of(
          "environment.temperature",
          Types.quantity(Dimension.TEMPERATURE, Bounds.between("-50", "100")),
          "20 degC",
          "temperature of the room");

  /** Half range of the room's temperature. */
  public static final Key<Double> SWING_K =
      Key.of(
          "environment.swing",
          Types.quantity(Dimension.TEMPERATURE_DIFFERENCE, Bounds.fromZero("50")),
          "0.5 K",
          "half range of the room's temperature");

  /** Length that grows between tool and part. */
  public static final Key<Length> LOOP =
      Key.of(
          "environment.loop",
          Types.length(Bounds.positive("100000")),
          "60 mm",
          "length that grows between tool and part");

  /** Coefficient of linear expansion of the loop. */
  public static final Key<Double> LOOP_EXPANSION_UM_PER_M_K =
      Key.of(
          "environment.expansion",
          Types.quantity(Dimension.EXPANSION, Bounds.between("-10", "1000")),
          "11.5 um/(m K)",
          "coefficient of linear expansion of the loop");

  /** Expanded uncertainty (k = 2) of the step-height measurement. */
  public static final Key<Length> GAUGE_UNCERTAINTY =
      Key.of(
          "gauge.uncertainty",
          Types.length(Bounds.fromZero("1")),
          "0.3 um",
          "expanded uncertainty (k = 2) of the step-height measurement");

  /** Expanded uncertainty (k = 2) of one tool-length measurement. */
  public static final Key<Length> SETTING_UNCERTAINTY =
      Key.of(
          "setting.uncertainty",
          Types.length(Bounds.fromZero("1")),
          "0.4 um",
          "expanded uncertainty (k = 2) of one tool-length measurement");

  /** Time of a tool change. */
  public static final Key<Double> TOOL_CHANGE_S =
      Key.of(
          "times.tool_change",
          Types.quantity(Dimension.TIME, Bounds.fromZero("86400")),
          "4 s",
          "time of a tool change");

  /** Time of measuring a tool. */
  public static final Key<Double> MEASURING_S =
      Key.of(
          "times.measuring",
          Types.quantity(Dimension.TIME, Bounds.fromZero("86400")),
          "12 s",
          "time of measuring a tool");

  /** All of them, in the order of the sheet. */
  static final List<Key<?>> ALL =
      List.of(
          TEMPERATURE_DEG_C,
          SWING_K,
          LOOP,
          LOOP_EXPANSION_UM_PER_M_K,
          GAUGE_UNCERTAINTY,
          SETTING_UNCERTAINTY,
          TOOL_CHANGE_S,
          MEASURING_S);

  private ShopKeys() {}
}

package hairline.checks.setup;

import java.util.List;

/** Keys of the machine's own codes, {@code machine.codes}. */
public final class CodeKeys {
  /** Codes and calls that warm the spindle up. */
  public static final Key<List<CodeWord>> WARM_UP =
      Key.of(
          "machine.codes.warm_up",
          Types.list(new CodeWordType(), 1, 100),
          "[M71, P9001]",
          "codes and calls that warm the spindle up");

  /** Codes and calls that measure the tool in the spindle. */
  public static final Key<List<CodeWord>> MEASURE_TOOL =
      Key.of(
          "machine.codes.measure_tool",
          Types.list(new CodeWordType(), 1, 100),
          "[M72, P9002]",
          "codes and calls that measure the tool in the spindle");

  /** Codes and calls that switch coolant on. */
  public static final Key<List<CodeWord>> COOLANT_ON =
      Key.of(
          "machine.codes.coolant_on",
          Types.list(new CodeWordType(), 1, 100),
          "[M7, M8]",
          "codes and calls that switch coolant on");

  /** Codes and calls that switch coolant off. */
  public static final Key<List<CodeWord>> COOLANT_OFF =
      Key.of(
          "machine.codes.coolant_off",
          Types.list(new CodeWordType(), 1, 100),
          "[M9]",
          "codes and calls that switch coolant off");

  /** Codes and calls that are known and of no interest here. */
  public static final Key<List<CodeWord>> IGNORE =
      Key.of(
          "machine.codes.ignore",
          Types.list(new CodeWordType(), 1, 100),
          "[M90]",
          "codes and calls that are known and of no interest here");

  /** All of them, in the order of the sheet. */
  static final List<Key<?>> ALL = List.of(WARM_UP, MEASURE_TOOL, COOLANT_ON, COOLANT_OFF, IGNORE);

  private CodeKeys() {}
}

package hairline.checks.compare;

import hairline.checks.finding.Quantities;
import hairline.checks.motion.Modal;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Modes.Compensation;
import hairline.checks.motion.Modes.Coolant;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The state of the machine in words, so that equal words are equal states. How the words of a block
 * are read (units, distance mode, plane) is no state of the machine while a program runs; at its
 * end it is, for it is what the next program finds.
 */
final class State {
  private @Nullable Modes last;
  private Map<Change.Kind, String> lastItems = new EnumMap<>(Change.Kind.class);

  /** The items of a state; of the same object again the same map, which must not be changed. */
  @SuppressWarnings("ReferenceEquality") // Equal states are mostly one object, and asked often.
  Map<Change.Kind, String> items(Modes modes) {
    if (modes != last) {
      last = modes;
      lastItems = of(modes);
    }
    return lastItems;
  }

  private static Map<Change.Kind, String> of(Modes modes) {
    Map<Change.Kind, String> items = new EnumMap<>(Change.Kind.class);
    items.put(Change.Kind.TOOL, tool(modes.tool()));
    items.put(Change.Kind.SPEED, spindle(modes));
    items.put(Change.Kind.COOLANT, coolant(modes));
    items.put(Change.Kind.OFFSET, text(modes.workOffset()));
    items.put(Change.Kind.LENGTH_OFFSET, numbered("H", modes.lengthOffset()));
    items.put(
        Change.Kind.COMPENSATION,
        modes.compensation().is(Compensation.OFF)
            ? "off"
            : text(modes.compensation()) + ", " + numbered("D", modes.compensationNumber()));
    items.put(Change.Kind.PATH_MODE, text(modes.pathMode()));
    return items;
  }

  /** What the next program finds beside the items of {@link #items}. */
  static String left(Modes modes) {
    return String.join(
        ", ",
        "units " + text(modes.units()),
        "plane " + text(modes.plane()).toUpperCase(Locale.ROOT),
        "distance " + text(modes.distance()),
        "arc distance " + text(modes.arcDistance()),
        "feed mode " + text(modes.feedMode()),
        "feed " + modes.feed().value().map(f -> Quantities.significant(f, 9)).orElse("not known"),
        "cycles return to " + text(modes.cycleReturn()));
  }

  static String tool(Modal<Integer> tool) {
    return tool.value().map(number -> "T" + number).orElse(absent(tool));
  }

  static String spindle(Modes modes) {
    if (modes.spindle().is(Modes.Spindle.STOPPED)) {
      return "stopped";
    }
    String turning = modes.spindle().value().isEmpty() ? absent(modes.spindle()) + ", " : "";
    if (modes.spindle().is(Modes.Spindle.COUNTER_CLOCKWISE)) {
      turning = "counter-clockwise ";
    }
    return turning
        + modes
            .speedRpm()
            .value()
            .map(
                s ->
                    modes.surfaceSpeed()
                        ? Quantities.significant(s, 9) + " m/min"
                        : Quantities.rpm(s))
            .orElse("speed " + absent(modes.speedRpm()));
  }

  static String coolant(Modes modes) {
    if (modes.coolant().value().isEmpty()) {
      return absent(modes.coolant());
    }
    Coolant on = modes.coolant().value().get();
    if (!on.on()) {
      return "off";
    }
    return on.mist() && on.flood() ? "mist and flood" : on.mist() ? "mist" : "flood";
  }

  private static String numbered(String letter, Modal<Integer> number) {
    return number.value().map(n -> n == 0 ? "none" : letter + n).orElse(absent(number));
  }

  private static String text(Modal<?> item) {
    return item.value()
        .map(
            v ->
                v instanceof Enum<?> e
                    ? e.name().toLowerCase(Locale.ROOT).replace('_', ' ')
                    : v.toString())
        .orElse(absent(item));
  }

  private static String absent(Modal<?> item) {
    return item.isUnknown() ? "not known" : "not set";
  }
}

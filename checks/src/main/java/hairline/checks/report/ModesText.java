package hairline.checks.report;

import hairline.checks.finding.ProgramResult;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Modal;
import hairline.checks.motion.Modes;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;

/** The modal state in words: the code where there is one, and where it comes from if not stated. */
final class ModesText {
  private ModesText() {}

  /**
   * Items and their values, in the order of a usual safe start.
   *
   * @param result knows the files that lines stand in
   */
  static Map<String, String> of(Modes modes, ProgramResult result) {
    Map<String, String> all = new LinkedHashMap<>();
    all.put("units", text(result, modes.units(), v -> v == Modes.Units.MM ? "G21" : "G20"));
    all.put(
        "distance",
        text(result, modes.distance(), v -> v == Modes.Distance.ABSOLUTE ? "G90" : "G91"));
    all.put(
        "plane",
        text(
            result,
            modes.plane(),
            v ->
                switch (v) {
                  case XY -> "G17";
                  case ZX -> "G18";
                  case YZ -> "G19";
                }));
    all.put(
        "feedMode",
        text(
            result,
            modes.feedMode(),
            v ->
                switch (v) {
                  case INVERSE_TIME -> "G93";
                  case PER_MINUTE -> "G94";
                  case PER_REVOLUTION -> "G95";
                }));
    all.put(
        "pathMode",
        text(
            result,
            modes.pathMode(),
            v ->
                switch (v) {
                  case EXACT_PATH -> "G61";
                  case EXACT_STOP -> "G61.1";
                  case CONTINUOUS -> "G64";
                }));
    all.put("workOffset", text(result, modes.workOffset(), v -> v));
    all.put(
        "compensation",
        text(
            result,
            modes.compensation(),
            v ->
                switch (v) {
                  case OFF -> "G40";
                  case LEFT -> "G41";
                  case RIGHT -> "G42";
                }));
    all.put("lengthOffset", text(result, modes.lengthOffset(), v -> v == 0 ? "G49" : "H" + v));
    all.put("tool", text(result, modes.tool(), v -> "T" + v));
    all.put(
        "spindle",
        text(
            result,
            modes.spindle(),
            v ->
                switch (v) {
                  case STOPPED -> "M5";
                  case CLOCKWISE -> "M3";
                  case COUNTER_CLOCKWISE -> "M4";
                }));
    all.put("speed", text(result, modes.speedRpm(), v -> "S" + Quantities.significant(v, 9)));
    all.put("feed", text(result, modes.feed(), v -> "F" + Quantities.significant(v, 9)));
    all.put(
        "coolant",
        text(
            result,
            modes.coolant(),
            v -> v.on() ? (v.mist() ? "M7" : "") + (v.flood() ? "M8" : "") : "M9"));
    return all;
  }

  private static <T> String text(ProgramResult result, Modal<T> item, Function<T, String> code) {
    String value = item.value().map(code).orElse("");
    return switch (item.origin()) {
      case STATED -> value;
      case SHEET -> value + " (sheet)";
      case ASSUMED -> value + " (assumed)";
      case UNSET -> "not set";
      case UNKNOWN ->
          "unknown since line "
              + item.line()
              + (item.file() == 0 ? "" : " of " + result.files().get(item.file()));
    };
  }
}

package hairline.checks.motion;

/**
 * The codes that are understood: those of NISTIR 6556 tables 5 and 7, of ISO 6983-1 (from memory)
 * and of the trade (common practice, no source).
 */
enum Code {
  G0(CodeGroup.MOTION),
  G1(CodeGroup.MOTION),
  G2(CodeGroup.MOTION),
  G3(CodeGroup.MOTION),
  /** Straight probing. */
  G38_2(CodeGroup.MOTION),
  /** Chip-breaking drilling (trade). */
  G73(CodeGroup.MOTION),
  G81(CodeGroup.MOTION),
  G82(CodeGroup.MOTION),
  G83(CodeGroup.MOTION),
  G84(CodeGroup.MOTION),
  G85(CodeGroup.MOTION),
  G86(CodeGroup.MOTION),
  G87(CodeGroup.MOTION),
  G88(CodeGroup.MOTION),
  G89(CodeGroup.MOTION),
  G80(CodeGroup.CYCLE_CANCEL),

  G4(CodeGroup.ONE_SHOT),
  G10(CodeGroup.ONE_SHOT),
  G28(CodeGroup.ONE_SHOT),
  G30(CodeGroup.ONE_SHOT),
  /** Local zero (trade). */
  G52(CodeGroup.ONE_SHOT),
  G53(CodeGroup.ONE_SHOT),
  /** Call with arguments (trade). */
  G65(CodeGroup.ONE_SHOT),
  G92(CodeGroup.ONE_SHOT),
  G92_1(CodeGroup.ONE_SHOT),
  G92_2(CodeGroup.ONE_SHOT),
  G92_3(CodeGroup.ONE_SHOT),

  G17(CodeGroup.PLANE),
  G18(CodeGroup.PLANE),
  G19(CodeGroup.PLANE),

  G20(CodeGroup.UNITS),
  G21(CodeGroup.UNITS),
  /** Inch in ISO 6983. */
  G70(CodeGroup.UNITS),
  /** Millimetre in ISO 6983. */
  G71(CodeGroup.UNITS),

  G40(CodeGroup.COMPENSATION),
  G41(CodeGroup.COMPENSATION),
  G42(CodeGroup.COMPENSATION),

  G43(CodeGroup.LENGTH_OFFSET),
  G44(CodeGroup.LENGTH_OFFSET),
  G49(CodeGroup.LENGTH_OFFSET),

  G54(CodeGroup.WORK_OFFSET),
  G55(CodeGroup.WORK_OFFSET),
  G56(CodeGroup.WORK_OFFSET),
  G57(CodeGroup.WORK_OFFSET),
  G58(CodeGroup.WORK_OFFSET),
  G59(CodeGroup.WORK_OFFSET),
  G59_1(CodeGroup.WORK_OFFSET),
  G59_2(CodeGroup.WORK_OFFSET),
  G59_3(CodeGroup.WORK_OFFSET),

  G61(CodeGroup.PATH_MODE),
  G61_1(CodeGroup.PATH_MODE),
  G64(CodeGroup.PATH_MODE),
  /** Exact stop at the end of its block (ISO 6983). */
  G9(CodeGroup.EXACT_STOP),

  G90(CodeGroup.DISTANCE),
  G91(CodeGroup.DISTANCE),
  G90_1(CodeGroup.ARC_DISTANCE),
  G91_1(CodeGroup.ARC_DISTANCE),

  G93(CodeGroup.FEED_MODE),
  G94(CodeGroup.FEED_MODE),
  G95(CodeGroup.FEED_MODE),

  G96(CodeGroup.SPEED_MODE),
  G97(CodeGroup.SPEED_MODE),

  G98(CodeGroup.CYCLE_RETURN),
  G99(CodeGroup.CYCLE_RETURN),

  // Codes of the trade that change what coordinates mean. They are not followed; knowing them
  // tells from where to where every position is unknown.
  G15(CodeGroup.POLAR),
  G16(CodeGroup.POLAR),
  G50(CodeGroup.SCALING),
  G51(CodeGroup.SCALING),
  G50_1(CodeGroup.MIRROR),
  G51_1(CodeGroup.MIRROR),
  G68(CodeGroup.ROTATION),
  G68_2(CodeGroup.ROTATION),
  G69(CodeGroup.ROTATION),

  M0(CodeGroup.STOPPING),
  M1(CodeGroup.STOPPING),
  M2(CodeGroup.STOPPING),
  M30(CodeGroup.STOPPING),
  M60(CodeGroup.STOPPING),
  M6(CodeGroup.TOOL_CHANGE),
  M3(CodeGroup.SPINDLE),
  M4(CodeGroup.SPINDLE),
  M5(CodeGroup.SPINDLE),
  /** Spindle clockwise and coolant (ISO 6983). */
  M13(CodeGroup.SPINDLE),
  /** Spindle counter-clockwise and coolant (ISO 6983). */
  M14(CodeGroup.SPINDLE),
  /** Spindle stop at a set angle (ISO 6983). */
  M19(CodeGroup.SPINDLE),
  M7(CodeGroup.COOLANT),
  M8(CodeGroup.COOLANT),
  M9(CodeGroup.COOLANT),
  /** Clamp (ISO 6983). */
  M10(CodeGroup.CLAMP),
  /** Unclamp (ISO 6983). */
  M11(CodeGroup.CLAMP),
  M48(CodeGroup.OVERRIDES),
  M49(CodeGroup.OVERRIDES),
  M98(CodeGroup.CALL),
  M99(CodeGroup.CALL);

  private final CodeGroup group;
  private final String text;

  Code(CodeGroup group) {
    this.group = group;
    this.text = name().replace('_', '.');
  }

  /** The group of which a block may hold one. */
  CodeGroup group() {
    return group;
  }

  /** As a program has it, e.g. "G59.1". */
  String text() {
    return text;
  }

  /** Ten times its number: 591 for G59.1. */
  int tenths() {
    int dot = text.indexOf('.');
    return dot < 0
        ? 10 * Integer.parseInt(text.substring(1))
        : 10 * Integer.parseInt(text.substring(1, dot)) + Integer.parseInt(text.substring(dot + 1));
  }

  /** Whether it is a drilling, tapping or boring cycle. */
  boolean isCycle() {
    return switch (this) {
      case G73, G81, G82, G83, G84, G85, G86, G87, G88, G89 -> true;
      default -> false;
    };
  }
}

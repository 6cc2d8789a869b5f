package hairline.checks.motion;

/**
 * Groups of codes of which a block may hold one (NISTIR 6556 table 4, with the groups that the
 * trade adds).
 *
 * <p>The report has G80 in the group of motion. In the trade it cancels a cycle and stands beside
 * G0 to G3 in the first line of nearly every program (common practice, no source), so it has a
 * group of its own here.
 */
enum CodeGroup {
  /** Codes for one block (group 0). */
  ONE_SHOT("non-modal codes"),
  /** Group 1. */
  MOTION("motion"),
  CYCLE_CANCEL("cycle cancel"),
  /** Group 2. */
  PLANE("plane"),
  /** Group 3. */
  DISTANCE("distance mode"),
  ARC_DISTANCE("arc centre mode"),
  /** Group 5. */
  FEED_MODE("feed mode"),
  /** Group 6. */
  UNITS("units"),
  /** Group 7. */
  COMPENSATION("radius compensation"),
  /** Group 8. */
  LENGTH_OFFSET("length offset"),
  /** Group 10. */
  CYCLE_RETURN("cycle return"),
  /** Group 12. */
  WORK_OFFSET("work offset"),
  /** Group 13. */
  PATH_MODE("path mode"),
  EXACT_STOP("exact stop"),
  SPEED_MODE("speed mode"),
  POLAR("polar coordinates"),
  SCALING("scaling"),
  MIRROR("mirror image"),
  ROTATION("rotation"),
  /** M group 4. */
  STOPPING("stopping"),
  /** M group 6. */
  TOOL_CHANGE("tool change"),
  /** M group 7. */
  SPINDLE("spindle"),
  /** M group 8. */
  COOLANT("coolant"),
  /** M group 9. */
  OVERRIDES("overrides"),
  CALL("calls"),
  CLAMP("clamping");

  private final String title;

  CodeGroup(String title) {
    this.title = title;
  }

  /** What a message calls it. */
  String title() {
    return title;
  }

  /** Its place in an array by group, within one run only. */
  @SuppressWarnings("EnumOrdinal")
  int index() {
    return ordinal();
  }

  /** This group as one bit of a set. */
  int bit() {
    return 1 << index();
  }
}

package hairline.checks.warmth;

import hairline.checks.motion.Modal;
import hairline.checks.motion.Modes;
import java.util.OptionalDouble;

/**
 * What the spindle does.
 *
 * @param kind whether it turns
 * @param rpm its speed where it turns and the speed is known
 */
record SpindleState(Kind kind, OptionalDouble rpm) {
  static final SpindleState STANDING = new SpindleState(Kind.STANDING, OptionalDouble.empty());
  private static final SpindleState UNKNOWN =
      new SpindleState(Kind.UNKNOWN, OptionalDouble.empty());

  enum Kind {
    STANDING,
    TURNING,
    UNKNOWN
  }

  /** What these modes make it do; it stands until something starts it. */
  static SpindleState of(Modes modes) {
    if (modes.spindle().value().isEmpty()) {
      return modes.spindle().origin() == Modal.Origin.UNSET ? STANDING : UNKNOWN;
    }
    if (modes.spindle().is(Modes.Spindle.STOPPED)) {
      return STANDING;
    }
    OptionalDouble rpm =
        modes.turningRpm().isPresent()
            ? OptionalDouble.of(modes.turningRpm().get())
            : OptionalDouble.empty();
    // S0 with M3 turns nothing.
    return rpm.isPresent() && !(rpm.getAsDouble() > 0)
        ? STANDING
        : new SpindleState(Kind.TURNING, rpm);
  }

  boolean turns() {
    return kind == Kind.TURNING;
  }

  boolean stands() {
    return kind == Kind.STANDING;
  }

  /** Whether it certainly turns at this speed or faster. */
  boolean reaches(double minRpm) {
    return turns() && rpm.isPresent() && rpm.getAsDouble() >= minRpm;
  }

  /** Whether it may turn at this speed or faster. */
  boolean mayReach(double minRpm) {
    return kind == Kind.UNKNOWN || (turns() && (rpm.isEmpty() || rpm.getAsDouble() >= minRpm));
  }

  /** Its speed, 0 standing; empty where not known. */
  OptionalDouble speedRpm() {
    return stands() ? OptionalDouble.of(0) : rpm;
  }
}

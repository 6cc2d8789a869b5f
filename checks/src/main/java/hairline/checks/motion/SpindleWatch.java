package hairline.checks.motion;

import hairline.checks.motion.Modes.Spindle;
import hairline.parser.Span;

/** Tells when the spindle starts, stops or changes speed, once for what a block does at a time. */
final class SpindleWatch {
  private final Control control;
  private Modes before;

  SpindleWatch(Control control) {
    this.control = control;
    before = control.modal.snapshot();
  }

  /** What is told next is told against the state as it stands now. */
  void watch() {
    before = control.modal.snapshot();
  }

  /** Tells a change since the state last watched or told. */
  void tell(Span span) {
    Modes after = control.modal.snapshot();
    if (!sameTurning(before, after)) {
      control.emit(new Event.SpindleChanged(control.at(span), before, after));
    }
    before = after;
  }

  private static boolean sameTurning(Modes a, Modes b) {
    if (!a.spindle().value().equals(b.spindle().value())) {
      return false;
    }
    return a.spindle().is(Spindle.STOPPED)
        || (a.speedRpm().value().equals(b.speedRpm().value())
            && a.surfaceSpeed() == b.surfaceSpeed());
  }
}

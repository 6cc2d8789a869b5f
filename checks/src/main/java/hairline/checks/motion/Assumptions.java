package hairline.checks.motion;

import hairline.parser.Span;

/** Tells, once for each item, that a program relies on a state which it never stated. */
final class Assumptions {
  private final Control control;
  private boolean units;
  private boolean distance;
  private boolean feedMode;
  private boolean plane;
  private boolean motion;
  private boolean workOffset;

  Assumptions(Control control) {
    this.control = control;
  }

  /** A move is made: units and distance mode count. */
  void move(Span span) {
    if (!units) {
      units = true;
      tell(control.modal.units(), span, "units");
    }
    if (!distance) {
      distance = true;
      tell(control.modal.distance(), span, "distance");
    }
  }

  /** A move is made in work coordinates; an increment needs no offset. */
  void workCoordinates(Span span) {
    if (!workOffset && !control.modal.distance().is(Modes.Distance.INCREMENTAL)) {
      workOffset = true;
      if (control.modal.workOffset().origin() == Modal.Origin.UNSET) {
        control.emit(new Event.OffsetAssumed(control.at(span)));
      }
    }
  }

  /** A feed move is made. */
  void feedMove(Span span) {
    if (!feedMode) {
      feedMode = true;
      tell(control.modal.feedMode(), span, "feed mode");
    }
  }

  /** The plane counts: an arc, a cycle, radius compensation. */
  void plane(Span span) {
    if (!plane) {
      plane = true;
      tell(control.modal.plane(), span, "plane");
    }
  }

  /** A coordinate stands before any motion code; a feed is taken (NISTIR 6556 §3.6.1: like G1). */
  void motion(Span span) {
    if (!motion) {
      motion = true;
      control.emit(new Event.StartAssumed(control.at(span), "motion", "G1"));
    }
  }

  private <T> void tell(Modal<T> item, Span span, String name) {
    if (item.origin() == Modal.Origin.ASSUMED && item.value().isPresent()) {
      control.emit(
          new Event.StartAssumed(control.at(span), name, word(item.value().get().toString())));
    }
  }

  private static String word(String constant) {
    return constant.equals("XY") || constant.equals("ZX") || constant.equals("YZ")
        ? constant
        : constant.toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
  }
}

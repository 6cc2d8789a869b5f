package hairline.checks.stock;

import hairline.checks.motion.Event;
import hairline.checks.motion.Place;
import java.util.HashSet;
import java.util.Set;

/** Tells, each thing once, what of the part can no longer be followed. */
final class NotFollowed {
  private final Outlet out;
  private final Set<String> told = new HashSet<>();

  NotFollowed(Outlet out) {
    this.out = out;
  }

  /** The surface under one offset is not known from here on. */
  void lose(Surface surface, Place at, String why) {
    if (!surface.lost()) {
      surface.lose();
      unknown(at, "the surface of " + surface.offset + ": " + why);
    }
  }

  /** Something is not known from here on. */
  void unknown(Place at, String what) {
    if (told.add(what)) {
      out.put(new Event.BecameUnknown(at, what, Event.BecameUnknown.Cause.NOT_SAID));
    }
  }

  /** A table is full. */
  void cap(Place at, String what, long cap) {
    if (told.add(what)) {
      out.put(new Event.CapReached(at, what, cap));
    }
  }
}

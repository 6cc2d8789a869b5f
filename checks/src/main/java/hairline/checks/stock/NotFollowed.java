package hairline.checks.stock;

import hairline.checks.motion.Event;
import hairline.checks.motion.Place;
import java.util.HashSet;
import java.util.Set;

/** Tells, each thing once, what of the part can no longer be followed. */
final class NotFollowed {
  private static final String MISSING = " is not on the sheet";

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
      surface(at, "the surface of " + surface.offset + " is not known: " + why);
    }
  }

  /** The surface under one offset is not known from here on, for want of a key of the sheet. */
  void loseFor(Surface surface, Place at, String key, String why) {
    if (!surface.lost()) {
      surface.lose();
      unknown(at, "the surface of " + surface.offset + ": " + why);
      surface(at, key + MISSING);
    }
  }

  /** Rules that look at the surface have nothing to look at. */
  void surface(Place at, String reason) {
    if (told.add("surface: " + reason)) {
      out.put(new PartNotKnown(at, false, reason));
    }
  }

  /** The same for want of a key of the sheet. */
  void surfaceFor(Place at, String key) {
    surface(at, key + MISSING);
  }

  /** Whether a move touches the part is not known. */
  void contact(Place at, String reason) {
    if (told.add("contact: " + reason)) {
      out.put(new PartNotKnown(at, true, reason));
    }
  }

  /** The same for want of a key of the sheet. */
  void contactFor(Place at, String key) {
    contact(at, key + MISSING);
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

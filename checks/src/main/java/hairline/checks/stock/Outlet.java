package hairline.checks.stock;

import hairline.checks.motion.Event;
import hairline.checks.motion.EventSink;
import java.util.ArrayDeque;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalInt;

/**
 * Passes events on in order, and holds them back while it is not yet known whether a ramp or plunge
 * is a fine cut: one that leads to a level counts like that level, one of an operation without
 * levels is contouring. Holds a bounded number; then the operation counts as one without levels.
 */
final class Outlet {
  /** Most events held back. */
  static final int MOST_HELD = 4096;

  private final EventSink next;
  private final ArrayDeque<Held> held = new ArrayDeque<>();
  private final Map<Integer, Boolean> fineOfPass = new HashMap<>();
  private int operationWithLevels;
  private int operationWithout;

  /**
   * An event held back.
   *
   * @param event the event
   * @param entry the entry it belongs to, where it waits for a decision
   * @param ifContour whether it is a fine cut if its operation has no levels
   */
  private record Held(Event event, OptionalInt entry, boolean ifContour) {}

  Outlet(EventSink next) {
    this.next = next;
  }

  /** Takes an event that is decided. */
  void put(Event event) {
    if (held.isEmpty()) {
      send(event);
      return;
    }
    hold(new Held(event, OptionalInt.empty(), false));
  }

  /**
   * Takes the cut of a ramp or plunge. Its own {@code fine} holds where neither a level follows nor
   * the operation is without levels.
   *
   * @param entry the uninterrupted motion at feed it is part of
   * @param ifContour whether it is a fine cut if its operation has no levels
   */
  void putEntry(Cut cut, int entry, boolean ifContour) {
    int operation = cut.move().modes().operation();
    if (operation == operationWithout) {
      put(ifContour ? withFine(cut, true) : cut);
      return;
    }
    hold(new Held(cut, OptionalInt.of(entry), ifContour));
  }

  private void hold(Held item) {
    held.add(item);
    if (held.size() > MOST_HELD) {
      held.stream()
          .filter(h -> h.entry().isPresent())
          .findFirst()
          .ifPresent(h -> operationWithout = ((Cut) h.event()).move().modes().operation());
      decide(OptionalInt.empty(), false, true);
    }
  }

  /** A level is cut: what led to it counts like it, what stands open in its operation decides. */
  void levelCut(int operation, int entry, boolean fine) {
    operationWithLevels = operation;
    decide(OptionalInt.of(entry), fine, false);
  }

  /** The tool has left at rapid: no level follows its entry any more. */
  void entryOver(int operation) {
    if (operation == operationWithLevels) {
      decide(OptionalInt.empty(), false, false);
    }
  }

  /** The operation is over, and what stands open in it had no levels. */
  void operationOver() {
    decide(OptionalInt.empty(), false, true);
  }

  private void decide(OptionalInt entry, boolean fineOfLevel, boolean noLevels) {
    while (!held.isEmpty()) {
      Held item = held.remove();
      if (item.entry().isEmpty()) {
        send(item.event());
        continue;
      }
      Cut cut = (Cut) item.event();
      boolean fine;
      if (entry.equals(item.entry())) {
        fine = fineOfLevel;
      } else {
        boolean contour = noLevels && cut.move().modes().operation() != operationWithLevels;
        fine = (contour && item.ifContour()) || cut.fine();
      }
      send(withFine(cut, fine));
    }
  }

  private void send(Event event) {
    if (event instanceof Cut cut && cut.passId() != 0 && cut.inContact()) {
      fineOfPass.merge(cut.passId(), cut.fine(), Boolean::logicalAnd);
    } else if (event instanceof PassEnded pass) {
      boolean fine = Boolean.TRUE.equals(fineOfPass.remove(pass.passId()));
      next.accept(pass.withFine(fine));
      return;
    }
    next.accept(event);
  }

  private static Cut withFine(Cut cut, boolean fine) {
    return fine == cut.fine() ? cut : cut.withFine(fine);
  }
}

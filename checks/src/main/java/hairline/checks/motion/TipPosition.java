package hairline.checks.motion;

/** Where the tool tip stands, axis by axis, with its snapshots as {@link Position}. */
final class TipPosition {
  private static final Axis[] AXES = Axis.values();

  private final AxisState[] axes = new AxisState[AXES.length];
  private Position stored = Position.UNKNOWN;
  private Position written = Position.UNKNOWN;
  private boolean changed;

  TipPosition() {
    for (Axis axis : AXES) {
      axes[index(axis)] = new AxisState(axis);
    }
  }

  private static int index(Axis axis) {
    return Integer.numberOfTrailingZeros(axis.bit());
  }

  /** One axis, to be read only; changes go through {@link #change}. */
  AxisState get(Axis axis) {
    return axes[index(axis)];
  }

  /** One axis, to be changed. */
  AxisState change(Axis axis) {
    changed = true;
    return axes[index(axis)];
  }

  void forget(Axis axis) {
    change(axis).forget();
  }

  void forgetAll() {
    for (Axis axis : AXES) {
      forget(axis);
    }
  }

  /** The position as stored; the same object while nothing changes. */
  Position stored() {
    refresh();
    return stored;
  }

  /** The position as written; the same object as stored where both agree. */
  Position written() {
    refresh();
    return written;
  }

  private void refresh() {
    if (!changed) {
      return;
    }
    changed = false;
    int unknown = 0;
    boolean agree = true;
    for (AxisState axis : axes) {
      if (!axis.known()) {
        unknown |= axis.axis().bit();
      } else if (axis.storedPm() != axis.writtenPm()) {
        agree = false;
      }
    }
    stored =
        new Position(
            known(0) ? axes[0].storedPm() : 0,
            known(1) ? axes[1].storedPm() : 0,
            known(2) ? axes[2].storedPm() : 0,
            known(3) ? axes[3].storedPm() : 0,
            known(4) ? axes[4].storedPm() : 0,
            known(5) ? axes[5].storedPm() : 0,
            unknown);
    written =
        agree
            ? stored
            : new Position(
                known(0) ? axes[0].writtenPm() : 0,
                known(1) ? axes[1].writtenPm() : 0,
                known(2) ? axes[2].writtenPm() : 0,
                known(3) ? axes[3].writtenPm() : 0,
                known(4) ? axes[4].writtenPm() : 0,
                known(5) ? axes[5].writtenPm() : 0,
                unknown);
  }

  private boolean known(int index) {
    return axes[index].known();
  }
}

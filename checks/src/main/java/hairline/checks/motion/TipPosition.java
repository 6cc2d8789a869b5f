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
    long differ = 0;
    for (AxisState axis : axes) {
      unknown |= (int) ~axis.knownMask() & axis.axis().bit();
      differ |= (axis.storedPm() ^ axis.writtenPm()) & axis.knownMask();
    }
    stored =
        new Position(
            storedPm(0), storedPm(1), storedPm(2), storedPm(3), storedPm(4), storedPm(5), unknown);
    written =
        differ == 0
            ? stored
            : new Position(
                writtenPm(0),
                writtenPm(1),
                writtenPm(2),
                writtenPm(3),
                writtenPm(4),
                writtenPm(5),
                unknown);
  }

  private long storedPm(int i) {
    return axes[i].storedPm() & axes[i].knownMask();
  }

  private long writtenPm(int i) {
    return axes[i].writtenPm() & axes[i].knownMask();
  }
}

package hairline.checks.motion;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Where zero is: the shifts that G92, G52 and G10 put between programmed coordinates and the frame
 * of {@link Position}. Each part of a shift is known or not; a shift with an unknown part is
 * unknown.
 *
 * <p>Where G92 is given before an axis has any known place, it chooses the frame itself: the axis
 * is known from there on, and becomes unknown when that G92 is taken back.
 */
final class Shifts {
  private static final Axis[] AXES = Axis.values();

  /** The frame before the program chooses a work offset. */
  private static final String NO_OFFSET = "";

  /** The frame of a work offset that is not known. */
  static final String UNKNOWN_OFFSET = "unknown";

  private final Map<String, Frame> frames = new HashMap<>();
  private final @Nullable Shift[] general = all(Shift.NONE);
  private final @Nullable Shift[] saved = all(Shift.NONE);
  private final @Nullable Shift[] local = all(Shift.NONE);
  private final boolean[] chosenByG92 = new boolean[AXES.length];
  private final boolean[] everKnown = new boolean[AXES.length];
  private final @Nullable Shift[] total = all(Shift.NONE);
  private boolean transformed;
  private Frame frame;

  /** One work offset. */
  private static final class Frame {
    /** What G10 has added since the program began. */
    final @Nullable Shift[] moved = all(Shift.NONE);

    /** Its origin in machine coordinates, as far as it is known. */
    final @Nullable Shift[] origin = new @Nullable Shift[AXES.length];

    /** Its origin before G10, as far as it is known. */
    final @Nullable Shift[] first = new @Nullable Shift[AXES.length];

    /** Whether the axis had a known place under this offset. */
    final boolean[] used = new boolean[AXES.length];

    /** Whether G10 has set its origin where nobody knows what stood there before. */
    final boolean[] overwritten = new boolean[AXES.length];
  }

  Shifts(Map<String, Map<Axis, Long>> origins) {
    origins.forEach(
        (name, axes) ->
            axes.forEach(
                (axis, pm) -> {
                  Frame known = frames.computeIfAbsent(name, unused -> new Frame());
                  known.origin[index(axis)] = new Shift(pm, pm, null);
                  known.first[index(axis)] = known.origin[index(axis)];
                }));
    frame = frames.computeIfAbsent(NO_OFFSET, unused -> new Frame());
  }

  private static @Nullable Shift[] all(Shift shift) {
    @Nullable Shift[] shifts = new @Nullable Shift[AXES.length];
    Arrays.fill(shifts, shift);
    return shifts;
  }

  private static int index(Axis axis) {
    return Integer.numberOfTrailingZeros(axis.bit());
  }

  /** The shift of an axis; absent where it is not known. */
  @Nullable Shift get(Axis axis) {
    return total[index(axis)];
  }

  /** Notes that an axis has a known place in the present frame. */
  void noteKnown(Axis axis) {
    everKnown[index(axis)] = true;
    frame.used[index(axis)] = true;
  }

  /** Chooses a work offset. */
  void choose(String offset) {
    frame = frames.computeIfAbsent(offset, unused -> new Frame());
    refresh();
  }

  private void refresh() {
    for (Axis axis : AXES) {
      int i = index(axis);
      total[i] = transformed ? null : sum(sum(general[i], local[i]), frame.moved[i]);
    }
  }

  private static @Nullable Shift sum(@Nullable Shift a, @Nullable Shift b) {
    if (a == null || b == null) {
      return null;
    }
    try {
      return a.plus(b);
    } catch (ArithmeticException tooLarge) {
      return null;
    }
  }

  private static @Nullable Shift difference(@Nullable Shift a, @Nullable Shift b) {
    if (a == null || b == null) {
      return null;
    }
    try {
      return a.minus(b);
    } catch (ArithmeticException tooLarge) {
      return null;
    }
  }

  /**
   * G92: the axis, where it stands, gets this coordinate.
   *
   * @param state the axis, placed where G92 chooses the frame
   * @return whether the shift is known
   */
  boolean setGeneral(AxisState state, ReadLength coordinate) {
    int i = index(state.axis());
    Shift wanted = coordinate.known ? Shift.of(coordinate) : null;
    if (!state.known() && !everKnown[i] && wanted != null && total[i] != null) {
      Shift place = sum(wanted, total[i]);
      if (place != null) {
        state.place(place.storedPm(), place.writtenPm(), place.rest());
        noteKnown(state.axis());
        chosenByG92[i] = true;
        saved[i] = general[i];
        return true;
      }
    }
    Shift standing = state.known() ? Shift.of(state) : null;
    Shift rest = sum(local[i], frame.moved[i]);
    general[i] = difference(difference(standing, wanted), rest);
    saved[i] = general[i];
    refresh();
    return general[i] != null;
  }

  /**
   * G92.1 and G92.2: takes the shift of G92 back.
   *
   * @param forgetting whether G92.3 can not bring it again (G92.1)
   */
  void clearGeneral(boolean forgetting) {
    for (int i = 0; i < AXES.length; i++) {
      general[i] = cleared(i);
      if (forgetting) {
        saved[i] = cleared(i);
      }
    }
    refresh();
  }

  /** No shift, but for an axis whose frame G92 chose: how the two lie is not known. */
  private @Nullable Shift cleared(int i) {
    return chosenByG92[i] ? null : Shift.NONE;
  }

  /** G92.3: brings the shift of G92 again that G92.2 took back. */
  void restoreGeneral() {
    System.arraycopy(saved, 0, general, 0, general.length);
    refresh();
  }

  /** Whether any shift of G92 stands, or may stand. */
  boolean generalStands() {
    for (int i = 0; i < AXES.length; i++) {
      Shift shift = general[i];
      if (shift == null ? !chosenByG92[i] : chosenByG92[i] || !shift.isNone()) {
        return true;
      }
    }
    return false;
  }

  /** G52: the zero of the axis lies at this coordinate of the work offset. */
  void setLocal(Axis axis, ReadLength coordinate) {
    local[index(axis)] = coordinate.known ? Shift.of(coordinate) : null;
    refresh();
  }

  /** Whether any shift of G52 stands, or may stand. */
  boolean localStands() {
    for (Shift shift : local) {
      if (shift == null || !shift.isNone()) {
        return true;
      }
    }
    return false;
  }

  /**
   * G10 L2: the origin of a work offset lies at this machine coordinate.
   *
   * @param offset which work offset; empty for the present one
   * @param coordinate what is written; null where it is not known
   * @return whether it is known how the origin moved
   */
  boolean setOrigin(String offset, Axis axis, @Nullable Shift coordinate) {
    Frame changed =
        offset.isEmpty() ? frame : frames.computeIfAbsent(offset, unused -> new Frame());
    int i = index(axis);
    Shift before = changed.origin[i];
    changed.origin[i] = coordinate;
    changed.overwritten[i] |= changed.first[i] == null;
    if (before == null && !changed.used[i]) {
      // Nothing has been placed in this frame yet: it is this G10 that says where it lies.
      changed.moved[i] = Shift.NONE;
      changed.first[i] = coordinate;
    } else {
      changed.moved[i] = difference(coordinate, changed.first[i]);
    }
    refresh();
    return changed.moved[i] != null;
  }

  /**
   * The origin of the present work offset may have been moved, since it is not known which work
   * offset it is.
   *
   * @return whether the axis had a place there, so that its zero is lost
   */
  boolean loseOrigin(Axis axis) {
    int i = index(axis);
    if (frame.used[i]) {
      frame.moved[i] = null;
      refresh();
    }
    return frame.used[i];
  }

  /**
   * Whether the data of a work offset may differ from those before the program.
   *
   * @param offset which work offset; empty for the present one
   */
  boolean originLeft(String offset) {
    Frame asked = offset.isEmpty() ? frame : frames.computeIfAbsent(offset, unused -> new Frame());
    for (Axis axis : AXES) {
      Shift moved = asked.moved[index(axis)];
      if (asked.overwritten[index(axis)] || moved == null || !moved.isNone()) {
        return true;
      }
    }
    return false;
  }

  /** G10 L20: the axis, where it stands, gets this coordinate under the present work offset. */
  boolean setOriginHere(AxisState state, ReadLength coordinate) {
    int i = index(state.axis());
    Shift standing = state.known() && coordinate.known ? Shift.of(state) : null;
    Shift rest = sum(general[i], local[i]);
    Shift before = frame.moved[i];
    frame.overwritten[i] |= frame.first[i] == null;
    frame.moved[i] =
        standing == null ? null : difference(difference(standing, Shift.of(coordinate)), rest);
    Shift by = difference(frame.moved[i], before);
    frame.origin[i] = by == null ? null : sum(frame.origin[i], by);
    refresh();
    return frame.moved[i] != null;
  }

  /** Where the frame of {@link Position} has its origin in machine coordinates, where known. */
  @Nullable Shift machineOrigin(Axis axis) {
    return frame.first[index(axis)];
  }

  /** Nothing is known of any shift of the present frame. */
  void forget() {
    Arrays.fill(general, null);
    Arrays.fill(local, null);
    Arrays.fill(frame.moved, null);
    refresh();
  }

  /** Whether a code that is not followed changes what coordinates mean. */
  void setTransformed(boolean value) {
    transformed = value;
    refresh();
  }
}

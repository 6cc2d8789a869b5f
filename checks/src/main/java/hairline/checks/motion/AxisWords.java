package hairline.checks.motion;

import hairline.checks.motion.Event.BecameUnknown.Cause;
import hairline.checks.motion.Modes.Distance;
import hairline.parser.Span;
import hairline.parser.Words;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Takes the axes where the words of a block say, and tells what rounding did on the way. */
final class AxisWords {
  /** Every letter of an axis. */
  static final String LETTERS = "XYZABC";

  /** The same as a set for {@link BlockWords#hasAny(int)}. */
  static final int SET = BlockWords.set(LETTERS);

  private static final Axis[] AXES = Axis.values();
  private static final Axis[] LINEAR = {Axis.X, Axis.Y, Axis.Z};
  private static final int ROTARY = BlockWords.set("ABC");

  private final Control control;
  private final ModalState modal;
  private final TipPosition tip;
  private final ReadLength length = new ReadLength();

  AxisWords(Control control) {
    this.control = control;
    this.modal = control.modal;
    this.tip = control.tip;
  }

  /**
   * Takes every axis that the block names to its coordinate, absolute or incremental.
   *
   * @return in what ways any of them moves, as {@link AxisState#MOVED_WRITTEN} and {@link
   *     AxisState#MOVED_STORED}
   */
  int go(BlockWords words) {
    int moved = 0;
    for (Axis axis : words.hasAny(ROTARY) ? AXES : LINEAR) {
      if (words.hasOne(axis.letter())) {
        moved |= go(axis, words.all(), words.place(axis.letter()));
      } else if (words.isDoubled(axis.letter())) {
        tip.forget(axis);
        control.wordUnknown(control.at().span(), axis + ": two of its words in one block");
        moved |= AxisState.MOVED_STORED;
      }
    }
    return moved;
  }

  private int go(Axis axis, Words words, int i) {
    control.lengths.read(words, i, axis, length);
    if (length.known) {
      Optional<Distance> distance = modal.distance().value();
      if (distance.isEmpty()) {
        // It was told when the distance mode became unknown.
        tip.forget(axis);
        return AxisState.MOVED_STORED;
      }
      try {
        return distance.get() == Distance.ABSOLUTE
            ? absolute(axis, words, i)
            : incremental(axis, words, i, tip.change(axis));
      } catch (ArithmeticException tooLarge) {
        control.tooFar(axis, words.get(i));
        return lose(axis, words.span(i), LengthWords.TOO_LARGE, Cause.NOT_UNDERSTOOD);
      }
    }
    if (length.tooLarge) {
      control.tooFar(axis, words.get(i));
    }
    tip.forget(axis);
    return AxisState.MOVED_STORED;
  }

  private int lose(Axis axis, Span span, String why, Cause cause) {
    tip.forget(axis);
    control.wordUnknown(span, axis + ": " + why, cause);
    return AxisState.MOVED_STORED;
  }

  private int absolute(Axis axis, Words words, int i) {
    Shift shift = control.shifts.get(axis);
    if (shift == null) {
      // It was told when the zero was lost.
      return lose(axis, words.span(i), "its zero is not known", Cause.NOT_SAID);
    }
    control.shifts.noteKnown(axis);
    return tip.change(axis).goTo(length, shift.storedPm(), shift.writtenPm(), shift.rest());
  }

  private int incremental(Axis axis, Words words, int i, AxisState state) {
    Modes.Units units = modal.units().value().orElse(Modes.Units.MM);
    int moved =
        control.profile.remainderKept() && axis.linear()
            ? state.goByKept(length, control.rounding, units)
            : state.goBy(length);
    if (axis.linear() && LengthWords.isRounded(length) && control.rounding.knows(units)) {
      Place at = control.at(words.span(i));
      state.countRounded(at);
      Event.@Nullable IncrementalDrift drift =
          state.newDrift(at, control.rounding.incrementPm(units));
      if (drift != null) {
        control.emit(drift);
      }
    }
    return moved;
  }
}

package hairline.checks.motion;

import hairline.parser.Span;
import hairline.parser.Word;

/**
 * G28, G30 and G53: moves to places that the machine knows, not the program.
 *
 * <p>G28 and G30 take home the axes that they name, or all where they name none (common practice,
 * no source; NISTIR 6556 §3.5.8 takes all home always).
 */
final class MachineMoves {
  private static final Axis[] AXES = Axis.values();

  private final Control control;
  private final TipPosition tip;
  private final AxisWords axisWords;
  private final MoveMaker moves;
  private final Assumptions assumptions;
  private final ReadLength length = new ReadLength();

  MachineMoves(Control control, AxisWords axisWords, MoveMaker moves, Assumptions assumptions) {
    this.control = control;
    this.tip = control.tip;
    this.axisWords = axisWords;
    this.moves = moves;
    this.assumptions = assumptions;
  }

  /** G28 and G30: by rapid to the point that is written, then home. */
  void home(BlockWords words) {
    Span span = words.span(CodeGroup.ONE_SHOT.bit(), AxisWords.LETTERS);
    boolean named = words.hasAny(AxisWords.LETTERS);
    if (named) {
      assumptions.move(span);
      assumptions.workCoordinates(span);
      moves.begin();
      if ((axisWords.go(words) & AxisState.MOVED_STORED) != 0) {
        moves.straight(span, true, Move.Source.MACHINE, false);
      }
    }
    moves.begin();
    for (Axis axis : AXES) {
      if (!named || words.hasAny(axis.name())) {
        tip.forget(axis);
      }
    }
    moves.straight(span, true, Move.Source.MACHINE, false);
  }

  /** G53: straight to a point in machine coordinates, by rapid or at feed. */
  void toMachineCoordinates(BlockWords words, Span span, boolean rapid) {
    assumptions.move(span);
    if (!rapid) {
      assumptions.feedMove(span);
    }
    moves.begin();
    for (Axis axis : AXES) {
      Word word = words.word(axis);
      if (word != null) {
        control.lengths.read(word, axis, length);
        if (length.tooLarge) {
          control.tooFar(axis, word);
        }
        goTo(axis);
      } else if (words.isDoubled(axis.name().charAt(0))) {
        tip.forget(axis);
      }
    }
    moves.straight(span, rapid, Move.Source.MACHINE, words.has(Code.G9));
  }

  private void goTo(Axis axis) {
    Shift origin = control.shifts.machineOrigin(axis);
    // In Z the length of the tool stands between the machine's zero and the tip.
    if (length.known && origin != null && axis != Axis.Z) {
      try {
        Shift place = Shift.of(length).minus(origin);
        tip.change(axis).place(place.storedPm(), place.writtenPm(), place.rest());
        control.shifts.noteKnown(axis);
        return;
      } catch (ArithmeticException tooLarge) {
        // Unknown, as below.
      }
    }
    tip.forget(axis);
  }
}

package hairline.checks.motion;

import hairline.checks.motion.Modes.Distance;
import hairline.checks.motion.Modes.FeedMode;
import hairline.checks.motion.Modes.PathMode;
import hairline.parser.Span;
import hairline.parser.Word;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * The motion of a block: G0 to G3 and what modifies them.
 *
 * <p>Positions are those that the program states. Radius compensation (G41, G42) shifts no path
 * here: it is state and events only, and a move is the programmed contour.
 */
final class Motions {
  private static final Axis[] AXES = Axis.values();
  private static final String AXIS_LETTERS = "XYZABC";
  private static final int MOTION_GROUPS =
      CodeGroup.MOTION.bit() | CodeGroup.CYCLE_CANCEL.bit() | CodeGroup.EXACT_STOP.bit();

  private final Control control;
  private final ModalState modal;
  private final TipPosition tip;
  private final Assumptions assumptions;
  private final Forgetting forgetting;
  private final ReadLength length = new ReadLength();

  Motions(Control control, Assumptions assumptions, Forgetting forgetting) {
    this.control = control;
    this.modal = control.modal;
    this.tip = control.tip;
    this.assumptions = assumptions;
    this.forgetting = forgetting;
  }

  /** Makes the motion of a block, if it has one. */
  void execute(BlockWords words) {
    Code stated = words.code(CodeGroup.MOTION);
    if (stated != null) {
      modal.setMotion(stated);
    } else if (words.has(Code.G80)) {
      modal.setMotion(null);
    }
    if (words.hasAny(AXIS_LETTERS)) {
      move(words);
    }
  }

  private void move(BlockWords words) {
    Span span = words.span(MOTION_GROUPS, AXIS_LETTERS);
    Code code = modal.motion();
    if (code == Code.G0 || code == Code.G1) {
      straight(words, span, code == Code.G0);
    } else {
      forgetting.namedAxes(words, span);
    }
  }

  private void straight(BlockWords words, Span span, boolean rapid) {
    assumptions.move(span);
    assumptions.workCoordinates(span);
    if (!rapid) {
      assumptions.feedMove(span);
    }
    Position from = tip.stored();
    Position writtenFrom = tip.written();
    int moved = 0;
    for (Axis axis : AXES) {
      Word word = words.word(axis);
      if (word != null) {
        moved |= go(axis, word);
      } else if (words.isDoubled(axis.name().charAt(0))) {
        tip.forget(axis);
        moved = AxisState.MOVED_STORED;
      }
    }
    if ((moved & AxisState.MOVED_STORED) == 0) {
      if (moved != 0) {
        control.emit(
            new Event.MoveVanished(control.at(span), writtenFrom, tip.written(), modal.snapshot()));
      }
      return;
    }
    Position to = tip.stored();
    double lengthMm = distanceMm(from, to);
    Modes modes = modal.snapshot();
    modal.noteMove();
    control.emit(
        new Move(
            control.at(span),
            rapid ? Move.Kind.RAPID : Move.Kind.LINE,
            Move.Source.BLOCK,
            modes,
            from,
            to,
            writtenFrom,
            tip.written(),
            Optional.empty(),
            lengthMm,
            rapid ? OptionalDouble.empty() : feed(modes, lengthMm),
            words.has(Code.G9) || stopsAtEnd(modes)));
  }

  /** Takes one axis where its word says; returns in what way it moves. */
  private int go(Axis axis, Word word) {
    control.lengths.read(word, axis, length);
    Optional<Distance> distance = modal.distance().value();
    if (!length.known || distance.isEmpty()) {
      if (length.known) {
        control.becameUnknown(word.span(), axis + ": distance mode unknown");
      }
      tip.forget(axis);
      return AxisState.MOVED_STORED;
    }
    try {
      AxisState state = tip.change(axis);
      if (distance.get() == Distance.ABSOLUTE) {
        return state.goTo(length, 0, 0, null);
      }
      return increment(axis, word, state);
    } catch (ArithmeticException tooLarge) {
      tip.forget(axis);
      control.becameUnknown(word.span(), axis + ": beyond 9 000 km");
      return AxisState.MOVED_STORED;
    }
  }

  private int increment(Axis axis, Word word, AxisState state) {
    Modes.Units units = modal.units().value().orElse(Modes.Units.MM);
    int moved =
        control.profile.remainderKept() && axis.linear()
            ? state.goByKept(length, control.rounding, units)
            : state.goBy(length);
    if (LengthWords.isRounded(length) && control.rounding.knows(units)) {
      Place at = control.at(word.span());
      state.countRounded(at);
      Event.@Nullable IncrementalDrift drift =
          state.newDrift(at, control.rounding.incrementPm(units));
      if (drift != null) {
        control.emit(drift);
      }
    }
    return moved;
  }

  /** The distance between two points in millimetres, over the axes whose ends are both known. */
  private static double distanceMm(Position from, Position to) {
    // An axis that moves has its end words; one that stays has the same coordinate at both ends.
    if (from.unknown() != to.unknown()) {
      return 0;
    }
    double x = from.knows(Axis.X) ? (to.xPm() - from.xPm()) * 1e-9 : 0;
    double y = from.knows(Axis.Y) ? (to.yPm() - from.yPm()) * 1e-9 : 0;
    double z = from.knows(Axis.Z) ? (to.zPm() - from.zPm()) * 1e-9 : 0;
    return Math.sqrt(x * x + y * y + z * z);
  }

  /** The feed along the path, in mm/min. */
  private OptionalDouble feed(Modes modes, double lengthMm) {
    Optional<Double> feed = modes.feed().value();
    Optional<FeedMode> mode = modes.feedMode().value();
    if (feed.isEmpty() || mode.isEmpty()) {
      return OptionalDouble.empty();
    }
    return switch (mode.get()) {
      case PER_MINUTE -> OptionalDouble.of(feed.get());
      case INVERSE_TIME ->
          lengthMm > 0 ? OptionalDouble.of(feed.get() * lengthMm) : OptionalDouble.empty();
      case PER_REVOLUTION -> {
        Optional<Double> rpm = modes.turningRpm();
        yield rpm.isPresent() ? OptionalDouble.of(feed.get() * rpm.get()) : OptionalDouble.empty();
      }
    };
  }

  private static boolean stopsAtEnd(Modes modes) {
    return modes.pathMode().is(PathMode.EXACT_PATH) || modes.pathMode().is(PathMode.EXACT_STOP);
  }
}

package hairline.checks.motion;

import hairline.checks.motion.ControlProfile.DwellUnit;
import hairline.checks.motion.CycleStep.SpindleStep;
import hairline.checks.motion.CycleStep.Travel;
import hairline.checks.motion.Modes.CycleReturn;
import hairline.checks.motion.Modes.Distance;
import hairline.checks.motion.Modes.Plane;
import hairline.checks.motion.Modes.Spindle;
import hairline.parser.Span;
import hairline.parser.Word;
import java.io.IOException;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/** G73 and G81 to G89: reads the numbers of a cycle, and makes the moves that it spells out. */
final class CycleMotions {
  /** The letters that a cycle uses beside those of its axes. */
  static final String LETTERS = "IJKLPQR";

  private final Control control;
  private final ModalState modal;
  private final TipPosition tip;
  private final MoveMaker moves;
  private final Assumptions assumptions;
  private final Forgetting forgetting;
  private final ReadLength length = new ReadLength();

  /** The cycle in force, for the plane in which it began. */
  private @Nullable Cycle cycle;

  private Plane plane = Plane.XY;

  CycleMotions(Control control, MoveMaker moves, Assumptions assumptions, Forgetting forgetting) {
    this.control = control;
    this.modal = control.modal;
    this.tip = control.tip;
    this.moves = moves;
    this.assumptions = assumptions;
    this.forgetting = forgetting;
  }

  /** No cycle is in force any more. */
  void end() {
    cycle = null;
  }

  /** Executes a block while a cycle is in force. */
  void execute(BlockWords words, Span span, Code code) throws IOException {
    assumptions.feedMove(span);
    assumptions.plane(span);
    Optional<Plane> present = modal.plane().value();
    if (present.isEmpty()) {
      forgetting.axes();
      forgetting.tell(span);
      return;
    }
    Cycle.Code wanted = Cycle.Code.valueOf(code.text());
    Cycle standing = cycle;
    if (standing == null || plane != present.get()) {
      plane = present.get();
      standing = Cycle.begin(wanted, stands(plane.normal()));
    }
    Cycle.Words numbers = read(words, wanted);
    Cycle now = standing.change(wanted).with(numbers);
    cycle = now;
    List<String> refusals = now.refusals();
    for (String why : refusals) {
      control.refuse(span, code.text(), why);
    }
    forgetRotary(words, span);
    if (!refusals.isEmpty()) {
      forgetting.namedAxes(words);
      forgetting.axis(plane.normal());
      forgetting.tell(span);
      return;
    }
    run(now, numbers, span);
  }

  /** Rotary axes are not followed in a cycle. */
  private void forgetRotary(BlockWords words, Span span) {
    for (Axis axis : Axis.values()) {
      if (!axis.linear() && words.hasAny(axis.name())) {
        forgetting.axis(axis);
      }
    }
    forgetting.tell(span);
  }

  private Coordinate stands(Axis axis) {
    AxisState state = tip.get(axis);
    return state.known() ? Coordinate.of(state.storedPm(), state.writtenPm()) : Coordinate.UNKNOWN;
  }

  private Cycle.Words read(BlockWords words, Cycle.Code code) {
    boolean back = code == Cycle.Code.G87;
    return new Cycle.Words(
        target(words, letter(plane.first()), plane.first()),
        target(words, letter(plane.second()), plane.second()),
        target(words, letter(plane.normal()), plane.normal()),
        target(words, 'R', plane.normal()),
        increment(words, 'Q'),
        dwell(words),
        back ? increment(words, centreLetter(plane.first())) : Optional.empty(),
        back ? increment(words, centreLetter(plane.second())) : Optional.empty(),
        back ? target(words, centreLetter(plane.normal()), plane.normal()) : Optional.empty(),
        repeats(words, back));
  }

  private static char letter(Axis axis) {
    return axis.name().charAt(0);
  }

  private static char centreLetter(Axis axis) {
    return "IJK".charAt("XYZ".indexOf(axis.name()));
  }

  /** A number that is a coordinate, or an increment under G91. */
  private Optional<Cycle.Target> target(BlockWords words, char letter, Axis axis) {
    boolean incremental = modal.distance().is(Distance.INCREMENTAL);
    Optional<Coordinate> read = increment(words, letter);
    Word word = words.word(letter);
    if (word != null && length.tooLarge) {
      control.tooFar(axis, word);
    }
    if (read.isEmpty() || incremental) {
      return read.map(value -> new Cycle.Target(value, incremental));
    }
    Shift shift = modal.distance().is(Distance.ABSOLUTE) ? control.shifts.get(axis) : null;
    Coordinate value =
        shift == null
            ? Coordinate.UNKNOWN
            : read.get().plus(Coordinate.of(shift.storedPm(), shift.writtenPm()));
    return Optional.of(new Cycle.Target(value, false));
  }

  private Optional<Coordinate> increment(BlockWords words, char letter) {
    Word word = words.word(letter);
    if (word == null) {
      return words.isDoubled(letter) ? Optional.of(Coordinate.UNKNOWN) : Optional.empty();
    }
    control.lengths.read(word, length);
    return Optional.of(
        length.known ? Coordinate.of(length.storedPm, length.writtenPm) : Coordinate.UNKNOWN);
  }

  private Optional<CycleStep.Dwell> dwell(BlockWords words) {
    Word word = words.word('P');
    if (word == null) {
      return words.isDoubled('P')
          ? Optional.of(new CycleStep.Dwell(OptionalDouble.empty()))
          : Optional.empty();
    }
    OptionalDouble number = control.numbers.number(word);
    Optional<DwellUnit> unit = control.profile.dwellP();
    if (number.isEmpty() || unit.isEmpty()) {
      return Optional.of(new CycleStep.Dwell(OptionalDouble.empty()));
    }
    double seconds =
        unit.get() == DwellUnit.SECONDS ? number.getAsDouble() : number.getAsDouble() / 1000;
    return Optional.of(new CycleStep.Dwell(OptionalDouble.of(seconds)));
  }

  /** L, or K where K is no length (common practice, no source). */
  private long repeats(BlockWords words, boolean back) {
    Word word = words.word('L');
    if (word == null && !back) {
      word = words.word('K');
    }
    if (word == null) {
      return 1;
    }
    OptionalInt count = control.numbers.count(word);
    return count.isPresent() ? count.getAsInt() : 1;
  }

  private void run(Cycle now, Cycle.Words numbers, Span span) throws IOException {
    Optional<Boolean> toLevel =
        modal.cycleReturn().value().map(level -> level == CycleReturn.R_LEVEL);
    Cycle.Point from =
        new Cycle.Point(stands(plane.first()), stands(plane.second()), stands(plane.normal()));
    Modal<Spindle> turning = modal.spindle();
    boolean tooMany = control.isTooMany(numbers.repeats());
    Cycle.Words followed = tooMany ? numbers.atMost(BlockFlow.REPEATS_FOLLOWED) : numbers;
    Iterator<CycleStep> steps =
        now.steps(followed, from, toLevel, Coordinate.of(control.profile.peckGapPm()));
    while (steps.hasNext() && control.takeStep(span)) {
      CycleStep step = steps.next();
      if (step instanceof Travel travel) {
        travel(travel, span);
      } else if (step instanceof CycleStep.Dwell dwell) {
        control.emit(new Event.Dwelled(control.at(span), dwell.seconds(), modal.snapshot()));
      } else if (step instanceof SpindleStep spindle) {
        turn(spindle.action(), turning, span);
      } else {
        control.emit(new Event.Stopped(control.at(span), now.code().name(), modal.snapshot()));
      }
    }
    if (tooMany) {
      control.endBehind(span, numbers.repeats());
    }
  }

  private void travel(Travel travel, Span span) {
    moves.begin();
    place(plane.first(), travel.first());
    place(plane.second(), travel.second());
    place(plane.normal(), travel.normal());
    moves.straight(span, travel.rapid(), Move.Source.CYCLE, false);
  }

  private void place(Axis axis, Coordinate coordinate) {
    if (!coordinate.known()) {
      tip.forget(axis);
    } else if (!coordinate.equals(stands(axis))) {
      tip.change(axis).place(coordinate.storedPm(), coordinate.writtenPm(), null);
      control.shifts.noteKnown(axis);
    }
  }

  private void turn(SpindleStep.Action action, Modal<Spindle> turning, Span span) {
    control.spindle.watch();
    switch (action) {
      case STOP, STOP_ORIENTED -> modal.setSpindle(Spindle.STOPPED, control.line());
      case START_CLOCKWISE -> modal.setSpindle(Spindle.CLOCKWISE, control.line());
      case START_COUNTER_CLOCKWISE -> modal.setSpindle(Spindle.COUNTER_CLOCKWISE, control.line());
      case RESTART -> modal.restoreSpindle(turning);
    }
    control.spindle.tell(span);
  }
}

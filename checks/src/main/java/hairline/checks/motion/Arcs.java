package hairline.checks.motion;

import hairline.checks.motion.ArcGeometry.Ends;
import hairline.checks.motion.Modes.Distance;
import hairline.checks.motion.Modes.Plane;
import hairline.parser.Span;
import hairline.parser.Word;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/** G2 and G3: arcs, full circles and helices in three planes, with a centre or a radius. */
final class Arcs {
  /** The letters that an arc uses beside those of its axes. */
  static final String LETTERS = "IJKRP";

  private static final String CENTRE_LETTERS = "IJK";

  private final Control control;
  private final ModalState modal;
  private final AxisWords axisWords;
  private final MoveMaker moves;
  private final Assumptions assumptions;
  private final ReadLength length = new ReadLength();

  /** What is found when an arc is drawn. */
  private sealed interface Drawn {
    record Circle(Arc arc) implements Drawn {}

    /** It cannot be told, because something is unknown. */
    record Unknown() implements Drawn {}

    record Impossible(String why, OptionalDouble startRadiusMm, OptionalDouble endRadiusMm)
        implements Drawn {
      Impossible(String why) {
        this(why, OptionalDouble.empty(), OptionalDouble.empty());
      }
    }
  }

  Arcs(Control control, AxisWords axisWords, MoveMaker moves, Assumptions assumptions) {
    this.control = control;
    this.modal = control.modal;
    this.axisWords = axisWords;
    this.moves = moves;
    this.assumptions = assumptions;
  }

  /** Makes the arc of a block. */
  void execute(BlockWords words, Span span, boolean clockwise) {
    assumptions.feedMove(span);
    assumptions.plane(span);
    moves.begin();
    int moved = axisWords.go(words);
    if (moved == AxisState.MOVED_WRITTEN) {
      moves.vanished(span);
    }
    Optional<Plane> plane = modal.plane().value();
    Drawn drawn =
        plane.isEmpty()
            ? new Drawn.Unknown()
            : draw(words, plane.get(), moves.from(), control.tip.stored(), clockwise);
    if (drawn instanceof Drawn.Impossible impossible) {
      control.emit(
          new Event.ArcImpossible(
              control.at(span),
              impossible.why(),
              impossible.startRadiusMm(),
              impossible.endRadiusMm(),
              modal.snapshot()));
      return;
    }
    Optional<Arc> arc =
        drawn instanceof Drawn.Circle circle ? Optional.of(circle.arc()) : Optional.empty();
    moves.arc(span, clockwise, arc, plane.orElse(Plane.XY).normal(), words.has(Code.G9));
  }

  private Drawn draw(BlockWords words, Plane plane, Position from, Position to, boolean clockwise) {
    OptionalInt turns = turns(words);
    Word radius = words.word('R');
    boolean centre = words.hasAny(CENTRE_LETTERS);
    if (radius != null && centre) {
      control.emit(
          new Event.CodesConflict(
              control.at(words.span(0, "IJKR")),
              "R",
              "I, J, K",
              "an arc has a radius or a centre"));
    }
    boolean known =
        from.knows(plane.first())
            && from.knows(plane.second())
            && to.knows(plane.first())
            && to.knows(plane.second());
    try {
      if (radius != null) {
        control.lengths.read(radius, length);
        return known && length.known
            ? withRadius(ends(plane, from, to), length.storedPm, clockwise)
            : new Drawn.Unknown();
      }
      if (!centre) {
        return new Drawn.Impossible("neither a centre nor a radius");
      }
      Long first = centre(words, plane.first(), from);
      Long second = centre(words, plane.second(), from);
      if (!known || first == null || second == null || turns.isEmpty()) {
        return new Drawn.Unknown();
      }
      return aroundCentre(ends(plane, from, to), first, second, clockwise, turns.getAsInt());
    } catch (ArithmeticException tooLarge) {
      return new Drawn.Impossible("coordinates beyond 9 000 km");
    }
  }

  private static Ends ends(Plane plane, Position from, Position to) {
    return new Ends(
        from.get(plane.first()),
        from.get(plane.second()),
        to.get(plane.first()),
        to.get(plane.second()));
  }

  private Drawn withRadius(Ends ends, long radiusPm, boolean clockwise) {
    if (ends.meet()) {
      return new Drawn.Impossible("its ends meet, so the radius alone gives no centre");
    }
    long tolerancePm =
        Math.max(
            control.profile.arcTolerancePm().orElse(0),
            control.rounding.incrementPm(modal.units().value().orElse(Modes.Units.MM)));
    Optional<Arc> arc = ArcGeometry.withRadius(ends, radiusPm, clockwise, tolerancePm);
    if (arc.isPresent()) {
      return new Drawn.Circle(arc.get());
    }
    return new Drawn.Impossible(
        "its ends lie further apart than its diameter",
        OptionalDouble.of(Math.abs(radiusPm * 1e-9)),
        OptionalDouble.of(ends.chordMm() / 2));
  }

  private static Drawn aroundCentre(
      Ends ends, long first, long second, boolean clockwise, int turns) {
    if (ends.startFirst() == first && ends.startSecond() == second) {
      return new Drawn.Impossible("its centre is where it starts");
    }
    return new Drawn.Circle(ArcGeometry.aroundCentre(ends, first, second, clockwise, turns));
  }

  /** The centre along an axis of the plane; nothing where it is not known. */
  private @Nullable Long centre(BlockWords words, Axis axis, Position from) {
    char letter = "IJK".charAt("XYZ".indexOf(axis.name()));
    Optional<Distance> distance = modal.arcDistance().value();
    if (distance.isEmpty() || words.isDoubled(letter)) {
      return null;
    }
    boolean incremental = distance.get() == Distance.INCREMENTAL;
    if (!words.hasOne(letter)) {
      // A centre offset that is not written is 0; an absolute centre needs both.
      return incremental && from.knows(axis) ? Long.valueOf(from.get(axis)) : null;
    }
    control.lengths.read(words.all(), words.place(letter), length);
    if (!length.known) {
      return null;
    }
    if (incremental) {
      return from.knows(axis) ? Long.valueOf(Math.addExact(from.get(axis), length.storedPm)) : null;
    }
    Shift shift = control.shifts.get(axis);
    return shift == null ? null : Long.valueOf(Math.addExact(shift.storedPm(), length.storedPm));
  }

  /** P: how many times the end is reached. */
  private OptionalInt turns(BlockWords words) {
    Word word = words.word('P');
    if (word == null) {
      return words.isDoubled('P') ? OptionalInt.empty() : OptionalInt.of(1);
    }
    OptionalInt count = control.numbers.count(word);
    if (count.isPresent() && count.getAsInt() == 0) {
      control.refuse(word.span(), BlockWords.text(word), "an arc has one turn or more");
      return OptionalInt.empty();
    }
    return count;
  }
}

package hairline.checks.motion;

import hairline.checks.motion.Modes.PathMode;
import hairline.parser.Span;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** Makes the events of a move, from where the tool stood to where it stands. */
final class MoveMaker {
  private static final double MM_PER_PM = 1e-9;

  private final Control control;
  private final TipPosition tip;
  private final Feeds feeds = new Feeds();
  private Position from = Position.UNKNOWN;
  private Position writtenFrom = Position.UNKNOWN;

  /** The state of the move made last, and whether it has every move stop. */
  private @Nullable Modes lastModes;

  private boolean everyMoveStops;

  MoveMaker(Control control) {
    this.control = control;
    this.tip = control.tip;
  }

  /** The next move begins where the tool stands now. */
  void begin() {
    from = tip.stored();
    writtenFrom = tip.written();
  }

  /** Where the move begins, as stored. */
  Position from() {
    return from;
  }

  /** Tells that a block moves as written, yet not as stored; without an increment, none is. */
  void vanished(Span span) {
    if (!control.rounding.knows(control.modal.units().value().orElse(Modes.Units.MM))) {
      return;
    }
    control.emit(
        new Event.MoveVanished(
            control.at(span), writtenFrom, tip.written(), control.modal.snapshot()));
  }

  /** A straight move, by rapid or at feed. */
  void straight(Span span, boolean rapid, Move.Source source, boolean exactStop) {
    if (rapid) {
      rapid(span, source, exactStop);
    } else {
      line(span, source, exactStop);
    }
  }

  private void rapid(Span span, Move.Source source, boolean exactStop) {
    Position to = tip.stored();
    double lengthMm = distanceMm(from, to);
    OptionalDouble feed = OptionalDouble.empty();
    make(span, Move.Kind.RAPID, source, to, Optional.empty(), lengthMm, feed, exactStop);
  }

  /** A straight move at feed. */
  void line(Span span, Move.Source source, boolean exactStop) {
    Position to = tip.stored();
    double lengthMm = distanceMm(from, to);
    OptionalDouble feed = feeds.along(control.modal.snapshot(), lengthMm);
    make(span, Move.Kind.LINE, source, to, Optional.empty(), lengthMm, feed, exactStop);
  }

  /** An arc; without its circle where that is not known. */
  void arc(Span span, boolean clockwise, Optional<Arc> arc, Axis normal, boolean exactStop) {
    Position to = tip.stored();
    double lengthMm =
        arc.isPresent() && from.knows(normal) == to.knows(normal)
            ? ArcGeometry.lengthMm(
                arc.get(), from.knows(normal) ? distanceMm(from.get(normal), to.get(normal)) : 0)
            : 0;
    make(
        span,
        clockwise ? Move.Kind.ARC_CW : Move.Kind.ARC_CCW,
        Move.Source.BLOCK,
        to,
        arc,
        lengthMm,
        feeds.along(control.modal.snapshot(), lengthMm),
        exactStop);
  }

  private void make(
      Span span,
      Move.Kind kind,
      Move.Source source,
      Position to,
      Optional<Arc> arc,
      double lengthMm,
      OptionalDouble feed,
      boolean exactStop) {
    Modes modes = control.modal.snapshot();
    if (!modes.isSame(lastModes)) {
      lastModes = modes;
      everyMoveStops = stopsAtEnd(modes);
    }
    control.modal.noteMove();
    control.emit(
        new Move(
            control.at(span),
            kind,
            source,
            modes,
            from,
            to,
            writtenFrom,
            tip.written(),
            arc,
            lengthMm,
            feed,
            exactStop || everyMoveStops));
  }

  private static boolean stopsAtEnd(Modes modes) {
    return modes.pathMode().is(PathMode.EXACT_PATH) || modes.pathMode().is(PathMode.EXACT_STOP);
  }

  /**
   * The distance between two points. An axis that is unknown at both ends did not move; where one
   * is known at one end only, the distance is not known: 0.
   */
  private static double distanceMm(Position from, Position to) {
    if (((from.unknown() ^ to.unknown()) & 0b111) != 0) {
      return 0;
    }
    // An unknown coordinate stands as 0, so an axis unknown at both ends adds none.
    double x = distanceMm(from.xPm(), to.xPm());
    double y = distanceMm(from.yPm(), to.yPm());
    double z = distanceMm(from.zPm(), to.zPm());
    return Math.sqrt(x * x + y * y + z * z);
  }

  private static double distanceMm(long start, long end) {
    // As doubles: a difference of two far coordinates may not fit a long.
    long difference = end - start;
    boolean overflow = ((end ^ start) & (end ^ difference)) < 0;
    return (overflow ? (double) end - (double) start : (double) difference) * MM_PER_PM;
  }
}

package hairline.checks.motion;

import hairline.parser.Span;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A block interpreted: one movement of the tool tip. A block that moves no axis as stored makes
 * none.
 *
 * @param at the block that commands it
 * @param kind rapid, straight feed or arc
 * @param source what makes the move: a motion block, a cycle, a return home
 * @param modes the state in which it is made
 * @param from where it begins, as stored
 * @param to where it ends, as stored
 * @param writtenFrom where it would begin with unlimited digits
 * @param writtenTo where it would end with unlimited digits
 * @param arc its circle, for arcs
 * @param lengthMm path length in mm, helix included, over the axes that move; 0 where one of these
 *     is unknown at an end, and for the rotary axes
 * @param feedMmPerMin commanded feed along the path; empty for rapids, and where it is missing or
 *     unknown
 * @param exactStop G9, G61 or G61.1 holds: the axes stop at its end
 */
public record Move(
    Place at,
    Kind kind,
    Source source,
    Modes modes,
    Position from,
    Position to,
    Position writtenFrom,
    Position writtenTo,
    Optional<Arc> arc,
    double lengthMm,
    OptionalDouble feedMmPerMin,
    boolean exactStop)
    implements Event {

  /** How the tool moves. */
  public enum Kind {
    RAPID,
    LINE,
    ARC_CW,
    ARC_CCW
  }

  /** What makes the move. */
  public enum Source {
    /** A motion block. */
    BLOCK,
    /** A drilling, tapping or boring cycle. */
    CYCLE,
    /** G28, G30, G53: machine coordinates; the end is unknown in work coordinates. */
    MACHINE
  }

  /** Whether the move is made at feed. */
  public boolean isFeed() {
    return kind != Kind.RAPID;
  }

  /** Columns of its words. */
  public Span span() {
    return at.span();
  }
}

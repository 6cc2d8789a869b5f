package hairline.checks.motion;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;

/**
 * A cycle mode in force: which cycle, the level at which it began, and its sticky numbers.
 *
 * <p>G81 to G89 are those of NISTIR 6556 §3.5.16; G73 is the chip-breaking cycle of the trade
 * (common practice, no source). Where the report and the practice of the trade differ, practice
 * holds:
 *
 * <ul>
 *   <li>between its pecks G83 returns to the R level, whatever level it returns to at its end;
 *   <li>an incremental R counts from the level at which the cycle mode began, so that a sticky R
 *       stays where it is under G99;
 *   <li>no repeats (L0) keeps the numbers and drills nothing.
 * </ul>
 *
 * @param code which cycle
 * @param initialLevel the coordinate normal to the plane when the cycle mode began
 * @param level the R number
 * @param bottom the number of the axis normal to the plane (Z in G17)
 * @param peck the Q number, positive
 * @param dwell P
 * @param offsetFirst G87: increment along the plane's first axis to where the tool passes the hole
 * @param offsetSecond G87: the same along the second axis
 * @param top G87: the K number, upper end of the counterbore
 */
public record Cycle(
    Code code,
    Coordinate initialLevel,
    Optional<Target> level,
    Optional<Target> bottom,
    Optional<Coordinate> peck,
    Optional<CycleStep.Dwell> dwell,
    Optional<Coordinate> offsetFirst,
    Optional<Coordinate> offsetSecond,
    Optional<Target> top) {

  /** The cycles. */
  public enum Code {
    G73(true),
    G81(false),
    G82(false),
    G83(true),
    G84(false),
    G85(false),
    G86(false),
    G87(false),
    G88(false),
    G89(false);

    private final boolean pecks;

    Code(boolean pecks) {
      this.pecks = pecks;
    }

    /** Whether it needs a Q number. */
    public boolean pecks() {
      return pecks;
    }
  }

  /**
   * A number of a cycle with the distance mode under which it was written.
   *
   * @param value absolute: a coordinate in the frame of {@link Position}, shifts taken out;
   *     incremental: an increment
   * @param incremental whether it is an increment (G91)
   */
  public record Target(Coordinate value, boolean incremental) {
    Coordinate from(Coordinate base) {
      return incremental ? base.plus(value) : value;
    }
  }

  /**
   * The words of one block of a cycle, named by the plane in force: in G17 first is X, second Y and
   * normal Z; in G18 Z, X and Y; in G19 Y, Z and X.
   *
   * @param first where the hole is along the plane's first axis
   * @param second where it is along the second
   * @param normal how deep it is
   * @param level R
   * @param peck Q
   * @param dwell P
   * @param offsetFirst G87: I, J or K along the first axis
   * @param offsetSecond G87: along the second
   * @param top G87: I, J or K along the normal
   * @param repeats L or K, not negative; 1 where nothing is written
   */
  public record Words(
      Optional<Target> first,
      Optional<Target> second,
      Optional<Target> normal,
      Optional<Target> level,
      Optional<Coordinate> peck,
      Optional<CycleStep.Dwell> dwell,
      Optional<Coordinate> offsetFirst,
      Optional<Coordinate> offsetSecond,
      Optional<Target> top,
      long repeats) {

    /** No word at all, done once. */
    public static final Words NONE =
        new Words(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            1);

    /** The same, repeated no more often than this. */
    Words atMost(long most) {
      return new Words(
          first,
          second,
          normal,
          level,
          peck,
          dwell,
          offsetFirst,
          offsetSecond,
          top,
          Math.min(repeats, most));
    }
  }

  /** Where the tool stands, by the axes of the plane in force. */
  public record Point(Coordinate first, Coordinate second, Coordinate normal) {}

  /** A cycle mode that begins where the tool stands; nothing is sticky yet. */
  public static Cycle begin(Code code, Coordinate initialLevel) {
    return new Cycle(
        code,
        initialLevel,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  /** The cycle that another code begins while this one is in force: same initial level. */
  public Cycle change(Code next) {
    return next == code
        ? this
        : new Cycle(next, initialLevel, level, bottom, peck, dwell, offsetFirst, offsetSecond, top);
  }

  /** This cycle with the numbers of a block taken over. */
  public Cycle with(Words words) {
    return new Cycle(
        code,
        initialLevel,
        words.level().or(() -> level),
        words.normal().or(() -> bottom),
        words.peck().or(() -> peck),
        words.dwell().or(() -> dwell),
        words.offsetFirst().or(() -> offsetFirst),
        words.offsetSecond().or(() -> offsetSecond),
        words.top().or(() -> top));
  }

  /** The R level; unknown where there is no R number. */
  public Coordinate levelPosition() {
    return level.map(target -> target.from(initialLevel)).orElse(Coordinate.UNKNOWN);
  }

  /** The bottom of the hole; unknown where there is no number for it. */
  public Coordinate bottomPosition() {
    return bottom.map(target -> target.from(levelPosition())).orElse(Coordinate.UNKNOWN);
  }

  /** G87: the upper end of the counterbore; unknown where there is no number for it. */
  public Coordinate topPosition() {
    return top.map(target -> target.from(bottomPosition())).orElse(Coordinate.UNKNOWN);
  }

  /**
   * Why a control refuses the cycle with the numbers it has, by NISTIR 6556 §3.5.16; nothing where
   * it does not. What is unknown is not refused.
   */
  public List<String> refusals() {
    List<String> reasons = new ArrayList<>();
    if (level.isEmpty()) {
      reasons.add("no R level was given");
    }
    if (bottom.isEmpty()) {
      reasons.add("no depth was given");
    }
    if (bottomPosition().above(levelPosition())) {
      reasons.add("the R level lies below the bottom");
    }
    if (code.pecks() && peck.isEmpty()) {
      reasons.add("no Q was given");
    }
    if (code.pecks() && peck.filter(q -> q.known() && q.storedPm() <= 0).isPresent()) {
      reasons.add("Q is not positive");
    }
    if (dwell.filter(p -> p.seconds().isPresent() && p.seconds().getAsDouble() < 0).isPresent()) {
      reasons.add("P is negative");
    }
    if (code == Code.G87) {
      if (offsetFirst.isEmpty() && offsetSecond.isEmpty()) {
        reasons.add("no offset was given for the tool to pass the hole");
      }
      if (top.isEmpty()) {
        reasons.add("no upper end of the counterbore was given");
      }
    }
    return List.copyOf(reasons);
  }

  /**
   * What the cycle does, one step after the other, made while it is asked for: a billion repeats
   * cost no memory, and every step counts against the step budget of whoever asks.
   *
   * @param words the words of this block, already taken over by {@link #with}
   * @param from where the tool stands
   * @param toLevel G99: whether the tool returns to the R level, false for the initial level (G98);
   *     empty where that is not known
   * @param peckGap how far above the last depth the next peck begins
   */
  public Iterator<CycleStep> steps(
      Words words, Point from, Optional<Boolean> toLevel, Coordinate peckGap) {
    return new CycleSteps(this, words, from, toLevel, peckGap);
  }
}

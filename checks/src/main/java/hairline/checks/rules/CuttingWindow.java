package hairline.checks.rules;

import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How far feed, depth and speed of an operation may move until a rule speaks. The limits of {@code
 * feed} are those of all its feeds together, named by the feed at which most of it is cut; those of
 * {@code classes} are of the feeds of one class of moves, all others as programmed.
 *
 * @param operation number of the operation, from 1
 * @param first its first cut
 * @param tool number of its tool
 * @param rpm speed as programmed
 * @param flutes teeth of the tool
 * @param feedMmPerMin feed as programmed, of most of the length cut
 * @param depthsUm depths as programmed, the smallest and the largest; empty where none is known
 * @param feed limits of the feed in mm/min, at the depths programmed
 * @param classes the same for each class of moves in it
 * @param depth limits of the depth in µm, one for all its passes, at the feed programmed; empty
 *     without passes at a level
 * @param speed limits of the speed in rpm
 * @param remedies where feed or depth has no room: the changes that would give it some, the
 *     smallest first
 * @param curves feed limits at other depths, for a drawing
 * @param notKnown what could not be told, and why
 */
public record CuttingWindow(
    int operation,
    Place first,
    int tool,
    double rpm,
    int flutes,
    double feedMmPerMin,
    Optional<Span> depthsUm,
    Limits feed,
    List<OfClass> classes,
    Optional<Limits> depth,
    Limits speed,
    List<Remedy> remedies,
    List<Curve> curves,
    List<String> notKnown) {

  public CuttingWindow {
    classes = List.copyOf(classes);
    remedies = List.copyOf(remedies);
    curves = List.copyOf(curves);
    notKnown = List.copyOf(notKnown);
  }

  /** A class of feed moves, each with bounds of its own. */
  public enum MoveClass {
    /** Z alone moves. */
    DOWN("straight down"),
    /** X or Y moves, Z stands still. */
    LEVEL("along, at a level"),
    /** X or Y moves, and Z with them. */
    CONTOUR("along, Z varying");

    private final String words;

    MoveClass(String words) {
      this.words = words;
    }

    /** Its name for people. */
    public String words() {
      return words;
    }

    static MoveClass of(Move move) {
      if (move.from().zPm() == move.to().zPm()) {
        return LEVEL;
      }
      return move.from().xPm() == move.to().xPm()
              && move.from().yPm() == move.to().yPm()
              && move.arc().isEmpty()
          ? DOWN
          : CONTOUR;
    }
  }

  /**
   * The window of one class of moves.
   *
   * @param moves which
   * @param feedMmPerMin feed of most of their length, as programmed
   * @param feeds the smallest and the largest as programmed
   * @param feed limits of their feed in mm/min, named by {@code feedMmPerMin}; they move together
   * @param takenUm where Z varies, the largest depth that they take, in µm
   * @param taken where Z varies, limits of that depth, the width of the cut as it is
   */
  public record OfClass(
      MoveClass moves,
      double feedMmPerMin,
      Span feeds,
      Limits feed,
      OptionalDouble takenUm,
      Optional<Limits> taken) {}

  /** From the smallest to the largest. */
  public record Span(double lowest, double highest) {}

  /**
   * A limit by one rule.
   *
   * @param rule the rule that speaks beyond
   * @param lower whether it is a lower limit
   * @param likely beyond this, the typical value of a band fails
   * @param certain beyond this, the whole band fails: farther out than {@code likely}, or there
   */
  public record Limit(String rule, boolean lower, double likely, double certain) {}

  /**
   * The limits of one quantity.
   *
   * @param all each that there is
   */
  public record Limits(List<Limit> all) {
    public Limits {
      all = List.copyOf(all);
    }

    /** The lower limit that counts: the highest; empty where there is none. */
    public Optional<Limit> lower() {
      return all.stream()
          .filter(Limit::lower)
          .max((a, b) -> Double.compare(a.likely(), b.likely()));
    }

    /** The upper limit that counts: the lowest; empty where there is none. */
    public Optional<Limit> upper() {
      return all.stream()
          .filter(limit -> !limit.lower())
          .min((a, b) -> Double.compare(a.likely(), b.likely()));
    }

    /** Whether the lower limit lies above the upper one. */
    public boolean closed() {
      return lower().isPresent()
          && upper().isPresent()
          && lower().get().likely() > upper().get().likely();
    }

    /** Whether a value lies within. */
    public boolean hold(double value) {
      return lower().map(l -> value >= l.likely()).orElse(true)
          && upper().map(l -> value <= l.likely()).orElse(true);
    }
  }

  /**
   * A change that opens a window.
   *
   * @param opens which window it opens: {@code feed}, {@code depth} or {@code speed}
   * @param what what is changed, such as {@code tools.3.neck.length}
   * @param from its value now
   * @param to its value that just opens the window
   * @param unit their unit
   */
  public record Remedy(String opens, String what, double from, double to, String unit) {
    /** How large the change is: the ratio of the larger to the smaller. */
    public double ratio() {
      return from > to ? from / to : to / from;
    }
  }

  /** A feed limit along the depth; feeds are missing where the rule sets none. */
  public record Curve(String rule, boolean lower, List<Point> points) {
    public Curve {
      points = List.copyOf(points);
    }
  }

  /**
   * A point of a curve.
   *
   * @param feedMmPerMin beyond this feed the typical value of a band fails
   * @param certainMmPerMin beyond this feed the whole band fails
   */
  public record Point(double depthUm, OptionalDouble feedMmPerMin, OptionalDouble certainMmPerMin) {
    /** Whether the rule sets a limit at this depth. */
    public boolean isLimit() {
      return feedMmPerMin.isPresent();
    }
  }
}

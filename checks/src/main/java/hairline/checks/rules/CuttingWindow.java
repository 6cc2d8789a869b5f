package hairline.checks.rules;

import hairline.checks.motion.Place;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How far feed, depth and speed of an operation may move until a rule speaks. Its feeds move
 * together; the limits name the feed at which most of it is cut.
 *
 * @param operation number of the operation, from 1
 * @param first its first cut
 * @param tool number of its tool
 * @param rpm speed as programmed
 * @param flutes teeth of the tool
 * @param feedMmPerMin feed as programmed, of most of the length cut
 * @param depthsUm depths as programmed, the smallest and the largest; empty where none is known
 * @param feed limits of the feed in mm/min, at the depths programmed
 * @param depth limits of the depth in µm, one for all its passes, at the feed programmed; empty
 *     without passes at a level
 * @param speed limits of the speed in rpm
 * @param remedies where the feed has no room: the changes that would give it some, the smallest
 *     first
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
    Optional<Limits> depth,
    Limits speed,
    List<Remedy> remedies,
    List<Curve> curves,
    List<String> notKnown) {

  public CuttingWindow {
    remedies = List.copyOf(remedies);
    curves = List.copyOf(curves);
    notKnown = List.copyOf(notKnown);
  }

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
   * @param what what is changed, such as {@code tools.3.neck.length}
   * @param from its value now
   * @param to its value that just opens the window
   * @param unit their unit
   */
  public record Remedy(String what, double from, double to, String unit) {
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

  /** A point of a curve. */
  public record Point(double depthUm, OptionalDouble feedMmPerMin) {}
}

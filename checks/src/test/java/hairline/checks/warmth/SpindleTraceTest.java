package hairline.checks.warmth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.cutting.Band;
import hairline.checks.motion.Place;
import hairline.checks.timing.Cause;
import hairline.checks.timing.Gap;
import hairline.checks.timing.TimeTaken;
import hairline.checks.warmth.ProgramTimeline.Point;
import hairline.parser.Span;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Which points along time are kept, and which of too many. */
class SpindleTraceTest {
  private static final GrowthFigures FIGURES =
      GrowthFigures.ofTest(30_000, Band.ofExact(18), Band.ofExact(720), Band.ofExact(1), 0);

  private static final Place AT = new Place(0, 1, new Span(1, 2));

  private final SpindleTrace trace = new SpindleTrace();
  private final List<Point> all = new ArrayList<>();

  private static SpindleState turning(double rpm) {
    return new SpindleState(SpindleState.Kind.TURNING, OptionalDouble.of(rpm));
  }

  /** A point at which the spindle turned and has grown so far: 18 µm · (1 − e^(−t/720)). */
  private static GrowthPoint grown(double rpm, double um) {
    GrowthFollower follower = new GrowthFollower(FIGURES, AT);
    follower.pass(turning(30_000), TimeTaken.of(-720 * StrictMath.log(1 - um / 18)), AT);
    return follower.point(turning(rpm));
  }

  private void pass(double from, double seconds, double rpm, double umBefore, double umAfter) {
    trace.pass(
        turning(rpm),
        from,
        TimeTaken.of(seconds),
        Optional.of(grown(rpm, umBefore)),
        Optional.of(grown(rpm, umAfter)));
    all.add(point(from, rpm, umBefore));
    all.add(point(from + seconds, rpm, umAfter));
  }

  private static Point point(double seconds, double rpm, double um) {
    return new Point(seconds, OptionalDouble.of(rpm), Optional.of(Band.ofExact(um)), true);
  }

  private static double um(Point point) {
    return point.growthUm().orElseThrow().typical();
  }

  private static double rpm(Point point) {
    return point.rpm().orElseThrow();
  }

  /** Stretches of 1 to 9 s from 1000 s on, speed and growth at random. */
  private void passes(int count) {
    Random random = new Random(7);
    double seconds = 1000;
    for (int i = 0; i < count; i++) {
      double length = 1 + random.nextInt(9);
      pass(
          seconds,
          length,
          1000 + i % 2 + 2 * random.nextInt(20_000),
          random.nextInt(1700) / 100.0,
          random.nextInt(1700) / 100.0);
      seconds += length;
    }
  }

  @Test
  void asManyAsThereMayBeAreAllKept() {
    passes(ProgramTimeline.MOST_POINTS / 2);
    assertThat(trace.points()).hasSize(ProgramTimeline.MOST_POINTS);
    assertThat(trace.isReduced()).isFalse();
    for (int i = 0; i < all.size(); i++) {
      assertSame(trace.points().get(i), all.get(i));
    }
  }

  private static void assertSame(Point kept, Point made) {
    assertThat(kept.seconds()).isEqualTo(made.seconds());
    assertThat(kept.rpm()).isEqualTo(made.rpm());
    assertThat(um(kept)).isCloseTo(um(made), within(1e-9));
  }

  /**
   * One more than may be: the time is cut in 4096 / 2 / 6 = 341 equal parts, and of each the first
   * and last point stay, the first slowest and fastest, the first shortest and longest; the last
   * point comes behind.
   */
  @Test
  void ofTooManyThoseStayThatADrawingShows() {
    passes(ProgramTimeline.MOST_POINTS / 2 + 1);
    List<Point> kept = trace.points();
    assertThat(trace.isReduced()).isTrue();
    List<Point> tooMany = all.subList(0, ProgramTimeline.MOST_POINTS + 1);
    int parts = 341;
    double first = tooMany.get(0).seconds();
    double last = tooMany.get(tooMany.size() - 1).seconds();
    List<Point> expected = new ArrayList<>();
    for (int part = 0; part < parts; part++) {
      double begin = first + part * ((last - first) / parts);
      double end =
          part == parts - 1
              ? Double.POSITIVE_INFINITY
              : first + (part + 1) * ((last - first) / parts);
      List<Point> inPart =
          tooMany.stream().filter(p -> p.seconds() >= begin && p.seconds() < end).toList();
      expected.addAll(drawn(inPart));
    }
    expected.add(all.get(all.size() - 1));
    assertThat(kept).hasSameSizeAs(expected);
    for (int i = 0; i < kept.size(); i++) {
      assertSame(kept.get(i), expected.get(i));
    }
    assertThat(kept.size()).isLessThanOrEqualTo(ProgramTimeline.MOST_POINTS / 2 + 1);
  }

  private static List<Point> drawn(List<Point> points) {
    if (points.isEmpty()) {
      return List.of();
    }
    List<Point> stay =
        List.of(
            points.get(0),
            points.get(points.size() - 1),
            first(points, SpindleTraceTest::rpm),
            first(points, p -> -rpm(p)),
            first(points, SpindleTraceTest::um),
            first(points, p -> -um(p)));
    return points.stream().filter(p -> stay.contains(p)).toList();
  }

  /** The first of those with the smallest value. */
  private static Point first(List<Point> points, ToDoubleFunction<Point> value) {
    double least = points.stream().mapToDouble(value).min().orElseThrow();
    return points.stream()
        .filter(p -> value.applyAsDouble(p) == least)
        .min(Comparator.comparingInt(points::indexOf))
        .orElseThrow();
  }

  /** A hundred thousand changes of speed, and one of them high above the rest. */
  @Test
  void howeverLongTheProgramItStaysSmallAndKeepsItsPeaks() {
    for (int i = 0; i < 100_000; i++) {
      trace.pass(
          turning(i == 33_333 ? 49_999 : 1000 + i % 2),
          i,
          TimeTaken.of(1),
          Optional.empty(),
          Optional.empty());
    }
    List<Point> points = trace.points();
    assertThat(points.size()).isLessThanOrEqualTo(ProgramTimeline.MOST_POINTS);
    assertThat(points).isSortedAccordingTo(Comparator.comparingDouble(Point::seconds));
    assertThat(points.get(0).seconds()).isZero();
    assertThat(points.get(points.size() - 1).seconds()).isEqualTo(100_000);
    assertThat(points)
        .filteredOn(p -> rpm(p) == 49_999)
        .extracting(Point::seconds)
        .containsExactly(33_333.0);
  }

  /** What takes a time that is not known has no length: growth spreads at once, then goes on. */
  @Test
  void behindAnUnknownTimeGrowthIsUnknownFromTheFirstSecondOn() {
    GrowthFollower follower = new GrowthFollower(FIGURES, AT);
    SpindleState turning = turning(30_000);
    Optional<GrowthPoint> cold = Optional.of(follower.point(turning));
    TimeTaken upTo300 = new TimeTaken(0, 300, List.of(new Gap(AT, Cause.POSITION)));
    follower.pass(turning, upTo300, AT);
    Optional<GrowthPoint> spread = Optional.of(follower.point(turning));
    trace.pass(turning, 0, upTo300, cold, spread);
    follower.pass(turning, TimeTaken.of(60), AT);
    trace.pass(turning, 0, TimeTaken.of(60), spread, Optional.of(follower.point(turning)));
    List<Point> points = trace.points();
    assertThat(points).extracting(Point::seconds).containsExactly(0.0, 0.0, 0.0, 60.0);
    assertThat(points).extracting(Point::known).containsExactly(true, false, false, false);
    // Cold, or 300 s: 18 µm · (1 − e^(−300/720)) = 6.1337 µm.
    assertThat(points.get(2).growthUm().orElseThrow().low()).isZero();
    assertThat(points.get(2).growthUm().orElseThrow().high()).isCloseTo(6.1337, within(5e-5));
  }
}

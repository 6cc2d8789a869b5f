package hairline.checks.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.motion.Modes.Plane;
import hairline.parser.Span;
import java.util.Optional;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class ExtentTest {
  private static final double DEG = Math.PI / 180;

  private static Modes modes(Modal<Plane> plane) {
    return new Modes(
        Modal.unset(),
        plane,
        Modal.unset(),
        Modal.unset(),
        Modal.unset(),
        Modal.unset(),
        Modal.unset(),
        Modal.unset(),
        Modal.unset(),
        Modal.unset(),
        Modal.unset(),
        Modal.unset(),
        Modal.unset(),
        false,
        Modal.unset(),
        Modal.unset(),
        Modal.unset(),
        1);
  }

  private static Position mm(double x, double y, double z) {
    return new Position(Math.round(x * 1e9), Math.round(y * 1e9), Math.round(z * 1e9), 0, 0, 0, 0);
  }

  private static Move move(Position from, Position to, Optional<Arc> arc, Modal<Plane> plane) {
    return new Move(
        new Place(0, 1, new Span(1, 1)),
        arc.isPresent() ? Move.Kind.ARC_CCW : Move.Kind.LINE,
        Move.Source.BLOCK,
        modes(plane),
        from,
        to,
        from,
        to,
        arc,
        1,
        OptionalDouble.of(1),
        false);
  }

  /** An arc in the plane about (10, 20), from an angle through a sweep; the normal goes 0 to 1. */
  private static Move arc(
      Plane plane, double startDeg, double sweepDeg, double startRadius, double endRadius) {
    double end = (startDeg + sweepDeg) * DEG;
    return move(
        inPlane(
            plane,
            10 + startRadius * Math.cos(startDeg * DEG),
            20 + startRadius * Math.sin(startDeg * DEG),
            0),
        inPlane(plane, 10 + endRadius * Math.cos(end), 20 + endRadius * Math.sin(end), 1),
        Optional.of(new Arc(10, 20, startRadius, endRadius, sweepDeg * DEG, false)),
        Modal.stated(plane, 1));
  }

  private static Position inPlane(Plane plane, double first, double second, double normal) {
    return mm(0, 0, 0)
        .with(plane.first(), Math.round(first * 1e9))
        .with(plane.second(), Math.round(second * 1e9))
        .with(plane.normal(), Math.round(normal * 1e9));
  }

  private static void assertReaches(Move move, Axis axis, double lowest, double highest) {
    Extent extent = Extent.of(move, axis).orElseThrow();
    assertThat(extent.lowest() * 1e-9).isCloseTo(lowest, within(1e-6));
    assertThat(extent.highest() * 1e-9).isCloseTo(highest, within(1e-6));
  }

  @Test
  void coversBothEndsOfALine() {
    Move line = move(mm(3, -1, 0), mm(-2, 4, 0), Optional.empty(), Modal.unset());
    assertThat(Extent.of(line, Axis.X)).contains(new Extent(-2_000_000_000L, 3_000_000_000L));
    assertThat(Extent.of(line, Axis.Y)).contains(new Extent(-1_000_000_000L, 4_000_000_000L));
    assertThat(Extent.of(line, Axis.Z)).contains(new Extent(0, 0));
  }

  @Test
  void takesTheEndThatIsKnown() {
    Position to = mm(3, 4, 5);
    Position xUnknown = mm(1, 2, 3).without(Axis.X);
    assertThat(Extent.of(move(xUnknown, to, Optional.empty(), Modal.unset()), Axis.X))
        .contains(new Extent(3_000_000_000L, 3_000_000_000L));
    assertThat(Extent.of(move(to, xUnknown, Optional.empty(), Modal.unset()), Axis.X))
        .contains(new Extent(3_000_000_000L, 3_000_000_000L));
    assertThat(Extent.of(move(xUnknown, xUnknown, Optional.empty(), Modal.unset()), Axis.X))
        .isEmpty();
  }

  @Test
  void reachesWhereAnArcTurnsRound() {
    // [exact] geometry of the circle
    for (Plane plane : Plane.values()) {
      Axis first = plane.first();
      Axis second = plane.second();
      double half = Math.sqrt(0.5);
      assertReaches(arc(plane, 45, 90, 1, 1), first, 10 - half, 10 + half);
      assertReaches(arc(plane, 45, 90, 1, 1), second, 20 + half, 21);
      assertReaches(arc(plane, 45, -90, 1, 1), first, 10 + half, 11);
      assertReaches(arc(plane, 45, -90, 1, 1), second, 20 - half, 20 + half);
      assertReaches(
          arc(plane, 10, 70, 1, 1), first, 10 + Math.cos(80 * DEG), 10 + Math.cos(10 * DEG));
      assertReaches(arc(plane, 135, 180, 2, 2), first, 8, 10 + 2 * half);
      assertReaches(arc(plane, 135, 180, 2, 2), second, 18, 20 + 2 * half);
      assertReaches(arc(plane, 30, 360, 1, 1), first, 9, 11);
      assertReaches(arc(plane, 30, -360, 1, 1), second, 19, 21);
      assertReaches(arc(plane, 0, 90, 1, 1), first, 10, 11);
      assertReaches(arc(plane, 0, 90, 1, 1), second, 20, 21);
      assertReaches(arc(plane, 30, 360, 1, 1), plane.normal(), 0, 1);
    }
  }

  @Test
  void followsTheRadiusOfASpiral() {
    // Radius 1 at 0°, 2 at 360°: 1.25 at 90°, 1.5 at 180°, 1.75 at 270°.
    assertReaches(arc(Plane.XY, 0, 360, 1, 2), Axis.X, 8.5, 12);
    assertReaches(arc(Plane.XY, 0, 360, 1, 2), Axis.Y, 18.25, 21.25);
    assertReaches(arc(Plane.XY, 0, -360, 2, 1), Axis.Y, 18.25, 21.25);
    // Ten turns from 1 to 11: the last turn reaches farthest, the first when it shrinks.
    assertReaches(arc(Plane.XY, 0, 3600, 1, 11), Axis.Y, 20 - 10.75, 20 + 10.25);
    assertReaches(arc(Plane.XY, 0, 3600, 1, 11), Axis.X, 10 - 10.5, 21);
    assertReaches(arc(Plane.XY, 0, 3600, 11, 1), Axis.Y, 20 - 10.25, 20 + 10.75);
  }

  @Test
  void takesNoTimeForMillionsOfTurns() {
    Move screw = arc(Plane.XY, 15, 360e9, 1, 1);
    assertReaches(screw, Axis.X, 9, 11);
  }

  @Test
  void keepsToTheEndsWhereAnArcIsNotPlaced() {
    Move arc = arc(Plane.XY, 45, 90, 1, 1);
    double half = Math.sqrt(0.5);
    Move noPlane = move(arc.from(), arc.to(), arc.arc(), Modal.unknown(3));
    assertReaches(noPlane, Axis.Y, 20 + half, 20 + half);
    Move halfKnown =
        move(arc.from().without(Axis.X), arc.to(), arc.arc(), Modal.stated(Plane.XY, 1));
    assertReaches(halfKnown, Axis.Y, 20 + half, 20 + half);
    assertReaches(
        move(arc.from().without(Axis.Y), arc.to(), arc.arc(), Modal.stated(Plane.XY, 1)),
        Axis.X,
        10 - half,
        10 + half);
  }

  @Property
  void agreesWithManyPointsOfTheArc(
      @ForAll @DoubleRange(min = -360, max = 360) double start,
      @ForAll @DoubleRange(min = -800, max = 800) double sweep,
      @ForAll @DoubleRange(min = 0.01, max = 50) double radius) {
    Move arc = arc(Plane.XY, start, sweep, radius, radius);
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    int points = 4000;
    for (int i = 0; i <= points; i++) {
      double x = 10 + radius * Math.cos((start + sweep * i / points) * DEG);
      lowest = Math.min(lowest, x);
      highest = Math.max(highest, x);
    }
    Extent extent = Extent.of(arc, Axis.X).orElseThrow();
    // Between two points the circle bulges by r(1 - cos(step/2)).
    double step = sweep * DEG / points;
    double bulge = radius * (1 - Math.cos(step / 2)) + 1e-6;
    assertThat(extent.lowest() * 1e-9).isBetween(lowest - bulge, lowest + 1e-6);
    assertThat(extent.highest() * 1e-9).isBetween(highest - 1e-6, highest + bulge);
  }

  @Test
  void coversAnother() {
    assertThat(new Extent(1, 5).cover(new Extent(3, 7))).isEqualTo(new Extent(1, 7));
    assertThat(new Extent(3, 7).cover(new Extent(1, 5))).isEqualTo(new Extent(1, 7));
    assertThat(new Extent(1, 7).cover(new Extent(3, 5))).isEqualTo(new Extent(1, 7));
  }
}

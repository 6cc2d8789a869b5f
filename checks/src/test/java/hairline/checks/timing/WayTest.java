package hairline.checks.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.motion.Arc;
import hairline.checks.motion.Axis;
import hairline.checks.motion.Modal;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.motion.Position;
import hairline.parser.Span;
import java.util.Optional;
import java.util.OptionalDouble;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/**
 * Directions and curvature of lines, arcs and helices, by plane geometry. A helix of radius r that
 * rises c for each radian has the direction (r along the circle, c) and bends with the radius (r² +
 * c²)/r (differential geometry of curves, from memory).
 */
class WayTest {
  private static final Offset<Double> CLOSE = within(1e-9);

  private static Modes in(Modes.Plane plane) {
    Modes xy = new Programs(event -> {}).modes();
    return new Modes(
        xy.units(),
        Modal.stated(plane, 1),
        xy.distance(),
        xy.arcDistance(),
        xy.feedMode(),
        xy.pathMode(),
        xy.workOffset(),
        xy.compensation(),
        xy.compensationNumber(),
        xy.lengthOffset(),
        xy.cycleReturn(),
        xy.spindle(),
        xy.speedRpm(),
        xy.surfaceSpeed(),
        xy.feed(),
        xy.tool(),
        xy.coolant(),
        xy.operation());
  }

  private static Position at(double x, double y, double z) {
    return new Position(pm(x), pm(y), pm(z), 0, 0, 0, 0);
  }

  private static long pm(double mm) {
    return Math.round(mm * 1e9);
  }

  private static Way way(Modes.Plane plane, Position from, Position to, Optional<Arc> arc) {
    Way way = new Way();
    way.take(
        new Move(
            new Place(0, 1, new Span(1, 2)),
            arc.isEmpty() ? Move.Kind.LINE : Move.Kind.ARC_CCW,
            Move.Source.BLOCK,
            in(plane),
            from,
            to,
            from,
            to,
            arc,
            1,
            OptionalDouble.of(600),
            false));
    return way;
  }

  private static void points(Direction direction, double x, double y, double z) {
    double length = StrictMath.sqrt(x * x + y * y + z * z);
    assertThat(direction.x()).isCloseTo(x / length, CLOSE);
    assertThat(direction.y()).isCloseTo(y / length, CLOSE);
    assertThat(direction.z()).isCloseTo(z / length, CLOSE);
  }

  /** 3, 4 and 12 mm make 13 mm of length. */
  @Test
  void aLineGoesStraightFromEndToEnd() {
    Way way = way(Modes.Plane.XY, at(1, 2, 3), at(4, 6, -9), Optional.empty());
    assertThat(way.start()).isEqualTo(way.end());
    points(way.start(), 3, 4, -12);
    assertThat(way.radiusMm()).isInfinite();
    assertThat(way.share(Axis.X)).isCloseTo(3 / 13.0, CLOSE);
    assertThat(way.share(Axis.Y)).isCloseTo(4 / 13.0, CLOSE);
    assertThat(way.share(Axis.Z)).isCloseTo(12 / 13.0, CLOSE);
  }

  /** A quarter turn about (5, 1) from (7, 1) to (5, 3): up at first, then to the left. */
  @Test
  void anArcGoesAlongItsTangents() {
    Arc counterClockwise = new Arc(5, 1, 2, 2, Math.PI / 2, false);
    Way way = way(Modes.Plane.XY, at(7, 1, 0), at(5, 3, 0), Optional.of(counterClockwise));
    points(way.start(), 0, 1, 0);
    points(way.end(), -1, 0, 0);
    assertThat(way.radiusMm()).isCloseTo(2, CLOSE);
    Arc clockwise = new Arc(5, 1, 2, 2, -Math.PI / 2, false);
    Way back = way(Modes.Plane.XY, at(5, 3, 0), at(7, 1, 0), Optional.of(clockwise));
    points(back.start(), 1, 0, 0);
    points(back.end(), 0, -1, 0);
  }

  /** Counter-clockwise is from Z to X under G18 and from Y to Z under G19 (ISO 841). */
  @Test
  void theOtherPlanesTurnFromTheirFirstAxisToTheirSecond() {
    Arc quarter = new Arc(0, 0, 2, 2, Math.PI / 2, false);
    Way zx = way(Modes.Plane.ZX, at(0, 0, 2), at(2, 0, 0), Optional.of(quarter));
    points(zx.start(), 1, 0, 0);
    points(zx.end(), 0, 0, -1);
    assertThat(zx.share(Axis.Z)).isEqualTo(1);
    assertThat(zx.share(Axis.X)).isEqualTo(1);
    assertThat(zx.share(Axis.Y)).isZero();
    Way yz = way(Modes.Plane.YZ, at(0, 2, 0), at(0, 0, 2), Optional.of(quarter));
    points(yz.start(), 0, 0, 1);
    points(yz.end(), 0, -1, 0);
    assertThat(yz.share(Axis.Y)).isEqualTo(1);
    assertThat(yz.share(Axis.Z)).isEqualTo(1);
    assertThat(yz.share(Axis.X)).isZero();
  }

  /** Half a turn at r 2 mm that rises by 1.5 π mm: c = 1.5, so (4 + 2.25)/2 and 2, 1.5 of 2.5. */
  @Test
  void aHelixRisesAndBendsLess() {
    Arc half = new Arc(0, 0, 2, 2, Math.PI, false);
    double rise = 1.5 * Math.PI;
    Way up = way(Modes.Plane.XY, at(2, 0, 0), at(-2, 0, rise), Optional.of(half));
    points(up.start(), 0, 2, 1.5);
    points(up.end(), 0, -2, 1.5);
    assertThat(up.radiusMm()).isCloseTo(3.125, CLOSE);
    assertThat(up.share(Axis.X)).isEqualTo(1);
    assertThat(up.share(Axis.Y)).isEqualTo(1);
    assertThat(up.share(Axis.Z)).isCloseTo(0.6, CLOSE);
    Way down = way(Modes.Plane.XY, at(2, 0, rise), at(-2, 0, 0), Optional.of(half));
    points(down.start(), 0, 2, -1.5);
    assertThat(down.share(Axis.Z)).isCloseTo(0.6, CLOSE);
    Way alongY = way(Modes.Plane.ZX, at(0, 0, 2), at(0, rise, -2), Optional.of(half));
    points(alongY.start(), 2, 1.5, 0);
    assertThat(alongY.share(Axis.Y)).isCloseTo(0.6, CLOSE);
    Way alongX = way(Modes.Plane.YZ, at(0, 2, 0), at(rise, -2, 0), Optional.of(half));
    points(alongX.start(), 1.5, 0, 2);
    assertThat(alongX.share(Axis.X)).isCloseTo(0.6, CLOSE);
  }

  /** Where the two radii differ the tighter one counts. */
  @Test
  void anArcOfTwoRadiiIsAsTightAsTheSmallerOne() {
    Arc arc = new Arc(0, 0, 2, 1.9, Math.PI / 2, false);
    Way way = way(Modes.Plane.XY, at(2, 0, 0), at(0, 1.9, 0), Optional.of(arc));
    assertThat(way.radiusMm()).isCloseTo(1.9, CLOSE);
  }

  /**
   * sin(θ/2) of the angle between the legs: 1 straight on, √½ at 90°, ½ at 60°, 0 straight back.
   */
  @Test
  void theSineOfHalfACorner() {
    Position x = at(2, 0, 0);
    assertThat(sineOfHalf(x, at(5, 0, 0))).isEqualTo(1);
    assertThat(sineOfHalf(x, at(0, 3, 0))).isCloseTo(StrictMath.sqrt(0.5), CLOSE);
    assertThat(sineOfHalf(x, at(0, 0, -3))).isCloseTo(StrictMath.sqrt(0.5), CLOSE);
    Position z = at(0, 0, 1);
    assertThat(sineOfHalf(z, at(0, 0, 7))).isEqualTo(1);
    assertThat(sineOfHalf(z, at(0, StrictMath.sqrt(3), -1))).isCloseTo(0.5, CLOSE);
    assertThat(sineOfHalf(z, at(0, 0, -1))).isZero();
    Position y = at(0, 2, 0);
    assertThat(sineOfHalf(y, at(0, 0.5, 0))).isEqualTo(1);
    assertThat(sineOfHalf(y, at(0, -1, 0))).isZero();
  }

  /** Of the corner between two lines by where they end from zero. */
  private static double sineOfHalf(Position first, Position second) {
    Way way = way(Modes.Plane.XY, at(0, 0, 0), first, Optional.empty());
    Way next = way(Modes.Plane.XY, at(0, 0, 0), second, Optional.empty());
    return StrictMath.sqrt(way.squareOfHalfCorner(next));
  }

  @Test
  void whatHasNoLengthHasNoDirection() {
    assertThat(Direction.of(0, 0, 0)).isEqualTo(new Direction(0, 0, 0));
  }
}

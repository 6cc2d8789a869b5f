package hairline.checks.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.motion.ArcGeometry.Ends;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.Angle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Triangle;
import org.locationtech.jts.util.GeometricShapeFactory;

/** Arcs against the geometry of JTS, an independent library. */
class ArcGeometryTest {
  private static final double MM_PER_PM = 1e-9;
  private static final int POINTS = 10_001;

  /** The arc as JTS draws it: counter-clockwise, from the end where it begins so. */
  private static LineString drawn(Arc arc, Ends ends) {
    GeometricShapeFactory shapes = new GeometricShapeFactory();
    shapes.setCentre(new Coordinate(arc.centreFirstMm(), arc.centreSecondMm()));
    shapes.setSize(2 * arc.startRadiusMm());
    shapes.setNumPoints(POINTS);
    boolean clockwise = arc.sweepRad() < 0;
    Coordinate from = clockwise ? end(ends) : start(ends);
    double angle = Angle.angle(centre(arc), from);
    return shapes.createArc(Angle.normalizePositive(angle), Math.abs(arc.sweepRad()));
  }

  private static Coordinate centre(Arc arc) {
    return new Coordinate(arc.centreFirstMm(), arc.centreSecondMm());
  }

  private static Coordinate start(Ends ends) {
    return new Coordinate(ends.startFirst() * MM_PER_PM, ends.startSecond() * MM_PER_PM);
  }

  private static Coordinate end(Ends ends) {
    return new Coordinate(ends.endFirst() * MM_PER_PM, ends.endSecond() * MM_PER_PM);
  }

  private static void assertDrawn(Arc arc, Ends ends, double slack) {
    LineString line = drawn(arc, ends);
    boolean clockwise = arc.sweepRad() < 0;
    Coordinate first = line.getCoordinateN(0);
    Coordinate last = line.getCoordinateN(POINTS - 1);
    assertThat(first.distance(clockwise ? end(ends) : start(ends))).isLessThan(slack);
    assertThat(last.distance(clockwise ? start(ends) : end(ends))).isLessThan(slack);
    // A chain of chords is shorter than its arc by (step angle)²/24 of it.
    double step = arc.sweepRad() / (POINTS - 1);
    double expected = line.getLength() * (1 + step * step / 24);
    assertThat(ArcGeometry.lengthMm(arc, 0)).isCloseTo(expected, within(expected * 1e-9 + slack));
    // Three of its points give its centre again.
    Coordinate found =
        Triangle.circumcentreDD(
            first, line.getCoordinateN(POINTS / 3), line.getCoordinateN(2 * POINTS / 3));
    double conditioning = 1 + 1 / (arc.sweepRad() * arc.sweepRad());
    assertThat(found.distance(centre(arc))).isLessThan(slack * 100 * conditioning);
  }

  @Property
  void aroundACentre(
      @ForAll @LongRange(min = -50_000_000_000L, max = 50_000_000_000L) long first,
      @ForAll @LongRange(min = -50_000_000_000L, max = 50_000_000_000L) long second,
      @ForAll @DoubleRange(min = 0.05, max = 50) double radiusMm,
      @ForAll @DoubleRange(min = 0, max = 6.28) double from,
      @ForAll @DoubleRange(min = 0.05, max = 6.2) double sweep,
      @ForAll boolean clockwise) {
    double to = clockwise ? from - sweep : from + sweep;
    Ends ends =
        new Ends(
            first + pm(radiusMm * Math.cos(from)),
            second + pm(radiusMm * Math.sin(from)),
            first + pm(radiusMm * Math.cos(to)),
            second + pm(radiusMm * Math.sin(to)));
    Arc arc = ArcGeometry.aroundCentre(ends, first, second, clockwise, 1);
    // The ends were rounded to a picometre.
    assertThat(arc.sweepRad()).isCloseTo(clockwise ? -sweep : sweep, within(4e-9 / radiusMm));
    assertDrawn(arc, ends, 1e-8);
  }

  @Property
  void withARadius(
      @ForAll @LongRange(min = -50_000_000_000L, max = 50_000_000_000L) long first,
      @ForAll @LongRange(min = -50_000_000_000L, max = 50_000_000_000L) long second,
      @ForAll @LongRange(min = 50_000_000L, max = 50_000_000_000L) long radiusPm,
      @ForAll @DoubleRange(min = 0.05, max = 1.95) double chordOfRadius,
      @ForAll @DoubleRange(min = 0, max = 6.28) double direction,
      @ForAll boolean clockwise,
      @ForAll boolean longWay) {
    double chord = chordOfRadius * radiusPm * MM_PER_PM;
    Ends ends =
        new Ends(
            first,
            second,
            first + pm(chord * Math.cos(direction)),
            second + pm(chord * Math.sin(direction)));
    Arc arc =
        ArcGeometry.withRadius(ends, longWay ? -radiusPm : radiusPm, clockwise, 0).orElseThrow();
    assertThat(arc.startRadiusMm()).isCloseTo(radiusPm * MM_PER_PM, within(1e-12));
    assertThat(Math.abs(arc.sweepRad()) > Math.PI).isEqualTo(longWay);
    assertThat(arc.sweepRad() < 0).isEqualTo(clockwise);
    assertDrawn(arc, ends, 1e-7);
    // Around the same centre the other form finds the same arc.
    Arc same =
        ArcGeometry.aroundCentre(
            ends, pm(arc.centreFirstMm()), pm(arc.centreSecondMm()), clockwise, 1);
    assertThat(same.sweepRad()).isCloseTo(arc.sweepRad(), within(1e-6));
  }

  @Property
  void turnsAreWholeCircles(
      @ForAll @IntRange(min = 1, max = 1000) int turns, @ForAll boolean clockwise) {
    Ends ends = new Ends(2_000_000_000L, 0, 0, 2_000_000_000L);
    double once = ArcGeometry.aroundCentre(ends, 0, 0, clockwise, 1).sweepRad();
    double more = ArcGeometry.aroundCentre(ends, 0, 0, clockwise, turns).sweepRad();
    assertThat(Math.abs(more - once)).isCloseTo(2 * Math.PI * (turns - 1), within(1e-9));
    assertThat(more < 0).isEqualTo(clockwise);
  }

  @Property
  void endsInOneDirectionMakeAFullCircle(
      @ForAll @LongRange(min = -1_000_000_000L, max = 1_000_000_000L) long x,
      @ForAll @LongRange(min = -1_000_000_000L, max = 1_000_000_000L) long y,
      @ForAll boolean clockwise) {
    Assume.that(x != 0 || y != 0);
    Arc arc = ArcGeometry.aroundCentre(new Ends(x, y, x, y), 0, 0, clockwise, 1);
    assertThat(arc.sweepRad()).isEqualTo(clockwise ? -2 * Math.PI : 2 * Math.PI);
  }

  @Test
  void radiusFormNearAHalfCircleIsIllConditioned() {
    // R 1, chord 1.999, end moved by 0.5 µm: the centre moves by 9.26 µm (worked by hand:
    // √(1 - 0.9995²) against √(1 - 0.99975²), and half of the shift along the chord).
    Arc before =
        ArcGeometry.withRadius(new Ends(0, 0, 1_999_000_000L, 0), 1_000_000_000L, false, 0)
            .orElseThrow();
    Arc after =
        ArcGeometry.withRadius(new Ends(0, 0, 1_999_500_000L, 0), 1_000_000_000L, false, 0)
            .orElseThrow();
    double moved =
        Math.hypot(
            after.centreFirstMm() - before.centreFirstMm(),
            after.centreSecondMm() - before.centreSecondMm());
    assertThat(moved * 1000).isCloseTo(9.26, within(0.005));
  }

  @Test
  void chordsBeyondTheDiameter() {
    Ends ends = new Ends(0, 0, 2_000_200_000L, 0);
    assertThat(ArcGeometry.withRadius(ends, 1_000_000_000L, true, 99_999)).isEmpty();
    Arc half = ArcGeometry.withRadius(ends, 1_000_000_000L, true, 100_001).orElseThrow();
    assertThat(half.sweepRad()).isEqualTo(-Math.PI);
    assertThat(half.startRadiusMm()).isEqualTo(1.0001);
    assertThat(half.centreSecondMm()).isZero();
  }

  @Test
  void spiralsTakeTheMeanRadius() {
    Arc spiral =
        ArcGeometry.aroundCentre(new Ends(1_000_000_000L, 0, 0, 2_000_000_000L), 0, 0, false, 1);
    assertThat(ArcGeometry.lengthMm(spiral, 0)).isCloseTo(0.75 * Math.PI, within(1e-12));
    assertThat(ArcGeometry.lengthMm(spiral, 3))
        .isCloseTo(Math.hypot(0.75 * Math.PI, 3), within(1e-12));
  }

  private static long pm(double mm) {
    return Math.round(mm / MM_PER_PM);
  }
}

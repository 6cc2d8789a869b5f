package hairline.checks.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalLong;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class ArcsTest {
  private static final Offset<Double> FINE = within(1e-12);

  private static Move arc(String... lines) {
    return Runs.of(Move.class, lines).stream()
        .filter(move -> move.kind() == Move.Kind.ARC_CW || move.kind() == Move.Kind.ARC_CCW)
        .reduce((first, second) -> second)
        .orElseThrow();
  }

  private static double degrees(Move move) {
    return Math.toDegrees(move.arc().orElseThrow().sweepRad());
  }

  @Test
  void threeQuartersOfTheLetterE() {
    // g3 x13.5 y0 i-2.5 from (16, 2.5): centre (13.5, 2.5), 270° (NISTIR 6556 C.1, n0190).
    Move move = arc("G0 X16 Y2.5 Z0", "G3 X13.5 Y0 I-2.5 F20");
    Arc arc = move.arc().orElseThrow();
    assertThat(move.kind()).isEqualTo(Move.Kind.ARC_CCW);
    assertThat(arc.centreFirstMm()).isCloseTo(13.5, FINE);
    assertThat(arc.centreSecondMm()).isCloseTo(2.5, FINE);
    assertThat(degrees(move)).isCloseTo(270, within(1e-10));
    assertThat(move.lengthMm()).isCloseTo(1.5 * Math.PI * 2.5, FINE);
    assertThat(arc.radiusForm()).isFalse();
  }

  @Test
  void radiusFormOfTheLetterR() {
    // g2 x69 r4 from (64, 4): centre (66.5, 0.8775010), 77.364375°, length 5.401052
    // (NISTIR 6556 C.1, n0490; figures worked out by hand: sin(sweep/2) = 2.5/4).
    Move move = arc("G0 X64 Y4 Z0", "G2 X69 R4 F20");
    Arc arc = move.arc().orElseThrow();
    assertThat(arc.centreFirstMm()).isCloseTo(66.5, FINE);
    assertThat(arc.centreSecondMm()).isCloseTo(0.8775010, within(5e-8));
    assertThat(degrees(move)).isCloseTo(-77.364375, within(5e-7));
    assertThat(move.lengthMm()).isCloseTo(5.401052, within(5e-7));
    assertThat(arc.radiusForm()).isTrue();
  }

  @Test
  void negativeRadiusTakesTheLongWay() {
    Move move = arc("G0 X64 Y4 Z0", "G2 X69 R-4 F20");
    assertThat(degrees(move)).isCloseTo(-(360 - 77.364375), within(5e-7));
    // The centre lies on the other side of the chord.
    assertThat(move.arc().orElseThrow().centreSecondMm()).isCloseTo(8 - 0.8775010, within(5e-8));
  }

  @Test
  void centreFormOfTheReport() {
    // "G17 G2 x 10 y 16 i 3 j 4 z 9 ... If the current location has X=7, Y=7 at the outset, the
    // center will be at X=10, Y=11 ... The radius of this arc would be 5" (NISTIR 6556 §3.5.3.2).
    Move move = arc("G0 X7 Y7 Z9", "G17 G2 X10 Y16 I3 J4 Z9 F20");
    Arc arc = move.arc().orElseThrow();
    assertThat(arc.centreFirstMm()).isCloseTo(10, FINE);
    assertThat(arc.centreSecondMm()).isCloseTo(11, FINE);
    assertThat(arc.startRadiusMm()).isCloseTo(5, FINE);
    assertThat(arc.endRadiusMm()).isCloseTo(5, FINE);
    // From the direction (-3, -4), 233.1301°, clockwise to (0, 5), 90°.
    assertThat(degrees(move)).isCloseTo(-143.13010235415598, within(1e-10));
  }

  @Test
  void fullCircles() {
    for (String words : List.of("I2", "X1 Y1 I2", "X1 I2 J0")) {
      Move move = arc("G0 X1 Y1 Z0", "G2 " + words + " F20");
      assertThat(degrees(move)).isCloseTo(-360, FINE);
      assertThat(move.lengthMm()).isCloseTo(4 * Math.PI, FINE);
      assertThat(move.to()).isEqualTo(move.from());
    }
    assertThat(degrees(arc("G0 X1 Y1 Z0", "G3 J-2 F20"))).isCloseTo(360, FINE);
  }

  @Test
  void quartersInBothDirections() {
    assertThat(degrees(arc("G0 X1 Y0", "G3 X0 Y1 I-1 F1"))).isCloseTo(90, within(1e-10));
    assertThat(degrees(arc("G0 X1 Y0", "G2 X0 Y1 I-1 F1"))).isCloseTo(-270, within(1e-10));
    assertThat(degrees(arc("G0 X1 Y0", "G3 X-1 I-1 F1"))).isCloseTo(180, within(1e-10));
    assertThat(degrees(arc("G0 X1 Y0", "G2 X-1 I-1 F1"))).isCloseTo(-180, within(1e-10));
    assertThat(degrees(arc("G0 X-1 Y0", "G3 X1 I1 F1"))).isCloseTo(180, within(1e-10));
  }

  @Test
  void threePlanesTurnAsSeenFromTheirNormal() {
    // G18: Z is the first axis, so counter-clockwise turns Z towards X (NISTIR 6556 §3.5.3.2).
    Move zx = arc("G18 G0 Z1 X0 Y0", "G3 Z0 X1 K-1 F1");
    assertThat(degrees(zx)).isCloseTo(90, within(1e-10));
    assertThat(zx.arc().orElseThrow().centreFirstMm()).isZero();
    Move yz = arc("G19 G0 Y1 Z0 X0", "G3 Y0 Z1 J-1 F1");
    assertThat(degrees(yz)).isCloseTo(90, within(1e-10));
    Move reverse = arc("G18 G0 X1 Z0 Y0", "G3 X0 Z1 I-1 F1");
    assertThat(degrees(reverse)).isCloseTo(270, within(1e-10));
  }

  @Test
  void helixLengthIsThatOfTheUnrolledScrew() {
    // Pythagoras on the unrolled cylinder: √((2π·2)² + 3²).
    Move move = arc("G0 X2 Y0 Z3", "G3 X2 Y0 Z0 I-2 F1");
    assertThat(move.lengthMm()).isCloseTo(Math.hypot(4 * Math.PI, 3), FINE);
  }

  @Test
  void turnsAddFullCircles() {
    Move move = arc("G0 X2 Y0 Z3", "G3 X0 Y2 Z0 I-2 P3 F1");
    assertThat(degrees(move)).isCloseTo(90 + 720, within(1e-10));
    assertThat(degrees(arc("G0 X2 Y0", "G2 X0 Y-2 I-2 P2 F1"))).isCloseTo(-450, within(1e-10));
    assertThat(Runs.of(Event.WordRefused.class, "G0 X2 Y0", "G2 X0 Y-2 I-2 P0 F1")).hasSize(1);
  }

  @Test
  void absoluteCentres() {
    Move move = arc("G0 X16 Y2.5 Z0", "G90.1", "G3 X13.5 Y0 I13.5 J2.5 F20");
    assertThat(degrees(move)).isCloseTo(270, within(1e-10));
    Move back = arc("G0 X16 Y2.5", "G90.1", "G91.1 G3 X13.5 Y0 I-2.5 F20");
    assertThat(degrees(back)).isCloseTo(270, within(1e-10));
  }

  @Test
  void absoluteCentreNeedsBothWords() {
    Move move = arc("G0 X16 Y2.5 Z0", "G90.1", "G3 X13.5 Y0 I13.5 F20");
    assertThat(move.arc()).isEmpty();
    assertThat(move.lengthMm()).isZero();
  }

  @Test
  void incrementalEnds() {
    Move move = arc("G0 X16 Y2.5 Z0", "G91 G3 X-2.5 Y-2.5 I-2.5 F20");
    assertThat(degrees(move)).isCloseTo(270, within(1e-10));
  }

  @Test
  void radiiAreThoseOfTheStoredEnds() {
    // The end misses the circle by 1 µm; increments of 0.1 µm round I to 0.0001 mm.
    Move move = arc("G0 X1 Y0", "G3 X0 Y1.001 I-0.99996 F1");
    Arc arc = move.arc().orElseThrow();
    assertThat(arc.startRadiusMm()).isCloseTo(1.0, within(1e-12));
    assertThat(arc.endRadiusMm()).isCloseTo(1.001, within(1e-12));
  }

  @Test
  void shortArcOnALargeRadiusKeepsItsDigits() {
    // A chord of 1 µm on 500 mm: sweep 2·asin(c/2r) = 2·10^-6 rad to within 10^-18.
    Move move = arc("G0 X500 Y-0.0005", "G3 X500 Y0.0005 I-500 J0.0005 F1");
    assertThat(move.arc().orElseThrow().sweepRad()).isCloseTo(2e-6, within(1e-17));
  }

  @Test
  void impossibleArcsKeepTheirEnd() {
    record Case(String block, String why) {}
    for (Case wrong :
        List.of(
            new Case("G2 X5 Y0 F1", "neither a centre nor a radius"),
            new Case("G2 X5 Y0 I0 J0 F1", "its centre is where it starts"),
            new Case("G2 X5 Y0 R2.4 F1", "its ends lie further apart than its diameter"),
            new Case("G2 X0 Y0 R2.4 F1", "its ends meet, so the radius alone gives no centre"))) {
      List<Event> events = Runs.events(Runs.TENTH_UM, "G0 X0 Y0 Z0", wrong.block(), "G1 X7");
      Event.ArcImpossible impossible = Runs.only(Event.ArcImpossible.class, events);
      assertThat(impossible.reason()).isEqualTo(wrong.why());
      assertThat(Runs.of(Move.class, events)).hasSize(2);
      Position end = Runs.of(Move.class, events).get(1).from();
      assertThat(end.xPm()).isEqualTo(wrong.block().contains("X5") ? 5_000_000_000L : 0);
    }
  }

  @Test
  void tooShortARadiusStatesBoth() {
    Event.ArcImpossible arc = Runs.only(Event.ArcImpossible.class, "G0 X0 Y0", "G2 X5 Y0 R2.4 F1");
    assertThat(arc.startRadiusMm().getAsDouble()).isCloseTo(2.4, FINE);
    assertThat(arc.endRadiusMm().getAsDouble()).isCloseTo(2.5, FINE);
  }

  @Test
  void halfCircleOverARoundedChordIsDrawn() {
    // Half the chord exceeds the radius by 0.05 µm, half an increment.
    Move move = arc("G0 X0 Y0 Z0", "G3 X5.0001 Y0 R2.5 F1");
    assertThat(degrees(move)).isCloseTo(180, within(1e-10));
    assertThat(move.arc().orElseThrow().startRadiusMm()).isCloseTo(2.50005, FINE);
    // Without an arc tolerance an increment is the limit; with one, the tolerance.
    String[] tooFar = {"G0 X0 Y0 Z0", "G3 X5.0004 Y0 R2.5 F1"};
    assertThat(Runs.of(Event.ArcImpossible.class, tooFar)).hasSize(1);
    ControlProfile lenient =
        Profiles.with(Runs.TENTH_UM, p -> p.arcTolerancePm = OptionalLong.of(200_000));
    assertThat(Runs.of(Event.ArcImpossible.class, Runs.events(lenient, tooFar))).isEmpty();
  }

  @Test
  void unknownStartLeavesTheCircleOut() {
    Move move = arc("G2 X5 Y0 I1 F1");
    assertThat(move.arc()).isEmpty();
    assertThat(move.lengthMm()).isZero();
    assertThat(move.to().xPm()).isEqualTo(5_000_000_000L);
  }

  @Test
  void unknownHeightDoesNotMatterToAFlatArc() {
    Move move = arc("G0 X1 Y0", "G3 X0 Y1 I-1 F1");
    assertThat(move.lengthMm()).isCloseTo(Math.PI / 2, FINE);
    Move helix = arc("G0 X1 Y0", "G3 X0 Y1 Z1 I-1 F1");
    assertThat(helix.lengthMm()).isZero();
    assertThat(helix.arc()).isPresent();
  }

  @Test
  void anArcOfOneIncrementThatVanishesBecomesACircle() {
    // Both ends round to the same increment, so the control sees a full circle.
    List<Event> events = Runs.events(Runs.TENTH_UM, "G0 X1 Y0", "G3 X1 Y0.00004 I-1 F1");
    assertThat(Runs.of(Event.MoveVanished.class, events)).hasSize(1);
    assertThat(degrees(Runs.of(Move.class, events).get(1))).isCloseTo(360, FINE);
  }

  @Test
  void radiusAndCentreTogetherConflict() {
    List<Event> events = Runs.events(Runs.TENTH_UM, "G0 X0 Y0", "G2 X5 Y0 R4 I1 F1");
    assertThat(Runs.only(Event.CodesConflict.class, events).first()).isEqualTo("R");
    assertThat(Runs.of(Move.class, events).get(1).arc().orElseThrow().radiusForm()).isTrue();
  }

  @Test
  void shiftsDoNotMoveTheCircle() {
    Move plain = arc("G0 X16 Y2.5 Z0", "G3 X13.5 Y0 I-2.5 F20");
    Move shifted = arc("G0 X16 Y2.5 Z0", "G92 X0 Y0", "G3 X-2.5 Y-2.5 I-2.5 F20");
    assertThat(shifted.arc()).isEqualTo(plain.arc());
    Move absolute = arc("G0 X16 Y2.5 Z0", "G92 X0 Y0", "G90.1 G3 X-2.5 Y-2.5 I-2.5 J0 F20");
    assertThat(absolute.arc()).isEqualTo(plain.arc());
  }

  @Test
  void arcLettersCountInTheColumns() {
    Move move = arc("G0 X16 Y2.5 Z0", "N5 G3 X13.5 Y0 I-2.5 F20");
    assertThat(move.at().span()).isEqualTo(new hairline.parser.Span(4, 21));
  }
}

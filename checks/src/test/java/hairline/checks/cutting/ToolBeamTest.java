package hairline.checks.cutting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.cutting.ToolBeam.Part;
import hairline.checks.cutting.ToolBeam.Segment;
import hairline.checks.cutting.ToolBeam.Stress;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** Exact within beam theory. */
class ToolBeamTest {

  private static final double E = 580;

  /** Flute 0.40 over 0–1, neck 0.47 over 1–4, cone 0.47→3.0 over 4–9.5, shank 3.0 over 9.5–20. */
  private static final Segment FLUTE = new Segment(Part.FLUTE, 0, 1, 0.40, 0.40);

  private static final Segment NECK = new Segment(Part.NECK, 1, 4, 0.47, 0.47);
  private static final Segment CONE = new Segment(Part.CONE, 4, 9.5, 0.47, 3.0);
  private static final Segment SHANK = new Segment(Part.SHANK, 9.5, 20, 3.0, 3.0);
  private static final ToolBeam STEPPED = new ToolBeam(List.of(FLUTE, NECK, CONE, SHANK));

  private static ToolBeam cylinder(double diameter, double length) {
    return new ToolBeam(List.of(new Segment(Part.FLUTE, 0, length, diameter, diameter)));
  }

  /** D 1, counted as 0.8, L 3, F 2 N, recomputed independently from F L³/(3 E I). */
  @Test
  void cylinderExample() {
    assertThat(2 * cylinder(0.8, 3).deflectionUmPerN(0, E)).isCloseTo(1.5435, within(5e-5));
  }

  /** The four parts recomputed independently: 0.4573 + 15.1158 + 4.9966 + 1.0324 = 21.602 µm. */
  @Test
  void steppedExample() {
    assertThat(STEPPED.deflectionUmPerN(0, E)).isCloseTo(21.602, within(5e-4));
    assertThat(STEPPED.lengthMm()).isEqualTo(20);
    // Each part by what is lost when it alone is made rigid.
    assertThat(shareOf(FLUTE)).isCloseTo(0.4573, within(5e-5));
    assertThat(shareOf(NECK)).isCloseTo(15.1158, within(5e-5));
    assertThat(shareOf(CONE)).isCloseTo(4.9966, within(5e-5));
    assertThat(shareOf(SHANK)).isCloseTo(1.0324, within(5e-5));
  }

  private static double shareOf(Segment segment) {
    List<Segment> rigid = new ArrayList<>(STEPPED.segments());
    rigid.replaceAll(
        s -> s.equals(segment) ? new Segment(s.part(), s.fromMm(), s.toMm(), 1e5, 1e5) : s);
    return STEPPED.deflectionUmPerN(0, E) - new ToolBeam(rigid).deflectionUmPerN(0, E);
  }

  /** F 1 N, L 4, d 0.47: 32 F L/(π d³) = 392.4 MPa, recomputed independently. */
  @Test
  void stressAtTheRootOfTheNeck() {
    assertThat(cylinder(0.47, 4).largestStress(0))
        .isEqualTo(new Stress(cylinder(0.47, 4).largestStress(0).mPaPerN(), Part.FLUTE, 4));
    List<Stress> stresses = STEPPED.stresses(0);
    assertThat(stresses)
        .extracting(Stress::part)
        .containsExactly(Part.FLUTE, Part.NECK, Part.CONE, Part.SHANK);
    assertThat(stresses.get(1).mPaPerN()).isCloseTo(392.4, within(0.05));
    assertThat(stresses.get(1).atMm()).isEqualTo(4);
    // 32 · 1/(π · 0.4³) and 32 · 20/(π · 27).
    assertThat(stresses.get(0).mPaPerN()).isCloseTo(159.15, within(0.01));
    assertThat(stresses.get(3).mPaPerN()).isCloseTo(7.545, within(0.001));
    assertThat(STEPPED.largestStress(0).mPaPerN()).isCloseTo(392.4, within(0.05));
    assertThat(STEPPED.largestStress(0).atMm()).isEqualTo(4);
  }

  /**
   * Textbook tables of beams (from memory): F L³/(3EI), F L²/(2EI); with the force a distance b
   * from the clamp, the free end moves by F b² (3L − b)/(6EI) and turns by F b²/(2EI).
   */
  @Property
  void cylinderAgainstTheBeamTables(
      @ForAll @Scale(3) @DoubleRange(min = 0.05, max = 12) double d,
      @ForAll @Scale(3) @DoubleRange(min = 0.1, max = 60) double length,
      @ForAll @Scale(3) @DoubleRange(min = 0, max = 0.999) double share) {
    double inertia = Math.PI * StrictMath.pow(d, 4) / 64;
    double b = length * (1 - share);
    double deflection = b * b * (3 * length - b) / (6 * E * 1000 * inertia) * 1000;
    double slope = b * b / (2 * E * 1000 * inertia);
    ToolBeam beam = cylinder(d, length);
    double at = length - b;
    assertThat(beam.deflectionUmPerN(at, E)).isCloseTo(deflection, within(deflection * 1e-9));
    assertThat(beam.slopeRadPerN(at, E)).isCloseTo(slope, within(slope * 1e-9));
    assertThat(beam.axialGiveUmPerN(E))
        .isCloseTo(length * 4 / (E * Math.PI * d * d), within(1e-9 * length / (d * d)));
  }

  /**
   * A cone with twice the diameter at its root (textbook of mechanics of materials, from memory):
   * the largest stress is 128 F L/(27 π d³), at half the length, and not at the root, where it is 4
   * F L/(π d³).
   */
  @Test
  void coneIsStressedMostInTheMiddle() {
    ToolBeam cone = new ToolBeam(List.of(new Segment(Part.CONE, 0, 6, 0.5, 1.0)));
    Stress largest = cone.largestStress(0);
    assertThat(largest.atMm()).isCloseTo(3, within(1e-12));
    assertThat(largest.mPaPerN()).isCloseTo(128 * 6 / (27 * Math.PI * 0.125), within(1e-9));
    assertThat(largest.mPaPerN()).isGreaterThan(4 * 6 / (Math.PI * 0.125));
  }

  /** Force away from the tip: 3 s (x − x₀) = d at x = (d₁ + 3 s x₀)/(2 s) from the thin end. */
  @Property
  void noPlaceOfAConeIsStressedMore(
      @ForAll @Scale(3) @DoubleRange(min = 0.2, max = 4) double d1,
      @ForAll @Scale(3) @DoubleRange(min = 0.2, max = 4) double d2,
      @ForAll @Scale(3) @DoubleRange(min = 0, max = 0.9) double share) {
    ToolBeam beam =
        new ToolBeam(
            List.of(new Segment(Part.NECK, 0, 2, d1, d1), new Segment(Part.CONE, 2, 8, d1, d2)));
    double at = share * 8;
    Stress largest = beam.largestStress(at);
    double found = 0;
    for (Segment s : beam.segments()) {
      for (int i = 0; i <= 8000; i++) {
        double x = s.fromMm() + (s.toMm() - s.fromMm()) * i / 8000;
        double d = diameterAt(s, x);
        found = Math.max(found, 32 * (x - at) / (Math.PI * d * d * d));
      }
    }
    assertThat(largest.mPaPerN()).isGreaterThanOrEqualTo(found * (1 - 1e-9));
    assertThat(largest.mPaPerN()).isCloseTo(found, within(found * 1e-5));
  }

  /** Independent of the closed forms: Simpson's rule over each segment of a random beam. */
  @Property(tries = 300)
  void closedFormsAgainstSimpson(
      @ForAll long seed,
      @ForAll @IntRange(min = 1, max = 5) int count,
      @ForAll @Scale(3) @DoubleRange(min = 0, max = 0.95) double share) {
    ToolBeam beam = randomBeam(seed, count);
    double at = share * beam.lengthMm();
    double deflection = 0;
    double slope = 0;
    double give = 0;
    for (Segment s : beam.segments()) {
      give += simpson(s.fromMm(), s.toMm(), x -> 4 / (Math.PI * sq(diameterAt(s, x))));
      if (s.toMm() > at) {
        double from = Math.max(at, s.fromMm());
        deflection +=
            simpson(from, s.toMm(), x -> (x - at) * x * 64 / (Math.PI * sq(sq(diameterAt(s, x)))));
        slope += simpson(from, s.toMm(), x -> (x - at) * 64 / (Math.PI * sq(sq(diameterAt(s, x)))));
      }
    }
    assertThat(beam.deflectionUmPerN(at, E)).isCloseTo(deflection / E, withinPart(deflection / E));
    assertThat(beam.slopeRadPerN(at, E) * 1000).isCloseTo(slope / E, withinPart(slope / E));
    assertThat(beam.axialGiveUmPerN(E)).isCloseTo(give / E, withinPart(give / E));
  }

  /**
   * Independent of virtual work: the curvature M/(E I) is integrated twice, step by step, from the
   * clamp to the tip.
   */
  @Property(tries = 50)
  void deflectionAndSlopeAgainstIntegratedCurvature(
      @ForAll long seed, @ForAll @Scale(3) @DoubleRange(min = 0, max = 0.9) double share) {
    ToolBeam beam = randomBeam(seed, 3);
    double at = share * beam.lengthMm();
    double slope = 0;
    double deflection = 0;
    for (int k = beam.segments().size() - 1; k >= 0; k--) {
      Segment s = beam.segments().get(k);
      // From the force to the tip nothing bends: a step across its place would be partly wrong.
      double bendsFrom = Math.min(s.toMm(), Math.max(at, s.fromMm()));
      int n = 4000;
      double dx = (s.toMm() - bendsFrom) / n;
      for (int i = 0; i < n; i++) {
        double x = s.toMm() - (i + 0.5) * dx;
        double curvature = 64 * (x - at) / (E * Math.PI * sq(sq(diameterAt(s, x))));
        deflection += (slope + curvature * dx / 2) * dx;
        slope += curvature * dx;
      }
      deflection += slope * (bendsFrom - s.fromMm());
    }
    assertThat(beam.deflectionUmPerN(at, E)).isCloseTo(deflection, within(deflection * 1e-4));
    assertThat(beam.slopeRadPerN(at, E) * 1000).isCloseTo(slope, within(slope * 1e-4));
  }

  @Property
  void scalingLaws(
      @ForAll long seed, @ForAll @Scale(3) @DoubleRange(min = 0.1, max = 10) double scale) {
    ToolBeam beam = randomBeam(seed, 4);
    List<Segment> segments = new ArrayList<>();
    double end = 0;
    for (Segment s : beam.segments()) {
      double next = s.toMm() * scale;
      segments.add(
          new Segment(s.part(), end, next, s.startDiameterMm() * scale, s.endDiameterMm() * scale));
      end = next;
    }
    ToolBeam scaled = new ToolBeam(segments);
    double at = 0.1 * beam.lengthMm();
    double deflection = beam.deflectionUmPerN(at, E);
    assertThat(scaled.deflectionUmPerN(at * scale, E) * scale)
        .isCloseTo(deflection, within(deflection * 1e-9));
    double slope = beam.slopeRadPerN(at, E);
    assertThat(scaled.slopeRadPerN(at * scale, E) * scale * scale)
        .isCloseTo(slope, within(slope * 1e-9));
    double stress = beam.largestStress(at).mPaPerN();
    assertThat(scaled.largestStress(at * scale).mPaPerN() * scale * scale)
        .isCloseTo(stress, within(stress * 1e-9));
    // Twice as stiff, half the flex.
    assertThat(beam.deflectionUmPerN(at, 2 * E))
        .isCloseTo(deflection / 2, within(deflection * 1e-12));
  }

  /** A very slender cone is a cylinder, with no digits lost. */
  @Test
  void aSlenderConeIsAlmostACylinder() {
    ToolBeam cone = new ToolBeam(List.of(new Segment(Part.CONE, 0, 5, 0.5, 0.5 + 1e-12)));
    ToolBeam cylinder = cylinder(0.5, 5);
    assertThat(cone.deflectionUmPerN(0, E))
        .isCloseTo(cylinder.deflectionUmPerN(0, E), within(1e-9));
    assertThat(cone.slopeRadPerN(0, E)).isCloseTo(cylinder.slopeRadPerN(0, E), within(1e-12));
  }

  @Test
  void aForceNearerToTheHolderBendsLess() {
    double last = Double.MAX_VALUE;
    for (double at = 0; at < 20; at += 0.25) {
      double next = STEPPED.deflectionUmPerN(at, E);
      assertThat(next).isPositive().isLessThan(last);
      last = next;
    }
    // Nothing bends in front of the force.
    assertThat(STEPPED.stresses(2))
        .extracting(Stress::part)
        .containsExactly(Part.NECK, Part.CONE, Part.SHANK);
  }

  @Test
  void refusesWhatIsNoBeam() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new ToolBeam(List.of()))
        .withMessageContaining("one segment");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new ToolBeam(List.of(FLUTE, CONE)))
        .withMessageContaining("start of a segment is 4.0");
    assertThatIllegalArgumentException().isThrownBy(() -> new ToolBeam(List.of(NECK)));
    assertThatIllegalArgumentException().isThrownBy(() -> new Segment(Part.NECK, 1, 1, 1, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> new Segment(Part.NECK, -1, 1, 1, 1));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Segment(Part.NECK, 1, Double.POSITIVE_INFINITY, 1, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> new Segment(Part.NECK, 0, 1, 0, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> new Segment(Part.NECK, 0, 1, 1, 0));
    assertThatIllegalArgumentException().isThrownBy(() -> STEPPED.deflectionUmPerN(20, E));
    assertThatIllegalArgumentException().isThrownBy(() -> STEPPED.slopeRadPerN(-0.1, E));
    assertThatIllegalArgumentException().isThrownBy(() -> STEPPED.slopeRadPerN(0, 0));
    assertThatIllegalArgumentException().isThrownBy(() -> STEPPED.deflectionUmPerN(0, 0));
    assertThatIllegalArgumentException().isThrownBy(() -> STEPPED.axialGiveUmPerN(0));
  }

  private static ToolBeam randomBeam(long seed, int count) {
    Random random = new Random(seed);
    List<Segment> segments = new ArrayList<>();
    double end = 0;
    Part[] parts = Part.values();
    for (int i = 0; i < count; i++) {
      double next = end + 0.1 + 5 * random.nextDouble();
      double start = 0.1 + 3 * random.nextDouble();
      double stop = random.nextBoolean() ? start : 0.1 + 3 * random.nextDouble();
      segments.add(new Segment(parts[i % parts.length], end, next, start, stop));
      end = next;
    }
    return new ToolBeam(segments);
  }

  private static double diameterAt(Segment s, double x) {
    return s.startDiameterMm()
        + (x - s.fromMm()) * (s.endDiameterMm() - s.startDiameterMm()) / (s.toMm() - s.fromMm());
  }

  private static double sq(double value) {
    return value * value;
  }

  private static Offset<Double> withinPart(double value) {
    return within(Math.abs(value) * 1e-6);
  }

  private static double simpson(double from, double to, DoubleUnaryOperator function) {
    int n = 2000;
    double h = (to - from) / n;
    double sum = function.applyAsDouble(from) + function.applyAsDouble(to);
    for (int i = 1; i < n; i++) {
      sum += function.applyAsDouble(from + i * h) * (i % 2 == 0 ? 2 : 4);
    }
    return sum * h / 3;
  }
}

package hairline.checks.cutting;

import java.util.ArrayList;
import java.util.List;

/**
 * A tool as a stepped cantilever beam, clamped at the end of its last segment, all results for a
 * force of one newton (exact within beam theory; shear and the give of the clamp are left out).
 *
 * <p>With x from the tip, the force at x₀ and I = πd⁴/64: deflection of the tip δ = (1/E) Σ ∫ (x −
 * x₀) x/I dx, slope of the tip θ = (1/E) Σ ∫ (x − x₀)/I dx, both from x₀ to the clamp; axial give Σ
 * ∫ dx/(E A); bending stress 32 (x − x₀)/(π d³).
 *
 * @param segments from the tip to the holder, each beginning where the one before it ends
 */
public record ToolBeam(List<Segment> segments) {

  /** A part of a tool. */
  public enum Part {
    /** The fluted part. */
    FLUTE,
    /** The relieved part behind the flutes. */
    NECK,
    /** The cone between neck and shank. */
    CONE,
    /** The shank outside the holder. */
    SHANK
  }

  /**
   * A cylinder or a frustum.
   *
   * @param part the part of the tool
   * @param fromMm where it begins, from the tip
   * @param toMm where it ends, above {@code fromMm}
   * @param startDiameterMm diameter where it begins, above 0
   * @param endDiameterMm diameter where it ends, above 0
   */
  public record Segment(
      Part part, double fromMm, double toMm, double startDiameterMm, double endDiameterMm) {
    /** Checks the dimensions. */
    public Segment {
      Require.notNegative("start of a segment", fromMm);
      Require.that(
          toMm > fromMm && !Double.isInfinite(toMm),
          "end of a segment",
          toMm,
          "must lie behind its start",
          fromMm);
      Require.positive("diameter", startDiameterMm);
      Require.positive("diameter", endDiameterMm);
    }

    double diameterAtMm(double xMm) {
      double share = (xMm - fromMm) / (toMm - fromMm);
      return startDiameterMm + share * (endDiameterMm - startDiameterMm);
    }

    /** The part of this segment behind a place that lies before its end. */
    private Segment behindMm(double xMm) {
      return xMm <= fromMm ? this : new Segment(part, xMm, toMm, diameterAtMm(xMm), endDiameterMm);
    }
  }

  /**
   * The largest bending stress in a part.
   *
   * @param mPaPerN stress in MPa for a force of one newton
   * @param part the part of the tool
   * @param atMm where in it, from the tip
   */
  public record Stress(double mPaPerN, Part part, double atMm) {}

  /**
   * Checks that the segments follow each other.
   *
   * @throws IllegalArgumentException if there is none, or a gap
   */
  public ToolBeam {
    segments = List.copyOf(segments);
    if (segments.isEmpty()) {
      throw new IllegalArgumentException("a beam has one segment at least");
    }
    double endMm = 0;
    for (Segment segment : segments) {
      Require.that(
          segment.fromMm() == endMm,
          "start of a segment",
          segment.fromMm(),
          "must follow on the one before it, which ends at",
          endMm);
      endMm = segment.toMm();
    }
  }

  /** How far the tip stands out of the holder. */
  public double lengthMm() {
    return segments.get(segments.size() - 1).toMm();
  }

  /**
   * Sideways deflection of the tip in µm for a sideways force of one newton.
   *
   * @param forceAtMm where the force acts, from the tip: 0 to less than the length
   * @param youngsModulusGPa Young's modulus, above 0
   * @throws IllegalArgumentException outside these ranges
   */
  public double deflectionUmPerN(double forceAtMm, double youngsModulusGPa) {
    double sum = 0;
    for (Segment s : behind(forceAtMm)) {
      Integrals over = Integrals.of(s);
      // (x − x₀) x with x = from + u.
      double armMm = s.fromMm() - forceAtMm;
      sum += armMm * s.fromMm() * over.one + (armMm + s.fromMm()) * over.first + over.second;
    }
    // mm/N by 1000 N/mm² (GPa), times 1000 µm/mm: the thousands cancel.
    return 64 / Math.PI * sum / Require.positive("Young's modulus", youngsModulusGPa);
  }

  /**
   * Slope of the tip in radians for a sideways force of one newton.
   *
   * @param forceAtMm where the force acts, from the tip: 0 to less than the length
   * @param youngsModulusGPa Young's modulus, above 0
   * @throws IllegalArgumentException outside these ranges
   */
  public double slopeRadPerN(double forceAtMm, double youngsModulusGPa) {
    double sum = 0;
    for (Segment s : behind(forceAtMm)) {
      Integrals over = Integrals.of(s);
      sum += (s.fromMm() - forceAtMm) * over.one + over.first;
    }
    return 64 / Math.PI * sum / (1000 * Require.positive("Young's modulus", youngsModulusGPa));
  }

  /**
   * Axial give of the tip in µm for an axial force of one newton.
   *
   * @param youngsModulusGPa Young's modulus, above 0
   * @throws IllegalArgumentException outside this range
   */
  public double axialGiveUmPerN(double youngsModulusGPa) {
    double sum = 0;
    for (Segment s : segments) {
      sum += (s.toMm() - s.fromMm()) / (s.startDiameterMm() * s.endDiameterMm());
    }
    return 4 / Math.PI * sum / Require.positive("Young's modulus", youngsModulusGPa);
  }

  /**
   * The largest bending stress of each part that the force bends, for a sideways force of one
   * newton: a cylinder at its root, a cone at its root, its thin end or where 3 s (x − x₀) = d, s
   * being the diameter it gains per length.
   *
   * @param forceAtMm where the force acts, from the tip: 0 to less than the length
   * @throws IllegalArgumentException outside this range
   */
  public List<Stress> stresses(double forceAtMm) {
    List<Stress> stresses = new ArrayList<>();
    for (Segment s : behind(forceAtMm)) {
      Stress largest = stressAt(s, s.toMm(), forceAtMm);
      largest = larger(largest, stressAt(s, s.fromMm(), forceAtMm));
      double gain = (s.endDiameterMm() - s.startDiameterMm()) / (s.toMm() - s.fromMm());
      if (gain > 0) {
        double turnMm = (s.startDiameterMm() - gain * (s.fromMm() - 3 * forceAtMm)) / (2 * gain);
        if (turnMm > s.fromMm() && turnMm < s.toMm()) {
          largest = larger(largest, stressAt(s, turnMm, forceAtMm));
        }
      }
      stresses.add(largest);
    }
    return stresses;
  }

  /**
   * The largest bending stress of the tool for a sideways force of one newton.
   *
   * @param forceAtMm where the force acts, from the tip: 0 to less than the length
   * @throws IllegalArgumentException outside this range
   */
  public Stress largestStress(double forceAtMm) {
    return stresses(forceAtMm).stream()
        .max((one, other) -> Double.compare(one.mPaPerN(), other.mPaPerN()))
        .orElseThrow();
  }

  private List<Segment> behind(double forceAtMm) {
    Require.that(
        forceAtMm >= 0 && forceAtMm < lengthMm(),
        "place of the force",
        forceAtMm,
        "must lie between the tip and the holder at",
        lengthMm());
    List<Segment> behind = new ArrayList<>(segments.size());
    for (Segment segment : segments) {
      if (segment.toMm() > forceAtMm) {
        behind.add(segment.behindMm(forceAtMm));
      }
    }
    return behind;
  }

  private static Stress stressAt(Segment s, double xMm, double forceAtMm) {
    double d = s.diameterAtMm(xMm);
    return new Stress(32 * (xMm - forceAtMm) / (Math.PI * d * d * d), s.part(), xMm);
  }

  private static Stress larger(Stress a, Stress b) {
    return b.mPaPerN() > a.mPaPerN() ? b : a;
  }

  /**
   * ∫ du/d⁴, ∫ u du/d⁴ and ∫ u² du/d⁴ over a segment, u from its start. These are the closed forms
   * of the frustum with the powers of its slope cancelled out, so that they hold for a cylinder as
   * well and lose no digits on a slender cone.
   */
  private record Integrals(double one, double first, double second) {
    static Integrals of(Segment s) {
      double length = s.toMm() - s.fromMm();
      double a = s.startDiameterMm();
      double b = s.endDiameterMm();
      double bCubed = b * b * b;
      return new Integrals(
          length * (a * a + a * b + b * b) / (3 * a * a * a * bCubed),
          length * length * (2 * a + b) / (6 * a * a * bCubed),
          length * length * length / (3 * a * bCubed));
    }
  }
}

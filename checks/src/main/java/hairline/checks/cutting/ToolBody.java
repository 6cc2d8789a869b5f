package hairline.checks.cutting;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * The body of a tool between its tip and the holder, in the words of ISO 13399.
 *
 * <p>Conventions: the fluted part counts as a cylinder of 0.8 D over the cutting length (from
 * memory: Kops and Vo, CIRP Ann. 39 (1990) 93–96), or of the neck's diameter where that is smaller.
 * Without a neck, flute, cone and shank follow each other, and the cone begins at the diameter that
 * the flute counts with; without a cone there is a plain shoulder.
 *
 * @param diameterMm cutting diameter DC, above 0
 * @param cuttingLengthMm cutting length APMX, above 0
 * @param neck the relieved part behind the flutes
 * @param taperLengthMm length of the cone before the shank, 0 or more; 0 is a plain shoulder
 * @param shank the cylinder from the cone to the holder
 */
public record ToolBody(
    double diameterMm,
    double cuttingLengthMm,
    Optional<Neck> neck,
    double taperLengthMm,
    Shank shank) {

  /** Diameter of the fluted part in bending, as a part of the cutting diameter. */
  public static final double FLUTE_SHARE = 0.8;

  /**
   * The relieved part behind the flutes.
   *
   * @param diameterMm its diameter DN, above 0
   * @param lengthMm how far it reaches from the tip, flutes included (LU), at least the cutting
   *     length
   */
  public record Neck(double diameterMm, double lengthMm) {
    /** Checks both. */
    public Neck {
      Require.positive("neck diameter", diameterMm);
      Require.positive("neck length", lengthMm);
    }
  }

  /**
   * The cylinder from the cone to the holder.
   *
   * @param diameterMm its diameter DMM, above 0
   * @param lengthMm how much of it stands out of the holder, 0 or more
   */
  public record Shank(double diameterMm, double lengthMm) {
    /** Checks both. */
    public Shank {
      Require.positive("shank diameter", diameterMm);
      Require.notNegative("shank length", lengthMm);
    }
  }

  /**
   * Checks the dimensions.
   *
   * @throws IllegalArgumentException outside the ranges given, or if the neck ends before the
   *     cutting length
   */
  public ToolBody {
    Require.positive("diameter", diameterMm);
    Require.positive("cutting length", cuttingLengthMm);
    Require.notNegative("taper length", taperLengthMm);
    neck.ifPresent(
        n ->
            Require.that(
                n.lengthMm() >= cuttingLengthMm,
                "neck length",
                n.lengthMm(),
                "must reach the cutting length " + cuttingLengthMm + " at least"));
  }

  /** The tool as a stepped beam. */
  public ToolBeam beam() {
    double core = FLUTE_SHARE * diameterMm;
    double fluteMm = neck.map(n -> Math.min(core, n.diameterMm())).orElse(core);
    double behindFluteMm = neck.map(Neck::diameterMm).orElse(fluteMm);
    double neckEndMm = neck.map(Neck::lengthMm).orElse(cuttingLengthMm);
    double coneEndMm = neckEndMm + taperLengthMm;
    List<ToolBeam.Segment> segments = new ArrayList<>();
    add(segments, ToolBeam.Part.FLUTE, 0, cuttingLengthMm, fluteMm, fluteMm);
    add(segments, ToolBeam.Part.NECK, cuttingLengthMm, neckEndMm, behindFluteMm, behindFluteMm);
    add(segments, ToolBeam.Part.CONE, neckEndMm, coneEndMm, behindFluteMm, shank.diameterMm());
    add(
        segments,
        ToolBeam.Part.SHANK,
        coneEndMm,
        coneEndMm + shank.lengthMm(),
        shank.diameterMm(),
        shank.diameterMm());
    return new ToolBeam(segments);
  }

  /**
   * Where the cutting force acts, in mm from the tip: at half the axial depth. Only the cutting
   * length cuts, however deep the pass.
   *
   * @param depthMm axial depth a_p, above 0
   * @throws IllegalArgumentException outside this range
   */
  public double forceAtMm(double depthMm) {
    return Math.min(Require.positive("axial depth", depthMm), cuttingLengthMm) / 2;
  }

  /**
   * The longest neck, up to the present one, with which an error stays within what is allowed; all
   * else unchanged. Nothing if the tool has no neck, or if even a neck as short as the cutting
   * length would not do.
   *
   * @param errorUm the error of a tool as a beam; must not fall as the neck grows
   * @param allowedUm the largest error allowed
   * @return neck length from the tip in mm, flutes included
   */
  public OptionalDouble longestNeckMm(ToDoubleFunction<ToolBeam> errorUm, double allowedUm) {
    if (neck.isEmpty() || errorUm.applyAsDouble(withNeckLength(cuttingLengthMm)) > allowedUm) {
      return OptionalDouble.empty();
    }
    double does = cuttingLengthMm;
    double fails = neck.get().lengthMm();
    if (errorUm.applyAsDouble(withNeckLength(fails)) <= allowedUm) {
      return OptionalDouble.of(fails);
    }
    // 60 halvings bring any length below the last digit of a double.
    for (int i = 0; i < 60; i++) {
      double middle = (does + fails) / 2;
      if (errorUm.applyAsDouble(withNeckLength(middle)) <= allowedUm) {
        does = middle;
      } else {
        fails = middle;
      }
    }
    return OptionalDouble.of(does);
  }

  private ToolBeam withNeckLength(double lengthMm) {
    return new ToolBody(
            diameterMm,
            cuttingLengthMm,
            neck.map(n -> new Neck(n.diameterMm(), lengthMm)),
            taperLengthMm,
            shank)
        .beam();
  }

  private static void add(
      List<ToolBeam.Segment> segments,
      ToolBeam.Part part,
      double fromMm,
      double toMm,
      double startDiameterMm,
      double endDiameterMm) {
    if (toMm > fromMm) {
      segments.add(new ToolBeam.Segment(part, fromMm, toMm, startDiameterMm, endDiameterMm));
    }
  }
}

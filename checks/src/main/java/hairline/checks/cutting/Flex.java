package hairline.checks.cutting;

import org.jspecify.annotations.Nullable;

/**
 * What a cutting force does to a tool and, through it, to the part.
 *
 * <p>Sideways flex moves a wall: climb milling pushes the tool off it (stock is left), conventional
 * milling pulls the tool in (overcut). A floor is moved only by the tilt of the end face and by
 * axial give, see {@link FloorError}.
 *
 * <p>What a force of one newton does is worked out when first asked for, and kept; so is what the
 * force does that was asked for last.
 */
public final class Flex {
  private final ToolBeam beam;
  private final Band youngsModulusGPa;
  private final double forceAtMm;
  private @Nullable Band sidewaysUmPerN;
  private @Nullable Band slopeRadPerN;
  private @Nullable Band axialUmPerN;
  private ToolBeam.@Nullable Stress stress;

  // What the last force does.
  private CuttingForce.@Nullable Cutting last;
  private @Nullable Band lastSidewaysUm;
  private @Nullable Band lastStressMPa;
  private @Nullable FloorError lastFloorError;
  private double lastFloorRadiusMm;

  /**
   * A tool under a force at one place.
   *
   * @param beam the tool
   * @param youngsModulusGPa its Young's modulus, above 0
   * @param forceAtMm where the force acts, from the tip, see {@link ToolBody#forceAtMm}
   */
  public Flex(ToolBeam beam, Band youngsModulusGPa, double forceAtMm) {
    this.beam = beam;
    this.youngsModulusGPa = youngsModulusGPa;
    this.forceAtMm = forceAtMm;
  }

  /** The tool. */
  public ToolBeam beam() {
    return beam;
  }

  /** Its Young's modulus. */
  public Band youngsModulusGPa() {
    return youngsModulusGPa;
  }

  /** Where the force acts, from the tip. */
  public double forceAtMm() {
    return forceAtMm;
  }

  // The force of a cut is one object, whoever asks what it does.
  @SuppressWarnings("ReferenceEquality")
  private void take(CuttingForce.Cutting force) {
    if (force != last) {
      last = force;
      lastSidewaysUm = null;
      lastStressMPa = null;
      lastFloorError = null;
    }
  }

  /** Sideways flex of the tip in µm, on a wall the error. */
  public Band sidewaysUm(CuttingForce.Cutting force) {
    take(force);
    Band flexUm = lastSidewaysUm;
    if (flexUm == null) {
      Band known = sidewaysUmPerN;
      if (known == null) {
        known = youngsModulusGPa.map(gPa -> beam.deflectionUmPerN(forceAtMm, gPa));
        sidewaysUmPerN = known;
      }
      flexUm = known.times(force.tangentialN());
      lastSidewaysUm = flexUm;
    }
    return flexUm;
  }

  /**
   * What the floor suffers.
   *
   * @param force the force on the tool
   * @param floorRadiusMm radius of the flat part of the end face, 0 or more; see {@link
   *     EndMill#floorRadiusMm()}
   */
  public FloorError floorError(CuttingForce.Cutting force, double floorRadiusMm) {
    Require.notNegative("radius of the end face", floorRadiusMm);
    take(force);
    FloorError known = lastFloorError;
    if (known == null || lastFloorRadiusMm != floorRadiusMm) {
      known = reckoned(force, floorRadiusMm);
      lastFloorError = known;
      lastFloorRadiusMm = floorRadiusMm;
    }
    return known;
  }

  private FloorError reckoned(CuttingForce.Cutting force, double floorRadiusMm) {
    Band slope = slopeRadPerN;
    Band axial = axialUmPerN;
    if (slope == null || axial == null) {
      slope = youngsModulusGPa.map(gPa -> beam.slopeRadPerN(forceAtMm, gPa));
      axial = youngsModulusGPa.map(beam::axialGiveUmPerN);
      slopeRadPerN = slope;
      axialUmPerN = axial;
    }
    Band digsUm = slope.map(rad -> rad * floorRadiusMm * 1000).times(force.tangentialN());
    Band liftsUm = axial.times(force.axialN());
    return new FloorError(digsUm, liftsUm);
  }

  /** The largest bending stress for a force of one newton, and where it is. */
  public ToolBeam.Stress largestStress() {
    ToolBeam.Stress known = stress;
    if (known == null) {
      known = beam.largestStress(forceAtMm);
      stress = known;
    }
    return known;
  }

  /** The largest bending stress in MPa; {@link #largestStress} says where it is. */
  public Band stressMPa(CuttingForce.Cutting force) {
    take(force);
    Band known = lastStressMPa;
    if (known == null) {
      known = force.tangentialN().scale(largestStress().mPaPerN());
      lastStressMPa = known;
    }
    return known;
  }
}

package hairline.checks.cutting;

/**
 * What a cutting force does to a tool and, through it, to the part.
 *
 * <p>Sideways flex moves a wall: climb milling pushes the tool off it (stock is left), conventional
 * milling pulls the tool in (overcut). A floor is moved only by the tilt of the end face and by
 * axial give, see {@link FloorError}.
 *
 * @param beam the tool
 * @param youngsModulusGPa its Young's modulus, above 0
 * @param forceAtMm where the force acts, from the tip, see {@link ToolBody#forceAtMm}
 */
public record Flex(ToolBeam beam, Band youngsModulusGPa, double forceAtMm) {

  /** Sideways flex of the tip in µm, on a wall the error. */
  public Band sidewaysUm(CuttingForce.Cutting force) {
    return youngsModulusGPa
        .map(gPa -> beam.deflectionUmPerN(forceAtMm, gPa))
        .times(force.tangentialN());
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
    Band digsUm =
        youngsModulusGPa
            .map(gPa -> beam.slopeRadPerN(forceAtMm, gPa) * floorRadiusMm * 1000)
            .times(force.tangentialN());
    Band liftsUm = youngsModulusGPa.map(beam::axialGiveUmPerN).times(force.axialN());
    return new FloorError(digsUm, liftsUm);
  }

  /** The largest bending stress in MPa; {@link ToolBeam#largestStress} says where it is. */
  public Band stressMPa(CuttingForce.Cutting force) {
    return force.tangentialN().scale(beam.largestStress(forceAtMm).mPaPerN());
  }
}

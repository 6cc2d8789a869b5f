package hairline.checks.cutting;

import java.util.Optional;

/**
 * The chip that a tooth takes in a pass, and the force that goes with it.
 *
 * <p>Where the engagement is not known, {@link Engagement#slot()} is the upper bound of chip and
 * force.
 *
 * @param mill the tool
 * @param depthMm axial depth a_p, above 0
 * @param feedPerToothUm feed per tooth f_z, above 0
 * @param engagement the arc that a tooth cuts on
 */
public record ToothLoad(
    EndMill mill, double depthMm, double feedPerToothUm, Engagement engagement) {

  /**
   * Checks the figures.
   *
   * @throws IllegalArgumentException outside the ranges given
   */
  public ToothLoad {
    Require.positive("axial depth", depthMm);
    Require.positive("feed per tooth", feedPerToothUm);
  }

  /** The largest chip thickness in µm, without runout: f_z sin φ_max sin κ. */
  public Band chipUm() {
    return mill.sinKappa(depthMm).scale(radialFeedUm());
  }

  /**
   * The largest chip thickness in µm of the most loaded tooth, see {@link Runout}. Where the runout
   * is not known, it is counted as none.
   */
  public Band chipWithRunoutUm() {
    return radialChipWithRunoutUm().times(mill.sinKappa(depthMm));
  }

  /**
   * f_z sin φ_max in µm: the chip across the axis, to which runout compares (see {@link
   * Runout#leavesToothIdle}).
   */
  public double radialFeedUm() {
    return feedPerToothUm * engagement.maxSine();
  }

  /**
   * The minimum chip thickness in µm, where the edge radius is known.
   *
   * @param ratio minimum chip thickness over edge radius
   */
  public Optional<Band> minimumChipUm(Band ratio) {
    return mill.edgeRadiusUm().map(edge -> MinimumChip.um(ratio, edge));
  }

  /**
   * The feed per tooth in µm from which on the largest chip, runout counted in, reaches a
   * thickness; all at their typical values.
   *
   * @param chipUm the chip thickness wanted, 0 or more
   * @throws IllegalArgumentException outside this range
   */
  public double feedPerToothForChipUm(double chipUm) {
    Require.notNegative("chip thickness", chipUm);
    return Runout.radialFeedForChipUm(
            chipUm / mill.sinKappa(depthMm).typical(), readingUm().typical(), mill.flutes())
        / engagement.maxSine();
  }

  /**
   * The force on the most loaded tooth where its chip is thickest.
   *
   * @param kienzle constants of the work material
   * @param minimumChipUm minimum chip thickness; where absent, ploughing cannot be told
   */
  public CuttingForce peakForce(Kienzle kienzle, Optional<Band> minimumChipUm) {
    return kienzle.force(
        radialChipWithRunoutUm(),
        depthMm,
        mill.sinKappa(depthMm),
        minimumChipUm.orElse(Band.ofExact(0)));
  }

  private Band radialChipWithRunoutUm() {
    return readingUm()
        .map(reading -> Runout.mostLoadedChipUm(radialFeedUm(), reading, mill.flutes()));
  }

  private Band readingUm() {
    return mill.runoutUm().orElse(Band.ofExact(0));
  }
}

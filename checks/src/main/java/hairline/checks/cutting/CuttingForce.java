package hairline.checks.cutting;

/** What is known of the force on the most loaded tooth. */
public sealed interface CuttingForce {

  /**
   * The edge certainly ploughs: the chip is below the minimum chip thickness over both bands. No
   * force is given, because no cutting force formula holds there.
   *
   * @param chipUm the largest chip
   * @param minimumUm the minimum chip thickness
   */
  record Ploughing(Band chipUm, Band minimumUm) implements CuttingForce {}

  /**
   * A chip forms, or may form.
   *
   * @param chipUm the largest chip, from which the force is reckoned
   * @param tangentialN the force along the cut, N
   * @param axialN the force that lifts the tool, N
   * @param range how well the formula is supported at this chip
   */
  record Cutting(Band chipUm, Band tangentialN, Band axialN, Kienzle.Range range)
      implements CuttingForce {}
}

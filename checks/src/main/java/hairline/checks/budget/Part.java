package hairline.checks.budget;

import hairline.checks.budget.Uncertainty.Contribution;
import hairline.checks.cutting.Band;

/**
 * One part of the error of a step's height. What has a sign makes the step higher where it is above
 * zero.
 */
public sealed interface Part {
  /** Where it comes from. */
  Source source();

  /** How it was reckoned, so that the sum can be done by hand. */
  String basis();

  /** Known exactly, with its sign. */
  record Known(Source source, long pm, String basis) implements Part {}

  /**
   * Moves the height one way; added as it is.
   *
   * @param um how far, with its sign
   */
  record Drift(Source source, Band um, String basis) implements Part {}

  /**
   * Moves the height one way, and the sheet does not tell which; added to what is worse.
   *
   * @param um how far, 0 or more
   */
  record DriftEitherWay(Source source, double um, String basis) implements Part {
    public DriftEitherWay {
      Uncertainty.requireNotNegative("drift", um);
    }
  }

  /**
   * Random; combined in quadrature.
   *
   * @param contribution its standard uncertainty in µm and how it enters the height
   */
  record Random(Source source, Contribution contribution, String basis) implements Part {}
}

package hairline.checks.budget;

import static hairline.checks.budget.Budgets.drift;
import static hairline.checks.budget.Budgets.known;
import static hairline.checks.budget.Budgets.random;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class StepBudgetTest {

  /**
   * A step of 4 µm ± 0.5 µm under a gauge of 0.12 µm, by hand, in µm:
   *
   * <pre>
   * rounding            stored 4.0, declared 4.0                       0
   * growth              lower level less upper level                  +0.0500
   * tilt                lower level less upper level                  -0.0300
   * smallest step 0.3   half of it as a rectangle: 0.15/√3 = 0.086603
   *                     at two levels: × √2                            0.122474
   * repeatability 0.4   0.4/4 = 0.1, at two levels: × √2               0.141421
   * setting 0.4         one tool on both levels                        0
   * environment         0.5 K × 11.5 µm/(m K) × 0.06 m = 0.345
   *                     0.345/√2                                       0.243952
   *
   * u² = 0.015000 + 0.020000 + 0 + 0.0595125 = 0.0945125,  u = 0.307429
   * P = |0.05 - 0.03| + 2 × 0.307429 = 0.634858
   * T - U = 0.38, T + U = 0.62: P is above both
   * </pre>
   */
  private static StepBudget byHand() {
    double root2 = StrictMath.sqrt(2);
    return Budgets.of(
        0.5,
        0.12,
        known(Source.ROUNDING, 0),
        drift(Source.GROWTH, 0.05, 0.05, 0.05),
        drift(Source.TILT, -0.03, -0.03, -0.03),
        random(Source.SMALLEST_STEP, Uncertainty.ofRectangle(0.15), root2),
        random(Source.REPEATABILITY, 0.4 / 4, root2),
        random(Source.SETTING, 0.4 / 2, 0),
        random(Source.ENVIRONMENT, 0.5 * 11.5 * 0.06 / root2, 1));
  }

  @Test
  void oneBudgetByHand() {
    StepBudget budget = byHand();
    assertThat(budget.driftUm()).isCloseTo(0.02, within(1e-12));
    assertThat(budget.standardUncertaintyUm()).isCloseTo(0.3074, within(5e-5));
    assertThat(budget.errorUm().typical()).isCloseTo(0.6349, within(5e-5));
    assertThat(budget.errorUm().isExact()).isTrue();
    assertThat(budget.decision()).isEqualTo(Decision.FAILS);
  }

  /**
   * The same: environment halved u² = 0.0945125 - 0.75 × 0.0595125 = 0.0498781, P = 0.02 + 0.446668
   * = 0.466668, gained 0.168190; growth halved |0.025 - 0.03| = 0.005, gained 0.015; tilt halved
   * 0.05 - 0.015 = 0.035, lost 0.015. Share of the environment 2 × 0.0595125 / 0.307429 = 0.387162
   * of 0.634858.
   */
  @Test
  void whatEachPartWeighs() {
    List<StepBudget.Weighed> weighed = byHand().weighed();
    assertThat(weighed.stream().map(w -> w.part().source()))
        .containsExactly(
            Source.ENVIRONMENT,
            Source.REPEATABILITY,
            Source.SMALLEST_STEP,
            Source.GROWTH,
            Source.TILT,
            Source.ROUNDING,
            Source.SETTING);
    StepBudget.Weighed environment = weighed.get(0);
    assertThat(environment.um()).isCloseTo(0.4879, within(5e-5));
    assertThat(environment.shareOfError()).isCloseTo(0.387162 / 0.634858, within(1e-5));
    assertThat(environment.halvingGainsUm()).isCloseTo(0.1682, within(5e-5));
    StepBudget.Weighed growth = weighed.get(3);
    assertThat(growth.um()).isEqualTo(0.05);
    assertThat(growth.halvingGainsUm()).isCloseTo(0.015, within(1e-12));
    StepBudget.Weighed tilt = weighed.get(4);
    assertThat(tilt.um()).isEqualTo(-0.03);
    assertThat(tilt.shareOfError()).isNegative();
    assertThat(tilt.halvingGainsUm()).isCloseTo(-0.015, within(1e-12));
    assertThat(weighed.stream().mapToDouble(StepBudget.Weighed::shareOfError).sum())
        .isCloseTo(1, within(1e-12));
  }

  @Test
  void aDriftOfUnknownSignAddsToWhatIsWorse() {
    Part reversal = new Part.DriftEitherWay(Source.REVERSAL, 0.5, "");
    assertThat(Budgets.of(1, 0, reversal, known(Source.ROUNDING, -200_000)).errorUm().typical())
        .isCloseTo(0.7, within(1e-12));
    assertThat(Budgets.of(1, 0, reversal, known(Source.ROUNDING, 200_000)).errorUm().typical())
        .isCloseTo(0.7, within(1e-12));
  }

  @Test
  void bandsOfDriftsAddUpEndByEndBeforeTheSignIsDropped() {
    StepBudget budget =
        Budgets.of(0.5, 0.1, drift(Source.GROWTH, -0.1, 0.1, 0.4), drift(Source.TILT, 0, 0.1, 0.3));
    assertThat(budget.errorUm().low()).isZero();
    assertThat(budget.errorUm().typical()).isCloseTo(0.2, within(1e-12));
    assertThat(budget.errorUm().high()).isCloseTo(0.7, within(1e-12));
    StepBudget negative = Budgets.of(0.5, 0.1, drift(Source.GROWTH, -0.7, -0.65, -0.3));
    assertThat(negative.errorUm().low()).isEqualTo(0.3);
    assertThat(negative.decision()).isEqualTo(Decision.FAILS);
    assertThat(negative.decisionAtLeast()).isEqualTo(Decision.HOLDS);
  }

  @Test
  void withAPartMissingItFailsOrIsNotDecided() {
    StepBudget holds =
        Budgets.of(1, 0.1, known(Source.ROUNDING, 100_000), random(Source.SETTING, 0.1, 1));
    assertThat(holds.decision()).isEqualTo(Decision.HOLDS);
    assertThat(Budgets.without(holds, Source.SETTING).decision()).isEqualTo(Decision.UNDECIDED);
    StepBudget fails =
        Budgets.of(1, 0.1, known(Source.ROUNDING, 1_200_000), random(Source.SETTING, 0.1, 1));
    assertThat(Budgets.without(fails, Source.SETTING).decision()).isEqualTo(Decision.FAILS);
  }

  @Test
  void withoutGaugeOrToleranceNothingIsDecided() {
    List<Part> parts = List.of(known(Source.ROUNDING, 9_000_000));
    OptionalDouble none = OptionalDouble.empty();
    OptionalDouble one = OptionalDouble.of(1);
    assertThat(new StepBudget(Budgets.STEP, parts, List.of(), one, none).decision())
        .isEqualTo(Decision.UNDECIDED);
    assertThat(new StepBudget(Budgets.STEP, parts, List.of(), none, one).decision())
        .isEqualTo(Decision.UNDECIDED);
    assertThat(new StepBudget(Budgets.STEP, parts, List.of(), one, one).decision())
        .isEqualTo(Decision.FAILS);
  }

  @Test
  void nothingWeighsNothing() {
    StepBudget budget = Budgets.of(1, 0, known(Source.ROUNDING, 0));
    assertThat(budget.errorUm().typical()).isZero();
    assertThat(budget.weighed().get(0).shareOfError()).isZero();
    assertThat(budget.decision()).isEqualTo(Decision.HOLDS);
  }

  @Test
  void refusesAPartTwice() {
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> Budgets.of(1, 0, known(Source.ROUNDING, 1), random(Source.ROUNDING, 1, 1)))
        .withMessageContaining("stands twice");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Part.DriftEitherWay(Source.REVERSAL, -1, ""));
  }

  @Test
  void aToleranceOrGuardBelowZeroIsRefused() {
    assertThatIllegalArgumentException().isThrownBy(() -> Budgets.of(-0.1, 0.1));
    assertThatIllegalArgumentException().isThrownBy(() -> Budgets.of(0.1, -0.1));
  }

  @Test
  void theStoredHeightIsTheUpperLevelLessTheLower() {
    assertThat(Budgets.STEP.heightPm()).isEqualTo(8_000_000 - 4_000_000);
  }

  @Test
  void eachSourceHasANameForProgramsAndOneForPeople() {
    assertThat(Source.GROWTH_BOUNDS.key()).isEqualTo("growthBounds");
    assertThat(Source.GROWTH_BOUNDS.words()).isEqualTo("growth in doubt");
  }
}

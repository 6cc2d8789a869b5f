package hairline.checks.budget;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.budget.Uncertainty.Contribution;
import java.util.List;
import org.junit.jupiter.api.Test;

class UncertaintyTest {

  /**
   * GUM (JCGM 100:2008) annex H.1, end-gauge calibration, in nm. Inputs as the GUM_H1 page of the
   * GTC library's documentation gives them: standard 75 nm at k = 3, 18 degrees of freedom; five
   * differences of s 13 nm, pooled from 25 observations; comparator 0.01 µm at 95 % with 5 degrees
   * of freedom (t 2.57) and 0.02 µm at three sigma, 8; difference of expansion ±1e-6/°C at −0.1 °C,
   * 50; difference of temperature ±0.05 °C at 11.5e-6/°C, 2; both rectangular; length 50.000623 mm.
   */
  private static List<Contribution> endGauge() {
    double lengthNm = 50.000623e6;
    return List.of(
        new Contribution(75 / 3.0, 1, 18),
        new Contribution(13 / StrictMath.sqrt(5), 1, 24),
        new Contribution(10 / 2.57, 1, 5),
        new Contribution(20 / 3.0, 1, 8),
        new Contribution(Uncertainty.ofRectangle(1e-6), -lengthNm * -0.1, 50),
        new Contribution(Uncertainty.ofRectangle(0.05), -lengthNm * 11.5e-6, 2));
  }

  /** Result 31.66 nm and 16.75 degrees of freedom, which the GUM prints as 32 and 16. */
  @Test
  void endGaugeOfTheGum() {
    assertThat(Uncertainty.combined(endGauge())).isCloseTo(31.66, within(0.01));
    double freedom = Uncertainty.effectiveDegreesOfFreedom(endGauge());
    assertThat(freedom).isCloseTo(16.75, within(0.01));
    // GUM table G.2: t for 99 % and 16 degrees of freedom is 2.92; the GUM prints 93 nm.
    assertThat(2.92 * Uncertainty.combined(endGauge())).isCloseTo(92.5, within(0.1));
  }

  @Test
  void degreesOfFreedom() {
    // Two alike: (2 u²)² / (2 u⁴ / ν) = 2 ν.
    assertThat(
            Uncertainty.effectiveDegreesOfFreedom(
                List.of(new Contribution(3, 1, 4), new Contribution(1, -3, 4))))
        .isCloseTo(8, within(1e-12));
    assertThat(
            Uncertainty.effectiveDegreesOfFreedom(
                List.of(new Contribution(1, 1, 4), new Contribution(0, 1, 1))))
        .isCloseTo(4, within(1e-12));
    assertThat(Uncertainty.effectiveDegreesOfFreedom(List.of(Contribution.of(1)))).isInfinite();
    assertThat(Uncertainty.effectiveDegreesOfFreedom(List.of())).isInfinite();
    // A fourth power of either would be no double.
    assertThat(Uncertainty.effectiveDegreesOfFreedom(List.of(new Contribution(1e-100, 1, 7))))
        .isCloseTo(7, within(1e-12));
    assertThat(Uncertainty.effectiveDegreesOfFreedom(List.of(new Contribution(1e100, 1, 7))))
        .isCloseTo(7, within(1e-12));
  }

  @Test
  void quadrature() {
    assertThat(Uncertainty.combined(List.of())).isZero();
    assertThat(Uncertainty.combined(List.of(Contribution.of(3), Contribution.of(4)))).isEqualTo(5);
    assertThat(Uncertainty.combined(List.of(new Contribution(1, -3), new Contribution(2, 2))))
        .isEqualTo(5);
  }

  /** GUM 4.3.7: a²/3 is the variance of a rectangle; here against the variance of its points. */
  @Test
  void rectangle() {
    int n = 100_000;
    double squares = 0;
    for (int i = 0; i < n; i++) {
      double x = -0.7 + 1.4 * (i + 0.5) / n;
      squares += x * x;
    }
    assertThat(Uncertainty.ofRectangle(0.7)).isCloseTo(StrictMath.sqrt(squares / n), within(1e-9));
    assertThat(Uncertainty.ofRectangle(0)).isZero();
  }

  @Test
  void refusesWhatIsNoUncertainty() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Contribution.of(-1))
        .withMessageContaining("standard uncertainty is -1.0");
    assertThatIllegalArgumentException().isThrownBy(() -> Contribution.of(Double.NaN));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Contribution.of(Double.POSITIVE_INFINITY));
    assertThatIllegalArgumentException().isThrownBy(() -> new Contribution(1, Double.NaN));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Contribution(1, 1, 0))
        .withMessageContaining("degrees of freedom are 0.0");
    assertThatIllegalArgumentException().isThrownBy(() -> Uncertainty.ofRectangle(-1));
  }
}

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
   * GTC library's documentation gives them: standard 75 nm at k = 3; five differences of s 13 nm;
   * comparator 0.01 µm at 95 % with 5 degrees of freedom (t 2.57) and 0.02 µm at three sigma;
   * difference of expansion ±1e-6/°C at −0.1 °C; difference of temperature ±0.05 °C at 11.5e-6/°C,
   * both rectangular; length 50.000623 mm. Result 31.66 nm, which the GUM prints as 32.
   */
  @Test
  void endGaugeOfTheGum() {
    double lengthNm = 50.000623e6;
    double combined =
        Uncertainty.combined(
            List.of(
                Contribution.of(75 / 3.0),
                Contribution.of(13 / StrictMath.sqrt(5)),
                Contribution.of(10 / 2.57),
                Contribution.of(20 / 3.0),
                new Contribution(Uncertainty.ofRectangle(1e-6), -lengthNm * -0.1),
                new Contribution(Uncertainty.ofRectangle(0.05), -lengthNm * 11.5e-6)));
    assertThat(combined).isCloseTo(31.66, within(0.01));
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
    assertThatIllegalArgumentException().isThrownBy(() -> Uncertainty.ofRectangle(-1));
  }
}

package hairline.checks.finding;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Figures as messages print them. */
class QuantitiesTest {
  @Test
  void aFigureJustBeyondItsLimitDoesNotReadLikeIt() {
    assertThat(Quantities.apart(12.00166, 12)).isEqualTo("12.002");
    assertThat(Quantities.apart(39.99876, 40)).isEqualTo("39.999");
    assertThat(Quantities.apart(40.0000012, 40)).isEqualTo("40.000001");
    assertThat(Quantities.um(1.32005, 1.32)).isEqualTo("1.3201 µm");
  }

  @Test
  void figuresFarApartOrEqualHaveFourDigits() {
    assertThat(Quantities.apart(0.44833333, 0.45)).isEqualTo("0.4483");
    assertThat(Quantities.apart(2.0 / 3, 2.0 / 3)).isEqualTo("0.6667");
    assertThat(Quantities.apart(Double.POSITIVE_INFINITY, 1)).isEqualTo("unknown");
  }
}

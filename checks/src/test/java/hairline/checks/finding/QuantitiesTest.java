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

  @Test
  void figuresThatDifferInTheTwelfthDigitReadAlike() {
    assertThat(Quantities.apart(1.0000000001, 1)).isEqualTo("1.0000000001");
    assertThat(Quantities.apart(1.00000000001, 1)).isEqualTo("1");
  }

  @Test
  void lengthsAreExactWhereTheyAreStoredAndHaveFourDigitsWhereTheyAreComputed() {
    assertThat(Quantities.um(400_000L)).isEqualTo("0.4 µm");
    assertThat(Quantities.mm(1_204_500_000L)).isEqualTo("1.2045 mm");
    assertThat(Quantities.mm(-1L)).isEqualTo("-0.000000001 mm");
    assertThat(Quantities.um(0.31254)).isEqualTo("0.3125 µm");
    assertThat(Quantities.mm(0.31255)).isEqualTo("0.3126 mm");
    assertThat(Quantities.um(0.0)).isEqualTo("0 µm");
  }

  @Test
  void speedsFeedsAndTimesBearTheirUnits() {
    assertThat(Quantities.rpm(30_000)).isEqualTo("30000 rpm");
    assertThat(Quantities.feed(134.678)).isEqualTo("134.68 mm/min");
    assertThat(Quantities.time(59.94)).isEqualTo("59.9 s");
    assertThat(Quantities.time(60)).isEqualTo("1 min");
    assertThat(Quantities.time(-90)).isEqualTo("-1.5 min");
  }

  @Test
  void ofALevelTheNextLowerAndItsWordAreKnown() {
    assertThat(Level.ERROR.lower()).isEqualTo(Level.WARNING);
    assertThat(Level.WARNING.lower()).isEqualTo(Level.NOTE);
    assertThat(Level.NOTE.lower()).isEqualTo(Level.NOTE);
    assertThat(Level.WARNING.word()).isEqualTo("warning");
  }
}

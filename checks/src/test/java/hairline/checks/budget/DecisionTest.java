package hairline.checks.budget;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DecisionTest {

  /**
   * ISO 14253-1 (from memory): 2.000 mm ± 0.005 mm with U 0.001 mm is accepted from 1.996 to 2.004
   * and rejected outside 1.994 to 2.006. In µm.
   */
  @ParameterizedTest
  @CsvSource({
    "2000, HOLDS",
    "1996, HOLDS",
    "2004, HOLDS",
    "1995.999, UNDECIDED",
    "2004.001, UNDECIDED",
    "1994, UNDECIDED",
    "2006, UNDECIDED",
    "1993.999, FAILS",
    "2006.001, FAILS"
  })
  void limitsAndGuardBand(double measured, Decision expected) {
    assertThat(Decision.ofValue(measured, 1995, 2005, 1)).isEqualTo(expected);
  }

  @ParameterizedTest
  @CsvSource({
    "0.7, 1, 0.3, HOLDS", // 1 − 0.3 is 0.7 and 0.1 + 0.2 is 0.3, whatever binary fractions say
    "0.700001, 1, 0.3, UNDECIDED",
    "1.3, 1, 0.3, UNDECIDED",
    "1.300001, 1, 0.3, FAILS",
    "0.3, 0.1, 0.2, UNDECIDED",
    "0.300001, 0.1, 0.2, FAILS",
    "0, 0.5, 0.6, UNDECIDED",
    "0, 0.5, 0.5, HOLDS",
    "0.5, 0.5, 0, HOLDS",
    "0.500001, 0.5, 0, FAILS"
  })
  void errorAgainstTolerance(double error, double tolerance, double guard, Decision expected) {
    assertThat(Decision.ofError(error, tolerance, guard)).isEqualTo(expected);
  }

  @Test
  void limitsMayCoincideOrBeOpen() {
    assertThat(Decision.ofValue(3, 3, 3, 0)).isEqualTo(Decision.HOLDS);
    assertThat(Decision.ofValue(3.1, 3, 3, 0)).isEqualTo(Decision.FAILS);
    assertThat(Decision.ofValue(3, 1, Double.POSITIVE_INFINITY, 1)).isEqualTo(Decision.HOLDS);
    assertThat(Decision.ofValue(1.5, 1, Double.POSITIVE_INFINITY, 1)).isEqualTo(Decision.UNDECIDED);
  }

  @Test
  void aMissingPartNeverHolds() {
    assertThat(Decision.HOLDS.withPartMissing()).isEqualTo(Decision.UNDECIDED);
    assertThat(Decision.UNDECIDED.withPartMissing()).isEqualTo(Decision.UNDECIDED);
    assertThat(Decision.FAILS.withPartMissing()).isEqualTo(Decision.FAILS);
  }

  @Test
  void refusesWhatIsNoTolerance() {
    assertThatIllegalArgumentException().isThrownBy(() -> Decision.ofError(-1, 1, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> Decision.ofError(1, -1, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> Decision.ofError(1, 1, -1));
    assertThatIllegalArgumentException().isThrownBy(() -> Decision.ofValue(1, 2, 1, 0));
    assertThatIllegalArgumentException().isThrownBy(() -> Decision.ofValue(Double.NaN, 1, 2, 0));
  }
}

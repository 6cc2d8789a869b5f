package hairline.checks.cutting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CuspTest {

  // Recomputed independently from R − √(R² − (s/2)²).
  @ParameterizedTest
  @CsvSource({"0.25, 0.02, 0.20008", "3, 0.5, 10.4348", "1, 2, 1000", "1, 0, 0"})
  void workedExamples(double radius, double stepover, double um) {
    assertThat(Cusp.heightUm(radius, stepover)).isCloseTo(um, within(um < 1 ? 5e-6 : 5e-5));
  }

  @Property
  void stepoverIsFoundBackFromHeight(
      @ForAll @Scale(4) @DoubleRange(min = 0.01, max = 10) double radius,
      @ForAll @Scale(4) @DoubleRange(min = 0.001, max = 0.99) double share) {
    double stepover = 2 * radius * share;
    double um = Cusp.heightUm(radius, stepover);
    assertThat(Cusp.stepoverMm(radius, um)).isCloseTo(stepover, within(1e-9 * radius));
    // The tip of the cusp lies on both circles.
    double above = radius - um / 1000;
    assertThat(StrictMath.hypot(stepover / 2, above)).isCloseTo(radius, within(1e-12 * radius));
  }

  @Test
  void noCuspAndTheHighestCusp() {
    assertThat(Cusp.stepoverMm(0.25, 0)).isZero();
    assertThat(Cusp.stepoverMm(0.25, 250)).isEqualTo(0.5);
  }

  @Test
  void passesOnASlopeLieFurtherApart() {
    assertThat(Cusp.stepoverOnSlopeMm(0.02, 0)).isEqualTo(0.02);
    assertThat(Cusp.stepoverOnSlopeMm(0.02, Math.PI / 3)).isCloseTo(0.04, within(1e-12));
  }

  @Test
  void refusesPassesThatLeaveNoCusp() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Cusp.heightUm(0.25, 0.51))
        .withMessageContaining("stepover");
    assertThatIllegalArgumentException().isThrownBy(() -> Cusp.heightUm(0.25, -0.01));
    assertThatIllegalArgumentException().isThrownBy(() -> Cusp.heightUm(0, 0));
    assertThatIllegalArgumentException().isThrownBy(() -> Cusp.stepoverMm(0.25, 251));
    assertThatIllegalArgumentException().isThrownBy(() -> Cusp.stepoverMm(0.25, -1));
    assertThatIllegalArgumentException().isThrownBy(() -> Cusp.stepoverMm(0, 0));
    assertThatIllegalArgumentException().isThrownBy(() -> Cusp.stepoverOnSlopeMm(-1, 0));
    assertThatIllegalArgumentException().isThrownBy(() -> Cusp.stepoverOnSlopeMm(1, -0.1));
    assertThatIllegalArgumentException().isThrownBy(() -> Cusp.stepoverOnSlopeMm(1, Math.PI / 2));
  }
}

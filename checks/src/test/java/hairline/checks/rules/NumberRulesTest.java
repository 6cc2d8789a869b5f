package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.finding.Finding;
import java.math.BigDecimal;
import java.math.RoundingMode;
import org.junit.jupiter.api.Test;

/** The figures of the rules of numbers, re-derived by hand from the words of their programs. */
class NumberRulesTest {
  private static final BigDecimal INCREMENT_MM = new BigDecimal("0.0001");

  /** What a control of 0.1 µm that rounds to the nearest adds to a word, in µm. */
  private static double roundingErrorUm(String wordMm) {
    BigDecimal written = new BigDecimal(wordMm);
    BigDecimal stored =
        written.divide(INCREMENT_MM).setScale(0, RoundingMode.HALF_UP).multiply(INCREMENT_MM);
    return stored.subtract(written).doubleValue() * 1000;
  }

  @Test
  void theSweepOfAnArcIsTwiceTheArcSineOfHalfItsChordOverTheRadius() {
    // limits of 165°, 195° and 345°: NISTIR 6556 section 3.5.3.1
    assertSweep("speaks.nc", sweepDeg(1.9829));
    assertThat(sweepDeg(1.9829)).isGreaterThan(165);
    assertThat(sweepDeg(1.9828)).isLessThan(165);
    assertSweep("speaks-over-half.nc", 360 - sweepDeg(1.9829));
    assertThat(360 - sweepDeg(1.9829)).isLessThan(195);
    assertThat(360 - sweepDeg(1.9828)).isGreaterThan(195);
    assertSweep("speaks-nearly-full.nc", 360 - sweepDeg(0.2610));
    assertThat(360 - sweepDeg(0.2610)).isGreaterThan(345);
    assertThat(360 - sweepDeg(0.2611)).isLessThan(345);
    assertThat(Programs.findings("arc-ill-conditioned", "silent.nc")).isEmpty();
  }

  @Test
  void theCentreMovesByWhatTheHeightOverTheChordLoses() {
    // h = √(R² − c²/4); the end half an increment further out, or across: R e / c
    Finding half = Programs.findings("arc-ill-conditioned", "speaks.nc").get(0);
    double movesMm = heightMm(1.9829) - heightMm(1.9829 + 0.00005);
    assertThat(Programs.figure(half, "centreMoves")).isCloseTo(movesMm * 1000, within(1e-9));
    assertThat(movesMm * 1000).isGreaterThan(Programs.figure(half, "allowed"));
    // 2.4 and 3.2 apart: a chord of 4, on a radius of 2.01
    Finding oblique = Programs.findings("arc-ill-conditioned", "speaks-oblique.nc").get(0);
    double obliqueMm =
        Math.sqrt(2.01 * 2.01 - 2 * 2) - Math.sqrt(2.01 * 2.01 - 2.000025 * 2.000025);
    assertThat(Programs.figure(oblique, "centreMoves")).isCloseTo(obliqueMm * 1000, within(1e-6));
    assertThat(Programs.figure(oblique, "endMoves")).isCloseTo(0.05, within(1e-12));
    assertThat(Programs.figure(oblique, "sweep"))
        .isCloseTo(Math.toDegrees(2 * Math.asin(2 / 2.01)), within(1e-9));
    Finding full = Programs.findings("arc-ill-conditioned", "speaks-nearly-full.nc").get(0);
    assertThat(Programs.figure(full, "centreMoves")).isCloseTo(0.05 * 1 / 0.261, within(1e-9));
  }

  private static void assertSweep(String file, double sweepDeg) {
    Finding finding = Programs.findings("arc-ill-conditioned", file).get(0);
    assertThat(Programs.figure(finding, "sweep")).isCloseTo(sweepDeg, within(1e-9));
  }

  private static double sweepDeg(double chordMm) {
    return Math.toDegrees(2 * Math.asin(chordMm / 2 / 1));
  }

  private static double heightMm(double chordMm) {
    return Math.sqrt(1 - chordMm * chordMm / 4);
  }

  @Test
  void aDriftIsTheSumOfWhatRoundingAdds() {
    Finding finding = Programs.findings("drift-in-incremental", "speaks-last-digit.nc").get(0);
    double twoUm = 2 * roundingErrorUm("1.00005");
    assertThat(Programs.figure(finding, "drift"))
        .isCloseTo(twoUm + roundingErrorUm("1.00009"), within(1e-9))
        .isGreaterThan(0.1);
    assertThat(twoUm + roundingErrorUm("1.0001")).isCloseTo(0.1, within(1e-9));
    assertThat(Programs.findings("drift-in-incremental", "silent-last-digit.nc")).isEmpty();
  }

  @Test
  void anInchIs25Point4Millimetres() {
    Finding finding = Programs.findings("inch-rounding", "speaks-last-digit.nc").get(0);
    assertThat(Programs.figure(finding, "error"))
        .isCloseTo(roundingErrorUm("0.01016"), within(1e-9));
    assertThat(new BigDecimal("0.0004").multiply(new BigDecimal("25.4")))
        .isEqualByComparingTo("0.01016");
    assertThat(new BigDecimal("0.0005").multiply(new BigDecimal("25.4")).remainder(INCREMENT_MM))
        .isEqualByComparingTo("0");
    assertThat(Programs.findings("inch-rounding", "silent-last-digit.nc")).isEmpty();
  }

  @Test
  void halfAnIncrementIsRoundedAwayFromZero() {
    Finding finding = Programs.findings("move-lost-in-rounding", "speaks.nc").get(0);
    assertThat(Programs.figure(finding, "moved")).isCloseTo(0.04, within(1e-9));
    assertThat(roundingErrorUm("1.00004")).isCloseTo(-0.04, within(1e-9));
    assertThat(roundingErrorUm("1.00005")).isCloseTo(0.05, within(1e-9));
    assertThat(Programs.findings("move-lost-in-rounding", "silent-last-digit.nc")).isEmpty();
  }

  @Test
  void terracesAreToldInTheOperationThatCutsTheLastOfThem() {
    Finding uneven =
        Programs.findings("step-uneven-after-rounding", "speaks-terraces-last.nc").get(0);
    assertThat(uneven.first().operation()).isEqualTo(2);
    assertThat(uneven.worst().operation()).isEqualTo(2);
  }
}

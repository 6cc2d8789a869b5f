package hairline.checks.cutting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class MinimumChipTest {

  @Test
  void productOfRatioAndEdgeRadius() {
    Band minimum = MinimumChip.um(new Band(0.2, 0.3, 0.4), new Band(1, 1.5, 2));
    assertThat(minimum.low()).isCloseTo(0.2, within(1e-12));
    assertThat(minimum.typical()).isCloseTo(0.45, within(1e-12));
    assertThat(minimum.high()).isCloseTo(0.8, within(1e-12));
  }

  @ParameterizedTest
  @EnumSource(MaterialGroup.class)
  void everyGroupHasABandAndSaysWhereItIsFrom(MaterialGroup group) {
    MinimumChip.PublishedRatio published = MinimumChip.published(group);
    assertThat(published.ratio().low()).isPositive();
    assertThat(published.ratio().isExact()).isFalse();
    assertThat(published.source()).matches("(?s).*\\d{4}.*");
  }

  @ParameterizedTest
  @EnumSource(
      value = MaterialGroup.class,
      names = {"M", "K", "S", "H"})
  void groupsWithoutAPublishedRatioSayThatNoneWasFound(MaterialGroup group) {
    MinimumChip.PublishedRatio published = MinimumChip.published(group);
    assertThat(published.ratio()).isEqualTo(new Band(0.08, 0.30, 0.63));
    assertThat(published.source()).startsWith("no published ratio was found for group " + group);
  }

  /**
   * Published single values lie in the band of their group. As quoted by third parties: AISI 1045
   * 0.22 to 0.36 (de Oliveira et al. 2015), AISI 1040 0.20 to 0.35 and Al 6082-T6 0.35 to 0.40
   * (Liu, DeVor, Kapoor 2006), Al 6061 0.23 (Malekian, Park, Jun 2012). Brass, end edge in helical
   * milling, 0.60 to 0.68: Cheng et al., IJAMT 97 (2018) 3119, abstract.
   */
  @ParameterizedTest
  @CsvSource({
    "P,0.22", "P,0.36", "P,0.20", "P,0.35", "N,0.35", "N,0.40", "N,0.23", "N,0.60", "N,0.68"
  })
  void publishedSingleValuesLieInTheBandOfTheirGroup(MaterialGroup group, double ratio) {
    Band band = MinimumChip.published(group).ratio();
    assertThat(ratio).isBetween(band.low(), band.high());
  }

  /**
   * The analytic ratio k = 1 − cos(π/4 − β/2), tan β the friction coefficient (from memory: Son,
   * Lim, Kumehara, Kim 2005), lies in every band for coefficients usual in metal cutting.
   */
  @ParameterizedTest
  @CsvSource({"0.1,0.2585", "0.3,0.1977"})
  void analyticRatioLiesInTheBands(double friction, double ratio) {
    double analytic = 1 - StrictMath.cos(Math.PI / 4 - StrictMath.atan(friction) / 2);
    assertThat(analytic).isCloseTo(ratio, within(5e-5));
    for (MaterialGroup group : MaterialGroup.values()) {
      Band band = MinimumChip.published(group).ratio();
      assertThat(analytic).isBetween(band.low(), band.high());
    }
  }

  @Test
  void refusesAnEdgeWithoutRadius() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> MinimumChip.um(Band.ofExact(0.3), Band.ofExact(0)));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> MinimumChip.um(Band.ofExact(-0.1), Band.ofExact(1)));
  }

  @Test
  void aRatioBelowZeroIsRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> MinimumChip.um(new Band(-0.1, 0.2, 0.3), Band.ofExact(1)));
    assertThat(MinimumChip.um(new Band(0, 0.2, 0.3), Band.ofExact(2)))
        .isEqualTo(new Band(0, 0.4, 0.6));
  }
}

package hairline.checks.cutting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class KienzleTest {

  private static final Kienzle C45 = Kienzle.ofExact(2220, 0.14);
  private static final Band RIGHT_ANGLE = Band.ofExact(1);
  private static final Band UNKNOWN = Band.ofExact(0);

  /** Textbook form, recomputed independently: 42CrMo4 (2500, 0.26), f 0.3, a_p 3. */
  @Test
  void turningExample() {
    Kienzle steel = Kienzle.ofExact(2500, 0.26);
    assertThat(steel.kcMPa(300).typical()).isCloseTo(3418.9, within(0.05));
    assertThat(steel.forceN(300, 3).typical()).isCloseTo(3077.0, within(0.05));
    double sine = StrictMath.sin(StrictMath.toRadians(60));
    assertThat(steel.forceN(300 * sine, 3 / sine).typical()).isCloseTo(3194.3, within(0.05));
  }

  // Recomputed independently: 2220 h^-0.14.
  @ParameterizedTest
  @CsvSource({"100, 3064", "10, 4230", "1, 5839", "1000, 2220"})
  void specificForceGrowsAsTheChipThins(double chipUm, double kc) {
    assertThat(C45.kcMPa(chipUm).typical()).isCloseTo(kc, within(0.5));
  }

  /** D 0.5, a_e 0.05, a_p 0.1, f_z 4 µm in C45, recomputed independently. */
  @Test
  void microMillingExample() {
    Engagement arc = Engagement.besideWall(0.05, 0.5);
    double mean = arc.meanChipUm(4, 1);
    assertThat(C45.kcMPa(mean).typical()).isCloseTo(5663.9, within(0.05));
    assertThat(C45.forceN(mean, 0.1).typical()).isCloseTo(0.7041, within(5e-5));
    assertThat(C45.forceN(arc.maxChipUm(4, 1), 0.1).typical()).isCloseTo(1.2398, within(5e-5));
  }

  @ParameterizedTest
  @CsvSource({
    "100, TABLED",
    "1000, TABLED",
    "99.999, EXTRAPOLATED",
    "10, EXTRAPOLATED",
    "9.999, SIZE_EFFECT",
    "0.1, SIZE_EFFECT"
  })
  void rangeOfAChip(double chipUm, Kienzle.Range range) {
    assertThat(Kienzle.Range.of(chipUm)).isEqualTo(range);
  }

  @Test
  void theForceOfAThinChipIsABand() {
    CuttingForce.Cutting force = cutting(C45.force(Band.ofExact(2.4), 0.1, RIGHT_ANGLE, UNKNOWN));
    assertThat(force.range()).isEqualTo(Kienzle.Range.SIZE_EFFECT);
    assertThat(force.tangentialN().low()).isCloseTo(1.2398, within(5e-5));
    assertThat(force.tangentialN().typical()).isCloseTo(1.2398 * 1.6, within(1e-4));
    assertThat(force.tangentialN().high()).isCloseTo(1.2398 * 2.5, within(2e-4));
    assertThat(force.axialN().low()).isCloseTo(force.tangentialN().low() * 0.2, within(1e-12));
    assertThat(force.axialN().typical())
        .isCloseTo(force.tangentialN().typical() * 0.3, within(1e-12));
    assertThat(force.axialN().high()).isCloseTo(force.tangentialN().high() * 0.5, within(1e-12));
    assertThat(force.chipUm()).isEqualTo(Band.ofExact(2.4));
  }

  @Test
  void theForceOfAThickChipIsTheFormula() {
    CuttingForce.Cutting force = cutting(C45.force(Band.ofExact(50), 0.1, RIGHT_ANGLE, UNKNOWN));
    assertThat(force.range()).isEqualTo(Kienzle.Range.EXTRAPOLATED);
    assertThat(force.tangentialN().isExact()).isTrue();
    assertThat(force.tangentialN()).isEqualTo(C45.forceN(50, 0.1));
  }

  @Test
  void belowTheMinimumChipThereIsNoForce() {
    Band minimum = new Band(1, 1.5, 2);
    assertThat(C45.force(Band.ofExact(0.99), 0.1, RIGHT_ANGLE, minimum))
        .isEqualTo(new CuttingForce.Ploughing(Band.ofExact(0.99), minimum));
    assertThat(C45.force(Band.ofExact(1), 0.1, RIGHT_ANGLE, minimum))
        .isInstanceOf(CuttingForce.Cutting.class);
    assertThat(C45.force(Band.ofExact(1.5), 0.1, Band.ofExact(0.6), minimum))
        .isInstanceOf(CuttingForce.Ploughing.class);
  }

  @Test
  void bandsOfChipAndEdgeAngleWidenTheForce() {
    Band radial = new Band(2, 3, 4);
    Band sine = new Band(0.5, 0.6, 0.8);
    CuttingForce.Cutting force = cutting(C45.force(radial, 0.01, sine, UNKNOWN));
    // F = k_c1.1 (a_p/sin κ)(f sin κ)^(1 − m) in each corner.
    assertThat(force.tangentialN().low())
        .isCloseTo(2220 * 0.0125 * StrictMath.pow(0.0016, 0.86), within(1e-9));
    assertThat(force.tangentialN().typical())
        .isCloseTo(1.6 * 2220 * (0.01 / 0.6) * StrictMath.pow(0.0018, 0.86), within(1e-9));
    assertThat(force.tangentialN().high())
        .isCloseTo(2.5 * 2220 * 0.02 * StrictMath.pow(0.002, 0.86), within(1e-9));
  }

  @Test
  void bandsOfTheConstantsWidenTheForce() {
    Kienzle wide = new Kienzle(new Band(1700, 1800, 2500), new Band(0.14, 0.26, 0.26));
    assertThat(wide.kcMPa(4).low()).isCloseTo(1700 * StrictMath.pow(0.004, -0.14), within(1e-9));
    assertThat(wide.kcMPa(4).high()).isCloseTo(2500 * StrictMath.pow(0.004, -0.26), within(1e-9));
    // Above 1 mm a larger exponent makes less force.
    assertThat(wide.kcMPa(4000).low()).isCloseTo(1700 * StrictMath.pow(4, -0.26), within(1e-9));
    assertThat(wide.kcMPa(4000).high()).isCloseTo(2500 * StrictMath.pow(4, -0.14), within(1e-9));
  }

  @Test
  void refusesConstantsThatCannotBe() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Kienzle.ofExact(2500, 0.74))
        .withMessage("exponent mc is 0.74, it must not exceed 0.5; some tables print 1 - mc");
    assertThatIllegalArgumentException().isThrownBy(() -> Kienzle.ofExact(0, 0.2));
    assertThatIllegalArgumentException().isThrownBy(() -> Kienzle.ofExact(2000, -0.1));
    assertThat(Kienzle.ofExact(2500, 0.5).mc()).isEqualTo(Band.ofExact(0.5));
    assertThatIllegalArgumentException().isThrownBy(() -> C45.kcMPa(0));
    assertThatIllegalArgumentException().isThrownBy(() -> C45.forceN(1, 0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> C45.force(Band.ofExact(0), 0.1, RIGHT_ANGLE, UNKNOWN));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> C45.force(Band.ofExact(1), 0, RIGHT_ANGLE, UNKNOWN));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> C45.force(Band.ofExact(1), 1, new Band(0, 1, 1), UNKNOWN))
        .withMessageContaining("sine of the edge angle");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> C45.force(Band.ofExact(1), 1, new Band(0.5, 1, 1.1), UNKNOWN))
        .withMessageContaining("sine of the edge angle");
  }

  @Property
  void aThickerOrWiderChipTakesMoreForce(
      @ForAll @Scale(3) @DoubleRange(min = 0.1, max = 500) double chip,
      @ForAll @Scale(3) @DoubleRange(min = 0.001, max = 5) double width,
      @ForAll @Scale(3) @DoubleRange(min = 1.001, max = 3) double more) {
    double force = C45.forceN(chip, width).typical();
    assertThat(C45.forceN(chip * more, width).typical()).isGreaterThan(force);
    assertThat(C45.forceN(chip, width * more).typical())
        .isCloseTo(force * more, within(force * 1e-12));
    // Power law: F(a h) = a^(1 − m) F(h).
    assertThat(C45.forceN(chip * more, width).typical())
        .isCloseTo(force * StrictMath.pow(more, 0.86), within(force * 1e-12));
  }

  /**
   * German textbook tables, from memory; 16MnCr5 (1800, 0.26) as quoted from Vargas et al. 2019.
   */
  @Test
  void publishedRows() {
    assertThat(PublishedForce.rows())
        .extracting(
            row -> row.group() + " " + row.material() + " " + row.kc11MPa() + " " + row.mc())
        .containsExactlyInAnyOrder(
            "P C45 2220.0 0.14",
            "P C45 1700.0 0.22",
            "P 16MnCr5 2100.0 0.26",
            "P 16MnCr5 1800.0 0.26",
            "P 42CrMo4 2500.0 0.26",
            "M X5CrNi18-10 2350.0 0.21",
            "K GJL-250 1160.0 0.26",
            "N brass 780.0 0.18",
            "N wrought aluminium 780.0 0.23",
            "S TiAl6V4 1370.0 0.21");
  }

  @Test
  void hardenedSteelHasNoPublishedPair() {
    assertThat(PublishedForce.of(MaterialGroup.H)).isEmpty();
  }

  @ParameterizedTest
  @EnumSource(
      value = MaterialGroup.class,
      names = {"H"},
      mode = EnumSource.Mode.EXCLUDE)
  void theBandOfAGroupHoldsAllItsRowsAndNamesThem(MaterialGroup group) {
    PublishedForce published = PublishedForce.of(group).orElseThrow();
    List<PublishedForce.Row> rows =
        PublishedForce.rows().stream().filter(row -> row.group() == group).toList();
    for (double chipUm : new double[] {0.5, 5, 50, 500}) {
      Band kc = published.kienzle().kcMPa(chipUm);
      for (PublishedForce.Row row : rows) {
        double single = Kienzle.ofExact(row.kc11MPa(), row.mc()).kcMPa(chipUm).typical();
        assertThat(single).isBetween(kc.low() - 1e-9, kc.high() + 1e-9);
        assertThat(published.source()).contains(row.material()).contains(row.source());
      }
    }
    assertThat(rows)
        .anyMatch(
            row ->
                row.kc11MPa() == published.kienzle().kc11MPa().typical()
                    && row.mc() == published.kienzle().mc().typical());
  }

  /** The typical steel is the one in the middle where micro tools work. */
  @Test
  void typicalSteelIsTheMedianAtFourMicrons() {
    List<Double> all =
        PublishedForce.rows().stream()
            .filter(row -> row.group() == MaterialGroup.P)
            .map(row -> Kienzle.ofExact(row.kc11MPa(), row.mc()).kcMPa(4).typical())
            .sorted()
            .toList();
    double typical = PublishedForce.of(MaterialGroup.P).orElseThrow().kienzle().kcMPa(4).typical();
    assertThat(typical).isEqualTo(all.get(all.size() / 2));
  }

  private static CuttingForce.Cutting cutting(CuttingForce force) {
    return (CuttingForce.Cutting) force;
  }
}

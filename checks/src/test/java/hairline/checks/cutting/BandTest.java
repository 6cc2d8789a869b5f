package hairline.checks.cutting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BandTest {

  @ParameterizedTest
  @CsvSource({"2,1,3", "1,3,2", "NaN,1,2", "1,NaN,2", "1,2,NaN", "-Infinity,1,2", "1,2,Infinity"})
  void refusesWhatIsNoBand(double low, double typical, double high) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Band(low, typical, high))
        .withMessageContaining("low <= typical <= high");
  }

  @Test
  void exactBandIsExact() {
    assertThat(Band.ofExact(3)).isEqualTo(new Band(3, 3, 3));
    assertThat(Band.ofExact(3).isExact()).isTrue();
    assertThat(new Band(1, 1, 2).isExact()).isFalse();
  }

  @Test
  void spanningKeepsTheTypicalValueAndSortsTheEnds() {
    assertThat(Band.spanning(5, 2, 1)).isEqualTo(new Band(1, 2, 5));
    assertThat(Band.spanning(5, 2, 4)).isEqualTo(new Band(2, 2, 5));
    assertThat(Band.spanning(1, 6, 4)).isEqualTo(new Band(1, 6, 6));
  }

  @Test
  void arithmetic() {
    Band a = new Band(1, 2, 4);
    Band b = new Band(0.5, 3, 3.5);
    assertThat(a.plus(b)).isEqualTo(new Band(1.5, 5, 7.5));
    assertThat(a.plus(1)).isEqualTo(new Band(2, 3, 5));
    assertThat(a.scale(-2)).isEqualTo(new Band(-8, -4, -2));
    assertThat(a.times(b)).isEqualTo(new Band(0.5, 6, 14));
    assertThat(a.map(x -> 1 / x)).isEqualTo(new Band(0.25, 0.5, 1));
    assertThat(a.min(b)).isEqualTo(new Band(0.5, 2, 3.5));
    assertThat(a.max(b)).isEqualTo(new Band(1, 3, 4));
  }

  @Test
  void productOfNegativesAndMapOfAHumpAreRefused() {
    Band negative = new Band(-1, 0, 1);
    Band positive = Band.ofExact(1);
    assertThatIllegalArgumentException().isThrownBy(() -> negative.times(positive));
    assertThatIllegalArgumentException().isThrownBy(() -> positive.times(negative));
    assertThatIllegalArgumentException().isThrownBy(() -> negative.map(x -> x * x));
  }

  @Test
  void comparisonOfBands() {
    Band limit = new Band(0.8, 1.0, 1.2);
    assertThat(new Band(0.5, 0.6, 0.79).below(limit)).isEqualTo(Certainty.CERTAIN);
    assertThat(new Band(0.5, 0.6, 0.80).below(limit)).isEqualTo(Certainty.LIKELY);
    assertThat(new Band(0.5, 1.0, 1.0).below(limit)).isEqualTo(Certainty.NOT_SHOWN);
    assertThat(new Band(1.21, 1.3, 1.4).above(limit)).isEqualTo(Certainty.CERTAIN);
    assertThat(new Band(1.2, 1.3, 1.4).above(limit)).isEqualTo(Certainty.LIKELY);
    assertThat(new Band(0.9, 1.0, 1.4).above(limit)).isEqualTo(Certainty.NOT_SHOWN);
    assertThat(new Band(1.2, 1.3, 1.4).atLeast(limit)).isEqualTo(Certainty.CERTAIN);
    assertThat(new Band(1.1, 1.3, 1.4).atLeast(limit)).isEqualTo(Certainty.LIKELY);
    assertThat(new Band(0.9, 1.0, 1.4).atLeast(limit)).isEqualTo(Certainty.LIKELY);
    assertThat(new Band(0.9, 0.99, 1.4).atLeast(limit)).isEqualTo(Certainty.NOT_SHOWN);
    assertThat(Band.ofExact(1).below(1.5)).isEqualTo(Certainty.CERTAIN);
    assertThat(Band.ofExact(2).above(1.5)).isEqualTo(Certainty.CERTAIN);
    assertThat(Band.ofExact(1.5).atLeast(1.5)).isEqualTo(Certainty.CERTAIN);
  }

  @Test
  void binaryFractionsDecideNothing() {
    double product = 0.1 * 3; // 0.30000000000000004
    assertThat(Band.ofExact(0.3).below(product)).isEqualTo(Certainty.NOT_SHOWN);
    assertThat(Band.ofExact(product).above(0.3)).isEqualTo(Certainty.NOT_SHOWN);
    assertThat(Band.ofExact(0.3).atLeast(product)).isEqualTo(Certainty.CERTAIN);
    assertThat(Band.ofExact(0.3).below(0.300000001)).isEqualTo(Certainty.CERTAIN);
    assertThat(Band.ofExact(1e6).below(1e6 + 1e-7)).isEqualTo(Certainty.NOT_SHOWN);
    assertThat(Band.ofExact(1e-6).below(1e-6 + 1e-15)).isEqualTo(Certainty.CERTAIN);
    assertThat(Band.ofExact(0).below(0)).isEqualTo(Certainty.NOT_SHOWN);
  }

  @Property
  void sumAndProductHoldEverySumAndProduct(
      @ForAll @Scale(6) @DoubleRange(min = 0, max = 1) double a,
      @ForAll @Scale(6) @DoubleRange(min = 0, max = 1) double b) {
    Band first = new Band(1, 2, 4);
    Band second = new Band(3, 3, 9);
    double x = first.low() + a * (first.high() - first.low());
    double y = second.low() + b * (second.high() - second.low());
    assertThat(x + y).isBetween(first.plus(second).low(), first.plus(second).high());
    assertThat(x * y).isBetween(first.times(second).low(), first.times(second).high());
  }
}

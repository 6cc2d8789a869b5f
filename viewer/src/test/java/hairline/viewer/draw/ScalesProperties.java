package hairline.viewer.draw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Size;

class ScalesProperties {
  @Property
  void aPlaceLeadsBackToItsHeight(
      @ForAll @Size(min = 2, max = 12)
          List<@LongRange(min = -1_000_000_000, max = 1000) Long> levels,
      @ForAll @DoubleRange(min = -2e9, max = 2e9) double pm) {
    HeightScale scale = HeightScale.byLevels(levels);
    assertThat(scale.pm(scale.place(pm))).isCloseTo(pm, within(1.0));
  }

  @Property
  void higherStandsHigher(
      @ForAll @Size(min = 2, max = 12) List<@LongRange(min = -1_000_000, max = 1000) Long> levels,
      @ForAll @LongRange(min = -2_000_000, max = 2_000_000) long low,
      @ForAll @LongRange(min = 1, max = 1_000_000) long more) {
    HeightScale scale = HeightScale.byLevels(levels);
    assertThat(scale.place((double) (low + more))).isGreaterThan(scale.place((double) low));
  }

  @Example
  void eachStepTakesOneUnitHoweverSmall() {
    HeightScale scale = HeightScale.byLevels(List.of(0L, -400_000_000L, -100_000L));
    assertThat(scale.place(-400e6)).isZero();
    assertThat(scale.place(-0.1e6)).isEqualTo(1);
    assertThat(scale.place(0)).isEqualTo(2);
  }

  @Property
  void numbersOnTheAxisStayShortFromMillimetresToNanometres(
      @ForAll @DoubleRange(min = -2e9, max = 2e9) double low,
      @ForAll @DoubleRange(min = 4, max = 9.5) double power) {
    AxisLabels labels = AxisLabels.between(low, low + StrictMath.pow(10, power), 6);
    assertThat(labels.ticks()).hasSizeBetween(1, 8);
    assertThat(labels.ticks()).allMatch(tick -> tick.text().length() <= 8);
    assertThat(labels.ticks())
        .allMatch(tick -> tick.pm() >= low - 1 && tick.pm() <= low + StrictMath.pow(10, power) + 1);
  }

  @Example
  void nanometresCountFromARoundHeight() {
    AxisLabels labels = AxisLabels.between(-103_000_000 - 30_000, -103_000_000 + 30_000, 6);
    assertThat(labels.unit()).isEqualTo("nm");
    assertThat(labels.from()).isEqualTo("−103 µm");
    assertThat(labels.ticks()).extracting(AxisLabels.Tick::text).contains("−20", "0", "+20");
  }

  @Property
  void zoomingKeepsThePlaceUnderThePointer(
      @ForAll @DoubleRange(min = 0.2, max = 5) double factor,
      @ForAll @DoubleRange(min = 0, max = 1) double share) {
    StripView view =
        new StripView(
            hairline.viewer.model.Along.PATH,
            hairline.viewer.model.Trace.NONE,
            false,
            10,
            30,
            -5,
            5);
    StripView next = view.zoomedAlong(factor, 10 + 20 * share);
    assertThat(next.from() + share * (next.to() - next.from()))
        .isCloseTo(10 + 20 * share, within(1e-9));
    StripView tall = view.zoomedHeight(factor, -5 + 10 * share);
    assertThat(tall.low() + share * (tall.high() - tall.low()))
        .isCloseTo(-5 + 10 * share, within(1e-9));
  }
}

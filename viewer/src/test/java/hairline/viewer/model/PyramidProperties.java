package hairline.viewer.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

/** The reduction against the plain way, which looks at every value. */
class PyramidProperties {
  @Provide
  Arbitrary<List<Long>> values() {
    Arbitrary<Long> value =
        Arbitraries.oneOf(
            Arbitraries.longs().between(-1_000_000_000_000L, 1_000_000_000_000L),
            Arbitraries.longs().between(-3, 3),
            Arbitraries.just(Pyramid.ABSENT));
    return value.list().ofMinSize(1).ofMaxSize(2500);
  }

  private static Pyramid of(List<Long> values) {
    Pyramid pyramid = new Pyramid(i -> values.get((int) i));
    values.forEach(pyramid::append);
    return pyramid;
  }

  @Property(tries = 400)
  void theRangeOfAStretchIsThatOfItsValues(
      @ForAll("values") List<Long> values,
      @ForAll @IntRange(max = 2500) int a,
      @ForAll @IntRange(max = 2500) int b) {
    int from = Math.min(Math.min(a, b), values.size());
    int to = Math.min(Math.max(a, b), values.size());
    Range expected = Range.NONE;
    for (long value : values.subList(from, to)) {
      expected = value == Pyramid.ABSENT ? expected : expected.with(value);
    }
    assertThat(of(values).range(from, to)).isEqualTo(expected);
  }

  @Property(tries = 400)
  void theFirstWithinBoundsIsTheOneThatLookingAtAllFinds(
      @ForAll("values") List<Long> values,
      @ForAll @IntRange(max = 2500) int a,
      @ForAll @IntRange(min = -4, max = 4) int low,
      @ForAll @IntRange(max = 3) int more) {
    int from = Math.min(a, values.size());
    long expected = -1;
    for (int i = from; i < values.size() && expected < 0; i++) {
      long value = values.get(i);
      expected = value != Pyramid.ABSENT && value >= low && value <= low + more ? i : -1;
    }
    assertThat(of(values).first(from, values.size(), low, low + more)).isEqualTo(expected);
  }

  /** Every column of every zoom holds its spike: however the columns are cut, one has it. */
  @Property(tries = 200)
  void aSpikeOfOneMicrometreIsSeenInOneColumnAtEveryZoom(
      @ForAll @IntRange(min = 1, max = 60_000) int count,
      @ForAll @IntRange(max = 59_999) int spikeAt,
      @ForAll @IntRange(min = 1, max = 1300) int columns) {
    int spike = spikeAt % count;
    Pyramid pyramid = new Pyramid(i -> i == spike ? 1_000_000 : 0);
    for (int i = 0; i < count; i++) {
      pyramid.append(i == spike ? 1_000_000 : 0);
    }
    long from = 0;
    long to = count;
    while (to > from) {
      int seen = 0;
      for (int column = 0; column < columns; column++) {
        Range range =
            pyramid.range(
                from + (to - from) * column / columns, from + (to - from) * (column + 1) / columns);
        seen += range.high() == 1_000_000 ? 1 : 0;
      }
      assertThat(seen).isEqualTo(1);
      long third = (to - from) / 3;
      from = Math.max(from, spike - third);
      to = Math.min(to, Math.max(spike + third, from + (third == 0 ? 0 : 1)));
    }
  }
}

package hairline.viewer.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.stock.Section;
import hairline.checks.stock.SectionLine;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

class MeasuredTraceTest {
  /** 0 µm, at 1 mm down to -4 µm, at 2 mm no surface, from 3 mm on up from -4 µm to 0 at 4 mm. */
  private static Section section() {
    return new Section(
        new SectionLine(0, 0, 4_000_000_000L, 0),
        List.of(
            point(0, 0),
            point(1e9, 0),
            point(1e9, -4_000_000),
            point(2e9, -4_000_000),
            new Section.Point(2e9, OptionalLong.empty()),
            new Section.Point(3e9, OptionalLong.empty()),
            point(3e9, -4_000_000),
            point(4e9, 0)),
        List.of(),
        true);
  }

  private static Section.Point point(double distancePm, long heightPm) {
    return new Section.Point(distancePm, OptionalLong.of(heightPm));
  }

  @Property(tries = 200)
  void tiltAndOffsetOfTheInstrumentGoAndNothingElse(
      @ForAll @DoubleRange(min = -50, max = 50) double offsetUm,
      @ForAll @DoubleRange(min = -20, max = 20) double tiltUmPerMm) {
    List<MeasuredTrace.Point> points = new ArrayList<>();
    SectionHeights heights = new SectionHeights(section());
    for (double mm = 0.005; mm < 4; mm += 0.05) {
      double at = mm;
      heights
          .um(mm)
          .ifPresent(
              um -> points.add(new MeasuredTrace.Point(at, um + offsetUm + tiltUmPerMm * at)));
    }
    MeasuredTrace.Levelled levelled = new MeasuredTrace("made", points).levelledOn(section(), 0);
    assertThat(levelled.compared()).isEqualTo(points.size());
    assertThat(levelled.tiltUmPerMm()).isCloseTo(tiltUmPerMm, within(1e-9));
    assertThat(levelled.offsetUm()).isCloseTo(offsetUm, within(1e-9));
    assertThat(levelled.rmsUm()).isCloseTo(0, within(1e-9));
    for (MeasuredTrace.Point point : levelled.points()) {
      assertThat(point.heightUm())
          .isCloseTo(heights.um(point.distanceMm()).getAsDouble(), within(1e-9));
    }
  }

  /** Four points about a flat: worked by hand. Differences 1, -1, -1, 1: level 0, tilt 0, rms 1. */
  @Example
  void whatRemainsIsTheRootOfTheMeanSquare() {
    MeasuredTrace trace =
        new MeasuredTrace(
            "made",
            List.of(
                new MeasuredTrace.Point(0.1, 1),
                new MeasuredTrace.Point(0.2, -1),
                new MeasuredTrace.Point(0.3, -1),
                new MeasuredTrace.Point(0.4, 1)));
    MeasuredTrace.Levelled levelled = trace.levelledOn(section(), 0);
    assertThat(levelled.rmsUm()).isCloseTo(1, within(1e-12));
    assertThat(levelled.tiltUmPerMm()).isCloseTo(0, within(1e-12));
  }

  @Example
  void unitsOfTheHeadingCount() throws MeasuredTrace.NoTrace {
    assertThat(MeasuredTrace.of("a", List.of("x (µm),z (nm)", "1000,2000", "2000,-500")).points())
        .isEqualTo(List.of(new MeasuredTrace.Point(1, 2), new MeasuredTrace.Point(2, -0.5)));
    assertThat(MeasuredTrace.of("a", List.of("0,1", "1,2")).points())
        .isEqualTo(List.of(new MeasuredTrace.Point(0, 1), new MeasuredTrace.Point(1, 2)));
    assertThat(MeasuredTrace.of("a", List.of("# from a gauge", "0,5;1,25", "1;2")).points())
        .isEqualTo(List.of(new MeasuredTrace.Point(0.5, 1.25), new MeasuredTrace.Point(1, 2)));
  }

  @Example
  void whatIsNoTraceIsTold() {
    assertThatThrownBy(() -> MeasuredTrace.of("t.csv", List.of("0,1", "1,x")))
        .hasMessageContaining("line 2 of `t.csv`")
        .hasMessageContaining("no two numbers");
    assertThatThrownBy(() -> MeasuredTrace.of("t.csv", List.of("5")))
        .hasMessageContaining("one column");
    assertThatThrownBy(() -> MeasuredTrace.of("t.csv", List.of("0,1")))
        .hasMessageContaining("fewer than two");
  }
}

package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Sections of parts whose profile is known. */
class SectionTest {

  private static SurfaceLeft left(Bench bench) {
    bench.end();
    return bench.all(PartLeft.class).get(0).surfaces().get(0);
  }

  private static SectionLine line(double x0, double y0, double x1, double y1) {
    return new SectionLine(Bench.pm(x0), Bench.pm(y0), Bench.pm(x1), Bench.pm(y1));
  }

  /** Points in micrometres, "-" for no height. */
  private static List<String> words(Section section) {
    return section.points().stream()
        .map(
            p ->
                p.distancePm() / 1e6
                    + " "
                    + (p.heightPm().isPresent() ? "" + p.heightPm().getAsLong() / 1e6 : "-"))
        .toList();
  }

  private static Bench slot() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50);
    return bench.g0(-2000, 0, 50).g1(-2000, 0, -4.5).g1(2000, 0, -4.5).g0(0, 0, 50);
  }

  @Test
  void aSlotHasTwoWallsEachOfTwoPoints() {
    Section section = left(slot()).section(line(0, -1000, 0, 1000));
    assertThat(words(section))
        .containsExactly(
            "0.0 0.0", "800.0 0.0", "800.0 -4.5", "1200.0 -4.5", "1200.0 0.0", "2000.0 0.0");
    assertThat(section.gaps()).isEmpty();
    assertThat(section.complete()).isTrue();
  }

  @Test
  void outsideTheStockThereIsNoHeight() {
    Section section = left(slot()).section(line(0, 3500, 0, 5000));
    assertThat(words(section)).containsExactly("0.0 0.0", "500.0 0.0", "500.0 -", "1500.0 -");
    assertThat(section.gaps()).containsExactly(new Section.Gap(5e8, 1.5e9, Stands.OUTSIDE));
    Section beside = left(slot()).section(line(0, 4500, 10, 5000));
    assertThat(beside.points()).hasSize(2).allMatch(p -> p.heightPm().isEmpty());
  }

  @Test
  void withoutStockTheTopIsNotKnownAndNeverZero() {
    Bench bench = Bench.flat().g0(0, 0, 50);
    bench.g1(0, 0, -4).g1(1000, 0, -4).g0(0, 0, 50);
    Section section = left(bench).section(line(500, -1000, 500, 1000));
    assertThat(words(section))
        .containsExactly("0.0 -", "800.0 -", "800.0 -4.0", "1200.0 -4.0", "1200.0 -", "2000.0 -");
    assertThat(section.gaps())
        .extracting(Section.Gap::why)
        .containsExactly(Stands.TOP_UNKNOWN, Stands.TOP_UNKNOWN);
  }

  @Test
  void whereNothingIsKnownNothingIsShown() {
    Bench bench = Bench.flat().stock().g0(0, 0, 50).g1(0, 0, -4).g1(Double.NaN, 0, -4);
    Section section = left(bench).section(line(0, 0, 100, 0));
    assertThat(words(section)).containsExactly("0.0 -", "100.0 -");
    assertThat(section.gaps()).extracting(Section.Gap::why).containsExactly(Stands.NOT_KNOWN);
  }

  @Test
  void aRampIsOneSlopingLine() {
    // From 0 to -20 over 2 mm: the flat end leaves the ramp of its rear edge.
    Bench bench = Bench.flat().cell(5).stock().g0(0, 0, 50);
    bench.g0(-1000, 0, 50).g1(-1000, 0, 0).g1(1000, 0, -20).g0(0, 0, 50);
    Section section = left(bench).section(line(-1000, 1, 500, 1));
    // A point of the plan is last covered, and cut deepest, a radius behind it.
    double slope = -20.0 / 2000;
    List<Section.Point> points = section.points();
    assertThat(points.size()).isLessThan(8);
    for (Section.Point point : points.subList(1, points.size() - 1)) {
      double x = point.distancePm() / 1e6 - 1000;
      double deepest = slope * (x + 200 + 1000);
      assertThat(point.heightPm().orElseThrow() / 1e6).isEqualTo(deepest, within(0.03));
    }
  }

  @Test
  void pointsBeyondTheCapAreLeftOutAndThatIsSaid() {
    Section section = new SectionTracer(left(slot()), line(0, -1000, 0, 1000), 4).trace();
    assertThat(section.points()).hasSize(4);
    assertThat(section.complete()).isFalse();
  }

  @Test
  void aLineNeedsALengthAndAnEnd() {
    assertThatThrownBy(() -> line(1, 2, 1, 2)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new SectionLine(0, 0, Long.MIN_VALUE, 0))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new SectionLine(0, 0, SectionLine.FARTHEST_PM + 1, 0))
        .isInstanceOf(IllegalArgumentException.class);
  }
}

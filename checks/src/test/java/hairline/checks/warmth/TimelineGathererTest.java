package hairline.checks.warmth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.cutting.Band;
import hairline.checks.warmth.ProgramTimeline.Cutting;
import hairline.checks.warmth.ProgramTimeline.Kind;
import hairline.checks.warmth.ProgramTimeline.Mark;
import hairline.checks.warmth.ProgramTimeline.Point;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The timeline of a spindle that grows 18 µm at 30000 rpm, in proportion to speed, with a time
 * constant of 12 min; values of the first-order lag, computed independently.
 */
class TimelineGathererTest {
  private static final double TAU_S = 720;

  private static Shop shop(Band amountUm, double instantUm) {
    GrowthFigures figures =
        GrowthFigures.ofTest(30_000, amountUm, Band.ofExact(TAU_S), Band.ofExact(1), instantUm);
    return new Shop(Shop.DEMAND, Shop.TIMES, Optional.of(figures)).withTimeline();
  }

  private static Shop shop() {
    return shop(Band.ofExact(18), 0);
  }

  private static double um(ProgramTimeline timeline, double seconds) {
    return timeline.growthAt(seconds).orElseThrow().typical();
  }

  /**
   * From cold at 30000 rpm 5 min → 6.1337, 24 min → 15.5640 µm; what is drawn between two points
   * lies within 0.2 % of the whole growth.
   */
  @ParameterizedTest
  @CsvSource({"300, 6.1337", "1440, 15.5640", "720, 11.3782", "45, 1.0905", "1439.9, 15.56366"})
  void growsAsTheLagHasIt(double seconds, double um) {
    Shop shop = shop();
    shop.program().m3(30_000).dwell(1440).m5().dwell(600).end();
    assertThat(um(shop.timeline(), seconds)).isCloseTo(um, within(0.002 * 18));
  }

  @Test
  void changesOfSpeedAreTwoPointsAtOneTime() {
    Shop shop = shop(Band.ofExact(18), 3);
    shop.program().m3(30_000).dwell(300).m5().dwell(600).end();
    List<Point> points = shop.timeline().points();
    Point last = points.stream().filter(p -> p.seconds() == 300).findFirst().orElseThrow();
    Point first = points.get(points.indexOf(last) + 1);
    assertThat(first.seconds()).isEqualTo(300);
    assertThat(last.rpm()).isEqualTo(OptionalDouble.of(30_000));
    assertThat(first.rpm()).isEqualTo(OptionalDouble.of(0));
    // The bearings go back at once, heat does not.
    assertThat(last.growthUm().orElseThrow().typical()).isCloseTo(6.1337 + 3, within(5e-5));
    assertThat(first.growthUm().orElseThrow().typical()).isCloseTo(6.1337, within(5e-5));
    assertThat(points).isSortedAccordingTo(java.util.Comparator.comparingDouble(Point::seconds));
    assertThat(points.get(points.size() - 1).seconds()).isEqualTo(900);
  }

  @Test
  void theBandOfTheSheetIsKept() {
    Shop shop = shop(new Band(15, 18, 24), 0);
    shop.program().m3(30_000).dwell(300).end();
    Band band = shop.timeline().growthAt(300).orElseThrow();
    assertThat(band.low()).isCloseTo(15 / 18.0 * 6.1337, within(1e-4));
    assertThat(band.typical()).isCloseTo(6.1337, within(1e-4));
    assertThat(band.high()).isCloseTo(24 / 18.0 * 6.1337, within(1e-4));
  }

  @Test
  void measuringAndToolChangesAreMarked() {
    Shop shop = shop();
    shop.program().m6(3).m3(30_000).dwell(288).measure().warmUp().stop("M1").stop("M0").end();
    List<Mark> marks = shop.timeline().marks();
    assertThat(marks.stream().map(Mark::kind))
        .containsExactly(Kind.TOOL_CHANGE, Kind.MEASURING, Kind.WARM_UP, Kind.OPERATOR);
    assertThat(marks.get(0).tool()).isEqualTo(OptionalInt.of(3));
    assertThat(marks.get(0).toSeconds()).isEqualTo(4);
    assertThat(marks.get(1).fromSeconds()).isEqualTo(292);
    assertThat(marks.get(1).toSeconds()).isEqualTo(304);
    assertThat(marks.get(1).at().line()).isEqualTo(4);
    assertThat(marks.get(1).growthUm().orElseThrow().typical()).isCloseTo(6.1337, within(5e-5));
    assertThat(marks.get(2).toSeconds()).isEqualTo(1024);
    assertThat(marks.get(2).growthUm()).isEmpty();
    assertThat(marks.get(3).known()).isFalse();
  }

  @Test
  void aFineCutHasItsDriftSinceMeasuring() {
    Shop shop = shop();
    shop.program().g0(0, 0, 0).m6(3).m3(30_000).dwell(288).measure().cutting(true);
    shop.program().g1(60, 0, 0, 60).g1(120, 0, 0, 60).g0(120, 0, 1).g1(130, 0, 1, 60);
    shop.program().cutting(false).g1(0, 0, 1, 60).end();
    ProgramTimeline timeline = shop.timeline();
    assertThat(timeline.fineCuts()).hasSize(2);
    Cutting cut = timeline.fineCuts().get(0);
    assertThat(cut.first().line()).isEqualTo(6);
    assertThat(cut.last().line()).isEqualTo(7);
    assertThat(cut.toSeconds() - cut.fromSeconds()).isCloseTo(120, within(1e-9));
    assertThat(cut.driftAtStartUm().orElseThrow().typical()).isCloseTo(0, within(1e-9));
    // Grown 7 min less 5 min.
    assertThat(cut.driftAtEndUm().orElseThrow().typical())
        .isCloseTo(18 * (StrictMath.exp(-5 / 12.0) - StrictMath.exp(-7 / 12.0)), within(1e-6));
    assertThat(timeline.otherCuts()).hasSize(1);
  }

  @Test
  void aCutWithAToolThatWasNotMeasuredHasNone() {
    Shop shop = shop();
    shop.program().m6(3).m3(30_000).g0(0, 0, 0).cutting(true).g1(60, 0, 0, 60).end();
    Cutting cut = shop.timeline().fineCuts().get(0);
    assertThat(cut.driftAtStartUm()).isEmpty();
    assertThat(cut.driftAtEndUm()).isEmpty();
  }

  @Test
  void aStopOfUnknownLengthWidensGrowth() {
    Shop shop = shop();
    shop.program().m3(30_000).dwell(300).stop("M0").dwell(60).end();
    ProgramTimeline timeline = shop.timeline();
    assertThat(timeline.time().isKnown()).isFalse();
    List<Point> points = timeline.points();
    assertThat(points.get(0).known()).isTrue();
    Point last = points.get(points.size() - 1);
    assertThat(last.known()).isFalse();
    // Either it did not stop, or it became cold.
    assertThat(last.growthUm().orElseThrow().high())
        .isCloseTo(18 * (1 - StrictMath.exp(-0.5)), within(1e-6));
    assertThat(last.growthUm().orElseThrow().low())
        .isCloseTo(18 * (1 - StrictMath.exp(-1 / 12.0)), within(1e-6));
  }

  @Test
  void withoutFiguresOnlySpeedIsThere() {
    Shop shop = new Shop().withTimeline();
    shop.program().m3(30_000).dwell(300).spindleUnknown().dwell(60).end();
    ProgramTimeline timeline = shop.timeline();
    assertThat(timeline.growthTold()).isFalse();
    assertThat(timeline.growthAt(100)).isEmpty();
    assertThat(timeline.at(100).orElseThrow().rpm()).isEqualTo(OptionalDouble.of(30_000));
    assertThat(timeline.at(330).orElseThrow().rpm()).isEmpty();
  }

  /** So many changes that not all can stay; speed and growth keep their extremes. */
  @Test
  void staysBoundedAndKeepsExtremes() {
    Shop shop = shop();
    for (int k = 0; k < 6000; k++) {
      shop.program().m3(20_000 + k % 3).dwell(0.5).m5().dwell(0.5);
    }
    shop.program().m3(60_000).dwell(600).m5();
    for (int k = 0; k < 6000; k++) {
      shop.program().m3(20_000).dwell(0.5).m5().dwell(0.5);
    }
    shop.program().end();
    ProgramTimeline timeline = shop.timeline();
    assertThat(timeline.points()).hasSizeLessThanOrEqualTo(ProgramTimeline.MOST_POINTS);
    assertThat(timeline.notes()).hasSize(1);
    assertThat(timeline.points().stream().mapToDouble(p -> p.rpm().orElse(-1)).max())
        .hasValue(60_000);
    double tallest =
        timeline.points().stream()
            .mapToDouble(p -> p.growthUm().orElseThrow().typical())
            .max()
            .orElseThrow();
    // Half the time at 20000 rpm leaves 6 µm, less the wave; then 10 min towards 36 µm.
    assertThat(tallest).isCloseTo(36 + (6 - 36) * StrictMath.exp(-600 / TAU_S), within(0.01));
  }

  @Test
  void shortBreaksGiveWayOnceThereAreTooManyCuts() {
    Shop shop = shop();
    shop.program().m6(3).m3(30_000).measure().g0(0, 0, 0).cutting(true);
    for (int k = 0; k < 3000; k++) {
      shop.program().g1(k % 2 == 0 ? 1 : 0, 0, 0, 600).dwell(k % 10 == 9 ? 2 : 0.01);
    }
    shop.program().end();
    ProgramTimeline timeline = shop.timeline();
    assertThat(timeline.fineCuts()).hasSize(300);
    assertThat(timeline.notes())
        .containsExactly("fine cuts with breaks of up to 0.0160 s between them count as one");
    assertThat(timeline.fineCuts().get(0).toSeconds() - timeline.fineCuts().get(0).fromSeconds())
        .isCloseTo(10 * 0.1 + 9 * 0.01, within(1e-6));
  }

  @Test
  void moreMarksThanFitAreCounted() {
    Shop shop = shop();
    for (int k = 0; k < 1005; k++) {
      shop.program().m6(k % 5);
    }
    shop.program().end();
    assertThat(shop.timeline().marks()).hasSize(1000);
    assertThat(shop.timeline().notes()).hasSize(1);
    assertThat(shop.timeline().notes().get(0)).startsWith("5 tool changes");
  }
}

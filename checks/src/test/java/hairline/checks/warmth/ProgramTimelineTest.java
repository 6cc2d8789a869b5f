package hairline.checks.warmth;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.cutting.Band;
import hairline.checks.timing.TimeTaken;
import hairline.checks.warmth.ProgramTimeline.Point;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** What a timeline tells of a time between its points: growth along straight lines. */
class ProgramTimelineTest {
  private static Point point(double seconds, Optional<Band> um) {
    return new Point(seconds, OptionalDouble.of(seconds), um, true);
  }

  private static Optional<Band> um(double low, double typical, double high) {
    return Optional.of(new Band(low, typical, high));
  }

  private static final Point LAST = point(40, um(6, 8, 10));

  private static final ProgramTimeline TIMELINE =
      new ProgramTimeline(
          TimeTaken.of(50),
          true,
          List.of(
              point(10, um(0, 1, 2)),
              point(20, um(2, 4, 8)),
              point(20, um(3, 5, 9)),
              point(30, Optional.empty()),
              LAST),
          List.of(),
          List.of(),
          List.of(),
          List.of());

  @Test
  void betweenTwoPointsGrowthIsInProportion() {
    assertThat(TIMELINE.growthAt(9.9)).isEmpty();
    assertThat(TIMELINE.growthAt(10)).isEqualTo(um(0, 1, 2));
    assertThat(TIMELINE.growthAt(15)).isEqualTo(um(1, 2.5, 5));
    assertThat(TIMELINE.growthAt(12.5)).isEqualTo(um(0.5, 1.75, 3.5));
    // Of two points at one time the later one counts from then on.
    assertThat(TIMELINE.growthAt(20)).isEqualTo(um(3, 5, 9));
    assertThat(TIMELINE.growthAt(25)).as("to where nothing is known").isEmpty();
    assertThat(TIMELINE.growthAt(35)).as("from where nothing is known").isEmpty();
    assertThat(TIMELINE.growthAt(40)).isEqualTo(um(6, 8, 10));
    assertThat(TIMELINE.growthAt(99)).as("behind the last").isEqualTo(um(6, 8, 10));
  }

  @Test
  void thePointAtATimeIsTheLastOneBefore() {
    assertThat(TIMELINE.at(9)).isEmpty();
    assertThat(TIMELINE.at(10).orElseThrow().seconds()).isEqualTo(10);
    assertThat(TIMELINE.at(19.9).orElseThrow().seconds()).isEqualTo(10);
    assertThat(TIMELINE.at(20).orElseThrow().growthUm()).isEqualTo(um(3, 5, 9));
    assertThat(TIMELINE.at(1000)).contains(LAST);
  }
}

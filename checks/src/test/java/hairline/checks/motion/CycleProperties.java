package hairline.checks.motion;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.motion.Cycle.Code;
import hairline.checks.motion.Cycle.Target;
import hairline.checks.motion.Cycle.Words;
import hairline.checks.motion.CycleStep.Dwell;
import hairline.checks.motion.CycleStep.Travel;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** What holds for every cycle, whatever its numbers. */
class CycleProperties {
  @Property
  void drillsEachHoleToItsBottomAndComesBack(
      @ForAll Code code,
      @ForAll boolean incremental,
      @ForAll boolean toLevel,
      @ForAll @IntRange(min = 0, max = 4) int repeats,
      @ForAll @IntRange(min = -50, max = 50) int start,
      @ForAll @IntRange(min = -50, max = 50) int level,
      @ForAll @IntRange(min = 1, max = 40) int deep,
      @ForAll @IntRange(min = 1, max = 50) int peck,
      @ForAll @IntRange(min = 0, max = 10) int gap,
      @ForAll @IntRange(min = -9, max = 9) int step) {
    int bottom = level - deep;
    Words words =
        new Words(
            target(step, incremental),
            target(2 * step, incremental),
            target(incremental ? -deep : bottom, incremental),
            target(incremental ? level - start : level, incremental),
            Optional.of(Coordinate.of(peck)),
            Optional.of(new Dwell(OptionalDouble.of(1))),
            Optional.of(Coordinate.of(1)),
            Optional.of(Coordinate.of(0)),
            target(incremental ? 1 : bottom + 1, incremental),
            repeats);
    Cycle cycle = Cycle.begin(code, Coordinate.of(start)).with(words);
    assertThat(cycle.refusals()).isEmpty();
    assertThat(cycle.levelPosition()).isEqualTo(Coordinate.of(level));
    assertThat(cycle.bottomPosition()).isEqualTo(Coordinate.of(bottom));
    List<Travel> travels = new ArrayList<>();
    cycle
        .steps(
            words,
            new Cycle.Point(Coordinate.of(0), Coordinate.of(0), Coordinate.of(start)),
            Optional.of(toLevel),
            Coordinate.of(gap))
        .forEachRemaining(
            cycleStep -> {
              if (cycleStep instanceof Travel travel) {
                travels.add(travel);
              }
            });
    if (repeats == 0) {
      assertThat(travels).isEmpty();
      return;
    }
    int clear = toLevel ? level : Math.max(start, level);
    Coordinate first = Coordinate.of(0);
    Coordinate second = Coordinate.of(0);
    Coordinate normal = Coordinate.of(start);
    int arrivals = 0;
    int fedDown = 0;
    for (Travel travel : travels) {
      boolean inPlane = !travel.first().equals(first) || !travel.second().equals(second);
      boolean along = !travel.normal().equals(normal);
      if (code != Code.G88) {
        assertThat(inPlane).as("one direction at a time").isNotEqualTo(along);
        assertThat(travel.normal().storedPm())
            .isBetween((long) bottom, (long) Math.max(start, level));
        // Only G87 moves sideways below the level, with the spindle stopped.
        assertThat(inPlane && normal.storedPm() < level && code != Code.G87).isFalse();
      }
      if (!travel.rapid() && travel.normal().storedPm() == bottom && travel.normal().known()) {
        arrivals++;
      }
      if (!travel.rapid() && normal.above(travel.normal())) {
        fedDown += (int) (normal.storedPm() - travel.normal().storedPm());
      }
      first = travel.first();
      second = travel.second();
      normal = travel.normal();
    }
    assertThat(arrivals).isEqualTo(repeats);
    int places = incremental ? repeats : 1;
    assertThat(first).isEqualTo(Coordinate.of((long) places * step));
    assertThat(second).isEqualTo(Coordinate.of(2L * places * step));
    assertThat(normal).isEqualTo(code == Code.G88 ? Coordinate.UNKNOWN : Coordinate.of(clear));
    if (code == Code.G73 || code == Code.G83) {
      // Each peck but the first feeds again through the gap, no higher than the level.
      int again = 0;
      for (int depth = level - peck; depth > bottom; depth -= peck) {
        again += Math.min(gap, level - depth);
      }
      assertThat(fedDown).isEqualTo(repeats * (deep + again));
    } else if (code == Code.G87) {
      assertThat(fedDown).isEqualTo(repeats);
    } else {
      assertThat(fedDown).isEqualTo(repeats * deep);
    }
  }

  private static Optional<Target> target(int value, boolean incremental) {
    return Optional.of(new Target(Coordinate.of(value), incremental));
  }
}

package hairline.checks.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.setup.AxisValues;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/** What must hold of times whatever the program. */
class TimelineProperties {
  private static final TimeTable TABLE =
      new TimeTable(
          Optional.of(AxisValues.alongPath(15000)),
          OptionalDouble.of(4),
          OptionalDouble.of(12),
          OptionalDouble.of(720),
          OptionalDouble.of(1.5),
          true);

  private static Programs program(ProgramTime time) {
    return new Programs(new Timeline(TABLE, new PlannedFeed(), time, event -> {}));
  }

  @Property
  void twoMovesOnALineTakeTheTimeOfOne(
      @ForAll @IntRange(min = 1, max = 1_000_000_000) int lengthNm,
      @ForAll @DoubleRange(min = 0, max = 1) double part,
      @ForAll @DoubleRange(min = 0.1, max = 10000) double feed) {
    ProgramTime time = new ProgramTime();
    double lengthMm = lengthNm * 1e-6;
    double stop = Math.rint(lengthNm * part) * 1e-6;
    program(time).g0(0, 0, 0).g1(stop, 0, 0, feed).g1(lengthMm, 0, 0, feed).end();
    assertThat(time.secondsNow()).isCloseTo(lengthMm / feed * 60, within(1e-7));
  }

  @Property
  void twiceTheFeedTakesHalfTheTime(
      @ForAll @IntRange(min = 1, max = 1_000_000_000) int lengthNm,
      @ForAll @DoubleRange(min = 0.1, max = 10000) double feed) {
    ProgramTime time = new ProgramTime();
    Programs program = program(time);
    program.g0(0, 0, 0).g1(lengthNm * 1e-6, 0, 0, feed).dwell(0);
    double first = time.secondsNow();
    program.g1(0, 0, 0, feed * 2).end();
    assertThat(time.secondsNow() - first).isCloseTo(first / 2, within(1e-9 * first + 1e-12));
  }

  @Property
  void theOrderOfDwellsDoesNotMatter(
      @ForAll @Size(max = 30) List<@DoubleRange(min = 0, max = 1000) Double> seconds) {
    ProgramTime time = new ProgramTime();
    Programs program = program(time);
    seconds.forEach(program::dwell);
    program.end();
    double sum = seconds.stream().mapToDouble(Double::doubleValue).sorted().sum();
    assertThat(time.secondsNow()).isCloseTo(sum, within(1e-9));
  }

  @Test
  void manyShortDwellsMakeTheLongOneToTheMicrosecond() {
    ProgramTime time = new ProgramTime();
    for (int i = 0; i < 1_000_000; i++) {
      time.next(0.1);
    }
    time.next(0);
    // A plain sum of doubles is 1.3 µs off here.
    assertThat(TimeTaken.reaches(time.secondsNow(), 100_000)).isTrue();
    assertThat(time.secondsNow()).isCloseTo(100_000, within(1e-9));
  }
}

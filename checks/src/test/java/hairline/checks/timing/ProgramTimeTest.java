package hairline.checks.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import hairline.checks.motion.Place;
import hairline.parser.Span;
import org.junit.jupiter.api.Test;

/** Times that add up, known or within bounds. */
class ProgramTimeTest {
  private final ProgramTime time = new ProgramTime();
  private final TimePoint start = time.now();

  private static Place line(int line) {
    return new Place(0, line, new Span(1, 2));
  }

  /** The event in hand counts once it has passed. */
  @Test
  void eachEventCountsOnceItHasPassed() {
    time.next(3);
    assertThat(time.secondsNow()).isZero();
    assertThat(time.ofThisEvent()).isEqualTo(TimeTaken.of(3));
    time.next(0, 10, Cause.RAPID_RATE, line(4));
    assertThat(time.secondsNow()).isEqualTo(3);
    assertThat(time.ofThisEvent().atMostSeconds()).isEqualTo(10);
    time.next(1, 5, Cause.POSITION, line(5));
    time.next(0);
    TimeTaken all = time.since(start);
    assertThat(all.atLeastSeconds()).isEqualTo(4);
    assertThat(all.atMostSeconds()).isEqualTo(3 + 10 + 5);
    assertThat(all.gaps())
        .extracting(Gap::cause, gap -> gap.at().line())
        .containsExactly(tuple(Cause.RAPID_RATE, 4), tuple(Cause.POSITION, 5));
  }

  /** From a point on only the gaps behind it count. */
  @Test
  void gapsBeforeThePointAreNoneOfItsOwn() {
    time.next(0, 10, Cause.RAPID_RATE, line(4));
    time.next(0, 10, Cause.OPERATOR, line(5));
    time.next(0);
    TimePoint later = time.now();
    time.next(2);
    time.next(0);
    assertThat(time.since(later)).isEqualTo(TimeTaken.of(2));
    time.next(0, 7, Cause.POSITION, line(9));
    time.next(0);
    assertThat(time.since(later).atMostSeconds()).isEqualTo(9);
    assertThat(time.since(later).gaps()).extracting(Gap::cause).containsExactly(Cause.POSITION);
    assertThat(time.since(start).atMostSeconds()).isInfinite();
    assertThat(time.since(start).gaps()).hasSize(3);
  }

  /**
   * Doubles at 10¹⁶ are 2 apart, so a plain sum loses what is less than 1 each time; a compensated
   * one does not (Neumaier 1974).
   */
  @Test
  void smallTimesAreNotLostInALongOne() {
    time.next(1002.9);
    time.next(1e16);
    for (int k = 0; k < 10_001; k++) {
      time.next(0.5);
    }
    time.next(0);
    // 1002.9 + 5000.5 = 6003.4, and 6004 is the nearest one.
    assertThat(time.secondsNow() - 1e16).isEqualTo(6004);
  }
}

package hairline.checks.timing;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.motion.Place;
import hairline.parser.Span;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Comparing, adding and choosing times of which only bounds are known. */
class TimeTakenTest {
  private static final Gap RAPID = gap(7, Cause.RAPID_RATE);
  private static final Gap LATER_RAPID = gap(9, Cause.RAPID_RATE);
  private static final Gap RUN_UP = gap(8, Cause.RUN_UP);

  private static Gap gap(int line, Cause cause) {
    return new Gap(new Place(0, line, new Span(1, 2)), cause);
  }

  private static TimeTaken between(double low, double high, Gap... gaps) {
    return new TimeTaken(low, high, List.of(gaps));
  }

  @Test
  void aKnownTimeExceedsALimitOrNot() {
    assertThat(TimeTaken.of(60).exceeds(60)).isEqualTo(Answer.NO);
    assertThat(TimeTaken.of(60.001).exceeds(60)).isEqualTo(Answer.YES);
    assertThat(TimeTaken.of(59.999).exceeds(60)).isEqualTo(Answer.NO);
  }

  @Test
  void lessThanAMicrosecondIsNoDifference() {
    assertThat(TimeTaken.exceeds(60.0000009, 60)).isFalse();
    assertThat(TimeTaken.exceeds(60.0000011, 60)).isTrue();
    assertThat(TimeTaken.reaches(59.9999991, 60)).isTrue();
    assertThat(TimeTaken.reaches(59.9999989, 60)).isFalse();
    assertThat(TimeTaken.reaches(60, 60)).isTrue();
    assertThat(TimeTaken.exceeds(Double.POSITIVE_INFINITY, 60)).isTrue();
    assertThat(TimeTaken.exceeds(60, Double.POSITIVE_INFINITY)).isFalse();
  }

  @Test
  void boundsMayLeaveItOpen() {
    TimeTaken taken = between(50, 70, RAPID);
    assertThat(taken.exceeds(49)).isEqualTo(Answer.YES);
    assertThat(taken.exceeds(60)).isEqualTo(Answer.UNKNOWN);
    assertThat(taken.exceeds(70)).isEqualTo(Answer.NO);
    assertThat(taken.isKnown()).isFalse();
    assertThat(taken.waitsForOperator()).isFalse();
  }

  @Test
  void addingKeepsTheEarlierOfTwoGapsOfOneCause() {
    TimeTaken sum = between(1, 2, RAPID).plus(between(10, 30, RUN_UP, LATER_RAPID));
    assertThat(sum).isEqualTo(between(11, 32, RAPID, RUN_UP));
    assertThat(TimeTaken.of(3).plus(between(1, 2, RAPID))).isEqualTo(between(4, 5, RAPID));
    assertThat(between(1, 2, RAPID).plus(TimeTaken.of(3))).isEqualTo(between(4, 5, RAPID));
    assertThat(TimeTaken.of(3).plus(TimeTaken.of(4))).isEqualTo(TimeTaken.of(7));
  }

  @Test
  void theLongerOfTwo() {
    assertThat(TimeTaken.of(3).orLonger(TimeTaken.of(4))).isEqualTo(TimeTaken.of(4));
    assertThat(TimeTaken.of(4).orLonger(TimeTaken.of(3))).isEqualTo(TimeTaken.of(4));
    // Whatever it is, it is not the longer one.
    assertThat(TimeTaken.of(4).orLonger(between(1, 4, RAPID))).isEqualTo(TimeTaken.of(4));
    assertThat(between(1, 4, RAPID).orLonger(TimeTaken.of(4))).isEqualTo(TimeTaken.of(4));
    assertThat(TimeTaken.of(4).orLonger(between(1, 5, RAPID))).isEqualTo(between(4, 5, RAPID));
    assertThat(between(1, 5, RAPID).orLonger(between(2, 3, RUN_UP)))
        .isEqualTo(between(2, 5, RAPID, RUN_UP));
  }

  @Test
  void theOperatorIsNotForgottenInTheLonger() {
    TimeTaken operator = between(0, Double.POSITIVE_INFINITY, gap(3, Cause.OPERATOR));
    assertThat(operator.orLonger(TimeTaken.of(1e6)).exceeds(1e7)).isEqualTo(Answer.YES);
    assertThat(TimeTaken.of(1e6).orLonger(operator).exceeds(1e7)).isEqualTo(Answer.YES);
  }
}

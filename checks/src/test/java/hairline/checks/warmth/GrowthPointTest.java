package hairline.checks.warmth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.cutting.Band;
import hairline.checks.motion.Place;
import hairline.checks.timing.Answer;
import hairline.checks.timing.Cause;
import hairline.checks.timing.Gap;
import hairline.checks.timing.TimeTaken;
import hairline.parser.Span;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/**
 * Growth at a point: 18 µm in the end at 30000 rpm, in proportion to speed, time constant 720 s.
 */
class GrowthPointTest {
  private static final Place AT = new Place(0, 1, new Span(1, 2));
  private static final SpindleState UNKNOWN_SPEED =
      new SpindleState(SpindleState.Kind.TURNING, OptionalDouble.empty());

  private static GrowthFigures figures(double instantUm) {
    return new GrowthFigures(
        30_000,
        Band.ofExact(18),
        Band.ofExact(720),
        Band.ofExact(1),
        instantUm,
        10_000,
        OptionalDouble.of(30_000),
        false,
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }

  private static SpindleState turning(double rpm) {
    return new SpindleState(SpindleState.Kind.TURNING, OptionalDouble.of(rpm));
  }

  /** At 30000 rpm for a time of which the second part is not known. */
  private static GrowthPoint point(double atLeastSeconds, double moreSeconds) {
    GrowthFollower follower = new GrowthFollower(figures(0), AT);
    follower.pass(turning(30_000), TimeTaken.of(atLeastSeconds), AT);
    if (moreSeconds > 0) {
      follower.pass(
          turning(30_000), new TimeTaken(0, moreSeconds, List.of(new Gap(AT, Cause.POSITION))), AT);
    }
    return follower.point(turning(30_000));
  }

  /** After 300 s 18 µm · e^(−300/720) = 11.8663 µm are to come; at 20000 rpm 6 µm less. */
  @Test
  void nearIsJudgedByWhatIsToCome() {
    GrowthPoint known = point(300, 0);
    assertThat(known.within(11.87, 30_000)).isEqualTo(Answer.YES);
    assertThat(known.within(11.86, 30_000)).isEqualTo(Answer.NO);
    assertThat(known.within(5.87, 20_000)).isEqualTo(Answer.YES);
    assertThat(known.within(5.86, 20_000)).isEqualTo(Answer.NO);
  }

  /** Warm for 30000 rpm it is 12 µm too long for 10000 rpm. */
  @Test
  void tooLongIsAsFarAsTooShort() {
    GrowthPoint warm = point(1e6, 0);
    assertThat(warm.within(11.99, 10_000)).isEqualTo(Answer.NO);
    assertThat(warm.within(12.01, 10_000)).isEqualTo(Answer.YES);
  }

  /**
   * After 300 to 1200 s 6.1337 to 14.6004 µm: at 20000 rpm, 12 µm in the end, from 5.8663 µm short
   * to 2.6004 µm too long.
   */
  @Test
  void anUnknownTimeLeavesItOpenOnlyBetweenItsBounds() {
    GrowthPoint point = point(300, 900);
    assertThat(point.within(5.87, 20_000)).isEqualTo(Answer.YES);
    assertThat(point.within(5.86, 20_000)).isEqualTo(Answer.UNKNOWN);
    assertThat(point.within(2.61, 20_000)).isEqualTo(Answer.UNKNOWN);
    assertThat(point.within(1, 20_000)).isEqualTo(Answer.UNKNOWN);
    // Of 18 µm at least 3.3996 µm are to come, at most 11.8663.
    assertThat(point.within(3.39, 30_000)).isEqualTo(Answer.NO);
    assertThat(point.within(3.41, 30_000)).isEqualTo(Answer.UNKNOWN);
    assertThat(point.within(11.87, 30_000)).isEqualTo(Answer.YES);
    // Of 6 µm at 10000 rpm it has at least 0.1337 too many, at most 8.6004.
    assertThat(point.within(0.13, 10_000)).isEqualTo(Answer.NO);
    assertThat(point.within(0.14, 10_000)).isEqualTo(Answer.UNKNOWN);
    assertThat(point.within(8.61, 10_000)).isEqualTo(Answer.YES);
  }

  /** 9 µm at 30000 rpm, with the square of speed 1 µm at 10000 rpm; either way of the shift. */
  @Test
  void anUnknownSpeedShiftsTheBearingsBetweenItsBounds() {
    for (int sign : new int[] {1, -1}) {
      GrowthPoint cold = new GrowthFollower(figures(sign * 9), AT).point(UNKNOWN_SPEED);
      assertThat(cold.instantLowUm()).isCloseTo(sign > 0 ? 1 : -9, within(1e-12));
      assertThat(cold.instantHighUm()).isCloseTo(sign > 0 ? 9 : -1, within(1e-12));
      Band range = cold.sinceCold().rangeUm().orElseThrow();
      assertThat(range.low()).isCloseTo(cold.instantLowUm(), within(1e-12));
      assertThat(range.high()).isCloseTo(cold.instantHighUm(), within(1e-12));
      assertThat(cold.um()).isEmpty();
      assertThat(cold.rpm()).isEmpty();
    }
    GrowthPoint known = new GrowthFollower(figures(9), AT).point(turning(10_000));
    assertThat(known.um().orElseThrow().typical()).isCloseTo(1, within(1e-12));
    assertThat(known.rpm()).isEqualTo(OptionalDouble.of(10_000));
  }

  /** At an unknown speed 60 s later is a doubt of its own, however well the time is known. */
  @Test
  void laterAtAnUnknownSpeedSharesNothing() {
    GrowthPoint now = new GrowthFollower(figures(0), AT).point(UNKNOWN_SPEED);
    GrowthPoint later = now.later(TimeTaken.of(60));
    assertThat(later.unknowns()).isNotEqualTo(now.unknowns());
    assertThat(later.unknowns()).isNotEqualTo(now.later(TimeTaken.of(60)).unknowns());
    GrowthPoint known = new GrowthFollower(figures(0), AT).point(turning(10_000));
    assertThat(known.later(TimeTaken.of(60)).unknowns()).isEqualTo(known.unknowns());
    assertThat(known.later(TimeTaken.NONE)).isSameAs(known);
  }
}

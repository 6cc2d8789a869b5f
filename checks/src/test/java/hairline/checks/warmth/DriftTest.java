package hairline.checks.warmth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.cutting.Band;
import hairline.checks.cutting.Certainty;
import hairline.checks.motion.Place;
import hairline.checks.timing.Answer;
import hairline.checks.timing.Cause;
import hairline.checks.timing.Gap;
import hairline.checks.timing.TimeTaken;
import hairline.parser.Span;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** What a drift can be where a time is not known; 18 µm in the end, time constant 12 min. */
class DriftTest {
  private static final Place AT = new Place(0, 1, new Span(1, 2));
  private static final SpindleState TURNING =
      new SpindleState(SpindleState.Kind.TURNING, OptionalDouble.of(30_000));

  private static GrowthFigures figures(Band amountUm) {
    return GrowthFigures.ofTest(30_000, amountUm, Band.ofExact(720), Band.ofExact(1), 0);
  }

  /** From the end of 300 s to that of up to 60 s more. */
  private static Drift drift(Band amountUm, double atMostSeconds, Cause cause) {
    GrowthFollower follower = new GrowthFollower(figures(amountUm), AT);
    follower.pass(TURNING, TimeTaken.of(300), AT);
    GrowthPoint from = follower.point(TURNING);
    follower.pass(TURNING, new TimeTaken(0, atMostSeconds, List.of(new Gap(AT, cause))), AT);
    return Drift.between(from, follower.point(TURNING));
  }

  private static double grownUm(double endUm, double seconds) {
    return endUm * (1 - StrictMath.exp(-seconds / 720));
  }

  @Test
  void aTimeWithinBoundsLeavesAMiddleAndASlack() {
    Drift drift = drift(Band.ofExact(18), 60, Cause.POSITION);
    double most = grownUm(18, 360) - grownUm(18, 300);
    assertThat(drift.isKnown()).isFalse();
    assertThat(drift.middleUm().orElseThrow().typical()).isCloseTo(most / 2, within(1e-9));
    assertThat(drift.slackUm()).isCloseTo(most / 2, within(1e-9));
  }

  @Test
  void theSlackIsThatOfTheFiguresThatGrowMost() {
    Drift drift = drift(new Band(9, 18, 27), 60, Cause.POSITION);
    assertThat(drift.slackUm()).isCloseTo((grownUm(27, 360) - grownUm(27, 300)) / 2, within(1e-9));
    assertThat(drift.middleUm().orElseThrow().low())
        .isCloseTo((grownUm(9, 360) - grownUm(9, 300)) / 2, within(1e-9));
  }

  @Test
  void aKnownDriftHasNoSlack() {
    GrowthFollower follower = new GrowthFollower(figures(Band.ofExact(18)), AT);
    follower.pass(TURNING, TimeTaken.of(300), AT);
    GrowthPoint from = follower.point(TURNING);
    follower.pass(TURNING, TimeTaken.of(60), AT);
    Drift known = Drift.between(from, follower.point(TURNING));
    assertThat(known.slackUm()).isZero();
    assertThat(known.middleUm()).isEqualTo(known.um());
  }

  @Test
  void howeverLongItTakesGrowthEndsAtItsEndValue() {
    Drift drift = drift(Band.ofExact(18), Double.POSITIVE_INFINITY, Cause.OPERATOR);
    assertThat(drift.slackUm()).isCloseTo((18 - grownUm(18, 300)) / 2, within(1e-9));
  }

  @Test
  void aSpeedOfWhichNothingIsKnownLeavesNoMiddle() {
    GrowthFollower follower = new GrowthFollower(figures(Band.ofExact(18)), AT);
    GrowthPoint from = follower.point(TURNING);
    SpindleState unknown = new SpindleState(SpindleState.Kind.UNKNOWN, OptionalDouble.empty());
    follower.pass(unknown, TimeTaken.of(60), AT);
    assertThat(Drift.between(from, follower.point(TURNING)).middleUm()).isEmpty();
  }

  // Where the same time is not known of all points, a drift is bounded by what that time can be.

  /** A spindle that has turned for 300 s and up to 60 s more. */
  private static GrowthFollower doubtful() {
    GrowthFollower follower = new GrowthFollower(figures(Band.ofExact(18)), AT);
    follower.pass(TURNING, TimeTaken.of(300), AT);
    follower.pass(TURNING, upTo60(Cause.POSITION), AT);
    return follower;
  }

  private static TimeTaken upTo60(Cause cause) {
    return new TimeTaken(0, 60, List.of(new Gap(AT, cause)));
  }

  private static GrowthPoint after(GrowthFollower follower, double seconds) {
    follower.pass(TURNING, TimeTaken.of(seconds), AT);
    return follower.point(TURNING);
  }

  /** 60 s from t on, t anywhere from 300 to 360 s: most at once, least at the latest. */
  @Test
  void whatIsNotKnownOfBothPointsDropsOut() {
    GrowthFollower follower = doubtful();
    Drift drift = Drift.between(follower.point(TURNING), after(follower, 60));
    Band range = drift.rangeUm().orElseThrow();
    assertThat(range.low()).isCloseTo(grownUm(18, 420) - grownUm(18, 360), within(1e-9));
    assertThat(range.high()).isCloseTo(grownUm(18, 360) - grownUm(18, 300), within(1e-9));
    assertThat(drift.slackUm()).isCloseTo((range.high() - range.low()) / 2, within(1e-9));
  }

  /** The second point hangs on a time of its own: at once 60 s from 300 s on, or none at all. */
  @Test
  void aLaterPointOfUnknownTimeSharesNothing() {
    GrowthPoint from = doubtful().point(TURNING);
    Band range = Drift.between(from, from.later(upTo60(Cause.POSITION))).rangeUm().orElseThrow();
    assertThat(range.low()).isLessThanOrEqualTo(0);
    assertThat(range.high()).isGreaterThanOrEqualTo(grownUm(18, 360) - grownUm(18, 300));
    // Held against the shared doubt this is wide.
    assertThat(Drift.between(from, from.later(TimeTaken.of(60))).rangeUm().orElseThrow().high())
        .isCloseTo(grownUm(18, 360) - grownUm(18, 300), within(1e-9));
  }

  @Test
  void doubtsOfTimesInTurnAreNotShared() {
    GrowthFollower follower = doubtful();
    GrowthPoint from = follower.point(TURNING);
    follower.pass(TURNING, upTo60(Cause.POSITION), AT);
    Band range = Drift.between(from, follower.point(TURNING)).rangeUm().orElseThrow();
    assertThat(range.low()).isLessThanOrEqualTo(0);
    assertThat(range.high()).isGreaterThanOrEqualTo(grownUm(18, 360) - grownUm(18, 300));
  }

  /** Two stretches of 60 s one behind the other, the one less the other, from t on. */
  @Test
  void ofFourPointsWithOneDoubtItDropsOutOfTheSum() {
    GrowthFollower follower = doubtful();
    GrowthPoint a = follower.point(TURNING);
    GrowthPoint b = after(follower, 60);
    GrowthPoint c = after(follower, 60);
    Band range = Drift.of(List.of(b, b), List.of(a, c)).rangeUm().orElseThrow();
    // (b − a) − (c − b), with t from 300 to 360 s.
    double early = 2 * grownUm(18, 360) - grownUm(18, 300) - grownUm(18, 420);
    double late = 2 * grownUm(18, 420) - grownUm(18, 360) - grownUm(18, 480);
    assertThat(range.low()).isCloseTo(late, within(1e-9));
    assertThat(range.high()).isCloseTo(early, within(1e-9));
    assertThat(Drift.of(List.of(b, b), List.of(b, b)).um().orElseThrow().typical()).isZero();
  }

  /** The second pair has another doubt, so the most of the one may meet the least of the other. */
  @Test
  void ofTwoPairsWithTwoDoubtsTheBoundsAddUp() {
    GrowthFollower follower = doubtful();
    GrowthPoint a = follower.point(TURNING);
    GrowthPoint b = after(follower, 60);
    follower.pass(TURNING, upTo60(Cause.POSITION), AT);
    GrowthPoint c = follower.point(TURNING);
    GrowthPoint d = after(follower, 60);
    Band range = Drift.of(List.of(b, c), List.of(a, d)).rangeUm().orElseThrow();
    // b − a from t = 300 or 360 s on, d − c from 360 or 480 s on.
    double mostFirst = grownUm(18, 360) - grownUm(18, 300);
    double leastFirst = grownUm(18, 420) - grownUm(18, 360);
    double mostSecond = grownUm(18, 420) - grownUm(18, 360);
    double leastSecond = grownUm(18, 540) - grownUm(18, 480);
    assertThat(range.low()).isCloseTo(leastFirst - mostSecond, within(1e-9));
    assertThat(range.high()).isCloseTo(mostFirst - leastSecond, within(1e-9));
  }

  @Test
  void eachReasonIsToldOnce() {
    GrowthFollower follower = doubtful();
    GrowthPoint from = follower.point(TURNING);
    follower.pass(TURNING, upTo60(Cause.POSITION), AT);
    follower.pass(TURNING, upTo60(Cause.FEED), AT);
    assertThat(Drift.between(from, follower.point(TURNING)).doubts())
        .extracting(Doubt::reason)
        .containsExactly(Cause.POSITION.reason(), Cause.FEED.reason());
  }

  /** From warm to standing 0 to 60 s: it shrinks by 0 to 18 µm · (1 − e^(−1/12)) = 1.4392 µm. */
  @Test
  void aSpindleThatShrinksMayBeBeyondAsWell() {
    GrowthFollower follower = new GrowthFollower(figures(Band.ofExact(18)), AT);
    follower.pass(TURNING, TimeTaken.of(1e6), AT);
    GrowthPoint warm = follower.point(TURNING);
    follower.pass(SpindleState.STANDING, upTo60(Cause.POSITION), AT);
    Drift drift = Drift.between(warm, follower.point(SpindleState.STANDING));
    assertThat(drift.mayBeBeyond(1.43)).isTrue();
    assertThat(drift.mayBeBeyond(1.44)).isFalse();
    assertThat(drift.sizeUm()).isCloseTo(1.4392, within(5e-5));
    assertThat(drift.beyond(0.1)).isEqualTo(Certainty.NOT_SHOWN);
  }

  @Test
  void whatNothingBoundsIsLargerThanAnything() {
    GrowthFollower follower = new GrowthFollower(figures(Band.ofExact(18)), AT);
    SpindleState unknown = new SpindleState(SpindleState.Kind.UNKNOWN, OptionalDouble.empty());
    follower.pass(unknown, TimeTaken.of(60), AT);
    Drift drift = follower.point(TURNING).sinceCold();
    assertThat(drift.sizeUm()).isInfinite();
    assertThat(drift.rangeUm()).isEmpty();
    assertThat(drift.mayBeBeyond(1e9)).isTrue();
    assertThat(drift.isKnown()).isFalse();
    assertThat(follower.point(TURNING).toComeUm(30_000)).isEmpty();
    assertThat(follower.point(TURNING).within(1, 30_000)).isEqualTo(Answer.UNKNOWN);
  }
}

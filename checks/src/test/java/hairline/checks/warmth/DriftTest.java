package hairline.checks.warmth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.cutting.Band;
import hairline.checks.motion.Place;
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
}

package hairline.checks.warmth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.cutting.Band;
import hairline.checks.cutting.Certainty;
import hairline.checks.motion.Place;
import hairline.checks.timing.Answer;
import hairline.checks.timing.TimeTaken;
import hairline.parser.Span;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/**
 * Growth along a program: 18 µm in the end at 30000 rpm with a time constant of 12 min, in
 * proportion to speed; values of the formula computed independently.
 */
class GrowthFollowerTest {
  private static final Place AT = new Place(0, 1, new Span(1, 2));
  private static final double TAU_S = 720;

  private static GrowthFigures figures(double instantUm, boolean before, OptionalDouble near) {
    return new GrowthFigures(
        30_000,
        Band.ofExact(18),
        Band.ofExact(TAU_S),
        Band.ofExact(1),
        instantUm,
        4_000,
        OptionalDouble.of(60_000),
        before,
        OptionalDouble.of(20_000),
        near);
  }

  private static final GrowthFigures FIGURES = figures(0, false, OptionalDouble.empty());

  static GrowthFollower follower(GrowthFigures figures) {
    return new GrowthFollower(figures, AT);
  }

  static void turn(GrowthFollower follower, double rpm, double seconds) {
    follower.pass(state(rpm), TimeTaken.of(seconds), AT);
  }

  static GrowthPoint turning(GrowthFollower follower, double rpm) {
    return follower.point(state(rpm));
  }

  private static SpindleState state(double rpm) {
    return rpm == 0
        ? SpindleState.STANDING
        : new SpindleState(SpindleState.Kind.TURNING, OptionalDouble.of(rpm));
  }

  private static Shop shop(GrowthFigures figures) {
    return new Shop(Shop.DEMAND, Shop.TIMES, Optional.of(figures));
  }

  private static double um(Shop shop) {
    return shop.warmth().growth().flatMap(GrowthPoint::um).orElseThrow().typical();
  }

  private static double grown(double minutes) {
    return 18 * (1 - StrictMath.exp(-minutes / 12));
  }

  @Test
  void withoutFiguresNothingIsTold() {
    Shop shop = new Shop();
    shop.program().m3(30_000).dwell(300).measure().end();
    assertThat(shop.warmth().growth()).isEmpty();
    assertThat(shop.warmth().measuring().orElseThrow().growth()).isEmpty();
  }

  @Test
  void growsWithTheTimeOfTheProgram() {
    Shop shop = shop(FIGURES);
    shop.program().m3(30_000).dwell(200).dwell(100).end();
    assertThat(um(shop)).isCloseTo(6.1337, within(5e-5));
    shop.program().m5().dwell(600).end();
    assertThat(um(shop)).isCloseTo(6.133677 * StrictMath.exp(-10.0 / 12), within(5e-5));
  }

  @Test
  void standsDuringAToolChange() {
    Shop shop = shop(FIGURES);
    shop.program().m3(30_000).dwell(300).m6(3).end();
    assertThat(um(shop)).isCloseTo(6.133677 * StrictMath.exp(-4 / TAU_S), within(5e-5));
  }

  @Test
  void aWarmUpCodeTurnsForItsTimeAtTheSpeedCommanded() {
    Shop shop = shop(FIGURES);
    shop.program().s(30_000).warmUp().end();
    assertThat(um(shop)).isCloseTo(grown(12), within(1e-9));
  }

  @Test
  void measuringFreezesGrowthAtItsEnd() {
    Shop shop = shop(FIGURES);
    shop.program().m3(30_000).dwell(288).measure().dwell(600).end();
    GrowthPoint frozen = shop.warmth().measuring().flatMap(Measuring::growth).orElseThrow();
    assertThat(frozen.um().orElseThrow().typical()).isCloseTo(6.1337, within(5e-5));
    Drift drift = Drift.between(frozen, shop.warmth().growth().orElseThrow());
    assertThat(drift.um().orElseThrow().typical()).isCloseTo(grown(15) - grown(5), within(1e-9));
  }

  @Test
  void theBearingsShiftAtOnceWithTheSquareOfSpeed() {
    Shop shop = shop(figures(-2, false, OptionalDouble.empty()));
    shop.program().m3(30_000).dwell(300).end();
    assertThat(um(shop)).isCloseTo(6.1337 - 2, within(5e-5));
    shop.program().s(60_000).end();
    assertThat(um(shop)).isCloseTo(6.1337 - 8, within(5e-5));
    shop.program().m5().end();
    assertThat(um(shop)).isCloseTo(6.1337, within(5e-5));
  }

  @Test
  void warmedBeforeItCoolsUntilItTurns() {
    Shop shop = shop(figures(0, true, OptionalDouble.empty()));
    assertThat(um(shop)).isCloseTo(12, within(1e-9));
    shop.program().dwell(72).end();
    assertThat(um(shop)).isCloseTo(12 * StrictMath.exp(-0.1), within(1e-9));
  }

  @Test
  void anOperatorMayTakeAnyTime() {
    Shop shop = shop(FIGURES);
    shop.program().stop("M0").m3(30_000).dwell(300).end();
    assertThat(um(shop)).isCloseTo(6.1337, within(5e-5));
    shop.program().stop("M0").m3(30_000).dwell(300).end();
    GrowthPoint after = shop.warmth().growth().orElseThrow();
    assertThat(after.um()).isEmpty();
    Band bounds = after.sinceCold().boundsUm().orElseThrow();
    assertThat(bounds.low()).isCloseTo(grown(5), within(1e-9));
    assertThat(bounds.high()).isCloseTo(grown(10), within(1e-9));
    assertThat(after.sinceCold().doubts())
        .extracting(Doubt::reason)
        .containsExactly("how long the operator stops is not known");
  }

  @Test
  void whatTwoPointsDoNotKnowAlikeDropsOut() {
    Shop shop = shop(FIGURES);
    shop.program().m3(30_000).dwell(300).stop("M0").dwell(60).end();
    GrowthPoint early = shop.warmth().growth().orElseThrow();
    shop.program().dwell(60).end();
    Drift drift = Drift.between(early, shop.warmth().growth().orElseThrow());
    // From what is left of 6.1337 µm after a stop of any length: growth of 60 s is between.
    double left = 1 - StrictMath.exp(-60 / TAU_S);
    double slow = (18 - 18 + (18 - grown(5)) * StrictMath.exp(-60 / TAU_S)) * left;
    double fast = 18 * StrictMath.exp(-60 / TAU_S) * left;
    assertThat(drift.boundsUm().orElseThrow().low()).isCloseTo(slow, within(1e-9));
    assertThat(drift.boundsUm().orElseThrow().high()).isCloseTo(fast, within(1e-9));
    assertThat(drift.isKnown()).isFalse();
    assertThat(drift.beyond(slow * 0.99)).isEqualTo(Certainty.CERTAIN);
    assertThat(drift.beyond(slow * 1.01)).isEqualTo(Certainty.NOT_SHOWN);
    assertThat(drift.mayBeBeyond(slow * 1.01)).isTrue();
    assertThat(drift.mayBeBeyond(fast * 1.01)).isFalse();
  }

  @Test
  void anUnknownSpeedLiesWithinThoseOfTheSpindle() {
    Shop shop = shop(FIGURES);
    shop.program().m3WithoutSpeed().dwell(300).m5().end();
    GrowthPoint point = shop.warmth().growth().orElseThrow();
    Band bounds = point.sinceCold().boundsUm().orElseThrow();
    assertThat(bounds.low()).isCloseTo(grown(5) * 4 / 30, within(1e-9));
    assertThat(bounds.high()).isCloseTo(grown(5) * 2, within(1e-9));
    assertThat(point.sinceCold().doubts())
        .extracting(Doubt::reason)
        .containsExactly("the speed of the spindle is not known");
  }

  @Test
  void withoutAFastestSpeedNothingBoundsGrowth() {
    Shop shop =
        shop(
            GrowthFigures.ofTest(
                30_000, Band.ofExact(18), Band.ofExact(TAU_S), Band.ofExact(1), 0));
    shop.program().m3WithoutSpeed().dwell(300).m3(30_000).dwell(1e6).end();
    Drift drift = shop.warmth().growth().orElseThrow().sinceCold();
    assertThat(drift.um()).isEmpty();
    assertThat(drift.boundsUm()).isEmpty();
    assertThat(drift.beyond(0)).isEqualTo(Certainty.NOT_SHOWN);
    assertThat(drift.mayBeBeyond(1e9)).isTrue();
  }

  @Test
  void anUnknownCodeMayHaveTurnedTheSpindleWhereNoCodeIsNamed() {
    WarmUpDemand d = Shop.DEMAND;
    WarmUpDemand unnamed =
        new WarmUpDemand(
            d.timeSeconds(),
            d.minRpm(),
            d.codeRpm(),
            d.validForSeconds(),
            d.idleSeconds(),
            false,
            false);
    Shop shop = new Shop(unnamed, Shop.TIMES, Optional.of(FIGURES));
    shop.program().m3(30_000).dwell(300).unknownCode().end();
    Band bounds = shop.warmth().growth().orElseThrow().sinceCold().boundsUm().orElseThrow();
    assertThat(bounds.low()).isCloseTo(0, within(1e-9));
    assertThat(bounds.high()).isCloseTo(36, within(1e-9));
  }

  private static Shop ladder(double nearUm) {
    return shop(figures(0, false, OptionalDouble.of(nearUm)));
  }

  @Test
  void aLadderIsAWarmUpOnceGrowthIsNearItsEnd() {
    // 3 min at 10000 rpm, 3 min at 15000, then at 20000 rpm, of which 12 min would be asked.
    double first = 6 * (1 - StrictMath.exp(-0.25));
    double second = 9 - (9 - first) * StrictMath.exp(-0.25);
    double toCome = (12 - second) * StrictMath.exp(-0.5);
    for (boolean enough : new boolean[] {true, false}) {
      Shop shop = ladder(toCome + (enough ? 1e-6 : -1e-6));
      shop.program().m3(10_000).dwell(180).s(15_000).dwell(180).s(20_000).dwell(360).end();
      assertThat(shop.warmth().warmUp().valid()).isEqualTo(enough ? Answer.YES : Answer.NO);
    }
  }

  @Test
  void oneSpeedIsNoLadder() {
    Shop shop = ladder(18);
    shop.program().m3(20_000).dwell(700).end();
    assertThat(shop.warmth().warmUp().valid()).isEqualTo(Answer.NO);
  }

  @Test
  void aLadderEndsAtTheSlowestSpeedThatWarmsUpOrFaster() {
    Shop shop = ladder(1);
    shop.program().m3(1_000).dwell(60).s(2_000).dwell(600).end();
    assertThat(shop.warmth().warmUp().valid()).isEqualTo(Answer.NO);
  }

  @Test
  void aLadderInDeletableBlocksHangsOnThem() {
    Shop shop = ladder(10);
    shop.program().deletable().m3(10_000);
    int deletable = shop.program().line();
    shop.program().deletable().dwell(180).s(20_000).dwell(360).end();
    assertThat(shop.warmth().warmUp().valid()).isEqualTo(Answer.YES);
    assertThat(shop.warmth().warmUp().deletableAt().map(Place::line)).contains(deletable);
  }

  @Test
  void aLadderOfUnknownTimeMayBeOne() {
    Shop shop = ladder(10);
    shop.program().m3(10_000).dwellWithoutUnit().s(20_000).dwell(60).end();
    assertThat(shop.warmth().warmUp().valid()).isEqualTo(Answer.UNKNOWN);
    assertThat(shop.warmth().warmUp().doubts())
        .extracting(Doubt::reason)
        .contains("the unit of a dwell is not known");
  }

  /** 3 min at 10000 and 6 min at 20000 rpm: 12 µm in the end, less than 10 µm to come. */
  @Test
  void aFirmLadderHangsOnNothing() {
    Shop shop = ladder(10);
    shop.program().m3(10_000).dwell(180).s(20_000).dwell(360).end();
    assertThat(shop.warmth().warmUp().valid()).isEqualTo(Answer.YES);
    assertThat(shop.warmth().warmUp().deletableAt()).isEmpty();
    // A stop of unknown length may be too long for it, or not.
    shop.program().m5().dwellWithoutUnit().end();
    assertThat(shop.warmth().warmUp().valid()).isEqualTo(Answer.UNKNOWN);
  }

  @Test
  void aDeletableStepOfALadderIsWhatItHangsOn() {
    Shop shop = ladder(10);
    shop.program().m3(10_000).deletable().dwell(180);
    int deletable = shop.program().line();
    shop.program().s(20_000).dwell(360).end();
    assertThat(shop.warmth().warmUp().valid()).isEqualTo(Answer.YES);
    assertThat(shop.warmth().warmUp().deletableAt().map(Place::line)).contains(deletable);
  }

  /** Whatever a code without meaning did, it did behind the 300 s of the move. */
  @Test
  void aMoveBeforeACodeWithoutMeaningBoundsNothing() {
    WarmUpDemand d = Shop.DEMAND;
    WarmUpDemand unnamed =
        new WarmUpDemand(
            d.timeSeconds(),
            d.minRpm(),
            d.codeRpm(),
            d.validForSeconds(),
            d.idleSeconds(),
            d.before(),
            false);
    Shop shop = new Shop(unnamed, Shop.TIMES, Optional.of(FIGURES));
    shop.program().m3(30_000).g0(0, 0, 0).g1(50, 0, 0, 10).unknownCode().end();
    Band bounds = shop.warmth().growth().orElseThrow().sinceCold().boundsUm().orElseThrow();
    assertThat(bounds.low()).isCloseTo(0, within(1e-9));
    assertThat(bounds.high()).isCloseTo(36, within(1e-9));
  }

  /** Warmed up before at a speed that is not known: nothing from 0 to 60000 rpm is excluded. */
  @Test
  void aWarmUpBeforeAtAnUnknownSpeedIsADoubt() {
    GrowthFigures f = FIGURES;
    GrowthFigures before =
        new GrowthFigures(
            f.atRpm(),
            f.amountUm(),
            f.timeConstantS(),
            f.exponent(),
            0,
            f.slowestRpm(),
            f.fastestRpm(),
            true,
            OptionalDouble.empty(),
            OptionalDouble.empty());
    Drift grown = turning(follower(before), 30_000).sinceCold();
    assertThat(grown.boundsUm().orElseThrow().low()).isCloseTo(0, within(1e-9));
    assertThat(grown.boundsUm().orElseThrow().high()).isCloseTo(36, within(1e-9));
    assertThat(grown.doubts())
        .extracting(Doubt::reason)
        .containsExactly("the speed of the warm-up before the program is not known");
    assertThat(turning(follower(FIGURES), 30_000).sinceCold().doubts()).isEmpty();
  }
}

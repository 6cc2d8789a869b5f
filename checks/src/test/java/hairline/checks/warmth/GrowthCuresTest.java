package hairline.checks.warmth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.cutting.Band;
import hairline.checks.stock.Cut;
import hairline.checks.warmth.StepGrowth.Told;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * What would make growth small enough, by the lag g(t) = 18 µm · (1 − e^(−t/720 s)): measured at
 * 300 s, level 1 cut from 300 to 360 s, level 2 from 360.24 to 420.24 s.
 */
class GrowthCuresTest {
  /** From 300 to 420.24 s: 1.8250 µm. */
  private static final double DRIFT_UM = LevelShop.grownUm(420.24) - LevelShop.grownUm(300);

  private static LevelShop shop() {
    LevelShop shop = new LevelShop().measuredAt300().cut(1).cut(2);
    shop.program().end();
    return shop;
  }

  @Test
  void aDriftFallsToItsEThInATimeConstant() {
    Told told = shop().told(1, 2);
    assertThat(GrowthCures.moreWarmUpSeconds(told, DRIFT_UM / StrictMath.E).orElseThrow())
        .isCloseTo(LevelShop.TAU_S, within(1e-6));
    // So much later in the life of the spindle the same 120.24 s make no more than 1 µm.
    double seconds = GrowthCures.moreWarmUpSeconds(told, 1).orElseThrow();
    assertThat(LevelShop.grownUm(420.24 + seconds) - LevelShop.grownUm(300 + seconds))
        .isCloseTo(1, within(1e-9));
    assertThat(GrowthCures.moreWarmUpSeconds(shop().told(Cut.UNCUT, 2), 1).orElseThrow())
        .isCloseTo(seconds, within(1e-6));
  }

  @Test
  void aDriftThatIsSmallEnoughNeedsNoMore() {
    Told told = shop().told(1, 2);
    assertThat(GrowthCures.moreWarmUpSeconds(told, DRIFT_UM * 1.0001)).isEmpty();
    assertThat(GrowthCures.moreWarmUpSeconds(told, DRIFT_UM * 0.9999)).isPresent();
    assertThat(GrowthCures.moreWarmUpSeconds(told, 0)).isEmpty();
  }

  /** By typical figures a rule speaks, and is silent again. */
  @Test
  void theTypicalFigureIsWarmedUp() {
    LevelShop shop =
        new LevelShop(Optional.of(LevelShop.figures(new Band(9, 18, 27), new Band(600, 720, 840))));
    shop.measuredAt300().cut(1).cut(2).program().end();
    assertThat(GrowthCures.moreWarmUpSeconds(shop.told(1, 2), 1).orElseThrow())
        .isCloseTo(LevelShop.TAU_S * StrictMath.log(DRIFT_UM), within(1e-6));
  }

  @Test
  void aSpindleThatStoodBetweenIsAnotherMatter() {
    LevelShop shop = new LevelShop().measuredAt300().cut(1);
    shop.program().m5().dwell(60).m3(LevelShop.RPM);
    shop.cut(2).program().end();
    Told told = shop.told(1, 2);
    assertThat(GrowthCures.moreWarmUpSeconds(told, 0.01)).isEmpty();
    assertThat(GrowthCures.warmUpAtWorkingSpeed(told, 100_000, 100)).isFalse();
  }

  /** At 1000 rpm the spindle shrinks, so that the first contact at that speed counts. */
  @Test
  void aSpindleThatWasJustSetToAnotherSpeedDoesNotGoOn() {
    LevelShop shop = new LevelShop().measuredAt300().cut(1);
    shop.program().s(1000);
    shop.cut(2).program().end();
    Told told = shop.told(1, 2);
    assertThat(told.lower()).isEqualTo(shop.level(2).first());
    assertThat(GrowthCures.moreWarmUpSeconds(told, 0.01)).isEmpty();
    assertThat(GrowthCures.warmUpAtWorkingSpeed(told, 100_000, 100)).isFalse();
  }

  @Test
  void twoMeasuringsHaveNoCommonStretch() {
    LevelShop shop = new LevelShop().measuredAt300().cut(1);
    shop.program().measure();
    shop.cut(2).program().end();
    assertThat(GrowthCures.moreWarmUpSeconds(shop.told(1, 2), 0.01)).isEmpty();
    assertThat(GrowthCures.warmUpAtWorkingSpeed(shop.told(1, 2), 100_000, 100)).isFalse();
  }

  /** From cold 18 µm are to come; within 2 µm of the end after 720 s · ln 9 = 1582.0 s. */
  @Test
  void nearTheEndAfterSoManyTimeConstants() {
    LevelShop shop = shop();
    SpindleGrowth cold = SpindleGrowth.cold(LevelShop.figures(Band.ofExact(18), Band.ofExact(720)));
    GrowthPoint now = shop.level(1).first().growth().from(cold);
    assertThat(GrowthCures.secondsUntilNear(now, LevelShop.RPM, 2).orElseThrow())
        .isCloseTo(1582.0, within(0.05));
    assertThat(GrowthCures.secondsUntilNear(now, LevelShop.RPM, 18)).isEmpty();
    // At half the speed half the growth: 720 s · ln 4.5 = 1082.9 s.
    assertThat(GrowthCures.secondsUntilNear(now, LevelShop.RPM / 2, 2).orElseThrow())
        .isCloseTo(1082.9, within(0.05));
    // A spindle that shrinks comes near as well: 9 µm too long.
    GrowthPoint warm =
        now.from(
            SpindleGrowth.warm(
                LevelShop.figures(Band.ofExact(18), Band.ofExact(720)), LevelShop.RPM));
    assertThat(GrowthCures.secondsUntilNear(warm, LevelShop.RPM / 2, 2).orElseThrow())
        .isCloseTo(1082.9, within(0.05));
  }

  @Test
  void growthThatIsNotKnownHasNoTime() {
    LevelShop shop = new LevelShop();
    shop.program().m6(3).m3(LevelShop.RPM).dwell(60).stop("M0");
    shop.cut(1).program().end();
    assertThat(GrowthCures.secondsUntilNear(shop.level(1).first().growth(), LevelShop.RPM, 0.1))
        .isEmpty();
  }

  /**
   * After a warm-up of W from cold, the 120.24 s between the two contacts make 18 µm · e^(−W/720) ·
   * (1 − e^(−120.24/720)) = 2.7684 µm · e^(−W/720), which is 1 µm at W = 733.2 s.
   */
  @Test
  void aWarmUpAtWorkingSpeedDoesFromItsThresholdOn() {
    for (Told told : new Told[] {shop().told(1, 2), shop().told(Cut.UNCUT, 2)}) {
      assertThat(GrowthCures.warmUpAtWorkingSpeed(told, 733, 1)).isFalse();
      assertThat(GrowthCures.warmUpAtWorkingSpeed(told, 734, 1)).isTrue();
    }
    // The lower level cut first: the same, the other way round.
    assertThat(GrowthCures.warmUpAtWorkingSpeed(shop().told(2, 1), 733, 1)).isFalse();
    assertThat(GrowthCures.warmUpAtWorkingSpeed(shop().told(2, 1), 734, 1)).isTrue();
  }

  /** What is held against the limit are all figures of the sheet: half as much again at most. */
  @Test
  void aWarmUpMustDoForAllFigures() {
    LevelShop shop =
        new LevelShop(
            Optional.of(LevelShop.figures(new Band(9, 18, 27), Band.ofExact(LevelShop.TAU_S))));
    shop.measuredAt300().cut(1).cut(2).program().end();
    // 720 s · ln(1.5 · 2.7684) = 1025.1 s.
    assertThat(GrowthCures.warmUpAtWorkingSpeed(shop.told(1, 2), 1024, 1)).isFalse();
    assertThat(GrowthCures.warmUpAtWorkingSpeed(shop.told(1, 2), 1026, 1)).isTrue();
  }

  /** Measured anew before level 2, only its own 60 s count: g(420.24) − g(360.24) = 0.8726 µm. */
  @Test
  void measuringAgainLeavesTheDriftWithinTheLevel() {
    LevelShop shop = shop();
    for (int upper : new int[] {Cut.UNCUT, 1}) {
      Told told = shop.told(upper, 2);
      assertThat(GrowthCures.measuringAgain(told, shop.level(2), 0.87)).as("" + upper).isFalse();
      assertThat(GrowthCures.measuringAgain(told, shop.level(2), 0.88)).as("" + upper).isTrue();
    }
  }

  /**
   * The lower level first: its first contact at 300 s is the new measuring, the upper level has
   * grown from 300 to 420.24 s, 1.8250 µm.
   */
  @Test
  void whatTheUpperLevelHasGrownStays() {
    LevelShop shop = shop();
    Told told = shop.told(2, 1);
    assertThat(GrowthCures.measuringAgain(told, shop.level(1), 1.8245)).isFalse();
    assertThat(GrowthCures.measuringAgain(told, shop.level(1), 1.8255)).isTrue();
  }

  @Test
  void measuringAgainIsNoCureWhereTheUpperLevelIsNotMeasured() {
    LevelShop shop = new LevelShop();
    shop.program().m6(3).m3(LevelShop.RPM);
    shop.cut(1).cut(2).program().end();
    assertThat(GrowthCures.measuringAgain(shop.told(1, 2), shop.level(2), 100)).isFalse();
  }

  /** A dwell of unknown length may add anything up to the end of growth. */
  @Test
  void measuringAgainIsNoCureWhereTheTimeIsNotKnown() {
    LevelShop shop = new LevelShop().measuredAt300().cut(1);
    shop.program().stop("M0");
    shop.cut(1).program().end();
    Told told = shop.told(Cut.UNCUT, 1);
    assertThat(told.drift().isKnown()).isFalse();
    assertThat(GrowthCures.measuringAgain(told, shop.level(1), 0.5)).isFalse();
  }
}

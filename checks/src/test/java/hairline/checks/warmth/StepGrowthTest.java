package hairline.checks.warmth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.stock.Cut;
import hairline.checks.warmth.StepGrowth.Kind;
import hairline.checks.warmth.StepGrowth.NotTold;
import hairline.checks.warmth.StepGrowth.Told;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * What growth makes of a step, by the first-order lag of 18 µm and 720 s. A cut takes 60 s; the
 * rapid move of 60 mm back at 15 m/min takes 0.24 s.
 */
class StepGrowthTest {
  /** When the second cut begins: measured at 300 s, one cut, one way back. */
  private static final double SECOND = 360.24;

  private static double um(Told told) {
    return told.drift().um().orElseThrow().typical();
  }

  @Test
  void betweenTwoLevelsOfOneToolTheFarthestContactsCount() {
    LevelShop shop = new LevelShop().measuredAt300().cut(1).cut(2);
    shop.program().end();
    // The upper level from 300 to 360 s, the lower from 360.24 to 420.24 s.
    Told told = shop.told(1, 2);
    assertThat(told.kind()).isEqualTo(Kind.BETWEEN_LEVELS);
    assertThat(um(told))
        .isCloseTo(LevelShop.grownUm(SECOND + 60) - LevelShop.grownUm(300), within(1e-9));
    assertThat(told.upper()).contains(shop.level(1).first());
    assertThat(told.lower()).isEqualTo(shop.level(2).last());
    // The same two the other way round: growth makes the step lower.
    Told swapped = shop.told(2, 1);
    assertThat(um(swapped)).isCloseTo(-um(told), within(1e-9));
    assertThat(swapped.lower()).isEqualTo(shop.level(1).first());
    assertThat(swapped.upper()).contains(shop.level(2).last());
  }

  @Test
  void againstUncutStockGrowthSinceMeasuringCounts() {
    LevelShop shop = new LevelShop().measuredAt300().cut(1).cut(2);
    shop.program().end();
    Told told = shop.told(Cut.UNCUT, 2);
    assertThat(told.kind()).isEqualTo(Kind.UNCUT_UPPER);
    assertThat(um(told))
        .isCloseTo(LevelShop.grownUm(SECOND + 60) - LevelShop.grownUm(300), within(1e-9));
    assertThat(told.upper()).isEmpty();
    assertThat(told.lower()).isEqualTo(shop.level(2).last());
  }

  @Test
  void measuredBetweenEachLevelHasItsOwn() {
    LevelShop shop = new LevelShop().measuredAt300().cut(1);
    shop.program().measure();
    shop.cut(2).program().end();
    // Upper level grown by up to g(360) − g(300), lower by up to g(432.24) − g(372.24): less. So
    // the last contact with the upper and the first with the lower lie farthest apart.
    Told told = shop.told(1, 2);
    assertThat(told.kind()).isEqualTo(Kind.TWO_MEASURINGS);
    assertThat(um(told))
        .isCloseTo(-(LevelShop.grownUm(360) - LevelShop.grownUm(300)), within(1e-9));
    assertThat(told.upper()).contains(shop.level(1).last());
    assertThat(told.lower()).isEqualTo(shop.level(2).first());
  }

  @Test
  void aToolThatIsNotMeasuredIsNamed() {
    LevelShop shop = new LevelShop();
    shop.program().m6(5).m3(LevelShop.RPM);
    shop.cut(1).measuredAt300().cut(2).program().end();
    assertThat(shop.step(LevelShop.terrace(1, 5), LevelShop.terrace(2, 3)))
        .isEqualTo(notMeasured("tool 5"));
    assertThat(shop.step(LevelShop.terrace(2, 3), LevelShop.terrace(1, 5)))
        .isEqualTo(notMeasured("tool 5"));
    assertThat(shop.step(LevelShop.terrace(Cut.UNCUT, 0), LevelShop.terrace(1, 5)))
        .isEqualTo(notMeasured("tool 5"));
    assertThat(shop.step(LevelShop.terrace(Cut.UNCUT, 0), LevelShop.terrace(1, Optional.empty())))
        .isEqualTo(notMeasured("the tool"));
  }

  @Test
  void oneToolThatIsNeverMeasuredStillKeepsItsLength() {
    LevelShop shop = new LevelShop();
    shop.program().m6(3).m3(LevelShop.RPM);
    shop.cut(1).cut(2).program().end();
    Told told = shop.told(1, 2);
    assertThat(told.kind()).isEqualTo(Kind.BETWEEN_LEVELS);
    // From cold: 0 to 60 s, and 60.24 to 120.24 s.
    assertThat(um(told)).isCloseTo(LevelShop.grownUm(120.24), within(1e-9));
  }

  @Test
  void twoToolsThatAreNeverMeasuredHaveNothingInCommon() {
    LevelShop shop = new LevelShop();
    shop.program().m6(5).m3(LevelShop.RPM);
    shop.cut(1).program().m6(3).m3(LevelShop.RPM);
    shop.cut(2).program().end();
    assertThat(shop.step(LevelShop.terrace(1, 5), LevelShop.terrace(2, 3)))
        .isEqualTo(notMeasured("tool 5"));
  }

  private static NotTold notMeasured(String tool) {
    return new NotTold(
        tool + " is not measured in the program before it cuts, so growth since is not known",
        Optional.of("machine.codes.measure_tool"));
  }

  @Test
  void aLevelThatWasNotCutIsNotTold() {
    LevelShop shop = new LevelShop().measuredAt300().cut(1);
    shop.program().end();
    NotTold notKnown = new NotTold("growth while a level was cut is not known", Optional.empty());
    assertThat(shop.step(1, 7)).isEqualTo(notKnown);
    assertThat(shop.step(7, 1)).isEqualTo(notKnown);
  }

  @Test
  void eitherLevelCutColdMakesTheStepCold() {
    LevelShop shop = new LevelShop().measuredAt300().cut(1);
    // 420 s more make the 720 s that warm up.
    shop.program().dwell(420);
    shop.cut(2).cut(3).program().end();
    assertThat(shop.told(1, 2).cold()).isTrue();
    assertThat(shop.told(2, 1).cold()).isTrue();
    assertThat(shop.told(2, 3).cold()).isFalse();
    assertThat(shop.told(Cut.UNCUT, 1).cold()).isTrue();
    assertThat(shop.told(Cut.UNCUT, 2).cold()).isFalse();
  }
}

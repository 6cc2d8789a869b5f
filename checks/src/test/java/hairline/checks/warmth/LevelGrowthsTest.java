package hairline.checks.warmth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.motion.Event;
import hairline.checks.stock.Cut;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Which contacts of a level are kept; times by hand, 4 s of tool change before the spindle. */
class LevelGrowthsTest {
  private static double um(LevelGrowth.Contact contact) {
    return contact.growth().um().orElseThrow().typical();
  }

  @Test
  void theStartOfTheFirstAndTheEndOfTheLast() {
    LevelShop shop = new LevelShop().measuredAt300().cut(1).cut(2).cut(1);
    shop.program().end();
    LevelGrowth level = shop.level(1);
    assertThat(level.levelId()).isEqualTo(1);
    assertThat(level.first().seconds()).isCloseTo(304, within(1e-9));
    assertThat(um(level.first())).isCloseTo(LevelShop.grownUm(300), within(1e-9));
    // Three cuts of 60 s and two ways back of 0.24 s later.
    assertThat(level.last().seconds()).isCloseTo(484.48, within(1e-9));
    assertThat(um(level.last())).isCloseTo(LevelShop.grownUm(480.48), within(1e-9));
    assertThat(level.last().at().line()).isGreaterThan(level.first().at().line());
    assertThat(level.last().sinceMeasuring().orElseThrow().um().orElseThrow().typical())
        .isCloseTo(LevelShop.grownUm(480.48) - LevelShop.grownUm(300), within(1e-9));
  }

  @Test
  void onlyContactsThatRunAtALevelCount() {
    LevelShop shop = new LevelShop().measuredAt300();
    shop.program().level(1).g0(60, 0, 0);
    shop.program().cutting(true).level(2).g1(60, 0, -1, 60);
    shop.program().level(Cut.UNCUT).g1(0, 0, -1, 60).level(Cut.NO_LEVEL).g1(60, 0, -1, 60);
    shop.program().end();
    assertThat(shop.levels().of(1)).as("a rapid move").isEmpty();
    assertThat(shop.levels().of(2)).as("a plunge").isEmpty();
    assertThat(shop.levels().of(Cut.UNCUT)).isEmpty();
    assertThat(shop.levels().of(Cut.NO_LEVEL)).isEmpty();
  }

  @Test
  void aLevelIsColdByAnyFineContact() {
    LevelShop shop = new LevelShop().measuredAt300().cut(1);
    shop.program().cutting(false).level(1).g1(60, 0, 0, 60);
    shop.program().level(2).g1(0, 0, 0, 60).end();
    assertThat(shop.level(1).cold()).isTrue();
    // No fine cut, so nothing to be warm for.
    assertThat(shop.level(2).cold()).isFalse();
  }

  @Test
  void withoutFiguresOfGrowthNothingIsKept() {
    LevelShop shop = new LevelShop(Optional.empty()).measuredAt300().cut(1);
    shop.program().end();
    assertThat(shop.levels().of(1)).isEmpty();
  }

  @Test
  void everyEventIsHandedOn() {
    LevelShop shop = new LevelShop().cut(1);
    shop.program().end();
    assertThat(shop.events()).filteredOn(Event.Ended.class::isInstance).hasSize(1);
    // The start and the way back come as they are; the program makes cuts of moves from the cut on.
    assertThat(shop.events()).filteredOn(Cut.class::isInstance).hasSize(2);
    assertThat(shop.events()).filteredOn(Event.BlockStarted.class::isInstance).hasSize(4);
  }
}

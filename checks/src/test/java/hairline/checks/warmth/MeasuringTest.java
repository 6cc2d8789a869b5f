package hairline.checks.warmth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.motion.Event;
import hairline.checks.motion.Modal;
import hairline.checks.motion.Modes.Spindle;
import hairline.checks.motion.Place;
import hairline.checks.timing.Answer;
import hairline.checks.timing.Cause;
import hairline.checks.timing.Gap;
import hairline.checks.timing.TimeTaken;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * When a tool was measured, how warm the spindle was, and how it stood since. That tools are
 * measured warm, at working speed, is common practice, no source. A tool change takes 4 s,
 * measuring 12 s; times are worked out by hand.
 */
class MeasuringTest {
  private Shop shop = new Shop();

  private Measuring measuring() {
    return shop.warmth().measuring().orElseThrow();
  }

  private TimeTaken stop() {
    return shop.warmth().longestStopSinceMeasuring().orElseThrow().time();
  }

  private int stopLine() {
    return shop.warmth().longestStopSinceMeasuring().orElseThrow().from().line();
  }

  private double stopSeconds() {
    TimeTaken stop = stop();
    assertThat(stop.isKnown()).isTrue();
    return stop.atLeastSeconds();
  }

  private static Optional<Integer> line(Optional<Place> place) {
    return place.map(Place::line);
  }

  @Test
  void noneAtTheStart() {
    shop.program().m6(3).m3(20000).dwell(1).end();
    assertThat(shop.warmth().measuring()).isEmpty();
    assertThat(shop.warmth().timeSinceMeasuring()).isEmpty();
    assertThat(shop.warmth().longestStopSinceMeasuring()).isEmpty();
    assertThat(shop.warmth().measuredSinceChange()).isFalse();
    assertThat(line(shop.warmth().toolChangedAt())).hasValue(1);
  }

  @Test
  void measuredWarm() {
    shop.program().m6(3).m3(20000).dwell(720).measure().dwell(5).end();
    assertThat(measuring().at().line()).isEqualTo(4);
    // 4 + 720 + 12
    assertThat(measuring().secondsAtEnd()).isEqualTo(736);
    assertThat(measuring().rpm()).hasValue(20000);
    assertThat(measuring().warmUp().valid()).isEqualTo(Answer.YES);
    assertThat(measuring().deletable()).isFalse();
    assertThat(measuring().optionalStopAt()).isEmpty();
    assertThat(shop.warmth().measuredSinceChange()).isTrue();
    assertThat(shop.warmth().timeSinceMeasuring()).hasValue(TimeTaken.of(5));
  }

  @Test
  void theWarmUpMustStandBehindIt() {
    // Measuring itself would fill the last 12 s.
    shop.program().m3(20000).dwell(708).measure().end();
    assertThat(measuring().warmUp().valid()).isEqualTo(Answer.NO);
    assertThat(shop.warmth().warmUp().valid()).isEqualTo(Answer.YES);
  }

  @Test
  void itCountsFromItsEndOn() {
    shop.program().m3(20000).measure();
    assertThat(shop.warmth().measuring()).isEmpty();
    assertThat(shop.warmth().measuredSinceChange()).isFalse();
    shop.program().dwell(7);
    assertThat(shop.warmth().timeSinceMeasuring()).hasValue(TimeTaken.NONE);
  }

  @Test
  void measuredStanding() {
    shop.program().measure().end();
    assertThat(measuring().rpm()).hasValue(0);
  }

  @Test
  void measuredAtAnUnknownSpeed() {
    shop.program().m3WithoutSpeed().measure().end();
    assertThat(measuring().rpm()).isEmpty();
    shop = new Shop();
    shop.program().spindleUnknown().measure().end();
    assertThat(measuring().rpm()).isEmpty();
  }

  @Test
  void theLastMeasuringCounts() {
    shop.program().measure().m3(20000).dwell(720).measure().end();
    assertThat(measuring().at().line()).isEqualTo(4);
    assertThat(measuring().warmUp().valid()).isEqualTo(Answer.YES);
  }

  @Test
  void eachToolHasItsOwn() {
    shop.program().m6(3).measure().m6(5).m3(20000).dwell(720).measure().m6(3).dwell(1).end();
    assertThat(measuring().at().line()).isEqualTo(2);
    assertThat(measuring().warmUp().valid()).isEqualTo(Answer.NO);
    assertThat(shop.warmth().measuredSinceChange()).isFalse();
    assertThat(line(shop.warmth().toolChangedAt())).hasValue(7);
    // 4 (change) + 720 + 12 + 4 + 1
    assertThat(shop.warmth().timeSinceMeasuring()).hasValue(TimeTaken.of(741));
    shop.program().m6(5).end();
    assertThat(measuring().at().line()).isEqualTo(6);
    shop.program().m6(4).end();
    assertThat(shop.warmth().measuring()).isEmpty();
  }

  @Test
  void theToolThatIsThereFromTheStart() {
    shop.program().measure().m6(3).end();
    assertThat(shop.warmth().measuring()).isEmpty();
    shop.program().m6(Modal.unset()).end();
    assertThat(measuring().at().line()).isEqualTo(1);
  }

  @Test
  void aToolOfUnknownNumber() {
    shop.program().m6(Modal.unknown(1)).measure().dwell(20).end();
    assertThat(measuring().at().line()).isEqualTo(2);
    // It stands since the start.
    assertThat(stopSeconds()).isEqualTo(20);
    shop.program().m6(3).end();
    assertThat(shop.warmth().measuring()).isEmpty();
    shop.program().m6(Modal.unknown(1)).end();
    assertThat(shop.warmth().measuring()).isEmpty();
  }

  @Test
  void theStopSinceMeasuring() {
    shop.program().m3(20000).measure().dwell(100).m5().dwell(60).m3(20000).dwell(1).end();
    assertThat(stopSeconds()).isEqualTo(60);
  }

  @Test
  void theLongestOfSeveral() {
    shop.program().m3(20000).measure().m5().dwell(20).m3(20000).dwell(1).m5().dwell(50);
    shop.program().m3(20000).dwell(1).m5().dwell(30).end();
    assertThat(stopSeconds()).isEqualTo(50);
  }

  @Test
  void whereTheLongestStopBegan() {
    // It began at M5, not at the dwell; the program's own start is its first line.
    shop.program().m3(20000).measure().m5().dwell(20).m3(1).dwell(1).m5().dwell(50).dwell(1);
    shop.program().m3(20000).dwell(1).m5().dwell(30).end();
    assertThat(stopLine()).isEqualTo(7);
    assertThat(stopSeconds()).isEqualTo(51);
    shop = new Shop();
    shop.program().m3(20000).measure().dwell(1).m6(3).dwell(1).end();
    shop.program().m6(Modal.unset()).dwell(1).end();
    assertThat(stopLine()).isEqualTo(4);
    shop = new Shop();
    shop.program().m3(20000).measure().dwell(1).stop("M0").end();
    assertThat(stopLine()).isEqualTo(4);
    shop = new Shop();
    shop.program().m3(20000).measure().m5().dwell(10).stop("M0").end();
    assertThat(stopLine()).isEqualTo(3);
  }

  @Test
  void aStopThatBeganBeforeMeasuringCountsFromThere() {
    shop.program().m3(20000).dwell(1).m5().dwell(9).measure().dwell(5).m3(20000).dwell(1).end();
    assertThat(stopLine()).isEqualTo(5);
    assertThat(stopSeconds()).isEqualTo(5);
    shop.program().m5().dwell(3).m3(20000).dwell(1).end();
    assertThat(stopLine()).isEqualTo(5);
    shop.program().m5().dwell(6).m3(20000).dwell(1).end();
    assertThat(stopSeconds()).isEqualTo(6);
    assertThat(stopLine()).isEqualTo(15);
  }

  @Test
  void aStopThatGoesOn() {
    shop.program().m3(20000).measure().m5().dwell(20).dwell(45);
    assertThat(stopSeconds()).isEqualTo(20);
    shop.program().end();
    assertThat(stopSeconds()).isEqualTo(65);
  }

  @Test
  void onlyThePartBehindMeasuringCounts() {
    shop.program().dwell(100).measure().dwell(30).m3(20000).dwell(1).end();
    assertThat(stopSeconds()).isEqualTo(30);
  }

  @Test
  void aToolChangeIsAStop() {
    shop.program().m6(3).m3(20000).measure().m6(3).m3(20000).dwell(1).end();
    assertThat(stopSeconds()).isEqualTo(4);
    shop = new Shop();
    shop.program().m6(3).m3(20000).measure().m5().dwell(10).m6(3).dwell(20).m3(9000).dwell(1);
    assertThat(stopSeconds()).isEqualTo(34);
  }

  @Test
  void theToolThatIsCalledAgainStaysWhereItIs() {
    shop.program().m6(3).m3(20000).measure().m6(3).dwell(1).end();
    assertThat(shop.warmth().measuredSinceChange()).isTrue();
    assertThat(line(shop.warmth().toolChangedAt())).hasValue(1);
    shop.program().m6(Modal.unknown(1)).m6(Modal.unknown(1)).end();
    assertThat(shop.warmth().measuredSinceChange()).isFalse();
  }

  @Test
  void stopsWithAnotherToolCount() {
    shop.program().m6(3).m3(20000).measure().m6(5).dwell(100).m3(20000).dwell(1).m6(3).end();
    assertThat(stopSeconds()).isEqualTo(104);
  }

  @Test
  void measuringAnewForgetsThem() {
    shop.program().m3(20000).measure().m5().dwell(100).m3(20000).measure().dwell(1).end();
    assertThat(stopSeconds()).isZero();
  }

  @Test
  void slowRunningIsNoStop() {
    shop.program().m3(20000).measure().s(1).dwell(1000).end();
    assertThat(stopSeconds()).isZero();
  }

  @Test
  void aWarmUpCodeIsNoStop() {
    shop.program().m3(20000).measure().m5().dwell(40).warmUp().dwell(50).end();
    assertThat(stopSeconds()).isEqualTo(50);
  }

  @Test
  void theOperatorStopsLongerThanAnyLimit() {
    for (String code : List.of("M0", "M60")) {
      shop = new Shop();
      shop.program().m3(20000).measure().stop(code).dwell(10).end();
      TimeTaken stop = stop();
      assertThat(stop.exceeds(1e9)).isEqualTo(Answer.YES);
      assertThat(stop.gaps()).extracting(gap -> gap.at().line()).containsExactly(3);
    }
    shop = new Shop();
    shop.program().m3(20000).measure().stop("M1").dwell(10).end();
    assertThat(stopSeconds()).isZero();
  }

  @Test
  void anUnknownSpindleMayStand() {
    shop.program().m3(20000).measure().spindleUnknown().dwell(70).end();
    TimeTaken stop = stop();
    assertThat(stop.exceeds(60)).isEqualTo(Answer.UNKNOWN);
    assertThat(stop.exceeds(70)).isEqualTo(Answer.NO);
    assertThat(stop.gaps()).extracting(Gap::cause).containsExactly(Cause.SPINDLE);
    assertThat(stop.gaps()).extracting(gap -> gap.at().line()).containsExactly(4);
  }

  @Test
  void anUnknownStopBeforeAnUnknownSpindle() {
    shop.program().m3(20000).measure().m5().dwellWithoutUnit().spindleUnknown().dwell(70).end();
    TimeTaken stop = stop();
    assertThat(stop.gaps()).extracting(Gap::cause).containsExactly(Cause.DWELL_UNIT, Cause.SPINDLE);
    assertThat(stop.atLeastSeconds()).isZero();
  }

  @Test
  void aDeletableMeasuring() {
    shop.program().dwell(1).deletable().measure().end();
    assertThat(measuring().deletable()).isTrue();
    shop.program().measure().end();
    assertThat(measuring().deletable()).isFalse();
    shop.program().deletable().call().measure().back().end();
    assertThat(measuring().deletable()).isTrue();
  }

  @Test
  void anOptionalStopInTheBlockOfMeasuring() {
    shop.program().measure().sameBlock().stop("M1").end();
    assertThat(line(measuring().optionalStopAt())).hasValue(1);
    assertThat(measuring().at().line()).isEqualTo(1);
    shop.program().measure().stop("M1").end();
    assertThat(measuring().optionalStopAt()).isEmpty();
    shop.program().warmUp().sameBlock().stop("M1").end();
    assertThat(measuring().optionalStopAt()).isEmpty();
  }

  @Test
  void whenTheSpeedLastChanged() {
    assertThat(shop.warmth().speedChangedAt()).isEmpty();
    shop.program().dwell(3).end();
    assertThat(shop.warmth().timeSinceSpeedChange()).isEqualTo(TimeTaken.of(3));
    shop.program().m3(20000).dwell(10).end();
    assertThat(line(shop.warmth().speedChangedAt())).hasValue(3);
    assertThat(shop.warmth().timeSinceSpeedChange()).isEqualTo(TimeTaken.of(10));
    shop.program().m3(20000).dwell(10).end();
    assertThat(line(shop.warmth().speedChangedAt())).hasValue(3);
    assertThat(shop.warmth().timeSinceSpeedChange()).isEqualTo(TimeTaken.of(20));
    shop.program().m5().dwell(1).end();
    assertThat(line(shop.warmth().speedChangedAt())).hasValue(3);
    shop.program().spindle(Spindle.COUNTER_CLOCKWISE, 20000).dwell(1).end();
    assertThat(line(shop.warmth().speedChangedAt())).hasValue(12);
    shop.program().s(30000).dwell(2).end();
    assertThat(line(shop.warmth().speedChangedAt())).hasValue(15);
    assertThat(shop.warmth().timeSinceSpeedChange().atLeastSeconds()).isCloseTo(2, within(1e-9));
  }

  @Test
  void tooManyTools() {
    for (int tool = 1; tool <= SpindleWarmth.MOST_TOOLS + 2; tool++) {
      shop.program().m6(tool).measure().end();
      // Even beyond, the one in the spindle is known.
      assertThat(measuring().at().line()).isEqualTo(3 * tool - 1);
    }
    assertThat(shop.events())
        .filteredOn(event -> event instanceof Event.CapReached)
        .singleElement()
        .satisfies(
            event -> {
              assertThat(((Event.CapReached) event).cap()).isEqualTo(SpindleWarmth.MOST_TOOLS);
              assertThat(event.at().line()).isEqualTo(3 * SpindleWarmth.MOST_TOOLS + 2);
            });
    shop.program().dwell(9).end();
    assertThat(stopSeconds()).isEqualTo(9);
    shop.program().m6(SpindleWarmth.MOST_TOOLS + 1).end();
    assertThat(shop.warmth().measuring()).isEmpty();
    shop.program().m6(SpindleWarmth.MOST_TOOLS).measure().end();
    assertThat(measuring().at().line()).isEqualTo(shop.program().line() - 1);
    shop.program().m6(1).m6(SpindleWarmth.MOST_TOOLS).end();
    assertThat(shop.warmth().measuring()).isPresent();
  }
}

package hairline.checks.warmth;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.motion.Event;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Modes.Spindle;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.timing.Answer;
import hairline.checks.timing.Programs;
import hairline.parser.Problem;
import hairline.parser.Span;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.assertj.core.api.AbstractComparableAssert;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/**
 * What a warm-up is and when it expires, on times worked out by hand.
 *
 * <p>That a spindle is warmed up before fine work, and anew after a long stop, and that a stop at
 * M0 is one, is common practice, no source. The figures are those of one sheet: 720 s at 20000 rpm
 * with no stop longer than 60 s, valid for a stop of 1200 s. A tool change takes 4 s, measuring 12
 * s.
 */
class SpindleWarmthTest {
  private static final Span SPAN = new Span(1, 2);

  private Shop shop = new Shop();

  private WarmUp warmUp() {
    return shop.warmth().warmUp();
  }

  private AbstractComparableAssert<?, Answer> assertValid() {
    return assertThat(warmUp().valid());
  }

  private static Optional<Integer> line(Optional<Place> place) {
    return place.map(p -> p.line());
  }

  /** The shop with another sheet. */
  private void demand(WarmUpDemand demand) {
    shop = new Shop(demand, Shop.TIMES);
  }

  private static WarmUpDemand named(boolean codesNamed) {
    WarmUpDemand d = Shop.DEMAND;
    return new WarmUpDemand(
        d.timeSeconds(),
        d.minRpm(),
        d.codeRpm(),
        d.validForSeconds(),
        d.idleSeconds(),
        d.before(),
        codesNamed);
  }

  private static WarmUpDemand codeAt(double rpm) {
    WarmUpDemand d = Shop.DEMAND;
    return new WarmUpDemand(
        d.timeSeconds(),
        d.minRpm(),
        OptionalDouble.of(rpm),
        d.validForSeconds(),
        d.idleSeconds(),
        d.before(),
        true);
  }

  private static WarmUpDemand before() {
    WarmUpDemand d = Shop.DEMAND;
    return new WarmUpDemand(
        d.timeSeconds(), d.minRpm(), d.codeRpm(), d.validForSeconds(), d.idleSeconds(), true, true);
  }

  private static WarmUpDemand missing(boolean time, boolean minRpm, boolean validFor) {
    WarmUpDemand d = Shop.DEMAND;
    return new WarmUpDemand(
        time ? OptionalDouble.empty() : d.timeSeconds(),
        minRpm ? OptionalDouble.empty() : d.minRpm(),
        d.codeRpm(),
        validFor ? OptionalDouble.empty() : d.validForSeconds(),
        d.idleSeconds(),
        false,
        true);
  }

  @Nested
  class SpelledOut {
    @Test
    void aColdStart() {
      shop.program().g0(0, 0, 0).end();
      assertValid().isEqualTo(Answer.NO);
      assertThat(warmUp().expiredAt()).isEmpty();
      assertThat(warmUp().doubts()).isEmpty();
    }

    @Test
    void exactlyTheTimeAsked() {
      shop.program().m3(20000).dwell(720).end();
      assertThat(warmUp())
          .isEqualTo(
              new WarmUp(
                  Answer.YES,
                  Optional.of(new Place(0, 2, SPAN)),
                  Optional.empty(),
                  List.of(),
                  Optional.empty(),
                  Optional.empty()));
    }

    @Test
    void oneSecondLess() {
      shop.program().m3(20000).dwell(719).end();
      assertValid().isEqualTo(Answer.NO);
    }

    @Test
    void oneRevolutionAMinuteLess() {
      shop.program().m3(19999).dwell(7200).end();
      assertValid().isEqualTo(Answer.NO);
    }

    @Test
    void itIsValidOnlyFromItsEndOn() {
      shop.program().m3(20000).dwell(720);
      assertValid().isEqualTo(Answer.NO);
      shop.program().dwell(0);
      assertValid().isEqualTo(Answer.YES);
    }

    @Test
    void cuttingCounts() {
      // 60 mm at F10 is 360 s, twice.
      shop.program().g0(0, 0, 0).m3(25000).g1(60, 0, 0, 10).g1(0, 0, 0, 10).end();
      assertValid().isEqualTo(Answer.YES);
    }

    @Test
    void aMoveTellsOfASpindleThatNoOtherEventTold() {
      // The modes of the move are those of the last block, whatever became of its other events.
      for (boolean asCuts : new boolean[] {false, true}) {
        shop = new Shop();
        Programs other = new Programs(event -> {});
        Modes turning = other.m3(20000).modes();
        if (asCuts) {
          shop.program().asCuts();
        }
        shop.program().g0(0, 0, 0).taking(turning).sameBlock().g1(120, 0, 0, 10).end();
        assertValid().isEqualTo(Answer.YES);
      }
    }

    @Test
    void inSumOverSeveralSpeeds() {
      shop.program().m3(20000).dwell(300).s(5000).dwell(600).s(30000).dwell(420).end();
      assertValid().isEqualTo(Answer.YES);
      assertThat(line(warmUp().since())).hasValue(6);
    }

    @Test
    void slowerRunningDoesNotCount() {
      shop.program().m3(20000).dwell(300).s(19999).dwell(600).s(30000).dwell(419).end();
      assertValid().isEqualTo(Answer.NO);
    }

    @Test
    void bothDirectionsCount() {
      shop.program().m3(20000).dwell(300).spindle(Spindle.COUNTER_CLOCKWISE, 20000).dwell(420);
      shop.program().end();
      assertValid().isEqualTo(Answer.YES);
    }

    @Test
    void aStopOfTheLongestIdleTimeDoesNotBreakIt() {
      shop.program().m3(20000).dwell(719).m5().dwell(60).m3(20000).dwell(1).end();
      assertValid().isEqualTo(Answer.YES);
    }

    @Test
    void aStopLongerThanThatBreaksIt() {
      shop.program().m3(20000).dwell(719).m5().dwell(60.001).m3(20000).dwell(719).end();
      assertValid().isEqualTo(Answer.NO);
      shop.program().dwell(1).end();
      assertValid().isEqualTo(Answer.YES);
    }

    @Test
    void aStopOfSeveralBlocksIsOneStop() {
      shop.program().m3(20000).dwell(719).m5().dwell(30).dwell(30.001).m3(20000).dwell(1).end();
      assertValid().isEqualTo(Answer.NO);
    }

    @Test
    void twoStopsAreTwo() {
      shop.program().m3(20000).dwell(700).m5().dwell(40).m3(5000).dwell(1).m5().dwell(40);
      shop.program().m3(20000).dwell(20).end();
      assertValid().isEqualTo(Answer.YES);
    }

    @Test
    void theSpindleStandsInAToolChange() {
      // 56 s and the 4 s of the change make 60 s.
      shop.program().m3(20000).dwell(719).m5().dwell(56).m6(2).m3(20000).dwell(1).end();
      assertValid().isEqualTo(Answer.YES);
      shop = new Shop();
      shop.program().m3(20000).dwell(719).m5().dwell(56.001).m6(2).m3(20000).dwell(1).end();
      assertValid().isEqualTo(Answer.NO);
    }

    @Test
    void theTimeOfAToolChangeDoesNotWarm() {
      shop.program().m3(20000).dwell(716).m6(2).m3(20000).dwell(3).end();
      assertValid().isEqualTo(Answer.NO);
      shop.program().dwell(1).end();
      assertValid().isEqualTo(Answer.YES);
    }

    @Test
    void theOperatorBreaksIt() {
      for (String code : List.of("M0", "M60")) {
        shop = new Shop();
        shop.program().m3(20000).dwell(719).stop(code).dwell(719).end();
        assertValid().isEqualTo(Answer.NO);
        shop.program().dwell(1).end();
        assertValid().isEqualTo(Answer.YES);
      }
    }

    @Test
    void anOptionalStopDoesNot() {
      shop.program().m3(20000).dwell(719).stop("M1").dwell(1).end();
      assertValid().isEqualTo(Answer.YES);
    }

    @Test
    void sWithoutM3WarmsNothing() {
      shop.program().s(30000).dwell(7200).end();
      assertValid().isEqualTo(Answer.NO);
    }

    @Test
    void m3WithSpeedZeroWarmsNothing() {
      shop.program().m3(0).dwell(7200).end();
      assertValid().isEqualTo(Answer.NO);
    }
  }

  @Nested
  class Expiry {
    private void warm() {
      shop.program().m3(20000).dwell(720).m5();
    }

    @Test
    void aStopOfTheTimeItIsValidFor() {
      warm();
      shop.program().dwell(1200).m3(20000).end();
      assertValid().isEqualTo(Answer.YES);
      assertThat(line(warmUp().since())).hasValue(2);
    }

    @Test
    void aLongerStop() {
      warm();
      shop.program().dwell(1200.001).m3(20000).end();
      assertValid().isEqualTo(Answer.NO);
      assertThat(line(warmUp().expiredAt())).hasValue(4);
      assertThat(warmUp().since()).isEmpty();
    }

    @Test
    void twoStopsThatTogetherAreLonger() {
      warm();
      shop.program().dwell(1200).m3(100).dwell(1).m5().dwell(1200).m3(20000).end();
      assertValid().isEqualTo(Answer.YES);
    }

    @Test
    void afterwardsTheWholeWarmUpIsDue() {
      warm();
      shop.program().dwell(1201).m3(20000).dwell(719).end();
      assertValid().isEqualTo(Answer.NO);
      shop.program().dwell(1).end();
      assertValid().isEqualTo(Answer.YES);
      assertThat(line(warmUp().since())).hasValue(8);
      assertThat(warmUp().expiredAt()).isEmpty();
    }

    @Test
    void runningOnAheadOfTheStopSavesNothing() {
      shop.program().m3(20000).dwell(1500).m5().dwell(1201).m3(20000).dwell(719).end();
      assertValid().isEqualTo(Answer.NO);
    }

    @Test
    void theOperatorTakesLonger() {
      for (String code : List.of("M0", "M60")) {
        shop = new Shop();
        shop.program().m3(20000).dwell(720).stop(code).end();
        assertValid().isEqualTo(Answer.NO);
        assertThat(line(warmUp().expiredAt())).hasValue(3);
      }
    }

    @Test
    void anOptionalStopTakesNoTime() {
      shop.program().m3(20000).dwell(720).stop("M1").end();
      assertValid().isEqualTo(Answer.YES);
    }

    @Test
    void aToolChangeIsPartOfTheStop() {
      warm();
      shop.program().dwell(1196).m6(2).m3(20000).end();
      assertValid().isEqualTo(Answer.YES);
      warm();
      shop.program().dwell(1196.001).m6(2).m3(20000).end();
      assertValid().isEqualTo(Answer.NO);
    }

    @Test
    void warmingUpAgainChangesNothing() {
      shop.program().m3(20000).dwell(720).dwell(720).warmUp().end();
      assertThat(line(warmUp().since())).hasValue(2);
      shop.program().m5().dwell(1201).end();
      assertValid().isEqualTo(Answer.NO);
    }

    @Test
    void aStopBeforeTheProgramsWarmUpIsNone() {
      shop.program().dwell(5000).m3(20000).dwell(720).m5().dwell(1200).end();
      assertValid().isEqualTo(Answer.YES);
    }

    @Test
    void itOutlivesStopsThatWouldHaveBrokenIt() {
      warm();
      shop.program().dwell(61).m3(20000).dwell(1).m5().dwell(61).end();
      assertValid().isEqualTo(Answer.YES);
    }
  }

  @Nested
  class ByCode {
    @Test
    void aWarmUpCodeIsAWarmUp() {
      shop.program().warmUp();
      assertValid().isEqualTo(Answer.NO);
      shop.program().end();
      assertValid().isEqualTo(Answer.YES);
      assertThat(line(warmUp().since())).hasValue(1);
      assertThat(shop.time().secondsNow()).isEqualTo(720);
    }

    @Test
    void atTheSpeedCommanded() {
      shop.program().s(20000).warmUp().end();
      assertValid().isEqualTo(Answer.YES);
    }

    @Test
    void commandedTooSlowItWarmsNothing() {
      shop.program().m3(19999).warmUp().end();
      assertValid().isEqualTo(Answer.NO);
      assertThat(shop.warmth().run().fastestRpm()).hasValue(19999);
    }

    @Test
    void theSpeedOfTheSheetGoesFirst() {
      demand(codeAt(20000));
      shop.program().m3(4000).warmUp().end();
      assertValid().isEqualTo(Answer.YES);
      assertThat(shop.warmth().run().fastestRpm()).hasValue(20000);
      demand(codeAt(19999));
      shop.program().m3(40000).warmUp().end();
      assertValid().isEqualTo(Answer.NO);
    }

    @Test
    void itEndsAStop() {
      shop.program().m3(20000).dwell(720).m5().dwell(1000).warmUp().dwell(1000).end();
      assertValid().isEqualTo(Answer.YES);
      shop.program().dwell(201).end();
      assertValid().isEqualTo(Answer.NO);
    }

    @Test
    void aSlowOneEndsAStopToo() {
      shop.program().m3(20000).dwell(720).m5().s(5000).dwell(1000).warmUp().dwell(1000).end();
      assertValid().isEqualTo(Answer.YES);
    }

    @Test
    void itsTimeIsNoPartOfTheNextStop() {
      // The spindle stands behind it, as the modes say.
      shop.program().warmUp().dwell(1200).end();
      assertValid().isEqualTo(Answer.YES);
      shop.program().dwell(0.001).end();
      assertValid().isEqualTo(Answer.NO);
      assertThat(line(warmUp().expiredAt())).hasValue(4);
    }

    @Test
    void itsTimeNeedNotBeKnown() {
      shop = new Shop(missing(true, true, false), Shop.NO_TIMES);
      shop.program().m3(5000).warmUp().end();
      assertValid().isEqualTo(Answer.YES);
    }
  }

  @Nested
  class DoneBefore {
    @Test
    void itIsWarmFromTheStart() {
      demand(before());
      assertValid().isEqualTo(Answer.YES);
      shop.program().dwell(1200).m3(20000).end();
      assertThat(warmUp())
          .isEqualTo(
              new WarmUp(
                  Answer.YES,
                  Optional.empty(),
                  Optional.empty(),
                  List.of(),
                  Optional.empty(),
                  Optional.empty()));
    }

    @Test
    void itExpiresAsAnyOther() {
      demand(before());
      shop.program().dwell(1201).m3(20000).end();
      assertValid().isEqualTo(Answer.NO);
      assertThat(line(warmUp().expiredAt())).hasValue(1);
    }
  }

  @Nested
  class NotKnown {
    private void assertOneDoubt(String key, int line) {
      assertValid().isEqualTo(Answer.UNKNOWN);
      assertThat(warmUp().since()).isEmpty();
      assertThat(warmUp().doubts()).hasSize(1);
      Doubt doubt = warmUp().doubts().get(0);
      assertThat(doubt.key().orElse("")).isEqualTo(key);
      assertThat(line(doubt.at()).orElse(0)).isEqualTo(line);
    }

    @Test
    void aCodeWithoutMeaningMayBeTheWarmUp() {
      for (Consumer<Programs> it :
          List.<Consumer<Programs>>of(
              p -> p.unknownCode(), p -> p.missingCall(), p -> p.problem(Problem.Kind.MACRO))) {
        demand(named(false));
        it.accept(shop.program().dwell(1));
        shop.program().m3(20000).dwell(10).end();
        assertOneDoubt("machine.codes.warm_up", 2);
        assertThat(warmUp().doubts().get(0).reason()).contains("may be the warm-up");
        // Where the sheet names the code, no other one is it.
        demand(named(true));
        it.accept(shop.program());
        shop.program().m3(20000).dwell(10).end();
        assertValid().isEqualTo(Answer.NO);
      }
    }

    @Test
    void anUnreadableBlockIsNoCode() {
      demand(named(false));
      shop.program().problem(Problem.Kind.SYNTAX).m3(20000).dwell(10).end();
      assertValid().isEqualTo(Answer.NO);
    }

    @Test
    void whatMayHaveBeenAWarmUpExpires() {
      demand(named(false));
      shop.program().unknownCode().dwell(1201).m3(20000).dwell(10).end();
      assertValid().isEqualTo(Answer.NO);
    }

    @Test
    void aRealWarmUpSettlesIt() {
      demand(named(false));
      shop.program().unknownCode().m3(20000).dwell(720).stop("M0").end();
      assertValid().isEqualTo(Answer.NO);
      assertThat(warmUp().doubts()).isEmpty();
    }

    @Test
    void anUnknownSpeed() {
      shop.program().m3WithoutSpeed().dwell(720).end();
      assertOneDoubt("", 2);
      assertThat(warmUp().doubts().get(0).reason()).contains("speed of the spindle");
      shop = new Shop();
      shop.program().m3WithoutSpeed().dwell(719).end();
      assertValid().isEqualTo(Answer.NO);
    }

    @Test
    void anUnknownSpindle() {
      shop.program().m3(20000).dwell(720).spindleUnknown().dwell(1200).end();
      assertValid().isEqualTo(Answer.YES);
      shop.program().dwell(1).end();
      assertOneDoubt("", 4);
      assertThat(warmUp().doubts().get(0).reason()).contains("whether the spindle turned");
      shop = new Shop();
      shop.program().spindleUnknown().dwell(720).end();
      assertOneDoubt("", 2);
    }

    @Test
    void aDwellWithoutUnit() {
      shop.program().m3(20000).dwellWithoutUnit().end();
      assertOneDoubt("machine.control.dwell", 2);
      // Whatever it took, this is enough.
      shop.program().dwell(720).end();
      assertValid().isEqualTo(Answer.YES);
    }

    /** 720 s that may have passed are valid through two stops of 700 s, slow turning between. */
    @Test
    void slowTurningEndsAStopInTheBestCaseToo() {
      shop.program().m3(20000).dwellWithoutUnit().m5().dwell(700);
      shop.program().m3(5000).dwell(1).m5().dwell(700).end();
      assertValid().isEqualTo(Answer.UNKNOWN);
      shop = new Shop(codeAt(5000), Shop.TIMES);
      shop.program().m3(20000).dwellWithoutUnit().m5().dwell(700).warmUp().dwell(700).end();
      assertValid().isEqualTo(Answer.UNKNOWN);
      shop = new Shop();
      shop.program().m3(20000).dwellWithoutUnit().m5().dwell(1401).end();
      assertValid().isEqualTo(Answer.NO);
    }

    @Test
    void aStopOfUnknownLength() {
      shop.program().m3(20000).dwell(720).m5().dwellWithoutUnit().end();
      assertOneDoubt("machine.control.dwell", 4);
      assertThat(line(warmUp().expiredAt())).hasValue(4);
    }

    @Test
    void aStopOfUnknownLengthMayBreakIt() {
      shop.program().m3(20000).dwell(700).m5().dwellWithoutUnit().m3(20000).dwell(20).end();
      assertOneDoubt("machine.control.dwell", 4);
    }

    @Test
    void rapidsWithoutRateAreBounded() {
      shop = new Shop(Shop.DEMAND, Shop.NO_TIMES);
      shop.program().m3(20000).g0(0, 0, 0).g0(10, 0, 0).dwell(100).end();
      assertValid().isEqualTo(Answer.NO);
      assertThat(warmUp().doubts()).isEmpty();
    }

    @Test
    void oncePlainDoubtsAreForgotten() {
      shop.program().m3(20000).dwellWithoutUnit().dwell(720).m5().dwellWithoutUnit().end();
      // Only the stop is in doubt now.
      assertOneDoubt("machine.control.dwell", 5);
    }

    @Test
    void withoutTheTimeAsked() {
      demand(missing(true, false, false));
      shop.program().m3(20000).dwell(1).end();
      assertOneDoubt("machine.spindle.warm_up.time", 0);
      demand(missing(true, false, false));
      shop.program().m3(19999).dwell(7200).end();
      assertValid().isEqualTo(Answer.NO);
    }

    @Test
    void withoutTheSpeedAsked() {
      demand(missing(false, true, false));
      shop.program().m3(100).dwell(720).end();
      assertOneDoubt("machine.spindle.warm_up.min_speed", 0);
      demand(missing(false, true, false));
      shop.program().m3(100).dwell(719).end();
      assertValid().isEqualTo(Answer.NO);
    }

    @Test
    void withoutTheTimeItIsValidFor() {
      demand(missing(false, false, true));
      shop.program().m3(20000).dwell(720).end();
      assertValid().isEqualTo(Answer.YES);
      shop.program().m5().dwell(1).end();
      assertOneDoubt("machine.spindle.warm_up.valid_for", 0);
      demand(missing(true, true, true));
      shop.program().warmUp().m5().dwell(1).end();
      assertOneDoubt("machine.spindle.warm_up.valid_for", 0);
    }

    @Test
    void theOperatorTakesLongerThanWhateverItIsValidFor() {
      demand(missing(false, false, true));
      shop.program().m3(20000).dwell(720).stop("M0").end();
      assertValid().isEqualTo(Answer.NO);
    }

    @Test
    void withNothingOnTheSheet() {
      demand(missing(true, true, true));
      shop.program().m3(100).dwell(1).end();
      assertThat(warmUp().doubts())
          .extracting(doubt -> doubt.key().orElse(""))
          .containsExactly("machine.spindle.warm_up.time", "machine.spindle.warm_up.min_speed");
      assertThat(warmUp().doubts()).allMatch(doubt -> doubt.reason().endsWith("is not given"));
    }
  }

  @Nested
  class HangingOnASwitch {
    private void assertHangsOn(int line) {
      assertValid().isEqualTo(Answer.YES);
      assertThat(line(warmUp().deletableAt())).hasValue(line);
    }

    private void assertFirm() {
      assertValid().isEqualTo(Answer.YES);
      assertThat(warmUp().deletableAt()).isEmpty();
    }

    @Test
    void aDeletableCode() {
      shop.program().dwell(1).deletable().warmUp().m3(20000).end();
      assertHangsOn(2);
    }

    @Test
    void aCodeBelowADeletableCall() {
      shop.program().deletable().call().warmUp().back().dwell(1).end();
      assertHangsOn(2);
      shop = new Shop();
      shop.program().deletable().call().call().dwell(1).back().warmUp().back().end();
      assertHangsOn(5);
    }

    @Test
    void aCodeBelowAnOrdinaryCallOrBehindADeletableOne() {
      shop.program().call().warmUp().back().end();
      assertFirm();
      shop = new Shop();
      shop.program().deletable().call().dwell(1).back().warmUp().end();
      assertFirm();
      shop = new Shop();
      shop.program().call().deletable().call().dwell(1).back().warmUp().back().end();
      assertFirm();
    }

    @Test
    void aDeletableDwell() {
      shop.program().m3(20000).deletable().dwell(720).end();
      assertHangsOn(2);
    }

    /** 120 mm at 10 mm/min are 720 s. */
    @Test
    void aMoveBeforeADeletableBlockIsFirm() {
      shop.program().m3(20000).g0(0, 0, 0).g1(120, 0, 0, 10).deletable().g1(121, 0, 0, 10).end();
      assertFirm();
      assertThat(line(warmUp().since())).hasValue(3);
      shop = new Shop();
      shop.program().m3(20000).g0(0, 0, 0).g1(120, 0, 0, 10).dwell(5).end();
      assertThat(line(warmUp().since())).hasValue(3);
    }

    @Test
    void aDeletableDwellThatIsNotNeeded() {
      shop.program().m3(20000).deletable().dwell(720).dwell(720).end();
      assertFirm();
      shop = new Shop();
      shop.program().m3(20000).dwell(360).deletable().dwell(1).dwell(360).end();
      assertFirm();
    }

    @Test
    void aDeletableStart() {
      shop.program().dwell(1).deletable().m3(20000).dwell(720).end();
      assertHangsOn(2);
    }

    @Test
    void aDeletableStopDoesNotMatter() {
      shop.program().m3(20000).dwell(720).deletable().m5().dwell(100).end();
      assertFirm();
    }

    @Test
    void aFirmRepeatSettlesIt() {
      shop.program().deletable().warmUp().warmUp().end();
      assertFirm();
    }

    @Test
    void theFirstBlockItHangsOn() {
      shop.program().m3(20000).deletable().dwell(300).dwell(100).deletable().dwell(320).end();
      assertHangsOn(2);
    }

    @Test
    void aCodeBehindADeletableStretchOfTheRun() {
      shop.program().deletable().m3(20000).dwell(10).deletable().warmUp().end();
      assertHangsOn(1);
      shop = new Shop();
      // Too slow to warm, the run counts for nothing: the code is the first it hangs on.
      shop.program().m3(19999).deletable().dwell(10).deletable().s(20000).deletable().warmUp();
      shop.program().end();
      assertHangsOn(3);
    }

    @Test
    void aWarmUpThatHangsOnADeletableBlockGoesOnSoInTheNextRun() {
      shop.program().m3(20000).deletable().dwell(300).dwell(420).m5().dwell(100);
      shop.program().m3(20000).dwell(1).end();
      assertHangsOn(2);
    }

    @Test
    void aSlowRunEndsAStopOfTheFirmSpindleToo() {
      shop.program().m3(20000).dwell(720).m5().dwell(700).m3(5000).dwell(1).m5().dwell(700).end();
      assertFirm();
      shop = new Shop(codeAt(5000), Shop.TIMES);
      shop.program().m3(20000).dwell(720).m5().dwell(700).warmUp().dwell(700).end();
      assertFirm();
    }

    @Test
    void aDeletableSlowCodeEndsNoStopOfTheFirmSpindle() {
      shop = new Shop(codeAt(5000), Shop.TIMES);
      shop.program().m3(20000).dwell(720).m5().dwell(700).deletable();
      shop.program().warmUp().dwell(700).end();
      assertHangsOn(5);
    }

    @Test
    void aBrokenOffRunIsForgotten() {
      shop.program().deletable().m3(20000).dwell(10).m5().dwell(61).deletable().warmUp().end();
      assertHangsOn(5);
    }

    @Test
    void theFirmSpindleStopsAtAToolChangeAndAnM0() {
      shop.program().m3(20000).m6(2).deletable().m3(20000).dwell(720).end();
      assertHangsOn(3);
      shop = new Shop();
      shop.program().m3(20000).dwell(700).stop("M0").deletable().dwell(700).dwell(20).end();
      assertHangsOn(4);
    }

    @Test
    void anOptionalStopInTheBlockOfTheCode() {
      shop.program().warmUp().sameBlock().stop("M1").dwell(1).end();
      assertThat(line(warmUp().optionalStopAt())).hasValue(1);
      shop = new Shop();
      shop.program().warmUp().stop("M1").dwell(1).end();
      assertThat(warmUp().optionalStopAt()).isEmpty();
    }

    @Test
    void anOptionalStopInTheBlockOfALaterCodeDoesNotMatter() {
      shop.program().warmUp().warmUp().sameBlock().stop("M1").dwell(1).end();
      assertThat(warmUp().optionalStopAt()).isEmpty();
    }

    @Test
    void theNextWarmUpStartsAfresh() {
      shop.program().warmUp().sameBlock().stop("M1").stop("M0").warmUp().end();
      assertThat(warmUp().optionalStopAt()).isEmpty();
    }
  }

  @Nested
  class Runs {
    private Run run() {
      return shop.warmth().run();
    }

    @Test
    void noneBeforeTheSpindleTurns() {
      shop.program().dwell(10).end();
      assertThat(run()).isEqualTo(Run.NONE);
      assertThat(run().number()).isZero();
      assertThat(run().from()).isEmpty();
    }

    @Test
    void whatRanInSum() {
      shop.program().dwell(1).m3(10000).dwell(100).s(20000).dwell(200).s(15000).dwell(50).end();
      assertThat(run().number()).isEqualTo(1);
      assertThat(line(run().from())).hasValue(2);
      assertThat(run().turning().atLeastSeconds()).isEqualTo(350);
      assertThat(run().atSpeed().atLeastSeconds()).isEqualTo(200);
      assertThat(run().fastestRpm()).hasValue(20000);
      assertThat(run().optionalStopAt()).isEmpty();
    }

    @Test
    void upToTheStartOfTheMoveInHand() {
      shop.program().m3(20000).g0(0, 0, 0).g1(10, 0, 0, 10).g1(20, 0, 0, 10);
      assertThat(run().turning().atLeastSeconds()).isEqualTo(60);
      assertThat(shop.warmth().runNumber()).isEqualTo(1);
      shop.program().m5().dwell(61).m3(20000).dwell(1);
      assertThat(shop.warmth().runNumber()).isEqualTo(2);
    }

    /** What a move turned before counts as turning, whatever stops the spindle behind it. */
    @Test
    void movesRightBeforeAStopCount() {
      for (String stop : new String[] {"M6", "M71"}) {
        shop = new Shop(codeAt(20000), Shop.TIMES);
        shop.program().m3(5000).g0(0, 0, 0).g1(10, 0, 0, 10);
        if (stop.equals("M6")) {
          shop.program().m6(3);
        } else {
          shop.program().warmUp();
        }
        shop.program().end();
        double code = stop.equals("M71") ? 720 : 0;
        assertThat(run().turning().atLeastSeconds()).as(stop).isEqualTo(60 + code);
        assertThat(run().atSpeed().atLeastSeconds()).as(stop).isEqualTo(code);
      }
      // 720 s warm it up, and the operator takes longer than any limit.
      shop = new Shop();
      shop.program().m3(20000).g0(0, 0, 0).g1(120, 0, 0, 10).stop("M0").end();
      assertThat(line(warmUp().expiredAt())).hasValue(4);
    }

    @Test
    void speedZeroIsNoRun() {
      shop.program().m3(0).dwell(60).end();
      assertThat(run().number()).isZero();
      assertThat(run().turning().atLeastSeconds()).isZero();
    }

    @Test
    void measuringIsNoAttemptToWarmUp() {
      shop.program().m3(20000).measure().dwell(3).end();
      assertThat(run().turning().atLeastSeconds()).isEqualTo(3);
      // Though it warms.
      assertThat(run().atSpeed().atLeastSeconds()).isEqualTo(15);
    }

    @Test
    void aShortStopDoesNotEndIt() {
      shop.program().m3(20000).dwell(10).m5().dwell(60).m3(20000).dwell(10).end();
      assertThat(run().number()).isEqualTo(1);
      assertThat(run().turning().atLeastSeconds()).isEqualTo(20);
    }

    @Test
    void aLongOneDoes() {
      shop.program().m3(30000).dwell(10).m5().dwell(61).end();
      assertThat(run().number()).isEqualTo(1);
      shop.program().m3(20000).dwell(5).end();
      assertThat(run().number()).isEqualTo(2);
      assertThat(line(run().from())).hasValue(6);
      assertThat(run().turning().atLeastSeconds()).isEqualTo(5);
      assertThat(run().fastestRpm()).hasValue(20000);
    }

    @Test
    void theOperatorEndsIt() {
      shop.program().m3(30000).dwell(10).stop("M0").dwell(5).end();
      assertThat(run().number()).isEqualTo(2);
      assertThat(line(run().from())).hasValue(3);
      assertThat(run().turning().atLeastSeconds()).isEqualTo(5);
    }

    @Test
    void aWarmUpCodeIsOne() {
      shop.program().s(5000).dwell(1).warmUp().end();
      assertThat(run().turning().atLeastSeconds()).isEqualTo(720);
      assertThat(run().atSpeed().atLeastSeconds()).isZero();
      assertThat(line(run().from())).hasValue(3);
    }

    @Test
    void theFirstOptionalStopInIt() {
      shop.program().stop("M1").m3(20000).dwell(10).stop("M1").stop("M1").end();
      assertThat(line(run().optionalStopAt())).hasValue(4);
      shop.program().m5().dwell(61).m3(20000).dwell(1).end();
      assertThat(run().optionalStopAt()).isEmpty();
      shop.program().m5().stop("M1").end();
      assertThat(run().optionalStopAt()).isEmpty();
    }

    @Test
    void anOptionalStopRightBehindTheStart() {
      shop.program().m3(20000).stop("M1").dwell(1).end();
      assertThat(line(run().optionalStopAt())).hasValue(2);
    }
  }

  @Test
  void everyEventGoesOnUnchanged() {
    shop.program().m3(20000).dwell(1).m6(3).measure().warmUp().stop("M0").g0(0, 0, 0).end();
    assertThat(shop.events())
        .filteredOn(event -> !(event instanceof Event.BlockStarted))
        .extracting(event -> (Object) event.getClass())
        .containsExactly(
            Event.ModesChanged.class,
            Event.SpindleChanged.class,
            Event.Dwelled.class,
            Event.ToolChanged.class,
            Event.MachineCode.class,
            Event.MachineCode.class,
            Event.Stopped.class,
            Move.class,
            Event.Ended.class);
  }
}

package hairline.checks.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The fastest way from state to state: worked values of exact mechanics, and on random states that
 * are the same each time the motion that halving finds ({@link StateToState}), integrated in steps
 * of time.
 *
 * <p>Numbers are in mm, mm/s, mm/s² and mm/s³.
 */
class SpeedProfileTest {
  private static final double NONE = Double.POSITIVE_INFINITY;

  private static SpeedProfile planned(
      double from,
      double fromAcceleration,
      double to,
      double toAcceleration,
      double length,
      double cap,
      double acceleration,
      double jerk) {
    SpeedProfile profile = new SpeedProfile();
    assertThat(
            profile.plan(
                from, fromAcceleration, to, toAcceleration, length, cap, acceleration, jerk))
        .isTrue();
    return profile;
  }

  // Worked values.

  /**
   * 5 to 10 and down to 2 mm/s at 1000 mm/s² over 1 mm: ramps of (100 − 25)/2000 = 0.0375 mm in 5
   * ms and (100 − 4)/2000 = 0.048 mm in 8 ms, and 0.9145 mm at 10 mm/s in 91.45 ms.
   */
  @Test
  void upSteadyAndDownWithoutJerk() {
    SpeedProfile way = planned(5, 0, 2, 0, 1, 10, 1000, NONE);
    assertThat(way.peak()).isEqualTo(10);
    assertThat(way.highest()).isEqualTo(10);
    assertThat(way.seconds()).isCloseTo(0.10445, within(1e-12));
    assertThat(way.peakFrom()).isCloseTo(0.0375, within(1e-12));
    assertThat(way.peakTo()).isCloseTo(0.952, within(1e-12));
    assertThat(way.pull()).isCloseTo(0.1, within(1e-12));
    // Half of the first ramp in time: 7.5 mm/s at 5·0.0025 + 1000·0.0025²/2 = 0.015625 mm.
    assertThat(way.timeAt(0.015625)).isCloseTo(0.0025, within(1e-12));
    assertThat(way.speedAt(0.015625)).isCloseTo(7.5, within(1e-9));
    assertThat(way.timeAt(0.5)).isCloseTo(0.005 + 0.04625, within(1e-12));
    assertThat(way.speedAt(0.5)).isCloseTo(10, within(1e-12));
    // Half of the last one in time: 6 mm/s, 2·0.004 + 1000·0.004²/2 = 0.016 mm before the end.
    assertThat(way.timeAt(0.984)).isCloseTo(0.10045, within(1e-12));
    assertThat(way.speedAt(0.984)).isCloseTo(6, within(1e-9));
    assertThat(way.accelerationAt(0.984)).isCloseTo(-1000, within(1e-9));
  }

  /** v² = a L + (v0² + v1²)/2 where there is no room to be steady: √(50 + 14.5) mm/s. */
  @Test
  void thePeakWithoutJerkWhereThereIsNoRoomToBeSteady() {
    SpeedProfile way = planned(5, 0, 2, 0, 0.05, 100, 1000, NONE);
    double peak = StrictMath.sqrt(64.5);
    assertThat(way.peak()).isCloseTo(peak, within(1e-9));
    assertThat(way.seconds()).isCloseTo((peak - 5 + peak - 2) / 1000, within(1e-9));
    assertThat(way.peakFrom()).isCloseTo((64.5 - 25) / 2000, within(1e-9));
    assertThat(way.peakTo()).isCloseTo((64.5 - 25) / 2000, within(1e-9));
  }

  /**
   * Rest to rest over 3 mm to 20 mm/s at 1000 mm/s² and 100 000 mm/s³: jerk acts 10 ms, steady
   * acceleration 10 ms more, so a ramp takes 30 ms and 0.3 mm; 2.4 mm at 20 mm/s take 120 ms.
   */
  @Test
  void jerkUpSteadyAndJerkDown() {
    SpeedProfile way = planned(0, 0, 0, 0, 3, 20, 1000, 100_000);
    assertThat(way.seconds()).isCloseTo(0.180, within(1e-12));
    assertThat(way.peak()).isEqualTo(20);
    assertThat(way.peakFrom()).isCloseTo(0.3, within(1e-12));
    assertThat(way.peakTo()).isCloseTo(2.7, within(1e-12));
    // After 10 ms: J t³/6, J t²/2, J t.
    double first = 1.0 / 60;
    assertThat(way.timeAt(first)).isCloseTo(0.010, within(1e-9));
    assertThat(way.speedAt(first)).isCloseTo(5, within(1e-6));
    assertThat(way.accelerationAt(first)).isCloseTo(1000, within(1e-3));
    // After 15 ms, amid steady acceleration: half of the speed.
    double amid = first + 5 * 0.005 + 1000 * 0.005 * 0.005 / 2;
    assertThat(way.timeAt(amid)).isCloseTo(0.015, within(1e-9));
    assertThat(way.speedAt(amid)).isCloseTo(10, within(1e-6));
    assertThat(way.accelerationAt(amid)).isCloseTo(1000, within(1e-9));
    // The way down is the way up, backwards.
    assertThat(way.timeAt(3 - amid)).isCloseTo(0.165, within(1e-9));
    assertThat(way.speedAt(3 - amid)).isCloseTo(10, within(1e-6));
    assertThat(way.accelerationAt(3 - amid)).isCloseTo(-1000, within(1e-9));
    assertThat(way.timeAt(1.5)).isCloseTo(0.090, within(1e-9));
    assertThat(way.accelerationAt(1.5)).isZero();
  }

  @Test
  void itsEndsAreAsGiven() {
    SpeedProfile way = planned(5, 300, 4, -200, 0.7, 10, 1000, 100_000);
    assertThat(way.timeAt(0)).isZero();
    assertThat(way.timeAt(-1)).isZero();
    assertThat(way.speedAt(0)).isEqualTo(5);
    assertThat(way.accelerationAt(0)).isEqualTo(300);
    assertThat(way.timeAt(0.7)).isEqualTo(way.seconds());
    assertThat(way.timeAt(2)).isEqualTo(way.seconds());
    assertThat(way.speedAt(0.7)).isEqualTo(4);
    assertThat(way.accelerationAt(0.7)).isEqualTo(-200);
  }

  /** Planned a second time, it answers of the second way only. */
  @Test
  void oneObjectPlansOneWayAfterTheOther() {
    SpeedProfile way = planned(5, 0, 2, 0, 1, 10, 1000, 100_000);
    double at = way.timeAt(0.5);
    assertThat(way.plan(0, 0, 0, 0, 3, 20, 1000, 100_000)).isTrue();
    assertThat(way.timeAt(0.5)).isNotEqualTo(at);
    assertThat(way.timeAt(1.5)).isCloseTo(0.090, within(1e-9));
  }

  /**
   * From 5 mm/s falling with 500 mm/s², which 50 000 mm/s³ take back in 10 ms: 2.5 mm/s less, at 5
   * · 0.01 − 500 · 0.01²/2 + 50 000 · 0.01³/6 = 0.03333 mm.
   */
  @Test
  void aDipBehindTheStartAndBeforeTheEnd() {
    SpeedProfile way = planned(5, -500, 5, 0, 1, 10, 2000, 50_000);
    assertThat(way.startDip()).isCloseTo(2.5, within(1e-12));
    assertThat(way.startDipPlace()).isCloseTo(1.0 / 30, within(1e-12));
    assertThat(way.speedAt(1.0 / 30)).isCloseTo(2.5, within(1e-6));
    assertThat(way.timeAt(1.0 / 30)).isCloseTo(0.010, within(1e-6));
    assertThat(way.endDip()).isEqualTo(5);
    assertThat(way.endDipPlace()).isEqualTo(1);
    SpeedProfile back = planned(5, 0, 5, 500, 1, 10, 2000, 50_000);
    assertThat(back.endDip()).isCloseTo(2.5, within(1e-12));
    assertThat(back.endDipPlace()).isCloseTo(1 - 1.0 / 30, within(1e-12));
    assertThat(back.speedAt(1 - 1.0 / 30)).isCloseTo(2.5, within(1e-6));
    assertThat(back.startDip()).isEqualTo(5);
    assertThat(back.startDipPlace()).isZero();
    assertThat(back.seconds()).isCloseTo(way.seconds(), within(1e-9));
  }

  /** From 2 mm/s with 500 mm/s² downward it would fall to 2 − 2.5 mm/s: no way forward. */
  @ParameterizedTest
  @CsvSource({"2, -500, 5, 0", "5, 0, 2, 500", "2.5, -500, 5, 0", "5, 0, 2.5, 500"})
  void noWayRunsBackwards(double from, double fromRate, double to, double toRate) {
    assertThat(new SpeedProfile().plan(from, fromRate, to, toRate, 1, 10, 2000, 50_000)).isFalse();
  }

  /** Braking from 10 mm/s at 1000 mm/s² takes 0.05 mm (exact); with 200 000 mm/s³ 0.075 mm. */
  @ParameterizedTest
  @CsvSource({
    "0.0499, false, Infinity",
    "0.0501, true, Infinity",
    "0.0749, false, 200000",
    "0.0751, true, 200000"
  })
  void aChangeOfSpeedTakesItsLength(double length, boolean is, double jerk) {
    SpeedProfile profile = new SpeedProfile();
    assertThat(profile.plan(10, 0, 0, 0, length, 10, 1000, jerk)).isEqualTo(is);
    assertThat(profile.plan(0, 0, 10, 0, length, 10, 1000, jerk)).isEqualTo(is);
    assertThat(profile.plan(10, 0, 0, 0, length, 20, 1000, jerk)).isEqualTo(is);
  }

  /** The cap counts as no lower than the speed at an end: nothing is gained above it. */
  @Test
  void aCapBelowTheEndsIsThatOfTheFasterEnd() {
    for (double jerk : new double[] {NONE, 50_000}) {
      SpeedProfile way = planned(10, 0, 4, 0, 1, 2, 1000, jerk);
      assertThat(way.peak()).isEqualTo(10);
      assertThat(way.peakFrom()).isZero();
      assertThat(planned(4, 0, 10, 0, 1, 2, 1000, jerk).peak()).isEqualTo(10);
    }
    // With acceleration left over 5 mm/s will be exceeded: 5 + 500²/(2 · 50 000) = 7.5.
    SpeedProfile profile = new SpeedProfile();
    assertThat(profile.plan(5, 500, 5, 0, 1, 7.4, 1000, 50_000)).isFalse();
    assertThat(profile.plan(5, 0, 5, -500, 1, 7.4, 1000, 50_000)).isFalse();
    assertThat(profile.plan(5, 500, 5, 0, 1, 7.5, 1000, 50_000)).isTrue();
    assertThat(profile.peak()).isEqualTo(7.5);
  }

  /** What is out by rounding only is within: a cap, and the length of braking. */
  @Test
  void roundingForbidsNothing() {
    SpeedProfile capped = planned(5, 500, 5, 0, 1, 7.5 * (1 - 1e-10), 1000, 50_000);
    assertThat(capped.peak()).isCloseTo(7.5, within(1e-8));
    SpeedProfile braked = planned(10, 0, 0, 0, 0.05 * (1 - 1e-11), 20, 1000, NONE);
    assertThat(braked.seconds()).isCloseTo(0.01, within(1e-9));
    assertThat(braked.peak()).isEqualTo(10);
    assertThat(braked.pull()).isCloseTo(0.1, within(1e-12));
    assertThat(planned(0, 0, 10, 0, 0.05 * (1 - 1e-11), 20, 1000, NONE).pull())
        .isCloseTo(0.1, within(1e-12));
  }

  // Against halving.

  private record Case(
      double from,
      double fromRate,
      double to,
      double toRate,
      double length,
      double cap,
      double acceleration,
      double jerk) {

    private static double rate(Random random, double acceleration) {
      return random.nextInt(3) == 0 ? 0 : (2 * random.nextDouble() - 1) * acceleration;
    }

    static Case random(Random random) {
      double acceleration = random.nextBoolean() ? 2000 : 400;
      double jerk = random.nextBoolean() ? 50_000 : 400_000;
      double cap = 2 + 10 * random.nextDouble();
      double from = random.nextInt(6) == 0 ? 0 : cap * random.nextDouble();
      double to = random.nextInt(6) == 0 ? 0 : cap * random.nextDouble();
      double most = Math.min(acceleration, Math.sqrt(jerk * cap));
      double change = SpeedRamp.length(from, to, acceleration, jerk);
      double length =
          random.nextInt(3) == 0
              ? change * (0.5 + random.nextDouble())
              : 0.002 * StrictMath.exp(6 * random.nextDouble());
      return new Case(
          from, rate(random, most), to, rate(random, most), length, cap, acceleration, jerk);
    }
  }

  @Test
  void halvingFindsTheSameWays() {
    Random random = new Random(5);
    SpeedProfile profile = new SpeedProfile();
    int same = 0;
    for (int k = 0; k < 3000; k++) {
      Case c = Case.random(random);
      StateToState halving = new StateToState(c.acceleration, c.jerk);
      boolean found = halving.find(c.from, c.fromRate, c.to, c.toRate, c.length, c.cap);
      boolean is =
          profile.plan(c.from, c.fromRate, c.to, c.toRate, c.length, c.cap, c.acceleration, c.jerk);
      assertThat(is).as("%s", c).isEqualTo(found);
      if (found) {
        same++;
        assertThat(profile.seconds())
            .as("%s", c)
            .isCloseTo(halving.seconds(), within(1e-7 * halving.seconds()));
        passesTheSameStates(c, profile, halving);
      }
    }
    assertThat(same).isGreaterThan(1000);
  }

  private static void passesTheSameStates(Case c, SpeedProfile profile, StateToState halving) {
    int steps = 20;
    double[] states = halving.stepped(steps);
    double highest = Math.max(c.from, c.to);
    double lowest = Math.min(c.from, c.to);
    for (int k = 1; k < steps; k++) {
      double place = states[3 * k];
      double speed = states[3 * k + 1];
      highest = Math.max(highest, speed);
      lowest = Math.min(lowest, speed);
      if (speed > 0.05) {
        double time = halving.seconds() * k / steps;
        assertThat(profile.timeAt(place)).as("%s", c).isCloseTo(time, within(1e-4 * time + 1e-8));
        assertThat(profile.speedAt(place)).as("%s", c).isCloseTo(speed, within(1e-4 * speed));
        assertThat(profile.accelerationAt(place))
            .as("%s", c)
            .isCloseTo(states[3 * k + 2], within(1e-3 * c.acceleration));
      }
    }
    assertThat(profile.highest()).isGreaterThanOrEqualTo(highest * (1 - 1e-7));
    assertThat(Math.min(profile.startDip(), profile.endDip()))
        .isLessThanOrEqualTo(lowest * (1 + 1e-7) + 1e-9);
    assertThat(profile.peakFrom()).isBetween(0.0, profile.peakTo());
    assertThat(profile.peakTo()).isLessThanOrEqualTo(c.length);
  }

  /** Moved on by a jerk: place, speed and acceleration (exact). */
  private static double[] run(double[] state, double time, double jerk) {
    return new double[] {
      state[0] + time * (state[1] + time * (state[2] / 2 + time * jerk / 6)),
      state[1] + time * (state[2] + time * jerk / 2),
      state[2] + time * jerk
    };
  }

  /**
   * Up (or down) all the way: acceleration is built up, taken back in part and built up again, or
   * some of it, at random. There is a way then, and it takes no longer than this one.
   */
  @Test
  void whatRisesOrFallsAllTheWayIsFound() {
    Random random = new Random(8);
    SpeedProfile profile = new SpeedProfile();
    double acceleration = 2000;
    double jerk = 50_000;
    int compared = 0;
    for (int k = 0; k < 4000; k++) {
      double[] start = {0, 8 * random.nextDouble(), 0};
      start[2] = random.nextInt(3) == 0 ? 0 : 600 * random.nextDouble();
      double first = random.nextInt(3) == 0 ? 0 : 0.015 * random.nextDouble();
      double[] risen = run(start, first, jerk);
      double second = random.nextInt(3) == 0 ? 0 : risen[2] / jerk * random.nextDouble();
      double[] dented = run(risen, second, -jerk);
      double third = random.nextInt(3) == 0 ? 0 : 0.01 * random.nextDouble();
      double[] end = run(dented, third, jerk);
      if (end[0] < 1e-4 || end[2] < 1 || end[1] > 20) {
        continue;
      }
      double time = first + second + third;
      boolean up = profile.plan(start[1], start[2], end[1], end[2], end[0], 30, acceleration, jerk);
      assertThat(up).as("%s", k).isTrue();
      double seconds = profile.seconds();
      assertThat(seconds).as("%s", k).isLessThanOrEqualTo(time * (1 + 1e-7));
      double amid = profile.accelerationAt(end[0] / 2);
      double speedAmid = profile.speedAt(end[0] / 2);
      assertThat(profile.timeAt(end[0] / 2)).isBetween(0.0, seconds);
      StateToState halving = new StateToState(acceleration, jerk);
      if (halving.find(start[1], start[2], end[1], end[2], end[0], 30)) {
        compared++;
        assertThat(seconds).as("%s", k).isCloseTo(halving.seconds(), within(1e-6 * time));
      }
      // The same backwards.
      SpeedProfile back =
          planned(end[1], -end[2], start[1], -start[2], end[0], 30, acceleration, jerk);
      assertThat(back.accelerationAt(end[0] / 2)).isCloseTo(-amid, within(0.01));
      assertThat(back.speedAt(end[0] / 2)).isCloseTo(speedAmid, within(1e-6));
      assertThat(back.seconds()).isCloseTo(seconds, within(1e-9));
      assertThat(back.timeAt(end[0] / 4))
          .isCloseTo(seconds - profile.timeAt(end[0] * 3 / 4), within(1e-8));
      assertThat(back.highest()).isEqualTo(profile.highest());
    }
    assertThat(compared).isGreaterThan(1000);
  }

  /** Ways that leave no choice: one jerk, or one acceleration, from end to end. */
  @Test
  void theOnlyWayIsFound() {
    Random random = new Random(9);
    SpeedProfile profile = new SpeedProfile();
    for (int k = 0; k < 500; k++) {
      double jerk = 50_000;
      double time = 0.001 + 0.01 * random.nextDouble();
      double[] start = {0, 5 * random.nextDouble(), 400 * random.nextDouble()};
      double[] end = run(start, time, jerk);
      assertThat(profile.plan(start[1], start[2], end[1], end[2], end[0], 30, 2000, jerk)).isTrue();
      assertThat(profile.seconds()).isCloseTo(time, within(1e-4 * time));
      assertThat(profile.plan(end[1], -end[2], start[1], -start[2], end[0], 30, 2000, jerk))
          .isTrue();
      assertThat(profile.seconds()).isCloseTo(time, within(1e-4 * time));
      // Acceleration is taken back to none, or built up from none; a root of rounding is allowed.
      double back = end[2] / jerk;
      double[] steady = run(new double[] {0, end[1], end[2]}, back, -jerk);
      steady[0] *= 1 + 1e-6;
      assertThat(profile.plan(end[1], end[2], steady[1], 0, steady[0], 30, 2000, jerk)).isTrue();
      assertThat(profile.seconds()).isCloseTo(back, within(0.01 * back));
      assertThat(profile.plan(steady[1], 0, end[1], -end[2], steady[0], 30, 2000, jerk)).isTrue();
      assertThat(profile.seconds()).isCloseTo(back, within(0.01 * back));
      // The whole of the acceleration that is allowed.
      double[] full = run(new double[] {0, start[1], 500}, time, 0);
      assertThat(profile.plan(start[1], 500, full[1], 500, full[0], 30, 500, jerk)).isTrue();
      assertThat(profile.seconds()).isCloseTo(time, within(1e-4 * time));
    }
  }

  /** The pull is what a little more length costs in time, by difference. */
  @Test
  void thePullIsTheTimeOfAMmMore() {
    Random random = new Random(6);
    SpeedProfile profile = new SpeedProfile();
    int humps = 0;
    for (int k = 0; k < 400; k++) {
      Case c = Case.random(random);
      double step = 1e-4 * c.length;
      if (profile.plan(c.from, 0, c.to, 0, c.length - step, c.cap, c.acceleration, c.jerk)) {
        double less = profile.seconds();
        profile.plan(c.from, 0, c.to, 0, c.length + step, c.cap, c.acceleration, c.jerk);
        double more = profile.seconds();
        profile.plan(c.from, 0, c.to, 0, c.length, c.cap, c.acceleration, c.jerk);
        if (profile.peakTo() < c.length && profile.peakFrom() > 0) {
          humps++;
          double pull = (more - less) / (2 * step);
          assertThat(profile.pull()).as("%s", c).isCloseTo(pull, within(0.01 * pull));
        }
      }
    }
    assertThat(humps).isGreaterThan(100);
  }
}

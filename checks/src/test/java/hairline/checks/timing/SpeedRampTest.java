package hairline.checks.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Ramps and profiles against exact mechanics and a time-stepped integration. */
class SpeedRampTest {
  private static final double NONE = Double.POSITIVE_INFINITY;

  private static SpeedProfile profile(
      double from, double to, double length, double cap, double acceleration, double jerk) {
    SpeedProfile profile = new SpeedProfile();
    assertThat(profile.plan(from, 0, to, 0, length, cap, acceleration, jerk)).isTrue();
    return profile;
  }

  /** From rest to rest: √(a L); a 2000 mm/s², L 5 µm → 189.74 mm/min, 3.1623 ms (exact). */
  @Test
  void restToRestWithoutJerk() {
    SpeedProfile profile = profile(0, 0, 0.005, 1000, 2000, NONE);
    assertThat(profile.peak() * 60).isCloseTo(189.74, within(0.005));
    assertThat(profile.seconds()).isCloseTo(3.1623e-3, within(5e-8));
  }

  /** Jerk alone: t_j = (L/2J)^⅓, peak J t_j²; J 50000, L 10 µm → 64.633 mm/min, 18.566 ms. */
  @Test
  void restToRestUnderJerkAlone() {
    SpeedProfile profile = profile(0, 0, 0.01, 1000, 1e9, 50_000);
    assertThat(profile.peak() * 60).isCloseTo(64.633, within(0.0005));
    assertThat(profile.seconds()).isCloseTo(18.566e-3, within(5e-7));
  }

  /** 3 to 5 mm/s at 1000 mm/s²: 2 ms at 4 mm/s on the mean, 8 µm (exact). */
  @Test
  void aRampWithoutJerk() {
    assertThat(SpeedRamp.seconds(2, 1000, NONE)).isCloseTo(0.002, within(1e-15));
    assertThat(SpeedRamp.length(3, 5, 1000, NONE)).isCloseTo(0.008, within(1e-15));
    assertThat(SpeedRamp.length(5, 3, 1000, NONE)).isCloseTo(0.008, within(1e-15));
    assertThat(SpeedRamp.reached(3, 0.008, 1000, NONE)).isCloseTo(5, within(1e-12));
    assertThat(SpeedRamp.passed(3, 0.008, 1000, NONE)).isCloseTo(5, within(1e-12));
    assertThat(SpeedRamp.passes(3, 4.999, 0.008, 1000, NONE)).isTrue();
    assertThat(SpeedRamp.passes(3, 5.001, 0.008, 1000, NONE)).isFalse();
  }

  /**
   * 5 to 25 mm/s at 1000 mm/s² and 100 000 mm/s³: jerk acts 10 ms at either end and 10 ms none, 30
   * ms at 15 mm/s on the mean. 5 to 10 is by jerk alone: 2 √(5/J) at 7.5 mm/s.
   */
  @Test
  void aRampUnderJerk() {
    assertThat(SpeedRamp.seconds(20, 1000, 1e5)).isCloseTo(0.030, within(1e-15));
    assertThat(SpeedRamp.length(5, 25, 1000, 1e5)).isCloseTo(0.45, within(1e-12));
    assertThat(SpeedRamp.reached(5, 0.45, 1000, 1e5)).isCloseTo(25, within(1e-9));
    double byJerk = 2 * StrictMath.sqrt(5e-5);
    assertThat(SpeedRamp.seconds(5, 1000, 1e5)).isCloseTo(byJerk, within(1e-15));
    assertThat(SpeedRamp.reached(5, 7.5 * byJerk, 1000, 1e5)).isCloseTo(10, within(1e-9));
    // Still gaining speed at the end: J t²/2 after J t³/6, then a t.
    assertThat(SpeedRamp.passed(5, 0.05 + 1.0 / 60, 1000, 1e5)).isCloseTo(10, within(1e-9));
    double steady = 0.05 + 1.0 / 60 + 10 * 0.01 + 1000 * 0.01 * 0.01 / 2;
    assertThat(SpeedRamp.passed(5, steady, 1000, 1e5)).isCloseTo(20, within(1e-9));
  }

  @ParameterizedTest
  @ValueSource(doubles = {NONE, 1e5})
  void onNoLengthNothingIsGained(double jerk) {
    assertThat(SpeedRamp.reached(5, 0, 1000, jerk)).isEqualTo(5);
    assertThat(SpeedRamp.passed(5, 0, 1000, jerk)).isEqualTo(5);
    assertThat(SpeedRamp.passes(5, 5, 0, 1000, jerk)).isFalse();
    assertThat(SpeedRamp.passes(5, 4, 0, 1000, jerk)).isTrue();
    assertThat(SpeedRamp.passes(5, 6, 0, 1000, jerk)).isFalse();
    assertThat(SpeedRamp.reached(0, 0, 1000, jerk)).isZero();
  }

  /** Told with and without roots of the third degree, it is the same. */
  @Property(tries = 2000)
  void aSpeedIsPassedWhereTheHighestOneIsAboveIt(
      @ForAll @Scale(6) @DoubleRange(min = 0, max = 20) double from,
      @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 30) double change,
      @ForAll @Scale(6) @DoubleRange(min = 1e-6, max = 10) double length,
      @ForAll @Scale(6) @DoubleRange(min = 100, max = 5000) double acceleration,
      @ForAll @Scale(6) @DoubleRange(min = 1000, max = 1e6) double limited,
      @ForAll boolean unlimited) {
    double jerk = unlimited ? NONE : limited;
    double passed = SpeedRamp.passed(from, length, acceleration, jerk);
    double to = from + change;
    if (Math.abs(passed - to) > 1e-9 * to) {
      assertThat(SpeedRamp.passes(from, to, length, acceleration, jerk)).isEqualTo(passed > to);
    }
    assertThat(SpeedRamp.passes(from, passed * (1 + 1e-9), length, acceleration, jerk)).isFalse();
    assertThat(SpeedRamp.passes(from, from, length, acceleration, jerk)).isTrue();
  }

  /** The length by jerk alone is (v + u) √((v − u)/J), at its greatest for u = v/3 (exact). */
  @Test
  void brakingToAThirdTakesMoreLengthThanToRest() {
    double toThird = SpeedRamp.length(6, 2, 1e9, 50_000);
    assertThat(toThird).isCloseTo(8 * StrictMath.sqrt(4 / 50_000.0), within(1e-12));
    assertThat(SpeedRamp.length(6, 0, 1e9, 50_000)).isLessThan(toThird);
    assertThat(SpeedRamp.length(6, 3, 1e9, 50_000)).isLessThan(toThird);
    // On the length of 6 to 1 there is no braking to 2, but to 1.
    double toOne = SpeedRamp.length(6, 1, 1e9, 50_000);
    assertThat(SpeedRamp.braked(6, 2, toOne, 1e9, 50_000)).isCloseTo(1, within(1e-9));
    assertThat(SpeedRamp.braked(6, 2, toThird * 1.001, 1e9, 50_000)).isEqualTo(2);
  }

  /** A search through all speeds finds no higher one within reach. */
  @Property(tries = 500)
  void aSpeedIsBrakedToTheHighestOneWithinReach(
      @ForAll @Scale(6) @DoubleRange(min = 0.01, max = 20) double from,
      @ForAll @Scale(6) @DoubleRange(min = 0, max = 1) double part,
      @ForAll @Scale(6) @DoubleRange(min = 0.5, max = 1.2) double lengthPart,
      @ForAll @Scale(6) @DoubleRange(min = 100, max = 5000) double acceleration,
      @ForAll @Scale(6) @DoubleRange(min = 1000, max = 1e6) double jerk) {
    double most = part * from;
    double length = lengthPart * SpeedRamp.length(from, 0, acceleration, jerk);
    double searched = Double.NaN;
    for (int k = 0; k <= 1000; k++) {
      double to = most * k / 1000;
      if (SpeedRamp.length(from, to, acceleration, jerk) <= length) {
        searched = to;
      }
    }
    double braked = SpeedRamp.braked(from, most, length, acceleration, jerk);
    assertThat(braked).isBetween(0.0, most);
    if (Double.isNaN(searched)) {
      assertThat(braked).isEqualTo(most);
    } else {
      assertThat(braked).isBetween(searched * (1 - 1e-12), searched + most / 1000);
      assertThat(SpeedRamp.length(from, braked, acceleration, jerk))
          .isLessThanOrEqualTo(length * (1 + 1e-12));
    }
  }

  @Property(tries = 300)
  void aRampIsWhatSmallStepsOfTimeMakeOfIt(
      @ForAll @Scale(6) @DoubleRange(min = 0, max = 20) double from,
      @ForAll @Scale(6) @DoubleRange(min = 0.01, max = 30) double change,
      @ForAll @Scale(6) @DoubleRange(min = 100, max = 5000) double acceleration,
      @ForAll @Scale(6) @DoubleRange(min = 1000, max = 1e6) double jerk) {
    double whole = SpeedRamp.seconds(change, acceleration, jerk);
    int steps = 20_000;
    // A step that straddles a border of phases is wrong by its share of it.
    double dt = whole / steps;
    double rise = Math.min(acceleration / jerk, whole / 2);
    double a = 0;
    double v = from;
    double s = 0;
    for (int k = 0; k < steps; k++) {
      double t = (k + 0.5) * dt;
      double j = t < rise ? jerk : t > whole - rise ? -jerk : 0;
      double before = v;
      v += a * dt + j * dt * dt / 2;
      a += j * dt;
      s += (before + v) / 2 * dt;
      assertThat(a).isLessThanOrEqualTo(acceleration + 2 * jerk * dt);
    }
    assertThat(v).isCloseTo(from + change, within(change * 2 * dt / rise));
    double length = SpeedRamp.length(from, from + change, acceleration, jerk);
    assertThat(s).isCloseTo(length, within(length * 2 * dt / rise));
    assertThat(SpeedRamp.reached(from, length, acceleration, jerk))
        .isCloseTo(from + change, within(1e-6 * (from + change)));
  }

  @Property(tries = 500)
  void timeSpeedAndPlaceAgree(
      @ForAll @Scale(6) @DoubleRange(min = 0, max = 20) double from,
      @ForAll @Scale(6) @DoubleRange(min = 0, max = 20) double to,
      @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 30) double cap,
      @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 5) double length,
      @ForAll @Scale(6) @DoubleRange(min = 1000, max = 1e6) double jerk,
      @ForAll @Scale(6) @DoubleRange(min = 0, max = 1) double share) {
    double acceleration = 2000;
    double change = SpeedRamp.length(from, to, acceleration, jerk);
    SpeedProfile profile = profile(from, to, change + length, cap, acceleration, jerk);
    double all = change + length;
    double place = share * all;
    double step = all * 1e-6;
    double early = profile.timeAt(Math.max(0, place - step));
    double late = profile.timeAt(Math.min(all, place + step));
    double way = Math.min(all, place + step) - Math.max(0, place - step);
    assertThat(late).isGreaterThanOrEqualTo(early);
    double slowest = Math.min(from, to);
    if (slowest > 0.1) {
      assertThat(way / (late - early))
          .isCloseTo(profile.speedAt(place), within(1e-3 * profile.peak()));
    }
    assertThat(profile.speedAt(place)).isLessThanOrEqualTo(profile.peak() * (1 + 1e-12));
    assertThat(profile.peak()).isLessThanOrEqualTo(Math.max(cap, Math.max(from, to)));
    assertThat(profile.seconds()).isGreaterThanOrEqualTo(all / profile.peak() * (1 - 1e-12));
  }

  @Property(tries = 300)
  void runningThroughIsNeverSlowerThanEndingSteady(
      @ForAll @Scale(6) @DoubleRange(min = 0, max = 20) double from,
      @ForAll @Scale(6) @DoubleRange(min = 1e-5, max = 5) double length,
      @ForAll @Scale(6) @DoubleRange(min = 1000, max = 1e7) double jerk) {
    double steady = SpeedRamp.reached(from, length, 2000, jerk);
    assertThat(SpeedRamp.passed(from, length, 2000, jerk))
        .isGreaterThanOrEqualTo(steady * 0.999999);
    assertThat(SpeedRamp.length(from, steady, 2000, jerk))
        .isCloseTo(length, within(1e-5 * length + 1e-10));
  }
}

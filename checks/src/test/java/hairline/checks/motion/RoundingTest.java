package hairline.checks.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hairline.checks.motion.ControlProfile.PointlessNumber;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.BigRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;

class RoundingTest {
  private static final BigDecimal PM_PER_MM = BigDecimal.TEN.pow(9);
  private static final BigDecimal PM_PER_INCH = new BigDecimal("25400000000");
  private static final ControlProfile TRUNCATING =
      Profiles.with(Runs.TENTH_UM, p -> p.truncates = true);

  private static long stored(ControlProfile profile, String... lines) {
    List<Move> moves = Runs.of(Move.class, Runs.events(profile, lines));
    return moves.get(moves.size() - 1).to().xPm();
  }

  @Test
  void tiesGoAwayFromZero() {
    // physics.md, rules.md: nearest, ties away from zero.
    assertThat(stored(Runs.TENTH_UM, "G0 X0.00005")).isEqualTo(100_000);
    assertThat(stored(Runs.TENTH_UM, "G0 X-0.00005")).isEqualTo(-100_000);
    assertThat(stored(Runs.TENTH_UM, "G0 X1.00014")).isEqualTo(1_000_100_000);
    assertThat(stored(Runs.TENTH_UM, "G0 X1.00015")).isEqualTo(1_000_200_000);
    assertThat(stored(Runs.TENTH_UM, "G0 X1.00014999999999999")).isEqualTo(1_000_100_000);
  }

  @Test
  void truncationDropsDigits() {
    assertThat(stored(TRUNCATING, "G0 X1.00019")).isEqualTo(1_000_100_000);
    assertThat(stored(TRUNCATING, "G0 X-1.00019")).isEqualTo(-1_000_100_000);
    assertThat(stored(TRUNCATING, "G0 X1.000199999999999999")).isEqualTo(1_000_100_000);
  }

  @Test
  void withoutAnIncrementNothingIsRoundedAway() {
    List<Event> events = Runs.events(ControlProfile.UNKNOWN, "G0 X1.123456789", "X1.1234567891");
    assertThat(Runs.of(Event.WordRounded.class, events)).isEmpty();
    assertThat(Runs.of(Move.class, events).get(0).to().xPm()).isEqualTo(1_123_456_789);
  }

  @Property
  void plainWordsAreRoundedAsBigDecimalDoes(
      @ForAll @BigRange(min = "-9000", max = "9000") @Scale(9) BigDecimal mm,
      @ForAll @LongRange(min = 1, max = 2_000_000) long increment,
      @ForAll boolean truncates) {
    checkStored(mm, PM_PER_MM, "G21", increment, truncates);
  }

  @Property
  void longWordsAreRoundedAsBigDecimalDoes(
      @ForAll @BigRange(min = "-9000", max = "9000") @Scale(17) BigDecimal mm,
      @ForAll @LongRange(min = 1, max = 2_000_000) long increment,
      @ForAll boolean truncates) {
    checkStored(mm, PM_PER_MM, "G21", increment, truncates);
  }

  @Property
  void inchWordsAreRoundedAsBigDecimalDoes(
      @ForAll @BigRange(min = "-400", max = "400") @Scale(10) BigDecimal inch,
      @ForAll @LongRange(min = 1, max = 2_000_000) long increment,
      @ForAll boolean truncates) {
    checkStored(inch, PM_PER_INCH, "G20", increment, truncates);
  }

  private static void checkStored(
      BigDecimal value, BigDecimal unit, String code, long increment, boolean truncates) {
    ControlProfile profile =
        Profiles.with(
            ControlProfile.UNKNOWN,
            p -> {
              p.resolutionPm = OptionalLong.of(increment);
              p.truncates = truncates;
            });
    BigDecimal pm = value.multiply(unit);
    RoundingMode mode = truncates ? RoundingMode.DOWN : RoundingMode.HALF_UP;
    BigDecimal step = BigDecimal.valueOf(increment);
    BigDecimal expected = pm.divide(step, 0, mode).multiply(step);
    Move move =
        Runs.only(Move.class, Runs.events(profile, code + " G0 X" + value.toPlainString() + " Z1"));
    assertThat(BigDecimal.valueOf(move.to().xPm())).isEqualByComparingTo(expected);
    assertThat(BigDecimal.valueOf(move.writtenTo().xPm()))
        .isEqualByComparingTo(pm.setScale(0, RoundingMode.HALF_EVEN));
  }

  @Test
  void anInchIncrementRoundsBeforeConversion() {
    // 0.00001 in is 254 nm exactly: 0.500014 in is nearest to 0.50001 in.
    ControlProfile inch =
        Profiles.with(Runs.TENTH_UM, p -> p.inchResolutionPm = OptionalLong.of(254_000));
    assertThat(stored(inch, "G20 G0 X0.500014")).isEqualTo(12_700_254_000L);
    assertThat(stored(inch, "G20 G0 X0.500015")).isEqualTo(12_700_508_000L);
    // Without one, the converted value is rounded to 0.1 µm: 12.7003556 mm.
    assertThat(stored(Runs.TENTH_UM, "G20 G0 X0.500014")).isEqualTo(12_700_400_000L);
    // Millimetre words keep their own increment.
    assertThat(stored(inch, "G21 G0 X0.5001")).isEqualTo(500_100_000L);
  }

  @Test
  void aRoundedWordIsToldWithBothValues() {
    Event.WordRounded told = Runs.only(Event.WordRounded.class, "G0 X1.00016 Y2.0");
    assertThat(told.letter()).isEqualTo('X');
    assertThat(told.written()).isEqualByComparingTo("1.00016");
    assertThat(told.units()).isEqualTo(Modes.Units.MM);
    assertThat(told.writtenPm()).isEqualTo(1_000_160_000);
    assertThat(told.storedPm()).isEqualTo(1_000_200_000);
    assertThat(told.at()).isEqualTo(new Place(0, 1, new hairline.parser.Span(4, 12)));
  }

  @Test
  void centresAndRadiiAreToldToo() {
    assertThat(Runs.of(Event.WordRounded.class, "G0 X0 Y0", "G2 X1 I0.50001 J0.00001 F1"))
        .extracting(Event.WordRounded::letter)
        .containsExactly('I', 'J');
    assertThat(Runs.of(Event.WordRounded.class, "G0 X0 Y0", "G2 X1 R0.70001 F1"))
        .extracting(Event.WordRounded::letter)
        .containsExactly('R');
  }

  @Test
  void digitsBelowAPicometreCountAsDigits() {
    Event.WordRounded told = Runs.only(Event.WordRounded.class, "G0 X1.0000000000001");
    assertThat(told.storedPm()).isEqualTo(told.writtenPm()).isEqualTo(1_000_000_000);
  }

  @Test
  void zerosAreNoDigits() {
    assertThat(Runs.of(Event.WordRounded.class, "G0 X1.000000000000000000 Y-0.0000000000"))
        .isEmpty();
  }

  @Test
  void nobodyWroteTheDigitsOfAQuotient() {
    assertThat(Runs.of(Event.WordRounded.class, "G0 X[1/3] Y[sin[10]]")).isEmpty();
    assertThat(Runs.of(Event.WordRounded.class, "#1=1.00004", "G0 X#1")).hasSize(1);
  }

  @Test
  void aMoveThatOnlyTheTextMakesVanishes() {
    List<Event> events = Runs.events(Runs.TENTH_UM, "G0 X1.0 Z0", "G1 X1.00004 F10", "X2.0");
    Event.MoveVanished vanished = Runs.only(Event.MoveVanished.class, events);
    assertThat(vanished.at().line()).isEqualTo(2);
    assertThat(vanished.writtenFrom().xPm()).isEqualTo(1_000_000_000);
    assertThat(vanished.writtenTo().xPm()).isEqualTo(1_000_040_000);
    List<Move> moves = Runs.of(Move.class, events);
    assertThat(moves).hasSize(2);
    assertThat(moves.get(1).writtenFrom().xPm()).isEqualTo(1_000_040_000);
    assertThat(moves.get(1).from().xPm()).isEqualTo(1_000_000_000);
  }

  @Test
  void aMoveWithOneAxisLeftDoesNotVanish() {
    assertThat(Runs.of(Event.MoveVanished.class, "G0 X1 Y1", "G1 X1.00004 Y1.0001 F10")).isEmpty();
  }

  @Test
  void aVanishedMoveBelowAPicometre() {
    assertThat(Runs.of(Event.MoveVanished.class, "G0 X1", "G1 X1.00000000000001 F1")).hasSize(1);
    assertThat(Runs.of(Event.MoveVanished.class, "G0 X1", "G1 X1.00000000000000 F1")).isEmpty();
  }

  @Test
  void incrementsVanishEvenFromAnUnknownPlace() {
    List<Event> events = Runs.events(Runs.TENTH_UM, "G91 G1 X0.00004 F10");
    assertThat(Runs.of(Event.MoveVanished.class, events)).hasSize(1);
  }

  @Test
  void incrementsDriftWhereEachWordIsRounded() {
    // 0.00004 mm is kept as 0: after three blocks 0.12 µm are missing, more than the 0.1 µm.
    List<Event> events =
        Runs.events(
            Runs.TENTH_UM, "G0 X0 Z0", "G91 G1 F10 X0.10004", "X0.10004", "X0.10004", "X0.10004");
    List<Event.IncrementalDrift> drifts = Runs.of(Event.IncrementalDrift.class, events);
    Event.IncrementalDrift drift = drifts.get(0);
    assertThat(drift.axis()).isEqualTo(Axis.X);
    assertThat(drift.at().line()).isEqualTo(4);
    assertThat(drift.since().line()).isEqualTo(2);
    assertThat(drift.roundedMoves()).isEqualTo(3);
    assertThat(drift.driftPm()).isEqualTo(-120_000);
    // and again with each block that takes it farther
    assertThat(drifts.get(1).at().line()).isEqualTo(5);
    assertThat(drifts)
        .extracting(Event.IncrementalDrift::driftPm)
        .containsExactly(-120_000L, -160_000L);
  }

  @Test
  void aDriftOfOneIncrementIsNone() {
    String[] twice = {"G0 X0", "G91 G1 F10 X0.10005", "X0.10005"};
    assertThat(Runs.of(Event.IncrementalDrift.class, twice)).isEmpty();
    String[] beyond = {"G0 X0", "G91 G1 F10 X0.10005", "X0.10005", "X0.10005"};
    assertThat(Runs.only(Event.IncrementalDrift.class, beyond).driftPm()).isEqualTo(150_000);
  }

  @Test
  void anAbsoluteWordEndsTheStretch() {
    assertThat(
            Runs.of(
                Event.IncrementalDrift.class,
                "G0 X0",
                "G91 G1 F10 X0.10004",
                "X0.10004",
                "G90 X1",
                "G91 X0.10004",
                "X0.10004"))
        .isEmpty();
    assertThat(
            Runs.of(
                Event.IncrementalDrift.class,
                "G0 X0",
                "G91 G1 F10 X0.10004",
                "X0.10004",
                "G90 Y1",
                "G91 X0.10004",
                "X0.10004"))
        .hasSize(2);
  }

  @Test
  void driftIsToldWhereItGrowsAndAnewInEachStretch() {
    String[] program = {
      "G91 G1 F10 X0.10004",
      "X0.10004",
      "X0.10004",
      "X0.10004",
      "X0.10004",
      "X0.10004",
      "G90 X0",
      "G91 X0.10004",
      "X0.10004",
      "X0.10004"
    };
    assertThat(Runs.of(Event.IncrementalDrift.class, program))
        .extracting(Event.IncrementalDrift::driftPm)
        .containsExactly(-120_000L, -160_000L, -200_000L, -240_000L, -120_000L);
    // What a drift takes back is not told.
    assertThat(
            Runs.of(
                Event.IncrementalDrift.class,
                "G91 G1 F10 X0.10004",
                "X0.10004",
                "X0.10004",
                "X0.10006",
                "X0.10004"))
        .hasSize(1);
  }

  @Test
  void keptRemaindersNeverDrift() {
    ControlProfile keeping = Profiles.with(Runs.TENTH_UM, p -> p.remainderKept = true);
    List<Event> events =
        Runs.events(keeping, "G0 X0 Z0", "G91 G1 F10 X0.10004", "X0.10004", "X0.10004", "X0.10004");
    assertThat(Runs.of(Event.IncrementalDrift.class, events)).isEmpty();
    assertThat(Runs.of(Move.class, events))
        .extracting(move -> move.to().xPm())
        .containsExactly(0L, 100_000_000L, 200_100_000L, 300_100_000L, 400_200_000L);
  }

  @Property
  void keptRemaindersStayWithinHalfAnIncrement(
      @ForAll @BigRange(min = "-1", max = "1") @Scale(6) BigDecimal step) {
    ControlProfile keeping = Profiles.with(Runs.TENTH_UM, p -> p.remainderKept = true);
    String word = "X" + step.toPlainString();
    List<Move> moves =
        Runs.of(
            Move.class,
            Runs.events(keeping, "G0 X0 Z0", "G91 G1 F10 Z1 " + word, "Z1 " + word, "Z1 " + word));
    for (Move move : moves) {
      assertThat(Math.abs(move.to().xPm() - move.writtenTo().xPm())).isLessThanOrEqualTo(50_000);
    }
  }

  @Test
  void exactRemaindersOfInchWordsAddUp() {
    List<Event> events =
        Runs.events(
            ControlProfile.UNKNOWN,
            "G20 G0 X0",
            "G91 X0.00000000001",
            "X0.00000000001",
            "X0.00000000001 Y1");
    List<Move> moves = Runs.of(Move.class, events);
    // 10^-11 in is 0.254 pm; three are 0.762 pm, which is nearest to 1 pm.
    assertThat(Runs.of(Event.MoveVanished.class, events)).isEmpty();
    assertThat(moves.get(moves.size() - 1).writtenTo().xPm()).isEqualTo(1);
  }

  @Test
  void numbersWithoutAPointByTheProfile() {
    ControlProfile increments =
        Profiles.with(Runs.TENTH_UM, p -> p.decimalPoint = Optional.of(PointlessNumber.INCREMENTS));
    assertThat(stored(increments, "G0 X10")).isEqualTo(1_000_000);
    assertThat(stored(increments, "G0 X10.")).isEqualTo(10_000_000_000L);
    Event.PointMissing missing =
        Runs.only(Event.PointMissing.class, Runs.events(increments, "G0 X10 Y5. Z0"));
    assertThat(missing.letter()).isEqualTo('X');
    assertThat(missing.readAsPm()).isEqualTo(1_000_000);
    assertThat(missing.readAsIncrements()).isTrue();
    assertThat(missing.written()).isEqualByComparingTo("10");

    ControlProfile required =
        Profiles.with(Runs.TENTH_UM, p -> p.decimalPoint = Optional.of(PointlessNumber.REQUIRED));
    assertThat(stored(required, "G0 X10")).isEqualTo(10_000_000_000L);
    missing = Runs.only(Event.PointMissing.class, Runs.events(required, "G0 X10 Y5.5 Z0"));
    assertThat(missing.readAsPm()).isEqualTo(10_000_000_000L);
    assertThat(missing.readAsIncrements()).isFalse();

    ControlProfile units =
        Profiles.with(Runs.TENTH_UM, p -> p.decimalPoint = Optional.of(PointlessNumber.UNITS));
    assertThat(Runs.of(Event.PointMissing.class, Runs.events(units, "G0 X10"))).isEmpty();
    // Nobody said how it is read: taken as units, and told.
    missing = Runs.only(Event.PointMissing.class, Runs.events(Runs.TENTH_UM, "G0 X10 Y5. Z0"));
    assertThat(missing.reading()).isEmpty();
    assertThat(missing.readAsPm()).isEqualTo(10_000_000_000L);
  }

  @Test
  void pointsAreMissedInLengthsOnly() {
    ControlProfile required =
        Profiles.with(Runs.TENTH_UM, p -> p.decimalPoint = Optional.of(PointlessNumber.REQUIRED));
    assertThat(
            Runs.of(
                Event.PointMissing.class,
                Runs.events(
                    required,
                    "G0 X1 Y1. A90 B5 S3000 T4",
                    "G2 X2. I1 J1 F100",
                    "G3 X3. R2",
                    "G83 Z-1. R1. Q1 P100")))
        .extracting(Event.PointMissing::letter)
        .containsExactly('X', 'I', 'J', 'R', 'Q');
    assertThat(Runs.of(Event.PointMissing.class, Runs.events(required, "G0 X[1+1] Y#3"))).isEmpty();
  }

  @Test
  void incrementsWithoutAnIncrementAreUnknown() {
    ControlProfile profile =
        Profiles.with(
            ControlProfile.UNKNOWN, p -> p.decimalPoint = Optional.of(PointlessNumber.INCREMENTS));
    List<Event> events = Runs.events(profile, "G0 X10 Y1.");
    assertThat(Runs.only(Move.class, events).to().knows(Axis.X)).isFalse();
    assertThat(Runs.only(Event.BecameUnknown.class, events).what()).startsWith("X: ");
  }

  @Test
  void incrementsUnderInchesAreInchIncrements() {
    ControlProfile inch =
        Profiles.with(
            Runs.TENTH_UM,
            p -> {
              p.inchResolutionPm = OptionalLong.of(254_000);
              p.decimalPoint = Optional.of(PointlessNumber.INCREMENTS);
            });
    assertThat(stored(inch, "G20 G0 X10")).isEqualTo(2_540_000);
  }

  @Test
  void whatFitsNoLongIsTold() {
    Rounding rounding = new Rounding(Runs.TENTH_UM);
    assertThatThrownBy(() -> rounding.store(Long.MAX_VALUE, Modes.Units.MM))
        .isInstanceOf(ArithmeticException.class);
    assertThatThrownBy(() -> rounding.store(BigDecimal.TEN.pow(30), Modes.Units.MM))
        .isInstanceOf(ArithmeticException.class);
  }
}

package hairline.checks.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.motion.Evaluated.Known;
import hairline.checks.motion.Evaluated.Refused;
import hairline.checks.motion.Evaluated.Unknown;
import hairline.parser.Setting;
import hairline.parser.Span;
import hairline.parser.Value;
import hairline.parser.Value.Function;
import hairline.parser.Value.Operator;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EvaluatorTest {
  private final Parameters parameters = new Parameters();
  private final Evaluator evaluator = new Evaluator(parameters);

  static Value number(String digits) {
    return Value.Literal.of(new BigDecimal(digits), digits.contains("."));
  }

  private static Value binary(Operator operator, Value left, Value right) {
    return new Value.Binary(operator, left, right);
  }

  private static Value binary(Operator operator, String left, String right) {
    return binary(operator, number(left), number(right));
  }

  private static Value call(Function function, String argument) {
    return new Value.Call(function, number(argument));
  }

  private static Value parameter(String index) {
    return new Value.Parameter(number(index));
  }

  private static Setting set(String index, Value value) {
    return new Setting(number(index), value, new Span(1, 2));
  }

  private BigDecimal numberOf(Value value) {
    assertThat(evaluator.evaluate(value)).isInstanceOf(Known.class);
    return ((Known) evaluator.evaluate(value)).number();
  }

  private double doubleOf(Value value) {
    return numberOf(value).doubleValue();
  }

  private void assertComesTo(Value value, String number) {
    assertThat(numberOf(value)).isEqualByComparingTo(number);
  }

  private void assertRefused(Value value, String why) {
    assertThat(evaluator.evaluate(value)).isEqualTo(new Refused(why));
  }

  private boolean exact(Value value) {
    return ((Known) evaluator.evaluate(value)).exact();
  }

  @Test
  void computesTheExamplesOfTheReport() {
    // [1 + 2 * 3 - 4 / 5] and [2.0 / 3 * 1.5 - 5.5 / 11.0]: NISTIR 6556 §3.3.2.3 and appendix B.
    assertComesTo(
        binary(
            Operator.SUBTRACT,
            binary(Operator.ADD, number("1"), binary(Operator.MULTIPLY, "2", "3")),
            binary(Operator.DIVIDE, "4", "5")),
        "6.2");
    assertComesTo(
        binary(
            Operator.SUBTRACT,
            binary(Operator.MULTIPLY, binary(Operator.DIVIDE, "2.0", "3"), number("1.5")),
            binary(Operator.DIVIDE, "5.5", "11.0")),
        "0.5");
    // [15 MOD 4.0] and [2 ** 3.0]: NISTIR 6556, listed in its table of binary operations.
    assertComesTo(binary(Operator.MODULO, "15", "4.0"), "3");
    assertComesTo(binary(Operator.POWER, "2", "3.0"), "8");
  }

  @ParameterizedTest
  @CsvSource({
    // NISTIR 6556 §3.3.2.4
    "FIX, 2.8, 2",
    "FIX, -2.8, -3",
    "FUP, 2.8, 3",
    "FUP, -2.8, -2",
    // NISTIR 6556, sample program
    "FIX, -0.499, -1",
    "FUP, -0.499, 0",
    "ROUND, 9.975, 10",
    // exact
    "ROUND, 2.5, 3",
    "ROUND, -2.5, -3",
    "ROUND, 2.4999, 2",
    "ABS, -1.25, 1.25",
    "ABS, 1.25, 1.25",
    "SQRT, 0.0625, 0.25",
    "SQRT, 0, 0",
    "SIN, 0, 0",
    "SIN, 30, 0.5",
    "SIN, 90, 1",
    "SIN, 150, 0.5",
    "SIN, 180, 0",
    "SIN, 210, -0.5",
    "SIN, 270, -1",
    "SIN, -30, -0.5",
    "SIN, 3600000000030, 0.5",
    "COS, 0, 1",
    "COS, 60, 0.5",
    "COS, 90, 0",
    "COS, 120, -0.5",
    "COS, 180, -1",
    "COS, 300, 0.5",
    "TAN, 45, 1",
    "TAN, 135, -1",
    "TAN, 0, 0",
    "TAN, 180, 0",
    "ASIN, 0.5, 30",
    "ASIN, -1, -90",
    "ACOS, 0, 90",
    "ACOS, -1, 180",
    "ACOS, 1, 0",
    "EXP, 0, 1",
    "LN, 1, 0",
  })
  void computesFunctionsExactlyWhereTheyAreExact(Function function, String argument, String value) {
    assertComesTo(call(function, argument), value);
  }

  @ParameterizedTest
  @CsvSource({
    // Digits of the constants: e, ln 2, sqrt 2, sin 1°, tan 89°, from memory of standard tables.
    "EXP, 1, 2.718281828459045",
    "LN, 2, 0.6931471805599453",
    "SQRT, 2, 1.4142135623730951",
    "SIN, 1, 0.01745240643728351",
    "COS, 89, 0.01745240643728351",
    "TAN, 89, 57.28996163075943",
    "ASIN, 0.01745240643728351, 1",
  })
  void computesFunctionsToElevenPlaces(Function function, String argument, double value) {
    assertThat(doubleOf(call(function, argument))).isCloseTo(value, within(1e-11));
  }

  @ParameterizedTest
  @CsvSource({
    "1,1,45",
    "2,-2,135",
    "-1,0,-90",
    "0,-3,180",
    "0,4,0",
    "-1,-1,-135",
    "3,4,36.869897645844"
  })
  void tellsTheQuadrantOfAnArcTangent(String y, String x, String degrees) {
    assertThat(numberOf(new Value.ArcTangent(number(y), number(x))))
        .isCloseTo(new BigDecimal(degrees), within(new BigDecimal("1e-12")));
  }

  @ParameterizedTest
  @CsvSource({
    "ADD, 0.1, 0.2, 0.3",
    "SUBTRACT, 0.3, 0.1, 0.2",
    "MULTIPLY, 1.0000001, 1.0000001, 1.00000020000001",
    "DIVIDE, 1, 8, 0.125",
    "MODULO, -7, 4, 1",
    "MODULO, 7, -4, 3",
    "MODULO, -7, -4, 1",
    "MODULO, -8, 4, 0",
    "MODULO, 5.5, 2, 1.5",
    "POWER, 2, -2, 0.25",
    "POWER, -2, 3, -8",
    "POWER, 4, 0.5, 2",
    "POWER, 0, 0, 1",
    "POWER, 0, 3, 0",
    "POWER, 0.1, 20, 0.00000000000000000001",
    "AND, 2, -1, 1",
    "AND, 2, 0, 0",
    "AND, 0, 0, 0",
    "OR, 0, 0.1, 1",
    "OR, 0.1, 0, 1",
    "OR, 0, 0, 0",
    "XOR, 3, 4, 0",
    "XOR, 3, 0, 1",
    "XOR, 0, 3, 1",
    "XOR, 0, 0, 0",
  })
  void operates(Operator operator, String left, String right, String value) {
    assertComesTo(binary(operator, left, right), value);
  }

  @Test
  void addsAndMultipliesWithoutLosingDigits() {
    assertComesTo(
        binary(Operator.ADD, "100000000000000.0000000000000001", "0.0000000000000002"),
        "100000000000000.0000000000000003");
    assertThat(exact(binary(Operator.MULTIPLY, "0.00001234567", "0.00000000000001"))).isTrue();
    assertComesTo(
        binary(Operator.MULTIPLY, "0.00001234567", "0.00000000000001"),
        "0.0000000000000000001234567");
  }

  @Test
  void saysWhatIsExact() {
    assertThat(exact(binary(Operator.DIVIDE, "1", "4"))).isTrue();
    assertThat(exact(binary(Operator.DIVIDE, "1", "3"))).isFalse();
    assertThat(exact(call(Function.SQRT, "2.25"))).isTrue();
    assertThat(exact(call(Function.SQRT, "2"))).isFalse();
    assertThat(exact(binary(Operator.POWER, "1.1", "3"))).isTrue();
    assertThat(exact(binary(Operator.POWER, "2", "-3"))).isTrue();
    assertThat(exact(binary(Operator.POWER, "3", "-1"))).isFalse();
    assertThat(exact(binary(Operator.POWER, "4", "0.5"))).isFalse();
    assertThat(exact(binary(Operator.POWER, "1.000000001", "9"))).isFalse();
    assertThat(exact(call(Function.COS, "60"))).isFalse();
    Value third = binary(Operator.DIVIDE, "1", "3");
    for (Operator operator : Operator.values()) {
      assertThat(exact(binary(operator, third, number("1")))).isFalse();
      assertThat(exact(binary(operator, number("1"), third))).isFalse();
    }
  }

  @Test
  void roundsAtTheEndWhatWasRoundedOnTheWay() {
    Value third = binary(Operator.DIVIDE, "1", "3");
    Value one = binary(Operator.MULTIPLY, third, number("3"));
    assertThat(numberOf(third)).isEqualTo(new BigDecimal("0.333333333333"));
    assertThat(numberOf(one).toPlainString()).isEqualTo("1");
    assertComesTo(new Value.Call(Function.FIX, one), "1");
    assertComesTo(new Value.Call(Function.FUP, new Value.Negated(one)), "-1");
    assertComesTo(binary(Operator.MODULO, one, number("1")), "0");
    Value nothing = binary(Operator.SUBTRACT, one, number("1"));
    assertComesTo(binary(Operator.OR, nothing, number("0")), "0");
    parameters.set(1, Known.of(5), 1);
    assertComesTo(new Value.Parameter(one), "5");
  }

  @Test
  void keepsTheDigitsOfAParameterForFurtherUse() {
    evaluator.apply(List.of(set("1", binary(Operator.DIVIDE, "1", "3"))), 1);
    Value billion = binary(Operator.MULTIPLY, parameter("1"), number("3000000000"));
    assertComesTo(billion, "1000000000");
  }

  @Test
  void refusesWhatHasNoValue() {
    assertRefused(binary(Operator.DIVIDE, "1", "0"), "division by zero");
    assertRefused(binary(Operator.MODULO, "1", "0.0"), "MOD by zero");
    assertRefused(binary(Operator.POWER, "0", "-1"), "zero to a negative power");
    assertRefused(
        binary(Operator.POWER, "-2", "0.5"), "a negative number to a power that is not whole");
    assertRefused(call(Function.SQRT, "-0.25"), "the square root of -0.25, which is negative");
    assertRefused(call(Function.LN, "0"), "the logarithm of 0, which is not positive");
    assertRefused(call(Function.LN, "-1"), "the logarithm of -1, which is not positive");
    assertRefused(call(Function.ASIN, "1.01"), "the arc sine of 1.01, which lies beyond 1");
    assertRefused(call(Function.ACOS, "-1.01"), "the arc cosine of -1.01, which lies beyond 1");
    assertRefused(call(Function.TAN, "90"), "the tangent of 90°, which is infinite");
    assertRefused(call(Function.TAN, "-270"), "the tangent of -270°, which is infinite");
    assertRefused(new Value.ArcTangent(number("0"), number("0")), "the arc tangent of 0/0");
  }

  @Test
  void refusesResultsBeyondItsRangeWithoutComputingThem() {
    Assertions.assertTimeoutPreemptively(
        Duration.ofSeconds(5),
        () -> {
          assertRefused(binary(Operator.POWER, "2", "1000000000"), "a result beyond 10^15");
          assertRefused(
              binary(Operator.POWER, "9999999999", "99999999999999999999"),
              "a result beyond 10^15");
          assertRefused(call(Function.EXP, "1000"), "a result beyond 10^15");
          assertRefused(call(Function.EXP, "35"), "a result beyond 10^15");
          assertRefused(binary(Operator.ADD, "1000000000000000", "0.001"), "a result beyond 10^15");
          assertComesTo(binary(Operator.ADD, "999999999999999", "1"), "1000000000000000");
          assertRefused(
              binary(Operator.MULTIPLY, "-100000000", "10000001"), "a result beyond 10^15");
          assertComesTo(binary(Operator.POWER, "0.5", "1000000000"), "0");
          assertComesTo(binary(Operator.POWER, "2", "-1000000000"), "0");
          assertThat(doubleOf(binary(Operator.POWER, "1.0000000001", "999999999")))
              .isCloseTo(1.1051709179, within(1e-9));
          assertThat(doubleOf(binary(Operator.POWER, "1.0000000001", "1000000000")))
              .isCloseTo(1.1051709180, within(1e-7));
          assertComesTo(binary(Operator.POWER, "-1", "999999999999999"), "-1");
        });
  }

  @Test
  void countsAsZeroWhatIsBelowTheSmallest() {
    Value small = binary(Operator.POWER, "10", "-60");
    assertComesTo(
        binary(Operator.MULTIPLY, binary(Operator.MULTIPLY, small, number("1e15")), number("1e15")),
        "0.000000000000000000000000000001");
    assertComesTo(binary(Operator.MULTIPLY, small, number("0.01")), "0");
    assertThat(exact(binary(Operator.MULTIPLY, small, number("0.01")))).isFalse();
    assertThat(exact(binary(Operator.MULTIPLY, "0.000", "0"))).isTrue();
  }

  @Test
  void leavesNumbersWithoutExponent() {
    assertThat(numberOf(binary(Operator.POWER, "10", "3"))).isEqualTo(new BigDecimal("1000"));
  }

  @Test
  void readsParameters() {
    assertThat(evaluator.evaluate(parameter("3"))).isEqualTo(new Unknown(0, "#3 was never set"));
    // "#3=15" and then "#3=6 G1 x#3" goes to 15: NISTIR 6556 §3.3.3.
    assertThat(evaluator.apply(List.of(set("3", number("15"))), 1)).isEmpty();
    Evaluated x = evaluator.evaluate(parameter("3"));
    evaluator.apply(List.of(set("3", number("6"))), 2);
    assertThat(x).isEqualTo(Known.of(15));
    assertComesTo(parameter("3"), "6");
    // "#3=15 #3=6": the last one holds, NISTIR 6556 §3.3.5.
    evaluator.apply(List.of(set("3", number("15")), set("3", number("7"))), 3);
    assertComesTo(parameter("3"), "7");
    // "##2" is the parameter whose number parameter 2 holds, NISTIR 6556 §3.3.2.2.
    evaluator.apply(List.of(set("2", number("3"))), 4);
    assertComesTo(new Value.Parameter(parameter("2")), "7");
    assertComesTo(new Value.Negated(parameter("3")), "-7");
  }

  @Test
  void computesAllSettingsOfABlockWithTheValuesFromBefore() {
    evaluator.apply(List.of(set("1", number("1")), set("2", number("2"))), 1);
    evaluator.apply(List.of(set("1", parameter("2")), set("2", parameter("1"))), 2);
    assertComesTo(parameter("1"), "2");
    assertComesTo(parameter("2"), "1");
    evaluator.apply(List.of(set("1", binary(Operator.ADD, parameter("1"), number("1")))), 3);
    assertComesTo(parameter("1"), "3");
  }

  @Test
  void refusesParameterNumbersThatAreNone() {
    assertRefused(parameter("0"), "parameter number 0 is not between 1 and 9999");
    assertRefused(parameter("10000"), "parameter number 10000 is not between 1 and 9999");
    assertRefused(parameter("1.5"), "parameter number 1.5 is not whole");
    assertRefused(parameter("1.00011"), "parameter number 1.00011 is not whole");
    assertRefused(
        parameter("99999999999999999999"), "parameter number 100000000000000000000 is not whole");
    parameters.set(9999, Known.of(4), 1);
    parameters.set(1, Known.of(5), 1);
    assertComesTo(parameter("9999"), "4");
    // Within 0.0001 of a whole number: NISTIR 6556 §3.3.2.1.
    assertComesTo(parameter("1.0001"), "5");
    assertComesTo(parameter("0.9999"), "5");
    assertThatThrownBy(() -> parameters.set(0, Known.of(1), 1))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> parameters.set(10_000, Known.of(1), 1))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void makesUnknownWhatASettingCouldNotCompute() {
    Span span = new Span(4, 9);
    Setting broken = new Setting(number("7"), binary(Operator.DIVIDE, "1", "0"), span);
    assertThat(evaluator.apply(List.of(broken), 12))
        .containsExactly(new Evaluator.Refusal(span, "division by zero"));
    assertThat(evaluator.evaluate(parameter("7")))
        .isEqualTo(new Unknown(12, "line 12 sets #7 to no number: division by zero"));
    Setting nowhere = new Setting(number("0"), number("1"), span);
    assertThat(evaluator.apply(List.of(nowhere), 13))
        .containsExactly(
            new Evaluator.Refusal(span, "parameter number 0 is not between 1 and 9999"));
    // What is set from an unknown one is unknown for the same reason.
    evaluator.apply(List.of(set("8", parameter("7"))), 14);
    assertThat(((Unknown) evaluator.evaluate(parameter("8"))).line()).isEqualTo(12);
  }

  @Test
  void forgetsEverythingWhereItCannotTellWhatWasSet() {
    parameters.set(1, Known.of(5), 1);
    evaluator.apply(
        List.of(new Setting(parameter("99"), number("1"), new Span(1, 2)), set("2", number("6"))),
        20);
    assertThat(evaluator.evaluate(parameter("1")))
        .isEqualTo(new Unknown(20, "line 20 may have set #1 to anything"));
    assertComesTo(parameter("2"), "6");
  }

  @Test
  void prefersWhatIsWrongToWhatIsUnknown() {
    Value unknown = parameter("50");
    Value wrong = binary(Operator.DIVIDE, "1", "0");
    assertRefused(binary(Operator.ADD, unknown, wrong), "division by zero");
    assertRefused(binary(Operator.ADD, wrong, unknown), "division by zero");
    assertRefused(binary(Operator.ADD, wrong, number("1")), "division by zero");
    assertRefused(binary(Operator.ADD, number("1"), wrong), "division by zero");
    assertRefused(new Value.ArcTangent(unknown, wrong), "division by zero");
    for (Value value :
        List.of(
            binary(Operator.ADD, unknown, number("1")),
            binary(Operator.ADD, number("1"), unknown),
            binary(Operator.ADD, unknown, parameter("51")),
            new Value.Negated(unknown),
            new Value.Call(Function.ABS, unknown),
            new Value.ArcTangent(number("1"), unknown),
            new Value.Parameter(unknown))) {
      assertThat(evaluator.evaluate(value)).isEqualTo(new Unknown(0, "#50 was never set"));
    }
  }

  @Test
  void walksLongChainsAndRefusesDeepNesting() {
    Value sum = number("0");
    for (int i = 0; i < 200_000; i++) {
      sum = binary(Operator.ADD, sum, number("1"));
    }
    assertComesTo(sum, "200000");
    Value nested = number("1");
    for (int i = 0; i < 1000; i++) {
      nested = new Value.Negated(nested);
    }
    assertComesTo(nested, "1");
    assertRefused(new Value.Negated(nested), "the expression nests deeper than 1000 levels");
    Value right = number("1");
    for (int i = 0; i < 100_000; i++) {
      right = binary(Operator.ADD, number("1"), right);
    }
    assertRefused(right, "the expression nests deeper than 1000 levels");
  }

  @Test
  void findsWholeNumbers() {
    assertThat(Evaluator.whole(new BigDecimal("7.0001"))).contains(7L);
    assertThat(Evaluator.whole(new BigDecimal("6.9999"))).contains(7L);
    assertThat(Evaluator.whole(new BigDecimal("7.00011"))).isEmpty();
    assertThat(Evaluator.whole(new BigDecimal("-3"))).contains(-3L);
    assertThat(Evaluator.whole(new BigDecimal("9223372036854775807"))).contains(Long.MAX_VALUE);
    assertThat(Evaluator.whole(new BigDecimal("9223372036854775808"))).isEmpty();
  }
}

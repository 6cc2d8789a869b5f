package hairline.checks.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.motion.Evaluated.Known;
import hairline.parser.Block;
import hairline.parser.BlockSource;
import hairline.parser.PartPrograms;
import hairline.parser.Value;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.Combinators;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

/** Expressions as text, read by the grammar, against a small evaluator of doubles. */
class EvaluatorProperties {
  private final Evaluator evaluator = new Evaluator(new Parameters());

  private static Value read(String expression) throws IOException {
    byte[] bytes = ("X" + expression).getBytes(StandardCharsets.UTF_8);
    try (BlockSource blocks = PartPrograms.of("test", bytes).blocks()) {
      Block block = blocks.next().orElseThrow();
      assertThat(block.problems()).isEmpty();
      return block.words().get(0).value();
    }
  }

  private Evaluated evaluate(String expression) throws IOException {
    return evaluator.evaluate(read(expression));
  }

  private void assertComesTo(String expression, String number) throws IOException {
    assertThat(((Known) evaluate(expression)).number()).isEqualByComparingTo(number);
  }

  @Example
  void readsTheExamplesOfTheReport() throws IOException {
    // NISTIR 6556 §3.3.2.3, §3.3.2.4 and its table of tests
    assertComesTo("[1 + 2 * 3 - 4 / 5]", "6.2");
    assertComesTo("[2.0 / 3 * 1.5 - 5.5 / 11.0]", "0.5");
    assertComesTo("[15 MOD 4.0]", "3");
    assertComesTo("[2 ** 3.0]", "8");
    assertComesTo("[1 + acos[0] - [3 ** [4.0/2]]]", "82");
    assertComesTo("fix[-0.499]", "-1");
    assertComesTo("fup[-0.499]", "0");
    assertComesTo("round[9.975]", "10");
    assertComesTo("atan[4]/[3]", "53.130102354156");
    // a 3-4-5 triangle and its angle
    assertComesTo("sqrt[3 ** 2 + 4 ** 2]", "5");
    assertComesTo("[5 * cos[atan[4]/[3]]]", "3");
  }

  @Property
  void agreesWithDoubles(@ForAll("expressions") String expression) throws IOException {
    Doubles doubles = new Doubles(expression);
    double expected = doubles.value();
    Assume.that(doubles.wellConditioned);
    Evaluated evaluated = evaluate(expression);
    assertThat(evaluated).isInstanceOf(Known.class);
    assertThat(((Known) evaluated).number().doubleValue())
        .isCloseTo(expected, within(1e-9 * Math.max(1, Math.abs(expected))));
  }

  @Property
  void addsExactly(
      @ForAll @IntRange(min = -31_000_000, max = 31_000_000) int a,
      @ForAll @IntRange(min = -31_000_000, max = 31_000_000) int b,
      @ForAll @IntRange(min = 0, max = 9) int scaleA,
      @ForAll @IntRange(min = 0, max = 9) int scaleB)
      throws IOException {
    BigDecimal x = BigDecimal.valueOf(a, scaleA);
    BigDecimal y = BigDecimal.valueOf(b, scaleB);
    String pair = "[%s%s" + y.toPlainString() + "]";
    String left = x.toPlainString();
    assertThat(evaluate(String.format(Locale.ROOT, pair, left, "+"))).isEqualTo(Known.of(x.add(y)));
    assertThat(evaluate(String.format(Locale.ROOT, pair, left, "-")))
        .isEqualTo(Known.of(x.subtract(y)));
    assertThat(evaluate(String.format(Locale.ROOT, pair, left, "*")))
        .isEqualTo(Known.of(x.multiply(y)));
  }

  @Property
  void leavesARemainderBetweenZeroAndTheDivisor(
      @ForAll @IntRange(min = -1_000_000, max = 1_000_000) int a,
      @ForAll @IntRange(min = -1_000, max = 1_000) int b)
      throws IOException {
    Assume.that(b != 0);
    BigDecimal rest = ((Known) evaluate("[" + a + " MOD " + b + "]")).number();
    assertThat(rest.intValueExact()).isEqualTo(Math.floorMod(a, Math.abs(b)));
  }

  @Property
  void roundsAsItsThreeFunctionsSay(@ForAll @IntRange(min = -9_999, max = 9_999) int thousandths)
      throws IOException {
    String number = BigDecimal.valueOf(thousandths, 3).toPlainString();
    assertComesTo("FIX[" + number + "]", "" + Math.floorDiv(thousandths, 1000));
    assertComesTo("FUP[" + number + "]", "" + -Math.floorDiv(-thousandths, 1000));
    int away = (Math.abs(thousandths) + 500) / 1000;
    assertComesTo("ROUND[" + number + "]", "" + (thousandths < 0 ? -away : away));
  }

  @Property
  void knowsTheAnglesOfItsSines(@ForAll @IntRange(min = -9_000, max = 9_000) int hundredths)
      throws IOException {
    String angle = BigDecimal.valueOf(hundredths, 2).toPlainString();
    BigDecimal back = ((Known) evaluate("ASIN[SIN[" + angle + "]]")).number();
    // Near 90° an error of 10^-15 in the sine is one of 5·10^-7 degrees in the angle.
    assertThat(back.doubleValue()).isCloseTo(hundredths / 100.0, within(3e-6));
    BigDecimal one =
        ((Known) evaluate("[SIN[" + angle + "] ** 2 + COS[" + angle + "] ** 2]")).number();
    assertThat(one.doubleValue()).isCloseTo(1, within(1e-11));
  }

  @Provide
  Arbitrary<String> expressions() {
    Arbitrary<String> numbers =
        Arbitraries.bigDecimals()
            .between(BigDecimal.ZERO, new BigDecimal("20"))
            .ofScale(2)
            .map(BigDecimal::toPlainString);
    return Arbitraries.lazyOf(
            () -> numbers,
            () -> chain(numbers),
            () -> chain(expressions()),
            () ->
                Combinators.combine(
                        Arbitraries.of("ABS", "COS", "SIN", "SQRT", "EXP", "LN", "TAN"),
                        chain(numbers))
                    .as((name, inner) -> name + inner),
            () ->
                Combinators.combine(chain(numbers), chain(numbers))
                    .as((y, x) -> "ATAN" + y + "/" + x))
        .map(text -> text);
  }

  /** [a op b op c], the operators with and without blanks. */
  private static Arbitrary<String> chain(Arbitrary<String> operands) {
    Arbitrary<String> operators = Arbitraries.of("+", "-", "*", "/", " + ", " * ", "-", " / ");
    Arbitrary<String> powers = Arbitraries.of("", "", "", " ** 2", "**3");
    return Combinators.combine(operands, operators, operands, powers, operators, operands)
        .as((a, op1, b, power, op2, c) -> "[" + a + op1 + b + power + op2 + c + "]");
  }

  /** Evaluates an expression in double, by recursive descent over its text. */
  private static final class Doubles {
    private static final double STEEP = 1e-2;
    private static final double LARGE = 1e6;

    private final String text;
    private int at;
    boolean wellConditioned = true;

    Doubles(String text) {
      this.text = text.replace(" ", "");
    }

    double value() {
      double value = operand();
      assertThat(at).isEqualTo(text.length());
      return value;
    }

    private boolean take(String token) {
      boolean there = text.startsWith(token, at);
      if (there) {
        at += token.length();
      }
      return there;
    }

    private double sum() {
      double sum = product();
      while (true) {
        if (take("+")) {
          sum += product();
        } else if (take("-")) {
          sum -= product();
        } else {
          return sum;
        }
      }
    }

    private double product() {
      double product = power();
      while (true) {
        if (take("*")) {
          product *= power();
        } else if (take("/")) {
          double divisor = power();
          product = judge(product / divisor, Math.abs(divisor) > STEEP);
        } else {
          return judge(product, true);
        }
      }
    }

    private double power() {
      double power = operand();
      while (take("**")) {
        power = Math.pow(power, operand());
      }
      return judge(power, true);
    }

    private double judge(double value, boolean mild) {
      wellConditioned &= mild && Math.abs(value) < LARGE;
      return value;
    }

    private double operand() {
      if (take("[")) {
        double inner = sum();
        assertThat(take("]")).isTrue();
        return inner;
      }
      if (take("ATAN")) {
        double y = operand();
        assertThat(take("/")).isTrue();
        double x = operand();
        return judge(Math.toDegrees(Math.atan2(y, x)), Math.hypot(x, y) > STEEP && x > STEEP);
      }
      for (String name : new String[] {"ABS", "COS", "SIN", "SQRT", "EXP", "LN", "TAN"}) {
        if (take(name)) {
          return function(name, operand());
        }
      }
      int start = at;
      while (at < text.length() && "0123456789.".indexOf(text.charAt(at)) >= 0) {
        at++;
      }
      return Double.parseDouble(text.substring(start, at));
    }

    private double function(String name, double x) {
      return switch (name) {
        case "ABS" -> Math.abs(x);
        case "COS" -> judge(Math.cos(Math.toRadians(x)), Math.abs(x) < 1e4);
        case "SIN" -> judge(Math.sin(Math.toRadians(x)), Math.abs(x) < 1e4);
        case "SQRT" -> judge(Math.sqrt(x), x > STEEP);
        case "EXP" -> judge(Math.exp(x), Math.abs(x) < 10);
        case "LN" -> judge(Math.log(x), x > STEEP);
        default ->
            judge(
                Math.tan(Math.toRadians(x)),
                Math.abs(Math.cos(Math.toRadians(x))) > STEEP && Math.abs(x) < 1e4);
      };
    }
  }
}

package hairline.parser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Parameters, expressions and functions: NISTIR 6556 §3.3.2. */
class ValueTest {
  private static final Pattern SHOULD_BE = Pattern.compile("x should be (-?[0-9.]+)");

  private static double compute(String text) {
    return new Evaluator().value(Read.value(text));
  }

  /** NISTIR 6556 §3.3.2.3 and appendix C.2. */
  @ParameterizedTest
  @CsvSource({
    "[1 + 2 * 3 - 4 / 5], 6.2",
    "[2.0 / 3 * 1.5 - 5.5 / 11.0], 0.5",
    "[15 MOD 4.0], 3",
    "[2 ** 3.0], 8",
    "[1 --3], 4",
    "fix[-0.499], -1",
    "fup[-0.499], 0",
    "fix[2.8], 2",
    "fix[-2.8], -3",
    "fup[2.8], 3",
    "fup[-2.8], -2",
    "round[9.975], 10",
    "SIN[90], 1",
  })
  void examplesOfTheReport(String text, double expected) {
    assertThat(compute(text)).isCloseTo(expected, within(1e-12));
  }

  /**
   * The whole of NISTIR 6556 appendix C.2. Each of its comments says what X should be, in up to
   * four decimals. Block N460 has no such comment: its value is worked out by hand below.
   */
  @Test
  void programToTestExpressions() {
    Evaluator evaluator = new Evaluator();
    int checked = 0;
    for (Block block : Read.program(Read.sample("nistir-6556-c2.nc"))) {
      assertThat(block.problems()).as(block.text()).isEmpty();
      for (Word word : block.words()) {
        Matcher should = SHOULD_BE.matcher(block.text());
        if (word.letter() == 'X' && should.find()) {
          assertThat(evaluator.value(word.value()))
              .as(block.text())
              .isCloseTo(Double.parseDouble(should.group(1)), within(1e-3));
          checked++;
        }
      }
      evaluator.apply(block);
    }
    assertThat(checked).isEqualTo(44);
  }

  /** Block N460 of the same program, with the brackets that §3.3.2.3 puts around each operation. */
  @Test
  void nestedExpressionOfTheReport() {
    String text = "[2 + asin[1/2.1+-0.345] / [atan[fix[4.4] * 2.1 * sqrt[16.8]] /[-18]]**2]";
    assertThat(Show.value(Read.value(text)))
        .isEqualTo(
            "[2 + [asin[[[1 / 2.1] + -0.345]]"
                + " / [atan[[[fix[4.4] * 2.1] * sqrt[16.8]]]/[-18] ** 2]]]");
    double asin = StrictMath.toDegrees(StrictMath.asin(1 / 2.1 - 0.345));
    double atan = StrictMath.toDegrees(StrictMath.atan2(4 * 2.1 * StrictMath.sqrt(16.8), -18));
    assertThat(compute(text)).isCloseTo(2 + asin / (atan * atan), within(1e-12));
  }

  /** Power first, then * / MOD, then the rest; from the left within a group (§3.3.2.3). */
  @ParameterizedTest
  @CsvSource({
    "[1+2+3], [[1 + 2] + 3]",
    "[1-2-3], [[1 - 2] - 3]",
    "[1+2*3], [1 + [2 * 3]]",
    "[1*2+3], [[1 * 2] + 3]",
    "[2/3*4], [[2 / 3] * 4]",
    "[2*3/4], [[2 * 3] / 4]",
    "[8 mod 3 * 2], [[8 mod 3] * 2]",
    "[2*8 mod 3], [[2 * 8] mod 3]",
    "[2**3**2], [[2 ** 3] ** 2]",
    "[2*3**2], [2 * [3 ** 2]]",
    "[2**3*2], [[2 ** 3] * 2]",
    "[1 and 2 or 3], [[1 and 2] or 3]",
    "[1 or 2 and 3], [[1 or 2] and 3]",
    "[1 + 2 xor 3 - 4], [[[1 + 2] xor 3] - 4]",
    "[1 or 2 + 3], [[1 or 2] + 3]",
    "[1 or 2 * 3], [1 or [2 * 3]]",
    "[[1+2]*3], [[1 + 2] * 3]",
    "[2**[3**2]], [2 ** [3 ** 2]]",
    "[1--3], [1 - -3]",
    "[-2**2], [-2 ** 2]",
    "[2**-2], [2 ** -2]",
    "[[[7]]], 7",
    "[1 aNd 2], [1 and 2]",
    "[1 a n d 2], [1 and 2]",
    "[1 x o r 2], [1 xor 2]",
    "[1*  *2], [1 ** 2]",
    "[5 mod-2], [5 mod -2]",
  })
  void precedence(String text, String expected) {
    assertThat(Show.value(Read.value(text))).isEqualTo(expected);
  }

  /** §3.3.2.2: # takes precedence over other operations. */
  @ParameterizedTest
  @CsvSource({
    "#1, #1",
    "# 1, #1",
    "##2, ##2",
    "#[1+2], #[1 + 2]",
    "[#1+2], [#1 + 2]",
    "[#1**2], [#1 ** 2]",
    "#sin[30], #sin[30]",
    "#-5, #-5",
  })
  void parameters(String text, String expected) {
    assertThat(Show.value(Read.value(text))).isEqualTo(expected);
  }

  /** Forms of the trade: a sign before anything. */
  @ParameterizedTest
  @CsvSource({
    "-#4, -#4",
    "+#4, #4",
    "-[#8/2], -[#8 / 2]",
    "+[1], 1",
    "-sin[30], -sin[30]",
    "-atan[1]/[2], -atan[1]/[2]",
    "[-#1**2], [-#1 ** 2]",
    "[1*-#2], [1 * -#2]",
    "-[-[5]], --5",
  })
  void signs(String text, String expected) {
    assertThat(Show.value(Read.value(text))).isEqualTo(expected);
  }

  /** Negating a parameter is an operation; the sign of a number is part of the number. */
  @Test
  void signsBelongToValues() {
    assertThat(Read.value("-#4")).isInstanceOf(Value.Negated.class);
    assertThat(Read.value("-4")).isInstanceOf(Value.Literal.class);
    assertThat(compute("[-2**2]")).isEqualTo(4);
  }

  @ParameterizedTest
  @EnumSource(Value.Function.class)
  void functions(Value.Function function) {
    String name = function.name();
    Value expected = new Value.Call(function, Read.value("0.5"));
    assertThat(Read.value(name + "[.5]")).isEqualTo(Read.value("[" + name + "[0.5]]"));
    assertThat(Show.value(Read.value(name + "[0.5]"))).isEqualTo(Show.value(expected));
    assertThat(Read.value(name.toLowerCase(Locale.ROOT) + " [0.5]")).isEqualTo(expected);
    assertThat(Read.value(String.join(" ", name.split("")) + "[0.5]")).isEqualTo(expected);
    assertThat(((Value.Call) Read.value(name + "[0.5]")).function()).isEqualTo(function);
  }

  @Test
  void arcTangent() {
    assertThat(Show.value(Read.value("ATAN[2]/[1+3]"))).isEqualTo("atan[2]/[[1 + 3]]");
    assertThat(Show.value(Read.value("[atan[1]/[2]/3]"))).isEqualTo("[atan[1]/[2] / 3]");
    assertThat(compute("atan[1]/[-1]")).isCloseTo(135, within(1e-12));
  }

  /** The report reads the letter first: A with the sine of 30°. */
  @ParameterizedTest
  @CsvSource({
    "ASIN[30], Asin[30]",
    "Xsin[30], Xsin[30]",
    "ATAN[45], Atan[45]",
    "AATAN[1]/[2], Aatan[1]/[2]",
    "SSIN[30], Ssin[30]",
    "RROUND[2], Rround[2]",
    "NSIN[3], Nsin[3]",
  })
  void theAddressComesFirst(String text, String expected) {
    assertThat(Read.words(text)).containsExactly(expected);
  }

  @Test
  void nestingUpToTheLimit() {
    String deep = "[".repeat(Limits.NESTING) + "1" + "]".repeat(Limits.NESTING);
    assertThat(Read.value(deep)).isEqualTo(Read.value("1"));
    assertThat(Read.words("X" + deep + " Y" + deep)).containsExactly("X1", "Y1");
    String hashes = "#".repeat(Limits.NESTING) + "1";
    assertThat(Show.value(Read.value(hashes))).isEqualTo(hashes);
    assertThat(Read.words("X" + hashes + "Y" + hashes)).hasSize(2);
    assertThat(Read.words("X[" + hashes + "]Y" + hashes)).hasSize(2);
  }

  @Test
  void nestingBeyondTheLimit() {
    int beyond = Limits.NESTING + 1;
    Problem brackets = Read.problem("X" + "[".repeat(beyond) + "1" + "]".repeat(beyond));
    assertThat(brackets)
        .isEqualTo(
            new Problem(
                Problem.Kind.SYNTAX,
                new Span(beyond + 1, beyond + 2),
                "brackets",
                "brackets nested at most 100 deep"));
    Problem hashes = Read.problem("X" + "#".repeat(beyond) + "1");
    assertThat(hashes)
        .isEqualTo(
            new Problem(
                Problem.Kind.SYNTAX,
                new Span(beyond + 1, beyond + 2),
                "'#'",
                "'#' nested at most 100 deep"));
    assertThat(Read.block("(a) X" + "#".repeat(beyond)).comments()).hasSize(1);
  }

  @Test
  void operationsUpToTheLimit() {
    String sum = "1" + "+1".repeat(Limits.OPERATIONS);
    assertThat(compute("[" + sum + "]")).isEqualTo(Limits.OPERATIONS + 1);
    assertThat(Read.words("X[" + sum + "] Y[" + sum + "]")).hasSize(2);
    assertThat(Read.good("#1=" + sum).settings()).hasSize(1);
    assertThat(Read.problem("X[" + sum + "+1]"))
        .isEqualTo(
            new Problem(
                Problem.Kind.SYNTAX, new Span(2, 3), "501 operations in one value", "at most 500"));
    assertThat(Read.problem("#1=" + sum + "+1").span()).isEqualTo(new Span(4, 5));
  }

  /** Whatever makes a value deeper counts, so that recursion over a value is bounded. */
  @ParameterizedTest
  @CsvSource({"[1+2], 1", "-#1, 2", "sin[1], 1", "atan[1]/[2], 1", "[2**2*2 mod 3], 3", "##1, 2"})
  void everyOperationCounts(String value, int operations) {
    int room = Limits.OPERATIONS - operations;
    String most = "1" + "*1".repeat(room - 1) + "*" + value;
    assertThat(Read.words("X[" + most + "]")).hasSize(1);
    assertThat(Read.problem("X[1*" + most + "]").found()).isEqualTo("501 operations in one value");
  }

  @Test
  void readsFromUtf8Only() {
    assertThat(Read.program("X１".getBytes(StandardCharsets.UTF_8)).get(0).problems()).hasSize(1);
  }
}

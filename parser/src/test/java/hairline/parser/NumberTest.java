package hairline.parser;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers: NISTIR 6556 §3.3.2.1. */
class NumberTest {
  private static Value.Literal literal(String text) {
    return (Value.Literal) Read.value(text);
  }

  @ParameterizedTest
  @CsvSource({
    "341, 341, 0, false",
    "-0.8807, -8807, 4, true",
    "+0.1234, 1234, 4, true",
    "0., 0, 0, true",
    "5., 5, 0, true",
    ".5, 5, 1, true",
    "-.5, -5, 1, true",
    "+.50, 50, 2, true",
    "000009, 9, 0, false",
    "007.2500, 72500, 4, true",
    "-0, 0, 0, false",
    "+7, 7, 0, false",
    "- 7, -7, 0, false",
    "999999999999999999, 999999999999999999, 0, false",
    "-9223372036854775808, -9223372036854775808, 0, false",
    "9.223372036854775807, 9223372036854775807, 18, true",
    "0.00000000000000000001, 1, 20, true",
  })
  void everyLegalForm(String text, long unscaled, int scale, boolean hasPoint) {
    assertThat(literal(text))
        .isEqualTo(new Value.Literal(unscaled, scale, Optional.empty(), hasPoint));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "9223372036854775808",
        "-9223372036854775809",
        "12345678901234567890.12345678901234567890",
        "-0.1234567890123456789012345678901234567890",
        "1234567890123456789012345678901234567890",
      })
  void numbersBeyondALong(String text) {
    Value.Literal literal = literal(text.replace("-0.", "-."));
    assertThat(literal.unscaled()).isZero();
    assertThat(literal.big()).contains(new BigDecimal(text));
    assertThat(literal.scale()).isEqualTo(new BigDecimal(text).scale());
    assertThat(literal.toBigDecimal()).isEqualTo(new BigDecimal(text));
    assertThat(literal.hasPoint()).isEqualTo(text.contains("."));
  }

  @Test
  void aNumberMayHaveFortyDigits() {
    String most = "1".repeat(Limits.NUMBER_DIGITS);
    assertThat(literal(most).toBigDecimal()).isEqualTo(new BigDecimal(most));
    assertThat(literal(most.substring(1) + ".1").toBigDecimal())
        .isEqualTo(new BigDecimal(most.substring(1) + ".1"));
    for (String more : new String[] {most + "1", "0" + most, most + ".0", "." + most + "0"}) {
      assertThat(Read.problem("G1 X" + more))
          .isEqualTo(
              new Problem(
                  Problem.Kind.SYNTAX,
                  new Span(5, 5 + more.length()),
                  "a number of 41 digits",
                  "at most 40 digits"));
    }
  }

  @Test
  void onlyTheFirstNumberBeyondTheLimitIsTold() {
    String more = "1".repeat(Limits.NUMBER_DIGITS + 1);
    assertThat(Read.problem("X" + more + " Y" + more + "1").span()).isEqualTo(new Span(2, 43));
    assertThat(Read.problem("#1=" + more).span()).isEqualTo(new Span(4, 45));
    assertThat(Read.problem("#" + more + "=1").span()).isEqualTo(new Span(2, 43));
    assertThat(Read.problem("X[1+" + more + "]").span()).isEqualTo(new Span(5, 46));
  }

  /** Any unscaled number and any number of decimals come back as BigDecimal reads them. */
  @Property
  void numbersAreExact(@ForAll long unscaled, @ForAll @IntRange(max = 20) int scale) {
    BigDecimal number = BigDecimal.valueOf(unscaled, scale);
    Value.Literal literal = literal(number.toPlainString());
    assertThat(literal.toBigDecimal()).isEqualTo(number);
    assertThat(literal.scale()).isEqualTo(scale);
    assertThat(literal.big()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "X10 20, 2, 7, '10 20', 1020",
    "X-10 20, 3, 8, '10 20', -1020",
    "X+1 .5, 3, 7, '1 .5', 1.5",
    "X. 5, 2, 5, '. 5', .5",
    "X1. 5, 2, 6, '1. 5', 1.5",
    "N1 0, 2, 5, '1 0', 10",
    "#1 0=2, 2, 5, '1 0', 10",
    "#1=[2 0], 5, 8, '2 0', 20",
  })
  void blanksInsideNumbersAreTold(
      String text, int column, int endColumn, String found, String read) {
    Problem problem = Read.problem(text);
    assertThat(problem.kind()).isEqualTo(Problem.Kind.SPACE_INSIDE_NUMBER);
    assertThat(problem.span()).isEqualTo(new Span(column, endColumn));
    assertThat(problem.found()).isEqualTo("'" + found + "'");
    assertThat(new BigDecimal(problem.expected()).abs()).isEqualTo(new BigDecimal(read).abs());
    assertThat(problem.expected()).isEqualTo(read.replace("-", ""));
  }

  @Test
  void tabsInsideNumbersToo() {
    Problem problem = Read.problem("X1\t2");
    assertThat(problem.found()).isEqualTo("'1 2'");
    assertThat(problem.expected()).isEqualTo("12");
    assertThat(literal("1\t.\t2 \t3").toBigDecimal()).isEqualTo(new BigDecimal("1.23"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"X 10", "X- 10", "X10 Y20", "X[1 +2]", "X10 ", "G 1 X 5. ", "/ 1 G1"})
  void blanksBesideNumbersAreNot(String text) {
    assertThat(Read.block(text).problems()).isEmpty();
  }

  @Test
  void atMostFourAreTold() {
    Block block = Read.block("X1 1 Y2 2 Z3 3 A4 4 B5 5");
    assertThat(block.problems()).hasSize(Limits.SPACE_PROBLEMS);
    assertThat(block.problems().stream().map(Problem::expected))
        .containsExactly("11", "22", "33", "44");
    assertThat(block.words()).hasSize(5);
  }

  @Test
  void aLongNumberIsToldShortened() {
    Problem problem = Read.problem("X" + "1 ".repeat(30));
    assertThat(problem.found()).isEqualTo("'" + "1 ".repeat(11) + "1…'");
    assertThat(problem.expected()).isEqualTo("1".repeat(30));
    assertThat(Read.problem("X" + "1 ".repeat(12) + "1").found())
        .isEqualTo("'" + "1 ".repeat(11) + "1…'");
    assertThat(Read.problem("X" + "1 ".repeat(11) + "11").found())
        .isEqualTo("'" + "1 ".repeat(11) + "11'");
  }

  @Test
  void aBrokenBlockTellsNothingElse() {
    assertThat(Read.problem("X1 1 Y").kind()).isEqualTo(Problem.Kind.SYNTAX);
    assertThat(Read.problem("X1 1 Y" + "1".repeat(41)).kind()).isEqualTo(Problem.Kind.SYNTAX);
  }
}

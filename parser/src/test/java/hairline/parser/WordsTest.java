package hairline.parser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is kept of a word instead of the word is the word. */
class WordsTest {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "G1 X-1.25 Y+.5 Z3. F200",
        "N12345678 M30",
        "x 1 2. y-0.000000000000000001 (side)",
        "X123456789012345678 Y-0",
        "X#1 Y[1+2] Z-#3 F1.5",
        "X12345678901234567890123.5 Y1"
      })
  void figuresAreThoseOfTheWords(String line) {
    Words words = Words.of(Read.program(line).get(0).words());
    assertThat(words).isNotEmpty();
    for (int i = 0; i < words.size(); i++) {
      Word word = words.get(i);
      assertThat(words.letter(i)).isEqualTo(word.letter());
      assertThat(words.span(i)).isEqualTo(word.span());
      assertThat(words.column(i)).isEqualTo(word.span().column());
      assertThat(words.endColumn(i)).isEqualTo(word.span().endColumn());
      boolean plain = word.value() instanceof Value.Literal literal && literal.big().isEmpty();
      assertThat(words.isPlain(i)).isEqualTo(plain);
      if (plain) {
        Value.Literal literal = (Value.Literal) word.value();
        assertThat(words.unscaled(i)).isEqualTo(literal.unscaled());
        assertThat(words.scale(i)).isEqualTo(literal.scale());
        assertThat(words.hasPoint(i)).isEqualTo(literal.hasPoint());
      }
    }
  }

  @Test
  void aListOfWordsIsKeptWithEveryFigure() {
    List<Word> list =
        List.of(
            new Word(
                'X', Value.Literal.of(new BigDecimal("-0.00125"), true), new Span(65_530, 65_537)),
            new Word('Y', Value.Literal.of(new BigDecimal("1E-19"), true), new Span(3, 9)),
            new Word(
                'Z', new Value.Parameter(Value.Literal.of(BigDecimal.ONE, false)), new Span(1, 3)));
    Words words = Words.of(list);
    assertThat(words).isEqualTo(list).hasSize(3);
    assertThat(words.hashCode()).isEqualTo(list.hashCode());
    assertThat(words.unscaled(0)).isEqualTo(-125);
    assertThat(words.scale(0)).isEqualTo(5);
    assertThat(words.span(0)).isEqualTo(new Span(65_530, 65_537));
    assertThat(words.isPlain(1)).isFalse();
    assertThat(words.isPlain(2)).isFalse();
    assertThat(Words.of(words)).isSameAs(words);
  }

  @Test
  void thereIsNoWordBehindTheLast() {
    Words scanned = Words.of(Read.program("X1. Y2.").get(0).words());
    assertThatThrownBy(() -> scanned.get(2)).isInstanceOf(IndexOutOfBoundsException.class);
    assertThatThrownBy(() -> scanned.get(-1)).isInstanceOf(IndexOutOfBoundsException.class);
  }
}

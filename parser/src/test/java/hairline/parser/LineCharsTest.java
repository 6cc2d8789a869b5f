package hairline.parser;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import hairline.parser.grammar.PartProgramLexer;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.antlr.v4.runtime.CharStream;
import org.antlr.v4.runtime.CharStreams;
import org.antlr.v4.runtime.IntStream;
import org.antlr.v4.runtime.misc.Interval;
import org.junit.jupiter.api.Test;

/** A line as ANTLR sees it is what ANTLR's own stream makes of it. */
class LineCharsTest {
  private static LineChars chars(String text) {
    byte[] bytes = text.getBytes(UTF_8);
    Line line = new Line();
    line.number = 7;
    line.decode(bytes, 0, bytes.length);
    LineChars chars = new LineChars();
    chars.reset(line);
    return chars;
  }

  private static List<String> tokens(CharStream chars) {
    PartProgramLexer lexer = new PartProgramLexer(chars);
    lexer.removeErrorListeners();
    return lexer.getAllTokens().stream()
        .map(t -> t.getType() + ":" + t.getStartIndex() + "-" + t.getStopIndex() + t.getText())
        .toList();
  }

  /** Showing DEL for every character beyond ASCII changes no token. */
  @Property(tries = 3000)
  void sameTokensAsTheRuntimesOwnStream(@ForAll("lines") String text) {
    assertThat(tokens(chars(text))).isEqualTo(tokens(CharStreams.fromString(text)));
  }

  @Provide
  Arbitrary<String> lines() {
    return Arbitraries.of(
            "G", "X", "s", "i", "n", "1", ".", "5", " ", "\t", "[", "]", "(", ")", "/", ";", "#",
            "*", "%", "<", "é", "\u0080", "\u00A0", "\u007F", "ſ", "ı", "😀", "１", "\uFEFF", "\0")
        .list()
        .ofMaxSize(20)
        .map(parts -> String.join("", parts));
  }

  @Test
  void looksAheadAndBack() {
    LineChars chars = chars("G1é😀");
    assertThat(chars.size()).isEqualTo(4);
    assertThat(chars.LA(1)).isEqualTo('G');
    assertThat(chars.LA(2)).isEqualTo('1');
    assertThat(chars.LA(3)).isEqualTo(0x7F);
    assertThat(chars.LA(4)).isEqualTo(0x7F);
    assertThat(chars.LA(5)).isEqualTo(IntStream.EOF);
    assertThat(chars.LA(-1)).isEqualTo(IntStream.EOF);
    chars.consume();
    assertThat(chars.index()).isEqualTo(1);
    assertThat(chars.LA(-1)).isEqualTo('G');
    assertThat(chars.LA(1)).isEqualTo('1');
    chars.seek(3);
    assertThat(chars.index()).isEqualTo(3);
    assertThat(chars.LA(1)).isEqualTo(0x7F);
    assertThat(chars.LA(2)).isEqualTo(IntStream.EOF);
    assertThat(chars.getText(Interval.of(1, 3))).isEqualTo("1é😀");
    assertThat(chars.getText(Interval.of(3, 9))).isEqualTo("😀");
    assertThat(chars.getText(Interval.of(4, 4))).isEmpty();
    assertThat(chars.getSourceName()).isEqualTo("line 7");
    chars.release(chars.mark());
    assertThat(chars.index()).isEqualTo(3);
  }
}

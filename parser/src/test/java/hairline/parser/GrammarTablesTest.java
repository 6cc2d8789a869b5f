package hairline.parser;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** ANTLR's memory of its decisions stays small, so the grammar decides within a few tokens. */
class GrammarTablesTest {
  private static final String[] PARTS = {
    "G1", "X", "N5", "10", "1.5", ".", "-", "+", "*", "**", "/", "#", "=", "[", "]", "SIN", "AN",
    "AND", "OR", "XOR", "MOD", "ROUND", "R", "O", "A", "(a)", "(", "%", ":", " ", "\t", "é", "\0"
  };

  @Test
  void theTablesStayFarBelowTheirBound() {
    Random random = new Random(6983);
    int afterHalf = 0;
    BlockParser parser = new BlockParser();
    Line text = new Line();
    for (int i = 0; i < 20_000; i++) {
      StringBuilder line = new StringBuilder(random.nextBoolean() ? "#1=[1]" : "X[");
      for (int k = random.nextInt(20); k > 0; k--) {
        line.append(PARTS[random.nextInt(PARTS.length)]);
      }
      byte[] bytes = line.toString().getBytes(StandardCharsets.UTF_8);
      text.decode(bytes, 0, bytes.length);
      parser.parse(text);
      if (i == 10_000) {
        afterHalf = GrammarTables.current().states();
      }
    }
    assertThat(afterHalf).isBetween(10, GrammarTables.MOST_STATES / 5);
    assertThat(GrammarTables.current().states()).isEqualTo(afterHalf);
  }
}

package hairline.parser;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** ANTLR's memory of its decisions stays small. */
class GrammarTablesTest {
  private static final String[] PARTS = {
    "G1", "X", "N5", "10", "1.5", ".", "-", "+", "*", "**", "/", "#", "=", "[", "]", "SIN", "AN",
    "AND", "OR", "XOR", "MOD", "ROUND", "R", "O", "A", "(a)", "(", "%", ":", " ", "\t", "é", "\0"
  };

  private final Line line = new Line();

  private Block read(BlockParser parser, String text) {
    byte[] bytes = text.getBytes(UTF_8);
    line.number = 1;
    line.decode(bytes, 0, bytes.length);
    return parser.parse(line);
  }

  private static String anyLine(Random random) {
    StringBuilder text = new StringBuilder(random.nextBoolean() ? "#1=[1]" : "X[");
    for (int k = random.nextInt(20); k > 0; k--) {
      text.append(PARTS[random.nextInt(PARTS.length)]);
    }
    return text.toString();
  }

  /** The grammar decides within a few tokens, so that the number of its states is bounded. */
  @Test
  void theGrammarNeedsFewStates() {
    SharedTables shared = new SharedTables(Integer.MAX_VALUE);
    BlockParser parser = new BlockParser(shared, false);
    Random random = new Random(6983);
    int afterHalf = 0;
    for (int i = 0; i < 20_000; i++) {
      if (i == 10_000) {
        afterHalf = shared.current().states();
      }
      read(parser, anyLine(random));
    }
    assertThat(afterHalf).isBetween(50, SharedTables.MOST_STATES / 5);
    assertThat(shared.current().states()).isEqualTo(afterHalf);
  }

  /** Were it otherwise, the tables would begin afresh; reading does not notice. */
  @Test
  void theTablesHaveABound() {
    SharedTables small = new SharedTables(40);
    GrammarTables first = small.current();
    assertThat(small.current()).isSameAs(first);
    BlockParser parser = new BlockParser(small, false);
    BlockParser other = new BlockParser(new SharedTables(Integer.MAX_VALUE), false);
    Random random = new Random(1);
    for (int i = 0; i < GrammarReader.BLOCKS_BETWEEN_TABLE_CHECKS; i++) {
      String text = anyLine(random);
      assertThat(read(parser, text)).isEqualTo(read(other, text));
    }
    assertThat(first.states()).isGreaterThan(40);
    int grown = first.states();
    read(parser, "G1");
    GrammarTables second = small.current();
    assertThat(second).isNotSameAs(first);
    assertThat(second.states()).isBetween(1, 40);
    for (int i = 0; i < 100; i++) {
      String text = anyLine(random);
      assertThat(read(parser, text)).isEqualTo(read(other, text));
    }
    assertThat(first.states()).isEqualTo(grown);
  }

  @Test
  void tablesUpToTheBoundAreKept() {
    SharedTables unbounded = new SharedTables(Integer.MAX_VALUE);
    read(new BlockParser(unbounded), "G1 X[1+SIN[30]]");
    int states = unbounded.current().states();
    SharedTables exact = new SharedTables(states);
    GrammarTables first = exact.current();
    read(new BlockParser(exact), "G1 X[1+SIN[30]]");
    assertThat(first.states()).isEqualTo(states);
    assertThat(exact.current()).isSameAs(first);
  }
}

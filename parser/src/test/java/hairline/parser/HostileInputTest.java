package hairline.parser;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Supplier;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Input that was made, or went, wrong: bounded time and memory, one clear problem. */
class HostileInputTest {
  /** Far more than a slow machine needs, far less than anything quadratic takes. */
  private static final Duration PATIENCE = Duration.ofSeconds(20);

  private static <T> T soon(Supplier<T> work) {
    return Assertions.assertTimeoutPreemptively(PATIENCE, work::get);
  }

  /** A source of any length that takes no memory: the same line again and again, or one line. */
  private record Endless(char fill, int every, long length) implements ByteSource {
    @Override
    public int read(long position, byte[] target, int at, int size) {
      if (position >= length) {
        return -1;
      }
      int count = (int) Math.min(size, length - position);
      Arrays.fill(target, at, at + count, (byte) fill);
      if (every > 0) {
        for (int i = 0; i < count; i++) {
          if ((position + i + 1) % every == 0) {
            target[at + i] = '\n';
          }
        }
      }
      return count;
    }

    @Override
    public void close() {}
  }

  @ParameterizedTest
  @CsvSource({"1", "X", "(", "[", "' '", "%", "/", "é"})
  void aLineOfAHundredMegabytes(char fill) {
    PartProgram program = new StoredProgram("long", () -> new Endless(fill, 0, 100_000_000));
    List<Block> blocks = soon(() -> Read.all(program));
    assertThat(blocks).hasSize(1);
    assertThat(blocks.get(0).byteLength()).isEqualTo(100_000_000);
    assertThat(blocks.get(0).problems()).containsExactly(SyntaxProblems.lineTooLong());
    assertThat(blocks.get(0).text()).hasSize(Limits.TEXT_CODE_POINTS);
  }

  @Test
  void aLineBeyondTwoGibibytes() {
    long length = Integer.MAX_VALUE + 10L;
    ByteSource nuls =
        new ByteSource() {
          @Override
          public int read(long position, byte[] target, int at, int size) {
            return position < length ? (int) Math.min(size, length - position) : -1;
          }

          @Override
          public void close() {}
        };
    List<Block> blocks = Read.all(new StoredProgram("huge", () -> nuls));
    assertThat(blocks).hasSize(1);
    assertThat(blocks.get(0).byteLength()).isEqualTo(Integer.MAX_VALUE);
  }

  /** The line behind says where it is, though the one before it does not fit an int. */
  @Test
  void offsetsBeyondTwoGibibytes() throws IOException {
    StoredProgram program = new StoredProgram("huge", () -> new Endless(' ', 1000, 5_000_000_000L));
    try (BlockSource source = program.blocksFrom(4_999_999_000L, 5_000_000)) {
      Block block = source.next().orElseThrow();
      assertThat(block.byteOffset()).isEqualTo(4_999_999_000L);
      assertThat(block.byteLength()).isEqualTo(999);
      assertThat(source.next()).isEmpty();
    }
  }

  /** A reader takes from the file what its buffer holds and no more. */
  @Test
  void readsAheadByOneBufferOnly() throws IOException {
    AtomicLong furthest = new AtomicLong();
    Endless lines = new Endless(' ', 100, 100_000_000);
    ByteSource watched =
        new ByteSource() {
          @Override
          public int read(long position, byte[] target, int at, int size) {
            furthest.accumulateAndGet(position + size, Math::max);
            return lines.read(position, target, at, size);
          }

          @Override
          public void close() {}
        };
    StoredProgram program = new StoredProgram("lines", () -> watched);
    try (BlockSource source = program.blocks()) {
      for (int i = 0; i < 10_000; i++) {
        Block block = source.next().orElseThrow();
        assertThat(furthest.get() - block.byteOffset()).isLessThan(4 * Limits.LINE_BYTES);
      }
    }
  }

  static List<String> lines() {
    int most = Limits.LINE_BYTES;
    return List.of(
        "X" + "1".repeat(most - 1),
        "X" + "1 ".repeat(most / 2 - 1),
        "X." + " 1".repeat(most / 2 - 2),
        "[".repeat(10_000),
        "X" + "[".repeat(10_000) + "1" + "]".repeat(10_000),
        "X" + "#".repeat(10_000) + "1",
        "X" + "#[".repeat(10_000) + "1",
        "X" + "#-".repeat(10_000) + "1",
        "X" + "-".repeat(most - 1),
        "X" + "SIN[".repeat(10_000),
        "X" + "ATAN[1]/[".repeat(5_000),
        "X[1" + "+1".repeat(30_000) + "]",
        "X[1" + "**1".repeat(20_000) + "]",
        "X[1" + "MOD1".repeat(15_000) + "]",
        "#1=1" + "+1".repeat(30_000),
        "#1=1" + " AND 1".repeat(10_000),
        "A".repeat(most),
        "AB ".repeat(20_000),
        "/".repeat(3) + "\0".repeat(1) + "/".repeat(20_000),
        "\0".repeat(most),
        "\u001B[31m".repeat(5_000),
        "%".repeat(most),
        "]".repeat(most),
        "*".repeat(most),
        "* ".repeat(30_000),
        "*" + " ".repeat(60_000),
        ". ".repeat(30_000),
        "=".repeat(most),
        ",".repeat(most),
        "(a(b)".repeat(10_000) + ")",
        "((((".repeat(15_000),
        ")".repeat(most),
        "O<" + "a".repeat(most - 2),
        "#<" + "<".repeat(most - 2),
        "€".repeat(most / 3),
        "X" + "1".repeat(41) + " Y[" + "1+".repeat(30_000) + "1]");
  }

  @ParameterizedTest
  @MethodSource("lines")
  void oneProblemForALine(String line) {
    byte[] bytes = (line + "\nG1 X2\n").getBytes(UTF_8);
    List<Block> blocks = soon(() -> Read.program(bytes));
    assertThat(blocks).hasSize(2);
    if (!line.startsWith("///")) {
      assertThat(blocks.get(0).problems()).hasSize(1);
      assertThat(blocks.get(0).problems().get(0).kind())
          .isNotEqualTo(Problem.Kind.SPACE_INSIDE_NUMBER);
    }
    assertThat(blocks.get(0).words()).isEmpty();
    assertThat(blocks.get(1).words()).hasSize(2);
    RobustnessProperties.assertSane(bytes);
  }

  @Test
  void aNumberOfAMillionDigits() {
    byte[] bytes = ("X" + "1".repeat(1_000_000) + "\nG1\n").getBytes(UTF_8);
    List<Block> blocks = soon(() -> Read.program(bytes));
    assertThat(blocks.get(0).problems()).containsExactly(SyntaxProblems.lineTooLong());
    assertThat(blocks.get(1).words()).hasSize(1);
  }

  @Test
  void aHundredThousandWordsInALine() {
    List<Block> blocks = soon(() -> Read.program("X1 ".repeat(100_000) + "\nG1"));
    assertThat(blocks.get(0).problems()).containsExactly(SyntaxProblems.lineTooLong());
    assertThat(blocks.get(1).words()).hasSize(1);
  }

  /** What still fits the line is read. */
  @Test
  void manyWordsInALine() {
    String words = "X1 ".repeat(Limits.LINE_BYTES / 3);
    assertThat(soon(() -> Read.good(words)).words()).hasSize(Limits.LINE_BYTES / 3);
    String settings = "#1=1".repeat(Limits.LINE_BYTES / 4);
    assertThat(Read.block(settings).problems()).isEmpty();
    assertThat(Read.block(settings).settings()).hasSize(Limits.LINE_BYTES / 4);
    String comments = "()".repeat(Limits.LINE_BYTES / 2);
    assertThat(soon(() -> Read.good(comments)).comments()).hasSize(Limits.LINE_BYTES / 2);
  }

  @Test
  void nulBytes() {
    Block block = Read.program("G1 X1\0\0\nG2".getBytes(UTF_8)).get(0);
    assertThat(block.problems())
        .containsExactly(
            new Problem(
                Problem.Kind.SYNTAX,
                new Span(6, 7),
                "the character U+0000",
                "an address letter or the end of the block"));
  }
}

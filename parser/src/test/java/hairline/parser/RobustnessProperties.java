package hairline.parser;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/** Whatever the bytes: no exception, few problems, places that exist. */
class RobustnessProperties {
  static void assertSane(byte[] bytes) {
    List<Block> blocks = Read.program(bytes);
    LineReaderTest.assertRangesCover(blocks, bytes);
    for (Block block : blocks) {
      int columns = block.text().codePointCount(0, block.text().length());
      if (columns == Limits.TEXT_CODE_POINTS) {
        columns = block.byteLength();
      }
      assertThat(block.problems()).hasSizeLessThanOrEqualTo(Limits.SPACE_PROBLEMS);
      boolean broken = false;
      for (Problem problem : block.problems()) {
        broken |= problem.kind() != Problem.Kind.SPACE_INSIDE_NUMBER;
        assertInside(problem.span(), columns);
        assertThat(problem.found()).isNotBlank();
        assertThat(problem.found().codePoints()).noneMatch(Character::isISOControl);
        assertThat(problem.expected()).isNotBlank();
        assertThat(problem.found().codePointCount(0, problem.found().length()))
            .isLessThanOrEqualTo(Limits.FOUND_CODE_POINTS + " with no number behind it".length());
      }
      if (broken) {
        assertThat(block.problems()).hasSize(1);
        assertThat(block.words()).isEmpty();
        assertThat(block.settings()).isEmpty();
        assertThat(block.kind()).isEqualTo(Block.Kind.BLOCK);
      }
      for (Word word : block.words()) {
        assertInside(word.span(), columns);
      }
      for (Setting setting : block.settings()) {
        assertInside(setting.span(), columns);
      }
      for (Comment comment : block.comments()) {
        assertInside(comment.span(), columns);
      }
    }
  }

  private static void assertInside(Span span, int columns) {
    assertThat(span.column()).isBetween(1, columns + 1);
    assertThat(span.endColumn()).isBetween(span.column(), columns + 1);
  }

  @Test
  void everyPrefixOfTheSamples() {
    for (String sample : Read.SAMPLES) {
      byte[] bytes = Read.sample(sample);
      for (int length = 0; length <= bytes.length; length++) {
        assertSane(Arrays.copyOf(bytes, length));
      }
    }
  }

  @Test
  void everyByteOfTheSamplesLeftOut() {
    for (String sample : Read.SAMPLES) {
      byte[] bytes = Read.sample(sample);
      for (int at = 0; at < bytes.length; at++) {
        byte[] less = Arrays.copyOf(bytes, bytes.length - 1);
        System.arraycopy(bytes, at + 1, less, at, bytes.length - at - 1);
        assertSane(less);
      }
    }
  }

  @Property(tries = 3000)
  void anyByteOfTheSamplesChanged(
      @ForAll("samples") String sample, @ForAll int place, @ForAll byte changed) {
    byte[] bytes = Read.sample(sample);
    bytes[Math.floorMod(place, bytes.length)] = changed;
    assertSane(bytes);
  }

  @Provide
  Arbitrary<String> samples() {
    return Arbitraries.of(Read.SAMPLES);
  }

  @Property
  void anyBytes(@ForAll @Size(max = 300) byte[] bytes) {
    assertSane(bytes);
  }

  /** Lines of what the grammar knows, in no order that it knows. */
  @Property(tries = 5000)
  void anyTokens(@ForAll("tokens") String line) {
    assertSane(line.getBytes(UTF_8));
  }

  @Provide
  Arbitrary<String> tokens() {
    return Arbitraries.of(
            "G1", "X", "N5", "10", "1.5", ".", "-", "+", "*", "**", "/", "//", "#", "##1", "=", "[",
            "]", "SIN", "ATAN", "AND", "OR", "XOR", "MOD", "IF", "EQ", "GOTO", "A", "O", "M", "(",
            ")", "(a)", ";", ",", ",R", "<", ">", "%", ":", " ", "\t", "é", "😀", "\0", "\"")
        .list()
        .ofMaxSize(12)
        .map(parts -> String.join("", parts));
  }

  /** A broken line spoils no other line: what stands before and behind is read as if alone. */
  @Property(tries = 1000)
  void aBrokenLineSpoilsNoOther(@ForAll("tokens") String broken) {
    List<Block> blocks = Read.program("G1 X1\n" + broken + "\nG1 X2 (b)\nM30\n");
    assertThat(blocks).hasSize(4);
    assertThat(blocks.get(0).words().stream().map(Show::word)).containsExactly("G1", "X1");
    assertThat(blocks.get(2).words().stream().map(Show::word)).containsExactly("G1", "X2");
    assertThat(blocks.get(2).line()).isEqualTo(3);
  }
}

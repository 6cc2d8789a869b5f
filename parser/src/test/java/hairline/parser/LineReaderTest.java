package hairline.parser;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Line ends, characters and offsets. */
class LineReaderTest {
  private static List<String> texts(List<Block> blocks) {
    return blocks.stream().map(Block::text).toList();
  }

  /** Joins the ranges of the blocks and what stands between them. */
  static void assertRangesCover(List<Block> blocks, byte[] bytes) {
    long expected = 0;
    int line = 1;
    for (Block block : blocks) {
      assertThat(block.line()).isEqualTo(line++);
      assertThat(block.byteOffset()).isEqualTo(expected);
      int end = (int) block.byteOffset() + block.byteLength();
      for (int i = (int) block.byteOffset(); i < end; i++) {
        if (bytes[i] == '\n' || bytes[i] == '\r') {
          throw new AssertionError("line end inside line " + block.line());
        }
      }
      expected = (long) end + lineEndLength(bytes, end);
    }
    assertThat(expected).isEqualTo(bytes.length);
  }

  private static int lineEndLength(byte[] bytes, int at) {
    if (at == bytes.length) {
      return 0;
    }
    return bytes[at] == '\r' && at + 1 < bytes.length && bytes[at + 1] == '\n' ? 2 : 1;
  }

  @ParameterizedTest
  @ValueSource(strings = {"\n", "\r\n", "\r"})
  void everyLineEnd(String end) {
    byte[] bytes = ("G1" + end + end + "X2" + end).getBytes(UTF_8);
    List<Block> blocks = Read.program(bytes);
    assertThat(texts(blocks)).containsExactly("G1", "", "X2");
    assertThat(blocks.stream().map(Block::byteLength)).containsExactly(2, 0, 2);
    assertRangesCover(blocks, bytes);
    assertThat(blocks.get(2).byteOffset()).isEqualTo(2 + 2L * end.length());
  }

  @Test
  void mixedLineEnds() {
    byte[] bytes = "a\r\n\rb\n\r\nc\n\n\r\rd".getBytes(UTF_8);
    List<Block> blocks = Read.program(bytes);
    assertThat(texts(blocks)).containsExactly("a", "", "b", "", "c", "", "", "", "d");
    assertRangesCover(blocks, bytes);
  }

  @Test
  void theLastLineNeedsNoEnd() {
    assertThat(texts(Read.program("G1\nX2"))).containsExactly("G1", "X2");
    assertThat(texts(Read.program("G1\nX2\n"))).containsExactly("G1", "X2");
    assertThat(texts(Read.program("G1\r"))).containsExactly("G1");
    assertThat(texts(Read.program("\n"))).containsExactly("");
    assertThat(Read.program("")).isEmpty();
  }

  @Test
  void aByteOrderMarkTakesNoColumn() {
    byte[] bytes = "\uFEFFG1 X\nG2".getBytes(UTF_8);
    List<Block> blocks = Read.program(bytes);
    assertThat(texts(blocks)).containsExactly("G1 X", "G2");
    assertThat(blocks.get(0).problems().get(0).span()).isEqualTo(new Span(4, 5));
    assertThat(blocks.get(0).byteOffset()).isZero();
    assertThat(blocks.get(0).byteLength()).isEqualTo(7);
    assertRangesCover(blocks, bytes);
  }

  @Test
  void aByteOrderMarkCountsAtTheStartOnly() {
    assertThat(Read.program("G1\n\uFEFFG2").get(1).problems()).hasSize(1);
    assertThat(Read.program("\uFEFF\uFEFFG2").get(0).problems().get(0).span())
        .isEqualTo(new Span(1, 2));
    assertThat(texts(Read.program("\uFEFF"))).containsExactly("");
    assertThat(texts(Read.program("\uFEFF%\nG1"))).containsExactly("%", "G1");
    assertThat(Read.program("\uFEFF%\nG1").get(0).kind()).isEqualTo(Block.Kind.TAPE_MARK);
  }

  @ParameterizedTest
  @ValueSource(strings = {"EF", "EFBB", "EFBB41", "EF41BF", "41BBBF"})
  void halfAByteOrderMarkIsNone(String hex) {
    byte[] bytes = HexFormat.of().parseHex(hex);
    assertThat(texts(Read.program(bytes))).containsExactly(new String(bytes, ISO_8859_1));
  }

  @Test
  void eachLineHasItsOwnCharacterSet() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.write("(Höhe 5 µm)\n".getBytes(UTF_8));
    bytes.write("(Höhe 5 µm)\n".getBytes(ISO_8859_1));
    bytes.write("(Ö) X\n".getBytes(ISO_8859_1));
    List<Block> blocks = Read.program(bytes.toByteArray());
    assertThat(blocks.get(0).comments().get(0).text()).isEqualTo("Höhe 5 µm");
    assertThat(blocks.get(1).comments().get(0).text()).isEqualTo("Höhe 5 µm");
    assertThat(blocks.get(0).comments().get(0).span())
        .isEqualTo(blocks.get(1).comments().get(0).span());
    assertThat(blocks.get(2).problems().get(0).span()).isEqualTo(new Span(5, 6));
    assertRangesCover(blocks, bytes.toByteArray());
  }

  /** The decoder of the Java library decides what is UTF-8. */
  @Property(tries = 5000)
  void decodesAsTheLibraryDoes(@ForAll("nearlyUtf8") byte[] bytes) {
    String expected;
    try {
      expected =
          UTF_8
              .newDecoder()
              .onMalformedInput(CodingErrorAction.REPORT)
              .onUnmappableCharacter(CodingErrorAction.REPORT)
              .decode(ByteBuffer.wrap(bytes))
              .toString();
    } catch (CharacterCodingException e) {
      expected = new String(bytes, ISO_8859_1);
    }
    Line line = new Line();
    line.decode(bytes, 0, bytes.length);
    assertThat(line.text(0, line.count)).isEqualTo(expected);
    assertThat(line.count).isEqualTo(expected.codePointCount(0, expected.length()));
  }

  @Provide
  Arbitrary<byte[]> nearlyUtf8() {
    Arbitrary<byte[]> characters =
        Arbitraries.of(
                0x41, 0x7F, 0x80, 0xE9, 0x7FF, 0x800, 0xFFFF, 0xD7FF, 0xE000, 0x10000, 0x10FFFF)
            .map(c -> Character.toString(c).getBytes(UTF_8));
    Arbitrary<byte[]> edges =
        Arbitraries.of(
                0x7F, 0x80, 0xBF, 0xC0, 0xC1, 0xC2, 0xDF, 0xE0, 0xED, 0xEF, 0xF0, 0xF4, 0xF5, 0xFF,
                0x9F, 0xA0, 0x8F, 0x90)
            .map(b -> new byte[] {b.byteValue()});
    return Arbitraries.frequencyOf(Tuple.of(3, characters), Tuple.of(1, edges))
        .list()
        .ofMaxSize(6)
        .map(LineReaderTest::join);
  }

  private static byte[] join(List<byte[]> parts) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    parts.forEach(bytes::writeBytes);
    return bytes.toByteArray();
  }

  /** Forms that Unicode forbids: overlong, a surrogate, beyond U+10FFFF. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "C080",
        "C1BF",
        "E09FBF",
        "EDA080",
        "EDBFBF",
        "F08FBFBF",
        "F4908080",
        "F5808080",
        "80",
        "C2",
        "E0A0",
        "F09080",
        "C241",
        "E0A041",
        "F0908041",
        "FF",
        "C3A9FF"
      })
  void forbiddenFormsAreIso8859(String hex) {
    byte[] bytes = HexFormat.of().parseHex(hex);
    assertThat(texts(Read.program(bytes))).containsExactly(new String(bytes, ISO_8859_1));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"C280", "DFBF", "E0A080", "ED9FBF", "EE8080", "EFBFBF", "F0908080", "F48FBFBF"})
  void theEdgesOfUtf8(String hex) {
    byte[] bytes = HexFormat.of().parseHex(hex);
    assertThat(texts(Read.program(bytes))).containsExactly(new String(bytes, UTF_8));
  }

  /** Line ends on both sides of wherever a buffer might end. */
  @Test
  void linesAcrossBuffers() {
    for (String end : List.of("\n", "\r\n", "\r")) {
      for (int length : List.of(65_533, 65_534, 65_535, 65_536)) {
        byte[] bytes =
            ("(" + "x".repeat(length - 2) + ")" + end + "G1" + end + "G2").getBytes(UTF_8);
        List<Block> blocks = Read.program(bytes);
        assertThat(blocks.stream().map(Block::byteLength)).containsExactly(length, 2, 2);
        assertThat(blocks).allMatch(b -> b.problems().isEmpty());
        assertThat(blocks.get(0).comments().get(0).text()).hasSize(length - 2);
        assertRangesCover(blocks, bytes);
      }
    }
  }

  @Test
  void manyLinesAcrossBuffers() {
    for (String end : List.of("\n", "\r\n", "\r")) {
      StringBuilder text = new StringBuilder();
      List<String> lines = new ArrayList<>();
      for (int i = 0; text.length() < 300_000; i++) {
        String line = "N" + i + " X" + "1".repeat(i % 37 + 1);
        lines.add(line);
        text.append(line).append(end);
      }
      byte[] bytes = text.toString().getBytes(UTF_8);
      List<Block> blocks = Read.program(bytes);
      assertThat(texts(blocks)).isEqualTo(lines);
      assertRangesCover(blocks, bytes);
    }
  }

  /** A source may give as few bytes at a time as it likes. */
  @Property(tries = 200)
  void sourcesThatTrickle(
      @ForAll("programs") String text, @ForAll @IntRange(min = 1, max = 5) int most)
      throws IOException {
    byte[] bytes = text.getBytes(UTF_8);
    StoredProgram trickling =
        new StoredProgram("trickling", () -> new FakeSource(bytes, most, () -> {}));
    List<Block> blocks = Read.all(trickling);
    assertThat(blocks).isEqualTo(Read.program(bytes));
    assertRangesCover(blocks, bytes);
  }

  @Provide
  Arbitrary<String> programs() {
    return Arbitraries.of("G1", "(é)", "\n", "\r", "\r\n", "%", "X", " ", "M30")
        .list()
        .ofMaxSize(20)
        .map(parts -> String.join("", parts));
  }

  @Test
  void aLineBeyondTheLimit() {
    for (int more : List.of(1, 100, 65_535, 65_536, 65_537, 200_000, 1_000_000)) {
      byte[] bytes = new byte[Limits.LINE_BYTES + more + 6];
      Arrays.fill(bytes, (byte) '1');
      bytes[bytes.length - 6] = '\r';
      bytes[bytes.length - 5] = '\n';
      System.arraycopy("G2\rX".getBytes(UTF_8), 0, bytes, bytes.length - 4, 4);
      List<Block> blocks = Read.program(bytes);
      assertThat(blocks).hasSize(3);
      Block block = blocks.get(0);
      assertThat(block.problems())
          .containsExactly(
              new Problem(
                  Problem.Kind.SYNTAX,
                  new Span(1, 1),
                  "a line longer than is read",
                  "at most 65536 bytes"));
      assertThat(block.byteLength()).isEqualTo(Limits.LINE_BYTES + more);
      assertThat(block.text()).isEqualTo("1".repeat(Limits.TEXT_CODE_POINTS));
      assertThat(block.words()).isEmpty();
      assertThat(blocks.get(1).words()).hasSize(1);
      assertRangesCover(blocks, bytes);
    }
  }

  @Test
  void aLongLineWithoutEnd() {
    for (int more : List.of(1, 65_536, 300_000)) {
      byte[] bytes = ("/" + "é".repeat((Limits.LINE_BYTES + more) / 2)).getBytes(UTF_8);
      List<Block> blocks = Read.program(bytes);
      assertThat(blocks).hasSize(1);
      assertThat(blocks.get(0).text()).isEqualTo("/" + "é".repeat(Limits.TEXT_CODE_POINTS - 1));
      assertThat(blocks.get(0).deletable()).isTrue();
      assertRangesCover(blocks, bytes);
    }
  }

  @Test
  void blockDeleteOfALongLine() {
    String blanks = " ".repeat(Limits.LINE_BYTES);
    assertThat(Read.block("\t /" + blanks).deletable()).isTrue();
    assertThat(Read.block("//" + blanks).deletable()).isFalse();
    assertThat(Read.block("/ /" + blanks).deletable()).isTrue();
    assertThat(Read.block(blanks + "/").deletable()).isFalse();
    assertThat(Read.block("G/" + blanks).deletable()).isFalse();
  }

  @Test
  void blanksMakeALongLineNeitherBlankNorATapeMark() {
    String blanks = " ".repeat(Limits.LINE_BYTES);
    assertThat(Read.program("%" + blanks + "\nG1").get(0).kind()).isEqualTo(Block.Kind.BLOCK);
    assertThat(Read.program(blanks + " ").get(0).problems()).hasSize(1);
    assertThat(Read.program(blanks).get(0).problems()).isEmpty();
  }
}

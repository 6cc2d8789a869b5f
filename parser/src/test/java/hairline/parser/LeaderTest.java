package hairline.parser;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import hairline.parser.Block.Kind;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Text before the first tape mark. */
class LeaderTest {
  private static List<Kind> kinds(String text) {
    return Read.program(text).stream().map(Block::kind).toList();
  }

  @Test
  void textBeforeTheFirstTapeMark() {
    List<Block> blocks = Read.program("MIXER INSERT\n\nREV (B\n%\nG1\n%\nREST\n");
    assertThat(blocks.stream().map(Block::kind))
        .containsExactly(
            Kind.LEADER,
            Kind.LEADER,
            Kind.LEADER,
            Kind.TAPE_MARK,
            Kind.BLOCK,
            Kind.TAPE_MARK,
            Kind.BLOCK);
    Block leader = blocks.get(2);
    assertThat(leader)
        .isEqualTo(
            new Block(
                3,
                14,
                6,
                "REV (B",
                Kind.LEADER,
                false,
                List.of(),
                List.of(),
                List.of(),
                List.of()));
    assertThat(leader.problems()).isEmpty();
  }

  @Test
  void noTapeMarkNoLeader() {
    assertThat(kinds("MIXER\nG1\n")).containsExactly(Kind.BLOCK, Kind.BLOCK);
    assertThat(kinds("MIXER\n%O1000\nX1\n")).doesNotContain(Kind.LEADER);
    assertThat(kinds("%\nO1\n")).containsExactly(Kind.TAPE_MARK, Kind.BLOCK);
  }

  /** A mark that closes a program whose first mark got lost does not hide the program. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "TITLE\n%",
        "TITLE\n%\n",
        "TITLE\n%\n \n\t\n",
        "TITLE\nM30\n%\nO2\n",
        "TITLE\nM2\n%\nO2",
        "TITLE\nN5 M99\n%\nO2",
        "M02 TITLE\nM02\n%\nO2",
        "TITLE\nG1\n%\nX2",
        "TITLE\n(a) G[1+2] (b)\n%\nX2",
        "M030\n%\nX2"
      })
  void whatReadsLikeAProgramIsRead(String text) {
    assertThat(kinds(text)).doesNotContain(Kind.LEADER).contains(Kind.TAPE_MARK);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "TITLE\n%\nX2",
        "M3\n%\nX2",
        "M30 TITLE\n%\nX2",
        "(G1)\n%\nX2",
        "X2\n%\nX2",
        "M2.0\n%\nX2",
        "M#1\n%\nX2",
        "M98\n%\nX2",
        "TITLE\n%\n\n\nX2",
        "T30\n%\n(end)",
        "TITLE\n%\n%"
      })
  void whatDoesNotIsALeader(String text) {
    List<Kind> kinds = kinds(text);
    assertThat(kinds.get(0)).isEqualTo(Kind.LEADER);
    assertThat(kinds.get(1)).isEqualTo(Kind.TAPE_MARK);
    assertThat(kinds.subList(2, kinds.size())).doesNotContain(Kind.LEADER);
  }

  /** Code behind the mark says nothing about the text before it. */
  @Test
  void onlyTextBeforeTheMarkCounts() {
    assertThat(kinds("TITLE\n%\nG1\nM30\n%\n").get(0)).isEqualTo(Kind.LEADER);
  }

  @Test
  void theMarkMustStandWithinTwoHundredLines() {
    String most = "TITLE\n".repeat(Limits.LEADER_LINES - 1);
    assertThat(kinds(most + "%\nX2").get(0)).isEqualTo(Kind.LEADER);
    assertThat(kinds("TITLE\n" + most + "%\nX2")).doesNotContain(Kind.LEADER);
  }

  @Test
  void theMarkMustBeginWithinSixtyFourKibibytes() {
    String line = "T".repeat(65_534 / 2);
    assertThat(kinds(line + "\n" + line + "\n%\nX2")).doesNotContain(Kind.LEADER);
    assertThat(kinds(line + "\n" + line.substring(1) + "\n%\nX2"))
        .startsWith(Kind.LEADER, Kind.LEADER, Kind.TAPE_MARK);
  }

  @Test
  void aLineThatIsTooLongIsNoMarkAndNotBlank() {
    String blanks = " ".repeat(Limits.LINE_BYTES);
    assertThat(kinds("TITLE\n%" + blanks + "\nX2")).doesNotContain(Kind.LEADER);
    assertThat(kinds("TITLE\n%\n " + blanks)).contains(Kind.LEADER);
    assertThat(kinds("TITLE\n%\n" + blanks)).doesNotContain(Kind.LEADER);
  }

  @Test
  void readersFromAnywhereKnowTheLeader() throws IOException {
    PartProgram program = PartPrograms.of("t", "TITLE\nREV B\n%\nG1\n".getBytes(UTF_8));
    try (BlockSource source = program.blocksFrom(6, 2)) {
      assertThat(Read.rest(source).stream().map(Block::kind))
          .containsExactly(Kind.LEADER, Kind.TAPE_MARK, Kind.BLOCK);
    }
    try (BlockSource source = program.blocksFrom(14, 4)) {
      assertThat(Read.rest(source).stream().map(Block::kind)).containsExactly(Kind.BLOCK);
    }
  }

  @Test
  void aByteOrderMarkBeforeTheLeader() {
    assertThat(kinds("\uFEFFTITLE\n%\nX2").get(0)).isEqualTo(Kind.LEADER);
    assertThat(Read.program("\uFEFFTITLE\n%\nX2").get(0).text()).isEqualTo("TITLE");
  }
}

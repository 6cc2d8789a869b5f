package hairline.checks.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import hairline.checks.motion.ProgramIndex.Program;
import hairline.checks.motion.ProgramIndex.Remark;
import hairline.parser.PartPrograms;
import hairline.parser.Problem;
import hairline.parser.Span;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ProgramIndexerTest {
  private final List<Event> events = new ArrayList<>();

  private ProgramIndex index(String... lines) throws IOException {
    byte[] bytes = String.join("\n", lines).getBytes(StandardCharsets.UTF_8);
    return ProgramIndexer.index(PartPrograms.of("test", bytes), 3, events::add);
  }

  private <E extends Event> List<E> events(Class<E> kind) {
    return events.stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  @Test
  void findsProgramsByTheirNumbers() throws IOException {
    ProgramIndex index =
        index(
            "%", // line 1
            "O1000 (insert)",
            "",
            "G1 X1.",
            "M98 P2000",
            "M30",
            ":2000", // line 7
            "G1 Y1.",
            "M99",
            "O0030",
            "M17",
            "%",
            "G2");
    assertThat(index.programs())
        .containsExactly(
            new Program(OptionalLong.of(1000), 1, 0, 39, 6, OptionalInt.of(4), Optional.of("M30")),
            new Program(OptionalLong.of(2000), 7, 39, 56, 9, OptionalInt.of(8), Optional.of("M99")),
            new Program(OptionalLong.of(30), 10, 56, 66, 11, OptionalInt.of(11), Optional.empty()));
    assertThat(index.first().name()).isEqualTo("O1000");
    assertThat(index.deletableBlocks()).isFalse();
    assertThat(index.mixesDecimalPoints()).isFalse();
  }

  @Test
  void opensASubprogramBehindBlocks() throws IOException {
    ProgramIndex index = index("(no number)", "N10", "G21", "O5", "M99");
    assertThat(index.programs())
        .extracting(Program::number, Program::line, Program::lastLine)
        .containsExactly(tuple(OptionalLong.empty(), 1, 3), tuple(OptionalLong.of(5), 4, 5));
    assertThat(index.first().name()).isEmpty();
    assertThat(index.first().firstBlockLine()).hasValue(3);
  }

  @Test
  void takesASecondLeadingNumberForASubprogram() throws IOException {
    assertThat(index("O1", "O2", "G1").programs())
        .extracting(Program::name)
        .containsExactly("O1", "O2");
  }

  @ParameterizedTest
  @ValueSource(strings = {"#1=2", "G1", "X1.", "IF [#1 EQ 2] GOTO 3", "G1 X"})
  void countsAsABlockWhateverAControlWouldAct(String line) throws IOException {
    assertThat(index(line, "O7").programs()).hasSize(2);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "(text)", "N5", "%", "/", "N5 (text)"})
  void countsAsNoBlockWhatDoesNothing(String line) throws IOException {
    ProgramIndex index = index(line, "O7", "G1");
    assertThat(index.programs()).extracting(Program::name).containsExactly("O7");
    assertThat(index.first().byteOffset()).isZero();
  }

  @Test
  void hasOneProgramInAnEmptyFile() throws IOException {
    assertThat(index("").programs())
        .containsExactly(
            new Program(OptionalLong.empty(), 1, 0, 0, 1, OptionalInt.empty(), Optional.empty()));
    assertThat(index("%", "%").first().endByteOffset()).isZero();
  }

  @Test
  void readsOnlyWholeProgramNumbers() throws IOException {
    assertThat(index("G1", "O7.5", "O#1", "O[#3]", "O8.").programs())
        .extracting(Program::name)
        .containsExactly("", "O8");
  }

  @Test
  void tellsWhatStandsBehindTheTapeMarkOfAnUnfinishedProgram() throws IOException {
    index("%", "G1 X1.", "%", "", "(x)", "G1 X2.", "G1 X3.");
    assertThat(events)
        .containsExactly(
            new Event.BecameUnknown(
                new Place(3, 6, new Span(1, 1)),
                "what stands behind the tape mark that ends the program",
                Event.BecameUnknown.Cause.NOT_UNDERSTOOD));
    events.clear();
    index("%", "G1 X1.", "M30", "%", "G1 X2.");
    assertThat(events).isEmpty();
    ProgramIndex index = index("%", "G1 X1.", "%", "O2", "G1", "M99", "%", "X3.");
    assertThat(events).isEmpty();
    assertThat(index.programs()).extracting(Program::name).containsExactly("", "O2");
    index("%", "G1", "%", "G1", "O2", "G1", "%", "G1");
    assertThat(events).hasSize(2);
  }

  @Test
  void seesBlockDelete() throws IOException {
    assertThat(index("G1", "/M8").deletableBlocks()).isTrue();
    assertThat(index("/M8", "G1").deletableBlocks()).isTrue();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "X1. Y2",
        "I1. J2",
        "R1 X2.5",
        "Q2\nZ-1.",
        "U1 W1.",
        "X-3 Y-4.",
        "V3. K1 Z1",
        "Y.5 Y5"
      })
  void seesThatPointsAreMixed(String lines) throws IOException {
    assertThat(index(lines).mixesDecimalPoints()).isTrue();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "X1. Y0",
        "X1. Y2.",
        "X1 Y2",
        "G1 F100. X1",
        "X1. F100 S3000 M3 G1 T1 H1 D1 P1 L2",
        "X1. Y#2",
        "G4 X2\nX1.",
        "G10 L2 P1 X2\nX1.",
        "G65 P9000 X2\nX1.",
        "X2. K3"
      })
  void seesThatPointsAreNotMixed(String lines) throws IOException {
    assertThat(index(lines).mixesDecimalPoints()).isFalse();
  }

  @Test
  void keepsCommentsToTheChecker() throws IOException {
    ProgramIndex index =
        index(
            "(hairline: accept chip-below-minimum: burnishing)",
            "N10 ( HAIRLINE: accept x)",
            "G1 X1. (hairline: accept y until end: z)",
            "#1=2 (hairline: a)",
            "G1 X (hairline: b)",
            "(about the hairline: not meant)",
            "; hairline: accept q");
    assertThat(index.remarks())
        .containsExactly(
            new Remark(
                1, new Span(1, 50), "hairline: accept chip-below-minimum: burnishing", true, 3),
            new Remark(2, new Span(5, 26), " HAIRLINE: accept x", true, 3),
            new Remark(3, new Span(8, 41), "hairline: accept y until end: z", false, 3),
            new Remark(4, new Span(6, 19), "hairline: a", false, 4),
            new Remark(5, new Span(6, 19), "hairline: b", false, 5),
            new Remark(7, new Span(1, 21), " hairline: accept q", true, 7));
  }

  @Test
  void keepsNoMoreCommentsThanItsCap() throws IOException {
    String[] lines = new String[ProgramIndexer.REMARKS_CAP + 3];
    Arrays.fill(lines, "(hairline: accept x: y)");
    assertThat(index(lines).remarks()).hasSize(ProgramIndexer.REMARKS_CAP);
    assertThat(events)
        .containsExactly(
            new Event.CapReached(
                new Place(3, ProgramIndexer.REMARKS_CAP + 1, new Span(1, 1)),
                "comments to the checker in a file",
                ProgramIndexer.REMARKS_CAP));
  }

  @Test
  void tellsEachRepeatedSequenceNumberOnce() throws IOException {
    index("N10 G1", "N20", "N10 X1.", "N010", "G1 N20 X2.", "O2", "N10", "N30.0", "N30");
    assertThat(events)
        .containsExactly(
            new Event.SequenceRepeated(
                new Place(3, 3, new Span(1, 4)), "10", new Place(3, 1, new Span(1, 1))),
            new Event.SequenceRepeated(
                new Place(3, 5, new Span(4, 7)), "20", new Place(3, 2, new Span(1, 1))),
            new Event.SequenceRepeated(
                new Place(3, 9, new Span(1, 4)), "30", new Place(3, 8, new Span(1, 1))));
  }

  @Test
  void tellsNoMoreRepeatedSequenceNumbersThanItsCap() throws IOException {
    List<String> lines = new ArrayList<>();
    for (int turn = 0; turn < 2; turn++) {
      for (int i = 0; i < ProgramIndexer.REPEATED_CAP + 5; i++) {
        lines.add("N" + i);
      }
    }
    index(lines.toArray(String[]::new));
    assertThat(events(Event.SequenceRepeated.class)).hasSize(ProgramIndexer.REPEATED_CAP);
    assertThat(events(Event.CapReached.class))
        .extracting(Event.CapReached::what)
        .containsExactly("repeated sequence numbers in a program");
  }

  @Test
  void followsNoMoreProgramsThanItsCap() throws IOException {
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < ProgramIndexer.PROGRAMS_CAP + 2; i++) {
      lines.add("O" + i);
    }
    assertThat(index(lines.toArray(String[]::new)).programs()).hasSize(ProgramIndexer.PROGRAMS_CAP);
    assertThat(events)
        .containsExactly(
            new Event.CapReached(
                new Place(3, ProgramIndexer.PROGRAMS_CAP + 1, new Span(1, 1)),
                "programs in a file",
                ProgramIndexer.PROGRAMS_CAP));
  }

  @Test
  void tellsWhatTheGrammarCouldNotRead() throws IOException {
    index("G1 X1.", "G1 X", "", "X10 20");
    assertThat(events(Event.BlockProblem.class))
        .extracting(event -> event.at().line(), event -> event.problem().kind())
        .containsExactly(tuple(2, Problem.Kind.SYNTAX), tuple(4, Problem.Kind.SPACE_INSIDE_NUMBER));
    Event.BlockProblem first = events(Event.BlockProblem.class).get(0);
    assertThat(first.at()).isEqualTo(new Place(3, 2, first.problem().span()));
  }

  @Test
  void followsSequenceNumbersByTheMillion() {
    SequenceNumbers numbers = new SequenceNumbers();
    for (int i = 0; i < SequenceNumbers.CAP; i++) {
      assertThat(numbers.put(i * 10L, i + 1)).isEqualTo(SequenceNumbers.NEW);
    }
    assertThat(numbers.put(70, 9)).isEqualTo(8);
    assertThat(numbers.put((SequenceNumbers.CAP - 1) * 10L, 9)).isEqualTo(SequenceNumbers.CAP);
    assertThat(numbers.put(71, 9)).isEqualTo(SequenceNumbers.FULL);
    numbers.clear();
    assertThat(numbers.put(70, 9)).isEqualTo(SequenceNumbers.NEW);
    assertThat(numbers.put(70, 10)).isEqualTo(9);
    assertThat(numbers.put(-70, 11)).isEqualTo(SequenceNumbers.NEW);
    assertThat(numbers.put(-70, 12)).isEqualTo(11);
  }
}

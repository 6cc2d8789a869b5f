package hairline.checks.motion;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hairline.checks.motion.ProgramIndex.Program;
import hairline.parser.Block;
import hairline.parser.BlockSource;
import hairline.parser.PartProgram;
import hairline.parser.PartPrograms;
import hairline.parser.ReadAhead;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/**
 * A look that goes along with reading finds what a first look finds, and lets none pass that holds
 * more than it assumes.
 */
class LookWhileReadingProperties {
  private static final String HEAD =
      "%\nO1\nG21 G90\n" + "X1. Y2.\n".repeat(LookWhileReading.HEAD_BLOCKS);

  /** Longer than the tail that is looked at. */
  private static final String TAIL = ("(" + "a".repeat(998) + ")\n").repeat(67) + "X0.\nM30\n%\n";

  private static final String USUAL = "usual";

  private static PartProgram program(String lines, String end) {
    String text = HEAD + lines + TAIL;
    return PartPrograms.of("test", text.replace("\n", end).getBytes(UTF_8));
  }

  private static Optional<LookWhileReading> look(PartProgram program) throws IOException {
    long bytes = 0;
    try (BlockSource blocks = program.blocks()) {
      for (Optional<Block> next = blocks.next(); next.isPresent(); next = blocks.next()) {
        bytes = next.get().byteOffset() + next.get().byteLength();
      }
    }
    return LookWhileReading.at(program, bytes + 1);
  }

  private static List<Block> all(BlockSource source) throws IOException {
    List<Block> all = new ArrayList<>();
    try (source) {
      for (Optional<Block> next = source.next(); next.isPresent(); next = source.next()) {
        all.add(next.get());
      }
    }
    return all;
  }

  /** What a look that went along with reading to the end comes to. */
  private static String found(LookWhileReading look, BlockSource blocks, PartProgram program)
      throws IOException {
    try {
      List<Block> read = all(blocks);
      ProgramIndex index = look.found();
      assertThat(index).isEqualTo(ProgramIndexer.index(program, 0, event -> {}));
      Program first = index.first();
      assertThat(read)
          .isEqualTo(
              all(program.blocksOf(first.byteOffset(), first.line(), first.endByteOffset())));
      return USUAL;
    } catch (NotAsAssumedException e) {
      return "not as assumed";
    }
  }

  /** Whether a first look finds no more than what is assumed. */
  private static boolean isUsual(PartProgram program) throws IOException {
    List<Event> noticed = new ArrayList<>();
    ProgramIndex index = ProgramIndexer.index(program, 0, noticed::add);
    return noticed.isEmpty()
        && index.programs().size() == 1
        && index.remarks().isEmpty()
        && !index.deletableBlocks()
        && !index.mixesDecimalPoints();
  }

  @Provide
  Arbitrary<List<String>> lines() {
    Arbitrary<String> usual =
        Arbitraries.of(
            "X1. Y2.",
            "X0 Z0",
            "G3 X1. Y2. I0. J3.",
            "",
            "  ",
            "G1 X1.2 F300.",
            "(side)",
            "M8",
            "G4 P3",
            "N7",
            "N8.",
            "X2. (side) Y1.",
            "; remark",
            "F1.5 S3000",
            "N11 G1 X2. (here)",
            "N12 Z-0.004",
            "\tX1.",
            "x1.y2.",
            "G10 L2 P1 X5",
            "X1.23456789012345");
    Arbitrary<String> unusual =
        Arbitraries.of(
            "X5",
            "O12",
            ":13 (second)",
            "%",
            "M30",
            "M2",
            "M99",
            "/X5.",
            "N11 X1. N3",
            "N7 X5.",
            "(hairline: accept syntax: odd)",
            "X1. (hairline: accept syntax until end: odd)",
            "#1=5",
            "X#1",
            "G1 X",
            "X1. 2",
            "some text",
            "N3 (hairline: accept syntax: odd)");
    return Arbitraries.frequencyOf(
            net.jqwik.api.Tuple.of(40, usual), net.jqwik.api.Tuple.of(1, unusual))
        .list()
        .ofMaxSize(40);
  }

  @Property(tries = 400)
  void findsWhatAFirstLookFinds(@ForAll("lines") List<String> lines) throws IOException {
    for (String end : List.of("\n", "\r\n")) {
      PartProgram program = program(String.join("\n", lines) + "\n", end);
      String due = isUsual(program) ? USUAL : "not as assumed";
      LookWhileReading look = look(program).orElseThrow();
      assertThat(found(look, look.blocks(), program)).isEqualTo(due);
      LookWhileReading ahead = look(program).orElseThrow();
      assertThat(found(ahead, new ReadAhead(ahead.blocks()), program)).isEqualTo(due);
    }
  }

  /** Who runs the program may be done before its text ends. */
  @Property(tries = 100)
  void findsTheRestToo(@ForAll("lines") List<String> lines) throws IOException {
    PartProgram program = program(String.join("\n", lines) + "\n", "\n");
    LookWhileReading look = look(program).orElseThrow();
    try (BlockSource blocks = look.blocks()) {
      blocks.next();
    }
    if (isUsual(program)) {
      assertThat(look.found()).isEqualTo(ProgramIndexer.index(program, 0, event -> {}));
    } else {
      assertThatThrownBy(look::found).isInstanceOf(NotAsAssumedException.class);
    }
  }

  /** Each of these stands where it is seen before anything is run. */
  @Example
  void headAndTailAreLookedAt() throws IOException {
    for (String line : List.of("/X5.", "X5", "O2", "(hairline: accept syntax: odd)", "G1 X")) {
      String head = HEAD.replaceFirst("X1\\. Y2\\.", line);
      assertThat(look(PartPrograms.of("head", (head + TAIL).getBytes(UTF_8)))).isEmpty();
    }
    for (String line : List.of("/X5.", "O2", "(hairline: accept syntax: odd)", "G1 X")) {
      String tail = TAIL.replace("X0.", line);
      assertThat(look(PartPrograms.of("tail", (HEAD + tail).getBytes(UTF_8)))).isEmpty();
    }
    assertThat(look(PartPrograms.of("usual", (HEAD + TAIL).getBytes(UTF_8)))).isPresent();
  }

  /** A number behind five hundred remarks names the program, which had none. */
  @Example
  void numberBehindTheHead() throws IOException {
    String text = "(far)\n".repeat(LookWhileReading.HEAD_BLOCKS + 1) + "O5\nX1.\n" + TAIL;
    LookWhileReading look = look(PartPrograms.of("late", text.getBytes(UTF_8))).orElseThrow();
    assertThatThrownBy(() -> all(look.blocks())).isInstanceOf(NotAsAssumedException.class);
  }

  /** A first look tells that not all numbers are kept, so such a file is not run before it. */
  @Example
  void moreNumbersThanAreKept() throws IOException {
    for (boolean tooMany : List.of(true, false)) {
      StringBuilder text = new StringBuilder("O1\n");
      int blocks =
          SequenceNumbers.CAP + (tooMany ? SequenceNumbers.CAP / 4 : -SequenceNumbers.CAP / 4);
      for (int i = 0; i < blocks; i++) {
        text.append('N').append(10_000_000 + i).append("X1.\n");
      }
      byte[] bytes = text.toString().getBytes(UTF_8);
      PartProgram program = PartPrograms.of("numbered", bytes);
      assertThat(LookWhileReading.at(program, bytes.length).isPresent()).isEqualTo(!tooMany);
    }
  }
}

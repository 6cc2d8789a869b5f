package hairline.checks.motion;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import hairline.parser.BlockSource;
import hairline.parser.PartProgram;
import hairline.parser.PartPrograms;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** A first look that passes over plain blocks tells the same as one that reads every block. */
class SkimProperties {
  private record EveryBlock(PartProgram program) implements PartProgram {
    @Override
    public String name() {
      return program.name();
    }

    @Override
    public BlockSource blocksFrom(long byteOffset, int line) throws IOException {
      return program.blocksFrom(byteOffset, line);
    }
  }

  @Provide
  Arbitrary<List<String>> programs() {
    return Arbitraries.of(
            "X1. Y2.",
            "X5",
            "G1 X0 Z-0.004",
            "G3 X1 Y2 I0. J3",
            "",
            "  ",
            "N10 X1",
            "N10 G1 Z5",
            "G4 P3",
            "G10 L2 P1 X5",
            "O12",
            "O13 (second)",
            "%",
            "M30",
            "M99",
            "M98 P12",
            "/X5.",
            "(hairline: accept syntax: odd)",
            "( \tHAIRLINE: accept syntax: loud)",
            "X2. (side) Y1.",
            "(hair) (hem)",
            "X1. (hairline: accept syntax until end: odd)",
            "#1=5",
            "X#1",
            "G1 X",
            "; remark",
            "F1.5 S3000",
            "X1 2",
            "some text")
        .list()
        .ofMaxSize(30);
  }

  @Property
  void sameIndex(@ForAll("programs") List<String> lines) throws IOException {
    for (String end : List.of("\n", "\r\n", "")) {
      String text = String.join(end.isEmpty() ? "\n" : end, lines) + end;
      PartProgram program = PartPrograms.of("test", text.getBytes(UTF_8));
      List<Event> quick = new ArrayList<>();
      List<Event> every = new ArrayList<>();
      ProgramIndex skimmed = ProgramIndexer.index(program, 0, quick::add);
      ProgramIndex read = ProgramIndexer.index(new EveryBlock(program), 0, every::add);
      assertThat(skimmed).isEqualTo(read);
      assertThat(quick).isEqualTo(every);
    }
  }
}

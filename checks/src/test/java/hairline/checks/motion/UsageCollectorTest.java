package hairline.checks.motion;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.setup.CodeWord;
import hairline.checks.setup.Usage;
import hairline.parser.PartPrograms;
import hairline.parser.Span;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class UsageCollectorTest {
  private static final Place AT = new Place(0, 1, new Span(1, 1));

  private final UsageCollector collector = new UsageCollector();

  private Usage run(String... lines) throws IOException {
    byte[] bytes = String.join("\n", lines).getBytes(StandardCharsets.UTF_8);
    new Interpreter(ControlProfile.UNKNOWN, PartPrograms.of("test", bytes)).run(collector, false);
    return collector.usage("insert.nc");
  }

  @Test
  void collectsToolsAndTheirSpeeds() throws IOException {
    Usage usage =
        run(
            "G21 G90",
            "G0 X0. Y0. Z1.",
            "G1 Z0. F100.",
            "T3 M6",
            "S30000 M3",
            "G1 X1.",
            "S40000",
            "G43 H13",
            "G55 X2.",
            "G43 H14",
            "T0 M6",
            "T7 M6",
            "M30");
    assertThat(usage)
        .isEqualTo(
            new Usage(
                "insert.nc",
                List.of(
                    new Usage.ToolUse(3, List.of(30000.0, 40000.0), OptionalInt.of(13)),
                    new Usage.ToolUse(7, List.of(), OptionalInt.empty())),
                List.of(),
                List.of("G55")));
  }

  @Test
  void collectsCodesInTheOrderOfTheirFirstUse() throws IOException {
    assertThat(run("M171", "M08", "G305.1", "M8", "M9", "M171", "M7", "M30").codes())
        .containsExactly(
            CodeWord.of('M', 171),
            CodeWord.of('M', 8),
            new CodeWord('G', new java.math.BigDecimal("305.1")),
            CodeWord.of('M', 9),
            CodeWord.of('M', 7));
  }

  @Test
  void collectsCallsThatNoProgramAnswers() {
    collector.accept(new Event.SubprogramMissing(AT, "O9001", List.of("main")));
    collector.accept(new Event.CodeUnknown(AT, "M[#1]"));
    assertThat(collector.usage("x").codes()).containsExactly(CodeWord.of('P', 9001));
  }

  @Test
  void collectsWhatTheSheetKnowsAlready() throws IOException {
    Modes modes = new ModalState(ControlProfile.UNKNOWN).snapshot();
    collector.accept(
        new Event.MachineCode(AT, "P9002", Event.MachineCode.Meaning.MEASURE_TOOL, modes));
    assertThat(collector.usage("x").codes()).containsExactly(CodeWord.of('P', 9002));
  }

  @Test
  void keepsNoMoreCodesThanItsCap() {
    for (int i = 0; i < 2 * UsageCollector.CODES_CAP; i++) {
      collector.accept(new Event.CodeUnknown(AT, "M" + i));
    }
    assertThat(collector.usage("x").codes())
        .hasSize(UsageCollector.CODES_CAP)
        .endsWith(CodeWord.of('M', UsageCollector.CODES_CAP - 1));
  }
}

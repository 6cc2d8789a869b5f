package hairline.checks.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.motion.Axis;
import hairline.checks.motion.ControlProfile;
import hairline.checks.motion.Event;
import hairline.checks.motion.Extent;
import hairline.checks.motion.Interpreter;
import hairline.checks.motion.Modal;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Modes.Spindle;
import hairline.checks.motion.Place;
import hairline.checks.motion.ToolUse;
import hairline.checks.setup.AxisValues;
import hairline.checks.timing.ProgramSummary.Doubt;
import hairline.checks.timing.ProgramSummary.Reach;
import hairline.parser.PartPrograms;
import hairline.parser.Problem;
import hairline.parser.Span;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class SummarizerTest {
  private final ProgramTime time = new ProgramTime();
  private final Summarizer summarizer = new Summarizer(time, new PlannedFeed());
  private final Timeline timeline =
      new Timeline(
          new TimeTable(
              Optional.of(AxisValues.alongPath(6000)),
              OptionalDouble.of(4),
              OptionalDouble.empty(),
              OptionalDouble.empty(),
              OptionalDouble.empty(),
              false),
          new PlannedFeed(),
          time,
          summarizer);
  private final Programs programs = new Programs(timeline);

  private static Place line(int line) {
    return new Place(0, line, new Span(1, 2));
  }

  private static Extent mm(long lowest, long highest) {
    return new Extent(lowest * 1_000_000_000L, highest * 1_000_000_000L);
  }

  private ProgramSummary run(String... lines) throws IOException {
    byte[] bytes = String.join("\n", lines).getBytes(StandardCharsets.UTF_8);
    new Interpreter(ControlProfile.UNKNOWN, PartPrograms.of("test", bytes)).run(timeline, false);
    return summarizer.summary();
  }

  @Test
  void sumsUpAProgram() throws IOException {
    ProgramSummary summary =
        run(
            "G21 G90 G17 G94 G54",
            "T3 M6",
            "S30000 M3",
            "G0 X0. Y0. Z5.",
            "G1 Z-1. F60.",
            "X10.",
            "F120. Y20.",
            "G0 Z5.",
            "M30");
    assertThat(summary.blocks()).isEqualTo(9);
    assertThat(summary.rapids()).isEqualTo(2);
    assertThat(summary.lines()).isEqualTo(3);
    assertThat(summary.moves()).isEqualTo(5);
    assertThat(summary.inCycles()).isZero();
    // 6 mm and 10 mm at 60 mm/min, 20 mm at 120 mm/min
    assertThat(summary.feedMm()).isCloseTo(36, within(1e-9));
    assertThat(summary.feedSeconds()).isCloseTo(26, within(1e-9));
    // 6 mm at 6000 mm/min; from where the first rapid comes is not known
    assertThat(summary.rapidMm()).isCloseTo(6, within(1e-9));
    assertThat(summary.rapidSeconds()).isCloseTo(0.06, within(1e-9));
    assertThat(summary.time().atLeastSeconds()).isCloseTo(26 + 0.06 + 4, within(1e-9));
    assertThat(summary.time().gaps()).extracting(Gap::cause).containsExactly(Cause.POSITION);
    Map<Axis, Extent> reach = Map.of(Axis.X, mm(0, 10), Axis.Y, mm(0, 20), Axis.Z, mm(-1, 5));
    assertThat(summary.extents()).containsExactly(new Reach("G54", reach, reach));
    assertThat(summary.tools())
        .containsExactly(
            new ToolUse(
                OptionalInt.of(3),
                new Place(0, 2, new Span(1, 6)),
                List.of(30000.0),
                Optional.of(new ToolUse.Feeds(60, 120)),
                36));
    ProgramSummary.Ending ending = summary.ending().orElseThrow();
    assertThat(ending.at().line()).isEqualTo(9);
    assertThat(ending.code()).contains("M30");
    assertThat(ending.modes().tool()).isEqualTo(Modal.stated(3, 2));
    assertThat(summary.doubts()).isEmpty();
  }

  /**
   * A speed for itself, then two tools, the second at two speeds; 4 s a tool change, and after it
   * nobody knows from how high the tool comes down.
   */
  @Test
  void tellsTheTimeOfEachOperation() throws IOException {
    ProgramSummary summary =
        run(
            "G21 G90 G17 G94 G54 G0 X0. Y0. Z6.",
            "S8000 M3",
            "G4 P5.",
            "T3 M6",
            "S30000 M3",
            "G0 Z0.",
            "G1 X10. F60.",
            "T4 M6",
            "S20000 M3",
            "G0 Z0.",
            "G1 X0. F60.",
            "S10000",
            "G1 X1. F60.",
            "M30");
    assertThat(summary.operations())
        .extracting(o -> o.from().line(), o -> o.tool().orElse(-1), o -> o.rpm().orElse(-1))
        .containsExactly(
            tuple(1, -1, -1.0),
            tuple(6, 3, 30_000.0),
            tuple(10, 4, 20_000.0),
            tuple(13, 4, 10_000.0));
    assertThat(summary.operations().get(1).seconds()).isCloseTo(4 + 10, within(1e-9));
    assertThat(summary.operations().get(2).seconds()).isCloseTo(4 + 10, within(1e-9));
    assertThat(summary.operations().get(3).seconds()).isCloseTo(1, within(1e-9));
    double sum = summary.operations().stream().mapToDouble(ProgramSummary.Operation::seconds).sum();
    assertThat(sum).isCloseTo(summary.time().atLeastSeconds(), within(1e-9));
  }

  @Test
  void sumsUpTheFirstProgramOfTheReport() throws IOException {
    try (InputStream in = Interpreter.class.getResourceAsStream("nistir-6556-c1.nc")) {
      byte[] bytes = Objects.requireNonNull(in).readAllBytes();
      new Interpreter(ControlProfile.UNKNOWN, PartPrograms.of("c1", bytes)).run(timeline, false);
    }
    ProgramSummary summary = summarizer.summary();
    // NISTIR 6556 appendix C.1: 34 feed moves, 183.4305 mm at F20.
    assertThat(summary.lines() + summary.arcsClockwise() + summary.arcsCounterClockwise())
        .isEqualTo(34);
    assertThat(summary.feedMm()).isCloseTo(183.4305, within(5e-5));
    assertThat(summary.feedSeconds()).isCloseTo(183.4305 / 20 * 60, within(2e-4));
    // "this program mills 'Hello world' between X=0 and X=81 millimeters"
    assertThat(summary.extents())
        .extracting(Reach::workOffset, reach -> reach.feed().get(Axis.X))
        .containsExactly(tuple("", mm(0, 81)));
  }

  @Test
  void keepsWorkOffsetsApart() throws IOException {
    ProgramSummary summary =
        run("G21 G90 G94", "G0 X1. Y1. Z1.", "G54 X2.", "G55 X7. Y7. Z7.", "G54 X3. Y3. Z3.");
    assertThat(summary.extents())
        .extracting(Reach::workOffset, reach -> reach.rapid().get(Axis.X), Reach::feed)
        .containsExactly(
            tuple("", mm(1, 1), Map.of()),
            tuple("G54", mm(2, 3), Map.of()),
            tuple("G55", mm(7, 7), Map.of()));
    assertThat(summary.ending().orElseThrow().code()).isEmpty();
  }

  @Test
  void countsDwellsCallsAndTools() {
    programs.m6(2).m3(10_000).g0(0, 0, 0).g1(6, 0, 0, 60).dwell(2).dwellWithoutUnit();
    programs.call().back().call().back();
    programs.m6(5).spindle(Spindle.CLOCKWISE, 20_000).g1(0, 0, 0, 30).g1(1, 0, 0, 90);
    programs.s(25_000).s(20_000).m6(2).m3(10_000).g1(2, 0, 0, 10);
    programs.m6(Modal.unknown(9)).g1WithoutFeed(5, 0, 0);
    ProgramSummary summary = summarizer.summary();
    assertThat(summary.dwells()).isEqualTo(2);
    assertThat(summary.dwellSeconds()).isEqualTo(2);
    assertThat(summary.calls()).isEqualTo(Map.of("O1", 2L));
    assertThat(summary.tools())
        .containsExactly(
            new ToolUse(
                OptionalInt.of(2),
                line(1),
                List.of(10_000.0),
                Optional.of(new ToolUse.Feeds(10, 60)),
                7),
            new ToolUse(
                OptionalInt.of(5),
                line(11),
                List.of(20_000.0, 25_000.0),
                Optional.of(new ToolUse.Feeds(30, 90)),
                7),
            new ToolUse(OptionalInt.empty(), line(20), List.of(), Optional.empty(), 3));
    assertThat(summary.ending()).isEmpty();
  }

  @Test
  void namesItsDoubtsOnceWithTheirCount() {
    programs.unknownCode().missingCall().unknownCode();
    int line = 4;
    for (Problem.Kind kind :
        List.of(Problem.Kind.SYNTAX, Problem.Kind.MACRO, Problem.Kind.SPACE_INSIDE_NUMBER)) {
      Problem problem = new Problem(kind, new Span(1, 2), "x", "y");
      timeline.accept(new Event.BlockProblem(line(line), problem));
      line++;
    }
    Modes modes = programs.modes();
    for (Event event :
        List.of(
            new Event.BecameUnknown(line(9), "axes", Event.BecameUnknown.Cause.NOT_UNDERSTOOD),
            new Event.SubprogramEndless(line(10), List.of("O1", "O2", "O1"), 10),
            new Event.StepBudgetReached(line(11), 70),
            new Event.StartAssumed(line(12), "units", "mm"),
            new Event.OffsetAssumed(line(13)),
            new Event.ArcImpossible(
                line(14), "no centre", OptionalDouble.empty(), OptionalDouble.empty(), modes),
            new Event.CapReached(line(15), "programs in a file", 3),
            new Event.BecameUnknown(line(16), "axes", Event.BecameUnknown.Cause.NOT_UNDERSTOOD))) {
      timeline.accept(event);
    }
    assertThat(summarizer.summary().doubts())
        .containsExactly(
            new Doubt("M171 has no known meaning", line(1), 2),
            new Doubt("subprogram O171 not found and left out", line(2), 1),
            new Doubt("a block that breaks the grammar left out", line(4), 1),
            new Doubt("a macro statement left out", line(5), 1),
            new Doubt("axes unknown from here on", line(9), 2),
            new Doubt("call O1 > O2 > O1 never ends and is left out", line(10), 1),
            new Doubt("the budget of 70 steps is used up", line(11), 1),
            new Doubt("units never stated, mm assumed", line(12), 1),
            new Doubt("work offset never chosen", line(13), 1),
            new Doubt("an arc left out: no centre", line(14), 1),
            new Doubt("programs in a file: the limit of 3 is reached", line(15), 1));
  }

  @Test
  void keepsItsTablesSmall() {
    for (int i = 0; i < 2 * Summarizer.DOUBTS_CAP; i++) {
      timeline.accept(new Event.SubprogramEntered(line(1), "O" + i, 1));
      timeline.accept(
          new Event.BecameUnknown(
              line(i + 1), "item " + i, Event.BecameUnknown.Cause.NOT_UNDERSTOOD));
      programs.m6(i).m3(i + 1).g1(i % 2, 0, 0, 10);
    }
    ProgramSummary summary = summarizer.summary();
    assertThat(summary.doubts().stream().skip(Summarizer.DOUBTS_CAP).map(Doubt::what))
        .containsExactly(
            "calls of subprograms beyond the first 1000 left out of the summary",
            "doubts beyond the first 1000 left out of the summary",
            "tools or speeds beyond the first left out of the summary");
    assertThat(summary.calls()).hasSize(Summarizer.CALLS_CAP).doesNotContainKey("O1000");
    assertThat(summary.tools()).hasSize(1_000);
    assertThat(summary.tools().get(999).feedMm()).isEqualTo(1);
  }

  @Test
  void keepsTheSpeedsOfAToolFew() {
    programs.m6(1);
    for (int i = 1; i <= 101; i++) {
      programs.m3(i);
    }
    ProgramSummary summary = summarizer.summary();
    assertThat(summary.tools().get(0).speedsRpm()).hasSize(100);
    assertThat(summary.doubts()).hasSize(1);
  }
}

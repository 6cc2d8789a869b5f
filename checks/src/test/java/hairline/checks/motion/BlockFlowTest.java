package hairline.checks.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assumptions.assumeThat;

import hairline.parser.Block;
import hairline.parser.PartPrograms;
import hairline.parser.Span;
import hairline.parser.Value;
import hairline.parser.Word;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BlockFlowTest {
  private static final int DEPTH = 10;
  private static final long BUDGET = 1_000;

  private final List<Event> events = new ArrayList<>();

  @TempDir Path folder;

  private static String text(String... lines) {
    return String.join("\n", lines) + "\n";
  }

  private ProgramFiles alone(String... lines) throws IOException {
    byte[] bytes = text(lines).getBytes(StandardCharsets.UTF_8);
    return ProgramFiles.alone(PartPrograms.of("main", bytes), events::add);
  }

  private Path write(String name, String... lines) throws IOException {
    return Files.writeString(folder.resolve(name), text(lines));
  }

  private ProgramFiles beside(Path main) throws IOException {
    return ProgramFiles.of(main, events::add);
  }

  private List<String> run(ProgramFiles files) throws IOException {
    return run(files, DEPTH, BUDGET, false);
  }

  /** Executes calls, returns and ends only; the texts of the blocks as they come, with depth. */
  private List<String> run(ProgramFiles files, int depth, long budget, boolean blockDelete)
      throws IOException {
    List<String> texts = new ArrayList<>();
    try (BlockFlow flow = new BlockFlow(files, depth, budget, blockDelete, events::add)) {
      for (Optional<Block> next = flow.next(); next.isPresent(); next = flow.next()) {
        Block block = next.get();
        texts.add(flow.depth() + ":" + block.text());
        Place at = new Place(flow.file(), block.line(), new Span(1, 1));
        switch (number(block, 'M').orElse(-1)) {
          case 98 ->
              flow.call(
                  at,
                  number(block, 'P').orElse(0),
                  number(block, 'L').isPresent()
                      ? OptionalLong.of(number(block, 'L').get())
                      : OptionalLong.empty());
          case 99 -> {
            if (!flow.returnFromSubprogram(at)) {
              flow.end();
            }
          }
          case 30 -> flow.end();
          default -> {}
        }
      }
    }
    return texts;
  }

  private static Optional<Integer> number(Block block, char letter) {
    return block.words().stream()
        .filter(word -> word.letter() == letter)
        .map(Word::value)
        .map(value -> ((Value.Literal) value).toBigDecimal().intValueExact())
        .findFirst();
  }

  private <E extends Event> List<E> events(Class<E> kind) {
    return events.stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  private static Place line(int line) {
    return new Place(0, line, new Span(1, 1));
  }

  @Test
  void runsTheMainProgramToItsEnd() throws IOException {
    assertThat(run(alone("%", "O1", "G1", "M30", "G2", "O2", "M99", "%")))
        .containsExactly("0:O1", "0:G1", "0:M30");
    assertThat(events)
        .containsExactly(
            new Event.BlocksBehindEnd(
                new Place(0, 5, new Span(1, 3)), new Place(0, 4, new Span(1, 4)), "M30"));
  }

  @Test
  void endsWithTheTextWhereNoCodeDoes() throws IOException {
    ProgramFiles files = alone("%", "G1", "G2", "%", "G3");
    BlockFlow flow = new BlockFlow(files, DEPTH, BUDGET, false, events::add);
    flow.next();
    flow.next();
    assertThat(flow.next()).isEmpty();
    assertThat(flow.next()).isEmpty();
    assertThat(flow.last()).isEqualTo(line(3));
    assertThat(flow.depth()).isZero();
    assertThat(run(alone("G1", "O2", "M99"))).containsExactly("0:G1");
    assertThat(run(alone("G1", "M99", "G2"))).containsExactly("0:G1", "0:M99");
  }

  @Test
  void leavesTheLeaderOut() throws IOException {
    assertThat(run(alone("Mixer insert, sheet 2", "%", "G1", "M30")))
        .containsExactly("0:G1", "0:M30");
  }

  @Test
  void callsASubprogramOfTheSameFile() throws IOException {
    ProgramFiles files = alone("G1", "M98 P20", "G2", "M30", "O20", "G3", "M99", "G4");
    assertThat(run(files))
        .containsExactly("0:G1", "0:M98 P20", "1:O20", "1:G3", "1:M99", "0:G2", "0:M30");
    assertThat(events)
        .containsExactly(
            new Event.BlocksBehindEnd(
                new Place(0, 8, new Span(1, 3)), new Place(0, 7, new Span(1, 4)), "M99"),
            new Event.SubprogramEntered(line(2), "O20", 1),
            new Event.SubprogramLeft(line(7), "O20", 1));
  }

  @Test
  void repeatsASubprogram() throws IOException {
    ProgramFiles files = alone("M98 P20 L3", "M30", "O20", "M99");
    assertThat(run(files))
        .containsExactly(
            "0:M98 P20 L3", "1:O20", "1:M99", "1:O20", "1:M99", "1:O20", "1:M99", "0:M30");
    Event entered = new Event.SubprogramEntered(line(1), "O20", 1);
    Event left = new Event.SubprogramLeft(line(4), "O20", 1);
    assertThat(events).containsExactly(entered, left, entered, left, entered, left);
  }

  @Test
  void doesNotRepeatWithoutRepeats() throws IOException {
    assertThat(run(alone("M98 P20 L0", "M30", "O20", "M99")))
        .containsExactly("0:M98 P20 L0", "0:M30");
    assertThat(events).isEmpty();
  }

  @Test
  void readsRepeatsPackedIntoTheNumber() throws IOException {
    // Common practice, no source.
    assertThat(run(alone("M98 P30020", "M30", "O20", "M99"))).hasSize(8);
    // A program with the whole number goes first; with L there is nothing packed.
    assertThat(run(alone("M98 P30020", "M30", "O20", "M99", "O30020", "G1", "M99")))
        .containsExactly("0:M98 P30020", "1:O30020", "1:G1", "1:M99", "0:M30");
    events.clear();
    run(alone("M98 P30020 L2", "M30", "O20", "M99"));
    assertThat(events).containsExactly(new Event.SubprogramMissing(line(1), "O30020", List.of()));
    events.clear();
    run(alone("M98 P10000", "M30", "O0", "G1", "M99"));
    assertThat(events(Event.SubprogramEntered.class)).hasSize(1);
  }

  @Test
  void returnsWhereTheTextOfASubprogramEnds() throws IOException {
    assertThat(run(alone("M98 P20", "G2", "M30", "O20", "G3", "", "O30", "G4", "M99")))
        .containsExactly("0:M98 P20", "1:O20", "1:G3", "1:", "0:G2", "0:M30");
    assertThat(events)
        .containsExactly(
            new Event.SubprogramEntered(line(1), "O20", 1),
            new Event.SubprogramEndMissing(line(6), "O20"),
            new Event.SubprogramLeft(line(6), "O20", 1));
  }

  @Test
  void nestsCalls() throws IOException {
    ProgramFiles files =
        alone("M98 P1", "M30", "O1", "M98 P2 L2", "M99", "O2", "G1", "M99", "O3", "M99");
    assertThat(run(files))
        .containsExactly(
            "0:M98 P1",
            "1:O1",
            "1:M98 P2 L2",
            "2:O2",
            "2:G1",
            "2:M99",
            "2:O2",
            "2:G1",
            "2:M99",
            "1:M99",
            "0:M30");
    assertThat(events(Event.SubprogramEntered.class))
        .extracting(Event.SubprogramEntered::depth)
        .containsExactly(1, 2, 2);
    assertThat(events(Event.SubprogramLeft.class))
        .extracting(Event.SubprogramLeft::depth)
        .containsExactly(2, 2, 1);
  }

  @Test
  void endsWithinASubprogram() throws IOException {
    assertThat(run(alone("M98 P20 L5", "G2", "M30", "O20", "M30")))
        .containsExactly("0:M98 P20 L5", "1:O20", "1:M30");
  }

  @Test
  void refusesACallThatComesBackToItself() throws IOException {
    run(alone("M98 P1", "M30", "O1", "M98 P2", "M99", "O2", "M98 P1", "M99"));
    assertThat(events(Event.SubprogramEndless.class))
        .containsExactly(
            new Event.SubprogramEndless(line(7), List.of("main", "O1", "O2", "O1"), DEPTH));
    events.clear();
    assertThat(run(alone("O9", "M98 P9", "M30"))).containsExactly("0:O9", "0:M98 P9", "0:M30");
    assertThat(events)
        .containsExactly(new Event.SubprogramEndless(line(2), List.of("O9", "O9"), DEPTH));
  }

  @Test
  void refusesACallThatNestsTooDeep() throws IOException {
    List<String> lines = new ArrayList<>(List.of("M98 P1", "M30"));
    for (int i = 1; i <= 4; i++) {
      lines.addAll(List.of("O" + i, "M98 P" + (i + 1), "M99"));
    }
    lines.addAll(List.of("O5", "M99"));
    String[] program = lines.toArray(String[]::new);
    run(alone(program), 4, BUDGET, false);
    assertThat(events(Event.SubprogramEntered.class)).hasSize(4);
    assertThat(events(Event.SubprogramEndless.class))
        .containsExactly(
            new Event.SubprogramEndless(
                line(13), List.of("main", "O1", "O2", "O3", "O4", "O5"), 4));
    events.clear();
    run(alone(program), 5, BUDGET, false);
    assertThat(events(Event.SubprogramEntered.class)).hasSize(5);
    assertThat(events(Event.SubprogramEndless.class)).isEmpty();
    events.clear();
    run(alone(program), 0, BUDGET, false);
    assertThat(events)
        .containsExactly(new Event.SubprogramEndless(line(1), List.of("main", "O1"), 0));
  }

  @Test
  void stopsWhenTheStepBudgetIsUsedUp() throws IOException {
    // 999 steps are left behind the call, as many as it asks for; each repeat takes two.
    String[] program = {"M98 P20 L999", "G2", "M30", "O20", "M99"};
    assertThat(run(alone(program))).hasSize((int) BUDGET);
    assertThat(events.get(events.size() - 1))
        .isEqualTo(new Event.StepBudgetReached(line(5), BUDGET));
    assertThat(events(Event.StepBudgetReached.class)).hasSize(1);
    events.clear();
    assertThat(run(alone("G1", "G2", "M30"), DEPTH, 3, false)).hasSize(3);
    assertThat(events).isEmpty();
    assertThat(run(alone("G1", "G2", "M30"), DEPTH, 2, false)).hasSize(2);
    assertThat(events).containsExactly(new Event.StepBudgetReached(line(3), 2));
  }

  @Test
  void repeatsThatAreTooManyEndBehindTheFirstThousand() throws IOException {
    String[] program = {"M98 P20 L1000000000", "G2", "M30", "O20", "M99"};
    assertThat(run(alone(program), DEPTH, 50_000_000, false)).hasSize(1 + 2 * 1_000);
    assertThat(events.get(events.size() - 1))
        .isEqualTo(
            new Event.StepBudgetReached(line(1), 50_000_000, OptionalLong.of(1_000_000_000)));
    assertThat(events(Event.StepBudgetReached.class)).hasSize(1);
    events.clear();
    // One more than the steps that are left.
    String[] near = {"M98 P20 L4000", "G2", "M30", "O20", "M99"};
    assertThat(run(alone(near), DEPTH, 4_000, false)).hasSize(1 + 2 * 1_000);
    events.clear();
    assertThat(run(alone(near), DEPTH, 4_001, false)).hasSize(4_001);
    events.clear();
    // Fewer than a thousand are left: the budget itself ends them.
    assertThat(run(alone(program), DEPTH, 100, false)).hasSize(100);
    assertThat(events.get(events.size() - 1)).isEqualTo(new Event.StepBudgetReached(line(5), 100));
  }

  @Test
  void aCallWithinTooManyRepeatsEndsTheProgramToo() throws IOException {
    run(alone("M98 P20 L3", "M30", "O20", "M98 P30 L9999", "M99", "O30", "M99"));
    assertThat(events(Event.StepBudgetReached.class)).hasSize(1);
  }

  @Test
  void aSubprogramWithoutABlockUsesTheBudgetUpToo() throws IOException {
    Path main = write("main.nc", "M98 P20 L900", "M98 P20 L900", "M30");
    write("O20.nc", "");
    Assertions.assertTimeoutPreemptively(
        Duration.ofSeconds(20), () -> run(beside(main), DEPTH, BUDGET, false));
    assertThat(events(Event.StepBudgetReached.class)).hasSize(1);
  }

  @Test
  void countsStepsWithinABlock() throws IOException {
    BlockFlow flow = new BlockFlow(alone("G81", "G2"), DEPTH, 3, false, events::add);
    flow.next();
    assertThat(flow.step(line(1))).isTrue();
    assertThat(flow.step(line(1))).isTrue();
    assertThat(flow.isBudgetReached()).isFalse();
    assertThat(flow.step(line(1))).isFalse();
    assertThat(flow.step(line(1))).isFalse();
    assertThat(flow.isBudgetReached()).isTrue();
    assertThat(flow.stepsTaken()).isEqualTo(3);
    assertThat(flow.next()).isEmpty();
    assertThat(events).containsExactly(new Event.StepBudgetReached(line(1), 3));
  }

  @Test
  void runsFiftyThousandRepeatsWithoutReadingTheFileEachTime() {
    Assertions.assertTimeoutPreemptively(
        Duration.ofSeconds(20),
        () -> {
          Path main = write("main.nc", "M98 P20 L50000", "M30", "O20", "G1 X1.", "M99");
          run(beside(main), DEPTH, 1_000_000, false);
          assertThat(events(Event.SubprogramLeft.class)).hasSize(50_000);
        });
  }

  @Test
  void leavesDeletableBlocksOutWhenTheSwitchIsOn() throws IOException {
    ProgramFiles files = alone("G1", "/G2", "/M98 P2", "M30", "O2", "/G3", "M99");
    assertThat(run(files, DEPTH, BUDGET, true)).containsExactly("0:G1", "0:M30");
    assertThat(run(files, DEPTH, BUDGET, false))
        .containsExactly("0:G1", "0:/G2", "0:/M98 P2", "1:O2", "1:/G3", "1:M99", "0:M30");
  }

  @Test
  void countsDeletedBlocksAsSteps() throws IOException {
    run(alone("M98 P2 L100000", "M30", "/O2", "/G1"), DEPTH, BUDGET, true);
    assertThat(events(Event.StepBudgetReached.class)).hasSize(1);
  }

  @Test
  void findsSubprogramsBesideTheProgram() throws IOException {
    Path main = write("main.NC", "M98 P7777", "M98 P8888", "M98 P9999", "M98 P12", "M30");
    write("O7777.NC", "G1", "M99");
    write("O8888", "G2", "M99");
    write("9999.NC", "O9998", "M99", "O9999", "G3", "M99");
    write("O0012.NC", "G4", "M99");
    ProgramFiles files = beside(main);
    assertThat(run(files))
        .containsExactly(
            "0:M98 P7777",
            "1:G1",
            "1:M99",
            "0:M98 P8888",
            "1:G2",
            "1:M99",
            "0:M98 P9999",
            "1:O9999",
            "1:G3",
            "1:M99",
            "0:M98 P12",
            "1:G4",
            "1:M99",
            "0:M30");
    assertThat(files.count()).isEqualTo(5);
    assertThat(files.name(0)).isEqualTo(main.toString());
    assertThat(files.name(1)).isEqualTo(folder.resolve("O7777.NC").toString());
    assertThat(events(Event.SubprogramLeft.class))
        .extracting(event -> event.at().file(), Event.SubprogramLeft::name)
        .containsExactly(
            tuple(1, files.name(1)),
            tuple(2, files.name(2)),
            tuple(3, "O9999"),
            tuple(4, files.name(4)));
  }

  @Test
  void looksInTheCallingFileThenInTheMainProgramsThenBeside() throws IOException {
    Path main =
        write("main.nc", "M98 P10", "M98 P2", "M30", "O1", "G1", "M99", "O2", "G2 (main)", "M99");
    write("O0010.nc", "O10", "M98 P1", "M98 P2", "M99", "O2", "G2 (beside)", "M99");
    write("O0001.nc", "G9");
    assertThat(run(beside(main)))
        .containsExactly(
            "0:M98 P10",
            "1:O10",
            "1:M98 P1",
            "2:O1",
            "2:G1",
            "2:M99",
            "1:M98 P2",
            "2:O2",
            "2:G2 (beside)",
            "2:M99",
            "1:M99",
            "0:M98 P2",
            "1:O2",
            "1:G2 (main)",
            "1:M99",
            "0:M30");
  }

  @Test
  void tellsWhatAFileBesideHolds() throws IOException {
    Path main = write("main.nc", "M98 P2", "M98 P2", "M30");
    write("O2.nc", "N1", "N1 G1 X", "M99");
    run(beside(main));
    assertThat(events(Event.SequenceRepeated.class)).isEmpty();
    assertThat(events(Event.BlockProblem.class))
        .extracting(Event::at)
        .extracting(Place::file)
        .containsExactly(1);
  }

  @Test
  void saysWhereItLookedForAMissingSubprogram() throws IOException {
    Path main = write("main.nc", "M98 P7", "M98 P12345 L2", "M30");
    assertThat(run(beside(main))).containsExactly("0:M98 P7", "0:M98 P12345 L2", "0:M30");
    assertThat(events)
        .containsExactly(
            new Event.SubprogramMissing(
                line(1), "O7", List.of("O0007.nc", "O0007", "0007.nc", "O7.nc", "O7", "7.nc")),
            new Event.SubprogramMissing(
                line(2), "O12345", List.of("O12345.nc", "O12345", "12345.nc")));
    events.clear();
    BlockFlow flow = new BlockFlow(beside(main), DEPTH, BUDGET, false, events::add);
    assertThat(flow.call(line(1), -5, OptionalLong.empty())).isFalse();
    assertThat(events).containsExactly(new Event.SubprogramMissing(line(1), "O-5", List.of()));
  }

  @Test
  void looksForPlainNamesBesideAProgramWithoutExtension() throws IOException {
    Path main = write("PART", "M98 P2000", "M30");
    write("2000", "G1", "M99");
    assertThat(run(beside(main))).containsExactly("0:M98 P2000", "1:G1", "1:M99", "0:M30");
  }

  @Test
  void doesNotFollowANameOutOfTheFolder(@TempDir Path elsewhere) throws IOException {
    Path target = Files.writeString(elsewhere.resolve("secret.nc"), text("G1", "M99"));
    Path main = write("main.nc", "M98 P1", "M98 P2", "M98 P3", "M30");
    Files.createDirectory(folder.resolve("O3.nc"));
    try {
      Files.createSymbolicLink(folder.resolve("O1.nc"), target);
      write("real.nc", "G2", "M99");
      Files.createSymbolicLink(folder.resolve("O2.nc"), folder.resolve("real.nc"));
    } catch (UnsupportedOperationException | IOException e) {
      assumeThat(false).as("no symbolic links here").isTrue();
    }
    assertThat(run(beside(main)))
        .containsExactly("0:M98 P1", "0:M98 P2", "1:G2", "1:M99", "0:M98 P3", "0:M30");
    assertThat(events(Event.SubprogramMissing.class))
        .extracting(Event.SubprogramMissing::name)
        .containsExactly("O1", "O3");
  }

  @Test
  void drawsOnNoMoreFilesThanItsCap() throws IOException {
    List<String> lines = new ArrayList<>();
    for (int i = 1; i <= ProgramFiles.FILES_CAP + 1; i++) {
      lines.add("M98 P" + (i + 10_000) + " L1");
      write((i + 10_000) + ".nc", "M99");
    }
    ProgramFiles files = beside(write("main.nc", lines.toArray(String[]::new)));
    run(files, DEPTH, 10_000, false);
    assertThat(files.count()).isEqualTo(ProgramFiles.FILES_CAP);
    // The file of the main program is one of them.
    assertThat(events(Event.SubprogramEntered.class)).hasSize(ProgramFiles.FILES_CAP - 1);
    assertThat(events(Event.CapReached.class)).hasSize(2);
    assertThat(events(Event.CapReached.class).get(0))
        .isEqualTo(new Event.CapReached(line(1), "files of subprograms", ProgramFiles.FILES_CAP));
    assertThat(events(Event.SubprogramMissing.class)).hasSize(2);
  }

  @Test
  void saysThatAFileBesideCannotBeRead() throws IOException {
    Path main = write("main.nc", "M98 P12345 L1", "M30");
    Path locked = write("12345.nc", "M99");
    assumeThat(locked.toFile().setReadable(false) && !Files.isReadable(locked)).isTrue();
    run(beside(main));
    assertThat(events(Event.SubprogramMissing.class).get(0).lookedAt())
        .endsWith("12345.nc (cannot be read)");
  }

  @Test
  void knowsTheFileOfTheMainProgramByWhateverName() throws IOException {
    Path main = write("O0007.nc", "G1", "M98 P7", "M30");
    run(beside(main));
    assertThat(events)
        .containsExactly(
            new Event.SubprogramEndless(line(2), List.of(main.toString(), main.toString()), DEPTH));
  }

  @Test
  void saysThatAFileIsNotThere() {
    assertThatThrownBy(() -> beside(folder.resolve("nothing.nc")))
        .isInstanceOf(NoSuchFileException.class);
  }

  @Test
  void reportsOtherCallsOfALargeSubprogram() throws IOException {
    List<String> lines = new ArrayList<>(List.of("M98 P20 L3", "M30", "O20"));
    for (int i = 0; i < 10_000; i++) {
      lines.add("G1 X" + i);
    }
    lines.add("M99");
    assertThat(run(alone(lines.toArray(String[]::new)), DEPTH, 1_000_000, false))
        .hasSize(2 + 3 * 10_002);
  }
}

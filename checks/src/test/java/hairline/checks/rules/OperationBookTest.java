package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.motion.Axis;
import hairline.checks.motion.Extent;
import hairline.checks.rules.OperationBook.Happening;
import hairline.checks.rules.OperationBook.Happens;
import hairline.checks.rules.OperationBook.Operation;
import hairline.checks.rules.OperationBook.Reach;
import hairline.checks.setup.Setup;
import hairline.checks.setup.SheetException;
import hairline.checks.setup.SheetReader;
import hairline.parser.PartPrograms;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;

/** What a setter reads off two operations, held against their words. */
class OperationBookTest {
  private static final long UM = 1_000_000;
  private static final long MM = 1000 * UM;
  private static final String SHEET =
      """
      machine:
        resolution: 0.1 um
        codes: {warm_up: [M71], measure_tool: [M72]}
      tools:
        - {number: 3, shape: flat, diameter: 0.4 mm, flutes: 2, length: 40 mm, edge_radius: 1.5 um}
        - {number: 4, shape: flat, diameter: 1 mm, flutes: 2}
      material: {minimum_chip_ratio: 0.3}
      stock: {x: [-2 mm, 2 mm], y: [-1 mm, 1 mm], top: 0 mm, bottom: -1 mm}
      offsets: {G54: {X: -100 mm, Y: -50 mm, Z: -200 mm}}
      """;

  private static final String PROGRAM =
      """
      G21 G90 G17 G94
      G54
      T3 M6
      M71
      S30000 M3
      M72
      M8
      G0 G43 H3 X-3. Y0. Z1.
      Z-0.02
      G1 X3. F100.
      Z-0.024
      X-3. F50.
      Z-0.0265
      X3. F80.
      G0 Z1.
      M9
      M0
      G49
      T4 M6
      S12000 M3
      G0 X-3. Y0.5 Z2.
      Z-0.1
      G1 X3. F300.
      G0 Z3.
      M5
      M30
      """;

  private static OperationBook book(String program) throws IOException, SheetException {
    Setup sheet = new SheetReader().parse(SHEET, "sheet");
    OperationBook book = new OperationBook(sheet);
    ProgramCheck.of(Selection.ALL)
        .check(PartPrograms.of("book.nc", program.getBytes(StandardCharsets.UTF_8)), sheet, book);
    return book;
  }

  @Test
  void anOperationHasTheFiguresOfItsWords() throws Exception {
    OperationBook book = book(PROGRAM);
    assertThat(book.operations()).hasSize(2);
    Operation fine = book.operations().get(0);
    assertThat(fine.number()).isEqualTo(1);
    assertThat(fine.tool()).hasValue(3);
    assertThat(fine.first().line()).isEqualTo(8);
    assertThat(fine.last().line()).isEqualTo(15);
    assertThat(fine.rpm()).hasValue(30_000);
    // π d n: 0.4 mm at 30,000 rpm.
    assertThat(fine.surfaceSpeedMPerMin().orElseThrow())
        .isCloseTo(Math.PI * 0.4 * 30, within(1e-9));
    assertThat(fine.lowestFeedMmPerMin()).isEqualTo(50);
    assertThat(fine.highestFeedMmPerMin()).isEqualTo(100);
    assertThat(fine.contactMm()).as("three passes of 6 mm").isCloseTo(18, within(0.01));
    assertThat(fine.finestStepPm()).hasValue(2_500_000);
    assertThat(fine.finestWrittenPm()).hasValue(2_500_000);
    assertThat(fine.deepestPm()).hasValue(20 * UM);
    assertThat(fine.lowestZPm()).hasValue(-26_500_000);
    assertThat(fine.levels().keySet())
        .as("from above")
        .containsExactly(-20 * UM, -24 * UM, -26_500_000L);
    assertThat(Objects.requireNonNull(fine.levels().get(-24 * UM)).line()).isEqualTo(12);
    assertThat(fine.heights())
        .contains(OptionalLong.of(-20 * UM), OptionalLong.of(-24 * UM))
        .last()
        .isEqualTo(OptionalLong.of(-26_500_000));
    assertThat(fine.coolants()).containsExactly("flood");
    assertThat(fine.lengthOffsets()).containsExactly("H3");
    assertThat(fine.cuts()).isTrue();
    Operation rough = book.operations().get(1);
    assertThat(rough.tool()).hasValue(4);
    assertThat(rough.rpm()).hasValue(12_000);
    assertThat(rough.coolants()).containsExactly("off");
    assertThat(rough.lengthOffsets()).containsExactly("none");
    assertThat(rough.deepestPm()).hasValue(100 * UM);
    assertThat(rough.lowestFeedMmPerMin()).isEqualTo(300);
    assertThat(book.left()).isZero();
  }

  /** In a full slot the largest chip is the feed per tooth: F / (n z). */
  @Test
  void theThinnestChipIsThatOfTheSlowestPass() throws Exception {
    OperationBook.Chip chip = book(PROGRAM).operations().get(0).chip().orElseThrow();
    assertThat(chip.at().line()).isEqualTo(12);
    assertThat(chip.chipUm().typical()).isCloseTo(50.0 / (30_000 * 2) * 1000, within(1e-3));
    assertThat(chip.minimumUm().orElseThrow().typical()).isCloseTo(0.3 * 1.5, within(1e-12));
    assertThat(book(PROGRAM).operations().get(1).chip().orElseThrow().minimumUm())
        .as("no edge radius on the sheet")
        .isEmpty();
  }

  private static String text(Happening happening) {
    return happening.at().line() + " " + happening.what().words() + " " + happening.code();
  }

  @Test
  void whatHappensBesideMovesStandsInItsOrder() throws Exception {
    List<Happening> all = book(PROGRAM).happenings();
    assertThat(all)
        .extracting(OperationBookTest::text)
        .containsExactly(
            "3 tool change T3",
            "4 warm-up M71",
            "5 spindle ",
            "6 measuring M72",
            "7 coolant flood",
            "16 coolant off",
            "17 stop M0",
            "19 spindle stops", // A change of tools stops it: common practice, no source.
            "19 tool change T4",
            "20 spindle ",
            "25 spindle stops");
    assertThat(book("G21 G90\nM7\nM8\nM9\nM30\n").happenings())
        .filteredOn(h -> h.what() == Happens.COOLANT)
        .extracting(Happening::code)
        .containsExactly("mist", "mist, flood", "off");
  }

  /** With G43 the spindle nose stands a tool's length above its tip. */
  @Test
  void movesReachAsFarOnTheMachineAsOffsetAndToolLengthPutThem() throws Exception {
    List<Reach> all = book(PROGRAM).reaches();
    assertThat(all).extracting(Reach::offset).containsOnly("G54");
    Reach feed = all.stream().filter(r -> !r.rapid()).findFirst().orElseThrow();
    assertThat(feed.work().get(Axis.X)).isEqualTo(new Extent(-3 * MM, 3 * MM));
    assertThat(feed.work().get(Axis.Z)).isEqualTo(new Extent(-100 * UM, -20 * UM));
    assertThat(feed.machine().get(Axis.X)).isEqualTo(new Extent(-103 * MM, -97 * MM));
    assertThat(feed.machine().get(Axis.Y)).isEqualTo(new Extent(-50 * MM, -49_500 * UM));
    // The second tool without a length offset lowers the machine's Z by 40 mm.
    assertThat(feed.machine().get(Axis.Z))
        .isEqualTo(new Extent(-200 * MM - 100 * UM, -160 * MM - 20 * UM));
    Reach rapid = all.stream().filter(Reach::rapid).findFirst().orElseThrow();
    assertThat(Objects.requireNonNull(rapid.work().get(Axis.Z)).highest()).isEqualTo(3 * MM);
    assertThat(Objects.requireNonNull(rapid.machine().get(Axis.Z)).highest()).isEqualTo(-159 * MM);
    // A tool whose length the sheet lacks: how high the machine stands is not known.
    Reach unknown =
        book(PROGRAM.replace("G49\n", "").replace("S12000 M3", "S12000 M3 G43 H4"))
            .reaches()
            .stream()
            .filter(r -> !r.rapid())
            .findFirst()
            .orElseThrow();
    assertThat(unknown.machine()).containsOnlyKeys(Axis.X, Axis.Y);
    assertThat(unknown.work()).containsOnlyKeys(Axis.X, Axis.Y, Axis.Z);
    // Nor is it without the offset.
    assertThat(book(PROGRAM.replace("G54", "G55")).reaches())
        .allMatch(r -> r.offset().equals("G55") && r.machine().equals(Map.of()));
  }

  /** A column for each move up to 512, then for each two. */
  @Test
  void heightsOfManyMovesAreKeptByTheirLowest() throws Exception {
    StringBuilder text =
        new StringBuilder(
            "G21 G90 G17 G94 G54\nT3 M6\nS30000 M3\nG0 X-1. Y0. Z1.\nG1 Z-0.01 F9.\n");
    // 1200 short moves, each a last digit lower than the one before.
    for (int k = 1; k <= 1200; k++) {
      text.append("X")
          .append(-1 + k / 1000.0)
          .append(" Z-")
          .append(String.format(java.util.Locale.ROOT, "%.4f", 0.01 + k / 10_000.0))
          .append('\n');
    }
    Operation many = book(text + "G0 Z1.\nM30\n").operations().get(0);
    assertThat(many.heights()).hasSizeBetween(256, 512);
    assertThat(many.heights().stream().map(OptionalLong::orElseThrow).toList())
        .isSortedAccordingTo((a, b) -> Long.compare(b, a));
    assertThat(many.heights()).last().isEqualTo(OptionalLong.of(-130 * UM));
    assertThat(many.levels()).isEmpty();
  }
}

package hairline.checks.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.entry;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.compare.Change.Kind;
import hairline.checks.finding.ProgramResult;
import hairline.checks.motion.Event;
import hairline.checks.motion.Interpreter;
import hairline.checks.motion.Place;
import hairline.checks.motion.ProgramFiles;
import hairline.checks.motion.SheetControl;
import hairline.checks.rules.ProgramCheck;
import hairline.checks.rules.Selection;
import hairline.checks.setup.Setup;
import hairline.checks.setup.SheetException;
import hairline.checks.setup.SheetReader;
import hairline.parser.PartProgram;
import hairline.parser.PartPrograms;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * Three lanes side by side, cut 2, 4 and 6 µm deep: which levels and steps another program has
 * otherwise. All figures are differences of the words for Z.
 */
class LevelsComparedTest {
  private static final String SHEET =
      """
      machine: {resolution: 0.1 um, control: {start: {units: mm}}}
      tools:
        - {number: 3, shape: flat, diameter: 0.4 mm, flutes: 2}
        - {number: 4, shape: flat, diameter: 0.4 mm, flutes: 2}
      stock: {x: [-1 mm, 1 mm], y: [-1 mm, 1 mm], top: 0 mm, bottom: -1 mm}
      """;

  private static final String BEGIN =
      "G21 G90 G17 G94 G54\nT3 M6\nG43 H3\nS30000 M3\nG0 X-2. Z1.\n";
  private static final String END = "M5\nM30\n";

  /** A lane from the left, five lines. */
  private static String lane(String y, String z) {
    return "G0 X-2. Y" + y + "\nG1 Z" + z + " F100.\nX2.\nG0 Z1.\n";
  }

  private static final String FIRST = lane("-0.4", "-0.002");
  private static final String SECOND = lane("0.", "-0.004");
  private static final String THIRD = lane("0.4", "-0.006");
  private static final String LANES = BEGIN + FIRST + SECOND + THIRD + END;

  private static PartProgram program(String text) {
    return PartPrograms.of("lanes.nc", text.getBytes(StandardCharsets.UTF_8));
  }

  private static MotionComparison.Program motion(String text, Setup sheet, boolean deleteOn) {
    return sink ->
        new Interpreter(SheetControl.of(sheet), ProgramFiles.alone(program(text), e -> {}))
            .run(
                event -> {
                  if (!(event instanceof Event.BlockProblem)) {
                    sink.accept(event);
                  }
                },
                deleteOn);
  }

  private static Comparison compare(String before, String after) throws Exception {
    return compare(before, after, SHEET, SHEET);
  }

  private static Comparison compare(
      String before, String after, String sheetBefore, String sheetAfter)
      throws IOException, SheetException {
    Setup was = new SheetReader().parse(sheetBefore, "sheet");
    Setup is = new SheetReader().parse(sheetAfter, "sheet");
    LevelWatcher levelsBefore = new LevelWatcher();
    LevelWatcher levelsAfter = new LevelWatcher();
    ProgramResult resultBefore =
        ProgramCheck.of(Selection.ALL).check(program(before), was, levelsBefore);
    ProgramResult resultAfter =
        ProgramCheck.of(Selection.ALL).check(program(after), is, levelsAfter);
    Set<Place> asked = levelsBefore.placesOfLevels();
    MotionComparison off =
        MotionComparison.of(motion(before, was, false), motion(after, is, false), 100_000, asked);
    Optional<MotionComparison> on =
        resultBefore.deletable() || resultAfter.deletable()
            ? Optional.of(
                MotionComparison.of(
                    motion(before, was, true), motion(after, is, true), 100_000, Set.of()))
            : Optional.empty();
    return Comparison.of(
        resultBefore, resultAfter, SheetDifference.of(was, is), off, on, levelsBefore, levelsAfter);
  }

  private static String place(Optional<Place> at) {
    return at.map(place -> place.line() + ":" + place.span().column()).orElse("-");
  }

  /** "kind before → after xcount, line:column → line:column". */
  private static List<String> told(Comparison comparison, Kind kind) {
    return comparison.changes().stream()
        .filter(change -> change.kind() == kind)
        .map(
            change ->
                change.before()
                    + " → "
                    + change.after()
                    + (change.count() == 1 ? "" : " x" + change.count())
                    + ", "
                    + place(change.first().before())
                    + " → "
                    + place(change.first().after())
                    + ", operation "
                    + change.operationBefore()
                    + " → "
                    + change.operationAfter()
                    + (change.blockDelete().isEmpty() ? "" : ", switch " + change.blockDelete()))
        .toList();
  }

  @Test
  void aLaneThatIsCutDeeperIsAnotherLevelAndTwoOtherSteps() throws Exception {
    Comparison deeper = compare(LANES, LANES.replace("-0.004", "-0.0045"));
    assertThat(told(deeper, Kind.LEVEL))
        .containsExactly("-4 µm → -4.5 µm, 11:4 → 11:4, operation 1 → 1");
    assertThat(told(deeper, Kind.STEP))
        .containsExactly(
            "2 µm → 2.5 µm, 11:4 → 11:4, operation 1 → 1",
            "2 µm → 1.5 µm, 11:4 → 11:4, operation 1 → 1");
    assertThat(deeper.surfaces()).hasSize(1);
    assertThat(deeper.surfaces().get(0).largestPm()).isEqualTo(-500_000);
    assertThat(deeper.surfaces().get(0).differentMm2())
        .as("the lane over the width of the stock, to a cell on each side")
        .isCloseTo(0.4 * 2, within(0.02));
    assertThat(deeper.differ()).isTrue();
    assertThat(deeper.newFindings()).isFalse();
    assertThat(deeper.notCompared()).isEmpty();
    assertThat(deeper.times()).as("half a micron at 100 mm/min is 0.3 ms, up and down").isEmpty();
  }

  @Test
  void aStepIsPointedAtWhereTheLevelMoved() throws Exception {
    // The first lane is cut earlier than the one beside it, but it is the one that has moved.
    Comparison first = compare(LANES, LANES.replace("-0.002", "-0.003"));
    assertThat(told(first, Kind.STEP))
        .containsExactlyInAnyOrder(
            "2 µm → 3 µm, 7:4 → 7:4, operation 1 → 1", "2 µm → 1 µm, 7:4 → 7:4, operation 1 → 1");
    // Of two that have moved, the later one is named.
    Comparison two = compare(LANES, LANES.replace("-0.002", "-0.0015").replace("-0.004", "-0.005"));
    assertThat(told(two, Kind.STEP))
        .containsExactlyInAnyOrder(
            "2 µm → 1.5 µm, 7:4 → 7:4, operation 1 → 1",
            "2 µm → 3.5 µm, 11:4 → 11:4, operation 1 → 1",
            "2 µm → 1 µm, 11:4 → 11:4, operation 1 → 1");
  }

  @Test
  void aLaneThatIsGoneLeavesTheStepBehindItAndOneThatIsNewTakesIt() throws Exception {
    String two = BEGIN + FIRST + SECOND + END;
    Comparison gone = compare(LANES, two);
    assertThat(told(gone, Kind.LEVEL)).containsExactly("-6 µm → , 15:4 → -, operation 1 → 1");
    assertThat(told(gone, Kind.STEP))
        .containsExactlyInAnyOrder(
            "6 µm → , 15:4 → -, operation 1 → 1",
            "2 µm → , 15:4 → -, operation 1 → 1",
            " → 4 µm, - → 11:4, operation 1 → 1");
    Comparison added = compare(two, LANES);
    assertThat(told(added, Kind.LEVEL)).containsExactly(" → -6 µm, - → 15:4, operation 1 → 1");
    assertThat(told(added, Kind.STEP))
        .containsExactlyInAnyOrder(
            "4 µm → , 11:4 → -, operation 1 → 1",
            " → 6 µm, - → 15:4, operation 1 → 1",
            " → 2 µm, - → 15:4, operation 1 → 1");
    // 1.006 mm down to the lane and 4 mm along it, at 100 mm/min.
    assertThat(added.times()).hasSize(1);
    assertThat(added.times().get(0).afterSeconds() - added.times().get(0).beforeSeconds())
        .isCloseTo(5.006 / 100 * 60, within(1e-9));
  }

  @Test
  void aLevelUnderAnotherOffsetThanTheFirstNamesIt() throws Exception {
    String sheet = SHEET.replace("bottom: -1 mm", "bottom: -1 mm, offset: G55");
    String lanes = LANES.replace("G54", "G55");
    Comparison deeper = compare(lanes, lanes.replace("-0.004", "-0.0045"), sheet, sheet);
    assertThat(told(deeper, Kind.LEVEL))
        .containsExactly("-4 µm G55 → -4.5 µm G55, 11:4 → 11:4, operation 1 → 1");
  }

  @Test
  void anotherOrderOfTheLanesLeavesTheSameLevelsStepsAndSurface() throws Exception {
    Comparison order = compare(LANES, BEGIN + SECOND + FIRST + THIRD + END);
    assertThat(told(order, Kind.LEVEL)).isEmpty();
    assertThat(told(order, Kind.STEP)).isEmpty();
    assertThat(order.surfaces()).isEmpty();
    assertThat(order.differ()).as("the way differs").isTrue();
  }

  @Test
  void aLaneThatLiesElsewhereHasOtherStepsAndNoOtherLevel() throws Exception {
    // From Y-0.7 to Y-0.3, and the next one begins at Y-0.2: between them the top stands.
    Comparison moved = compare(LANES, LANES.replace("Y-0.4", "Y-0.5"));
    assertThat(told(moved, Kind.LEVEL)).isEmpty();
    assertThat(told(moved, Kind.STEP))
        .containsExactly(
            "2 µm → , 11:4 → -, operation 1 → 1", " → 4 µm, - → 11:4, operation 1 → 1");
  }

  @Test
  void anOperationThatAnswersNoneHasItsLevelsByItself() throws Exception {
    String more = BEGIN + FIRST + SECOND + THIRD + "S20000\n" + lane("0.8", "-0.008") + END;
    Comparison added = compare(LANES, more);
    assertThat(told(added, Kind.LEVEL)).containsExactly(" → -8 µm, - → 20:4, operation 0 → 2");
    assertThat(told(added, Kind.STEP))
        .containsExactlyInAnyOrder(
            "6 µm → , 15:4 → -, operation 1 → 1", " → 2 µm, - → 20:4, operation 0 → 2");
    assertThat(added.newFindings()).as("an operation of which half is in air").isTrue();
    Comparison gone = compare(more, LANES);
    assertThat(told(gone, Kind.LEVEL)).hasSize(1).first().asString().startsWith("-8 µm → , 20:4");
    assertThat(gone.newFindings()).isFalse();
  }

  @Test
  void anOperationIsCalledByItsToolAndSpeed() throws Exception {
    String two = BEGIN + FIRST + "T4 M6\nG0 X-3. Y-3. Z2.\n" + END;
    Comparison comparison = compare(LANES, two);
    assertThat(comparison.titlesBefore()).containsExactly(entry(1, "tool 3 at 30000 rpm"));
    assertThat(comparison.titles())
        .containsExactly(entry(1, "tool 3 at 30000 rpm"), entry(2, "tool 4"));
    assertThat(compare(LANES, "G21 G90\nG0 X1.\nM30\n").titles())
        .containsExactly(entry(1, "no known tool"));
  }

  @Test
  void theLevelsOfABlockThatIsRunAgainAnswerInTheirOrder() throws Exception {
    String deeperEachTime =
        BEGIN
            + "G0 Z0.\nM98 P2000 L3\n"
            + END
            + "O2000\nG0 X-2. Y0.\nG91 G1 Z-0.002 F100.\nG90 X2.\nG91 G0 Z0.001\nZ-0.001\nG90\n"
            + "M99\n";
    Comparison deeper = compare(deeperEachTime, deeperEachTime.replace("-0.002", "-0.0025"));
    assertThat(told(deeper, Kind.LEVEL))
        .containsExactly(
            "-2 µm → -2.5 µm, 12:8 → 12:8, operation 1 → 1",
            "-4 µm → -5 µm, 12:8 → 12:8, operation 1 → 1",
            "-6 µm → -7.5 µm, 12:8 → 12:8, operation 1 → 1");
    assertThat(told(deeper, Kind.STEP))
        .containsExactly("6 µm → 7.5 µm, 12:8 → 12:8, operation 1 → 1");
  }

  @Test
  void whatHoldsWithTheSwitchOnAloneIsSaidSo() throws Exception {
    // Without its way down the third lane runs above the part.
    Comparison slashed = compare(LANES, LANES.replace("G1 Z-0.006", "/G1 Z-0.006"));
    assertThat(slashed.changes()).isNotEmpty().allMatch(c -> c.blockDelete().equals("on"));
    assertThat(slashed.notCompared())
        .containsExactly("levels, steps and the surface left with the block delete switch on");
    String slash = LANES.replace("G1 Z-0.006", "/G1 Z-0.006");
    Comparison both = compare(slash, slash.replace("-0.004", "-0.0045"));
    assertThat(told(both, Kind.PATH)).hasSize(1).first().asString().doesNotContain("switch");
    Comparison off = compare(slash, slash.replace("-0.006", "-0.0065"));
    assertThat(told(off, Kind.PATH)).hasSize(1).first().asString().endsWith("switch off");
  }

  @Test
  void aProgramDiffersInNothingFromItselfNorFromItsMovesInPieces() throws Exception {
    for (String same : List.of(LANES, LANES.replace("\nX2.\n", "\nX0.3\nX2.\n"))) {
      Comparison none = compare(LANES, same);
      assertThat(none.changes()).isEmpty();
      assertThat(none.differ()).isFalse();
      assertThat(none.times()).isEmpty();
      assertThat(none.surfaces()).isEmpty();
      assertThat(none.newFindings()).isFalse();
    }
  }

  /** The point between, to a whole increment, lies 0.03 µm beside the oblique way. */
  @Test
  void aPointThatRoundingPutBesideTheWayIsNoOtherSurface() throws Exception {
    String oblique = BEGIN + "G0 X-0.9 Y0.\nG1 Z-0.002 F100.\nX0.9 Y0.3\nG0 Z1.\n" + END;
    String pieces = oblique.replace("X0.9 Y0.3", "X0.05 Y0.1583\nX0.9 Y0.3");
    Comparison none = compare(oblique, pieces);
    assertThat(none.changes()).isEmpty();
    assertThat(none.surfaces()).isEmpty();
    assertThat(none.differ()).isFalse();
    // Nor where it is cut at another feed.
    Comparison slower = compare(oblique, pieces.replace("F100.", "F50."));
    assertThat(slower.changes()).extracting(Change::kind).contains(Kind.FEED);
    assertThat(slower.surfaces()).isEmpty();
    assertThat(slower.differ()).isTrue();
    // A way that lies elsewhere is told with all that it leaves.
    Comparison elsewhere = compare(oblique, pieces.replace("Y0.1583", "Y0.1593"));
    assertThat(elsewhere.changes()).extracting(Change::kind).contains(Kind.PATH);
    assertThat(elsewhere.surfaces()).hasSize(1);
  }

  @Test
  void whatIsFoundOftenerBecauseMovesWereDividedIsNotWorse() throws Exception {
    String standing = LANES.replace("S30000 M3\n", "");
    String divided = standing.replace("\nX2.\n", "\nX0.3\nX2.\n");
    Comparison same = compare(standing, divided);
    assertThat(same.before().findings())
        .extracting(f -> f.rule())
        .contains("spindle-stopped-in-cut");
    assertThat(same.newFindings()).isFalse();
    // The same where anything else of that operation differs.
    assertThat(compare(standing, divided.replace("F100.", "F90.")).newFindings()).isTrue();
    // Or under another sheet.
    String sheet = SHEET.replace("number: 4, shape: flat,", "number: 4, shape: ball,");
    assertThat(compare(standing, divided, SHEET, sheet).newFindings()).isTrue();
  }

  @Test
  void whereSheetsDifferFindingsAreHeldAgainstEachOtherAllTheSame() throws Exception {
    Comparison sheets =
        compare(
            LANES, LANES, SHEET, SHEET.replace("number: 3,", "number: 3, cutting_length: 1 um,"));
    assertThat(sheets.sheets())
        .extracting(d -> d.key() + " " + d.before().orElse("-") + " " + d.after().orElse("-"))
        .containsExactly("tools.3.cutting_length - 1 um");
    assertThat(sheets.changes()).isEmpty();
    assertThat(sheets.differ()).isFalse();
    assertThat(sheets.findings().added())
        .extracting(f -> f.rule())
        .contains("depth-beyond-cutting-length");
    assertThat(sheets.newFindings()).isTrue();
  }
}

package hairline.checks.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.compare.Change.Kind;
import hairline.checks.motion.Event;
import hairline.checks.motion.Interpreter;
import hairline.checks.motion.Place;
import hairline.checks.motion.ProgramFiles;
import hairline.checks.motion.SheetControl;
import hairline.checks.setup.Setup;
import hairline.checks.setup.SheetReader;
import hairline.parser.PartPrograms;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** One block changed: what is told of it, by how much, and at which word. */
class ChangesTest {
  private static final String BEGIN =
      """
      G21 G90 G17 G94 G54 G91.1 G40 G64
      T1 M6
      S1000 M3
      G0 G43 H1 X0. Y0. Z0.
      """;
  private static final String END = "G0 X90. Y90. Z90.\nM30\n";

  private static MotionComparison.Program run(String text) {
    return sink -> {
      Setup sheet;
      try {
        sheet =
            new SheetReader()
                .parse(
                    """
                    machine:
                      resolution: 0.1 um
                      control: {dwell: {P: s, X: s}}
                      codes: {warm_up: [M71], measure_tool: [M72], coolant_on: [M70, M75], ignore: [M90]}
                    """,
                    "sheet");
      } catch (hairline.checks.setup.SheetException e) {
        throw new IOException(e);
      }
      ProgramFiles files =
          ProgramFiles.alone(
              PartPrograms.of("a.nc", text.getBytes(StandardCharsets.UTF_8)), e -> {});
      new Interpreter(SheetControl.of(sheet), files)
          .run(
              event -> {
                if (!(event instanceof Event.BlockProblem)) {
                  sink.accept(event);
                }
              },
              false);
    };
  }

  private static List<Change> changes(String before, String after) throws IOException {
    return MotionComparison.of(run(BEGIN + before + "\n" + END), run(BEGIN + after + "\n" + END))
        .changes();
  }

  private static Change only(String before, String after, Kind kind) throws IOException {
    List<Change> changes = changes(before, after);
    assertThat(changes).extracting(Change::kind).contains(kind);
    return changes.stream().filter(c -> c.kind() == kind).findFirst().orElseThrow();
  }

  /** Where paths are apart: how far at most, and the column of the word that does it. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // before | after | mm | column after
        "G1 X3. F9. | G1 X3.5 F9. | 0.5 | 4",
        "G1 X3. Y4. F9. | G1 X3. Y4.0005 F9. | 0.0005 | 8",
        "G1 X3. Y4. F9. | G1 X6. Y8. F9. | 5 | 8",
        "G1 X3. Z-1. F9. | G1 X3. Z-2. F9. | 1 | 8",
        "G1 X3. A10. F9. | G1 X3. A12.5 F9. | 2.5 | 8",
        // The other way round a half circle of 5 mm: the tops are a diameter apart.
        "G2 X10. I5. J0. F9. | G3 X10. I5. J0. F9. | 10 | 9",
        // The arc of a quarter over its chord: r (1 - cos 45°).
        "G2 X5. Y5. I5. J0. F9. | G1 X5. Y5. F9. | 1.4644660940672622 | 1",
        "G1 X5. Y5. F9. | G2 X5. Y5. I5. J0. F9. | 1.4644660940672622 | 1",
        // A half circle over its chord, and a whole one over its point.
        "G1 X10. F9. | G2 X10. I5. J0. F9. | 5 | 1",
        // Circles of other radii: the figure is a bound.
        "G2 X6. I3. J4. F9. | G2 X6. I3. J0. F9. | 0 | 12",
        "G2 X6. R3.1 F9. | G2 X6. R3.2 F9. | 0 | 8",
      })
  void pathsAreApart(String before, String after, double mm, int column) throws IOException {
    Change path = only(before, after, Kind.PATH);
    if (mm == 0) {
      assertThat(path.farMm()).as("no less than centres are, nor a diameter").isBetween(0.1, 9.9);
    } else {
      assertThat(path.farMm()).isCloseTo(mm, within(1e-9));
    }
    Place at = path.largest().orElseThrow().after().orElseThrow();
    assertThat(at.line()).isEqualTo(5);
    assertThat(at.span().column()).isEqualTo(column);
    Change back = only(after, before, Kind.PATH);
    assertThat(back.farMm()).isEqualTo(path.farMm());
  }

  /** What is told of a changed block, and at which column of it. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "G1 X3. F9. | G1 X3. F9.5 | FEED | 9 mm/min | 9.5 mm/min | 8",
        "G1 X3. F9. | G0 X3. | MOTION | straight at feed | rapid | 1",
        "G2 X10. I5. J0. F9. | G3 X10. I5. J0. F9. | MOTION | arc clockwise"
            + " | arc counter-clockwise | 1",
        "G1 X3. F9. | G1 G9 X3. F9. | PATH_MODE | no exact stop | exact stop | 1",
        "S2000 M3 | S2000 M4 | SPEED | 2000 rpm | counter-clockwise 2000 rpm | 1",
        "S2000 M3 | S2500 M3 | SPEED | 2000 rpm | 2500 rpm | 1",
        "S2000 M3 | M5 | SPEED | 2000 rpm | stopped | 1",
        "M7 | M8 | COOLANT | mist | flood | 1",
        "T2 M6 | T3 M6 | TOOL | T2 | T3 | 1",
        "G1 G43 H2 X3. F9. | G1 G43 H3 X3. F9. | LENGTH_OFFSET | H2 | H3 | 8",
        "G43 H2 | G49 | LENGTH_OFFSET | H2 | none | 1",
        "G1 G41 D1 X3. F9. | G1 G42 D1 X3. F9. | COMPENSATION | left, D1 | right, D1 | 8",
        // Told at the next thing that is done in that state.
        "G41 D1 | G41 D2 | COMPENSATION | left, D1 | left, D2 | 1",
        "G41 D1 | G40 | COMPENSATION | left, D1 | off | 1",
        "G55 | G56 | OFFSET | G55 | G56 | 1",
        "G61 | G64 | PATH_MODE | exact path | continuous | 1",
        "G4 P1. | G4 P2.5 | DWELL | 1 s | 2.5 s | 1",
        "M0 | M1 | STOP | M0 | M1 | 1",
        "M0 | (none) | STOP | M0 | '' | 1",
        "M71 | (none) | WARM_UP | M71 | '' | 1",
        "(none) | M72 | MEASURING | '' | M72 | 1",
        "G92 X0. | G92 X1. | SHIFT | G92 X0 | G92 X1 | 1",
        "M71 P1 | M71 P2 | WARM_UP | M71 P1 | M71 P2 | 1",
        // What is not followed: the words are held against each other.
        "G187 P1 | G187 P2 | NOT_UNDERSTOOD | G187 P1 | G187 P2 | 1",
        "M98 P5000 | M98 P6000 | NOT_UNDERSTOOD | call of O5000 P5000 | call of O6000 P6000 | 1",
        "G2 X10. R1. F9. | G2 X10. R2. F9. | NOT_UNDERSTOOD | F9 G2 R1 X10 | F9 G2 R2 X10 | 1",
        "G0 G1 X3. F9. | G1 G2 X3. F9. | NOT_UNDERSTOOD | G0 with G1 | G1 with G2 | 4",
        "IF [#1 GT 2] GOTO 5 | IF [#1 GT 3] GOTO 5 | NOT_UNDERSTOOD | IF[#1GT2]GOTO5"
            + " | IF[#1GT3]GOTO5 | 1",
        "M70 | M75 | CODE | M70 | M75 | 1",
        "(none) | M8 | COOLANT | '' | coolant flood | 1",
        "M7 M8 | M8 | COOLANT | mist and flood | flood | 1",
        "G18 | G19 | STATE_AT_END | '' | '' | 1",
      })
  void whatIsOtherwiseIsNamed(
      String before, String after, Kind kind, String was, String is, int column)
      throws IOException {
    Change change = only(before, after, kind);
    if (kind == Kind.STATE_AT_END) {
      assertThat(change.before()).contains("plane ZX");
      assertThat(change.after()).contains("plane YZ");
      return;
    }
    assertThat(change.before()).isEqualTo(was);
    assertThat(change.after()).isEqualTo(is);
    Place at = change.first().after().or(change.first()::before).orElseThrow();
    assertThat(at.span().column()).isEqualTo(column);
    Change back = only(after, before, kind);
    assertThat(back.before()).isEqualTo(is);
    assertThat(back.after()).isEqualTo(was);
  }

  @Test
  void movesThatAreGoneAreAddedUp() throws IOException {
    Change gone = only("G1 X3. F9.\nG1 X3. Y4. F9.\nG1 X3. Y4. Z2. F9.", "M0", Kind.MOVES);
    assertThat(gone.before()).isEqualTo("feed moves");
    assertThat(gone.after()).isEmpty();
    assertThat(gone.count()).isEqualTo(3);
    assertThat(gone.farMm()).isCloseTo(3 + 4 + 2, within(1e-9));
    assertThat(gone.first().before().orElseThrow().line()).isEqualTo(5);
    assertThat(gone.first().after()).isEmpty();
    Change added = only("M0", "G0 X3.\nG0 X5.", Kind.MOVES);
    assertThat(added.after()).isEqualTo("rapid moves");
    assertThat(added.farMm()).isCloseTo(5, within(1e-9));
    assertThat(added.operationBefore()).isEqualTo(added.operationAfter());
  }

  @Test
  void alikeChangesAreOneAndTheLargestIsPointedAt() throws IOException {
    Change path =
        only(
            "G1 X1. F9.\nG1 X2.\nG1 X3.\nG1 X4.",
            "G1 X1. F9.\nG1 X2. Y0.1\nG1 X3. Y0.3\nG1 X4. Y0.",
            Kind.PATH);
    assertThat(path.count()).as("two ends, and the begin of the last").isEqualTo(3);
    assertThat(path.farMm()).isCloseTo(0.3, within(1e-12));
    assertThat(path.first().after().orElseThrow().line()).isEqualTo(6);
    assertThat(path.largest().orElseThrow().after().orElseThrow().line()).isEqualTo(7);
    assertThat(path.before()).isEqualTo("X3 Y0 Z0");
    assertThat(path.after()).isEqualTo("X3 Y0.3 Z0");
  }

  /** Blanks, comments and sequence numbers of a line that is not read do nothing. */
  @Test
  void aLineThatIsNotReadIsHeldAgainstTheOtherByItsSigns() throws IOException {
    assertThat(changes("IF [#1 GT 2] GOTO 5", "N7 if[#1 GT 2]  GOTO 5 (back)")).isEmpty();
    assertThat(changes("IF [#1 GT 2] GOTO 5", "/IF [#1 GT 2] GOTO 5")).isNotEmpty();
  }

  @Test
  void namesAreWordsForPeople() {
    assertThat(Kind.LENGTH_OFFSET.words()).isEqualTo("length offset");
    assertThat(Kind.FEED.words()).isEqualTo("feed");
  }
}

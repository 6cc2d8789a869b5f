package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.finding.Finding;
import hairline.checks.finding.ProgramResult;
import hairline.checks.setup.SheetException;
import hairline.checks.setup.SheetReader;
import hairline.parser.PartPrograms;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;

/**
 * What a feature declares against the terraces left in it: five lanes side by side, each as wide as
 * the tool, cut to depths whose differences are done in the head.
 */
class StepDiffersTest {
  /** A depth that is not cut. */
  private static final double TOP = 0;

  private static ProgramResult lanes(String declared, double... depthsUm) {
    StringBuilder program =
        new StringBuilder("%\nO1\nG21 G90 G17 G94\nG54\nT3 M6\nG43 H3\nS30000 M3\n");
    for (int lane = 0; lane < depthsUm.length; lane++) {
      if (depthsUm[lane] != TOP) {
        program.append("G0 X-3. Y").append((lane - 2) * 4 / 10.0).append(" Z1.\n");
        program.append("Z").append(depthsUm[lane] / 1000).append("\nG1 X3. F100.\nG0 Z1.\n");
      }
    }
    return check(declared, program + "M5\nM30\n%\n");
  }

  private static ProgramResult check(String declared, String program) {
    return check(declared, program, OptionalLong.empty());
  }

  private static ProgramResult check(String declared, String program, OptionalLong cellPm) {
    String sheet =
        "machine: {resolution: 0.1 um}\n"
            + "tools:\n  - {number: 3, shape: flat, diameter: 0.4 mm, flutes: 2}\n"
            + "stock: {x: [-2 mm, 2 mm], y: [-1 mm, 1 mm], top: 0 mm, bottom: -1 mm}\n"
            + "job:\n  features:\n    - {name: stairs, x: [-2 mm, 2 mm], y: [-1 mm, 1 mm], "
            + declared
            + "}\n";
    try {
      return ProgramCheck.of(Selection.ALL)
          .withCell(cellPm)
          .check(
              PartPrograms.of("lanes.nc", program.getBytes(StandardCharsets.UTF_8)),
              new SheetReader().parse(sheet, "setup.yaml"));
    } catch (IOException | SheetException e) {
      throw new AssertionError(e.getMessage(), e);
    }
  }

  private static List<String> messages(ProgramResult result) {
    return result.findings().stream()
        .filter(f -> f.rule().equals("step-differs"))
        .map(f -> f.first().message())
        .toList();
  }

  private static void assertSilent(ProgramResult result) {
    assertThat(messages(result)).isEmpty();
    assertThat(notChecked(result)).isEmpty();
  }

  private static List<String> notChecked(ProgramResult result) {
    return result.notChecked().stream()
        .filter(n -> n.rule().equals("step-differs"))
        .map(n -> n.reason())
        .toList();
  }

  private static final String STEP = "step: 4 um, tolerance: ±0.5 um";
  private static final String LEVELS = "levels: [-4 um, -8 um], tolerance: ±0.5 um";

  @Test
  void evenStairsAreAsDeclared() {
    assertSilent(lanes(STEP, TOP, -4, -8, -12, -16));
    assertSilent(lanes(STEP, -16, -8, TOP, -4, -12));
    assertSilent(lanes(LEVELS, TOP, -4, -8, TOP, -4));
  }

  @Test
  void theToleranceItselfIsAllowed() {
    assertSilent(lanes(STEP, TOP, -4.5, -8.5, -12.5, -17));
    assertSilent(lanes(STEP, TOP, -3.5, -7.5, -11.5, -15));
    assertThat(messages(lanes(STEP, TOP, -4.6, -8.6, -12.6, -16.6)))
        .containsExactly(
            "step of stairs from 0 µm to -4.6 µm is 4.6 µm, declared 4 µm ±0.5 µm: off by 0.6 µm");
    assertSilent(lanes(LEVELS, TOP, -4.5, -7.5, TOP, TOP));
  }

  @Test
  void aToleranceMayLieToOneSide() {
    String deeper = "step: 4 um, tolerance: [0 um, 1 um]";
    assertSilent(lanes(deeper, TOP, -5, -9, -13, -17));
    assertThat(messages(lanes(deeper, TOP, -3.9, -8, -12, -16)))
        .singleElement()
        .asString()
        .contains("is 3.9 µm", "off by");
  }

  @Test
  void aTerraceBetweenTwoThatFitIsExtra() {
    ProgramResult result = lanes(STEP, TOP, -4, -6, -8, -12);
    assertThat(messages(result))
        .containsExactly(
            "step of stairs from -4 µm to -6 µm is 2 µm, declared 4 µm ±0.5 µm;"
                + " the terrace at -6 µm is extra");
  }

  @Test
  void stepsThatFitTogetherLackTerraces() {
    assertThat(messages(lanes(STEP, TOP, -4, -12, -16, -20)))
        .singleElement()
        .asString()
        .endsWith("is 8 µm, declared 4 µm ±0.5 µm; 1 missing between");
    assertThat(messages(lanes(STEP, TOP, -4, -16, -20, -24)))
        .singleElement()
        .asString()
        .endsWith("; 2 missing between");
  }

  @Test
  void aStepThatFitsNothingIsOff() {
    ProgramResult result = lanes(STEP, TOP, -4, -10, -14, -18);
    assertThat(messages(result))
        .singleElement()
        .asString()
        .endsWith("is 6 µm, declared 4 µm ±0.5 µm: off by 2 µm");
    Finding finding =
        result.findings().stream()
            .filter(f -> f.rule().equals("step-differs"))
            .findFirst()
            .orElseThrow();
    assertThat(Programs.figure(finding, "step")).isCloseTo(6, within(1e-9));
    assertThat(Programs.figure(finding, "declared")).isCloseTo(4, within(1e-9));
    assertThat(Programs.figure(finding, "off")).isCloseTo(2, within(1e-9));
    assertThat(finding.at().line()).as("the terrace that is off").isEqualTo(14);
    assertThat(finding.first().facts()).anyMatch(f -> f.endsWith("step and tolerance"));
  }

  @Test
  void stairsMaySinkIntoTheTopByMoreThanAStep() {
    assertSilent(lanes(STEP, TOP, -6, -10, -14, -18));
    assertThat(messages(lanes(STEP, TOP, -5.9, -9.9, -13.9, -17.9)))
        .singleElement()
        .asString()
        .contains("from 0 µm to -5.9 µm");
  }

  @Test
  void aLevelThatLiesElsewhereIsOffAndNotMissingToo() {
    assertThat(messages(lanes(LEVELS, TOP, -4, -8.6, TOP, TOP)))
        .containsExactly(
            "a terrace of stairs lies at -8.6 µm, declared -8 µm: off by 0.6 µm, tolerance ±0.5"
                + " µm");
  }

  @Test
  void aLevelBesidesTheDeclaredIsNotDeclared() {
    assertThat(messages(lanes(LEVELS, TOP, -4, -8, -12, TOP)))
        .containsExactly(
            "a terrace of stairs at -12 µm is not declared; the nearest declared is -8 µm");
    assertThat(messages(lanes(LEVELS, TOP, -2, -4, -8, TOP)))
        .containsExactly(
            "a terrace of stairs at -2 µm is not declared; the nearest declared is -4 µm");
  }

  @Test
  void whereTheTopIsMilledOffTheUppermostTerraceIsTheGround() {
    assertSilent(lanes(LEVELS, -2, -4, -8, -2, -4));
    assertThat(messages(lanes(LEVELS, -4, -6, -8, -4, -8)))
        .containsExactly(
            "a terrace of stairs at -6 µm is not declared; the nearest declared is -4 µm");
  }

  @Test
  void aDeclaredLevelThatNothingIsCutToIsMissing() {
    assertThat(
            messages(
                lanes("levels: [-4 um, -8 um, -12 um], tolerance: ±0.5 um", TOP, -4, -8, TOP, TOP)))
        .containsExactly(
            "no terrace of stairs lies at the declared -12 µm, tolerance ±0.5 µm;"
                + " the nearest lies at -8 µm");
    assertThat(
            messages(lanes("levels: [-1 um, -8 um], tolerance: ±0.5 um", TOP, -8, TOP, TOP, TOP)))
        .as("the nearest that is cut")
        .singleElement()
        .asString()
        .endsWith("the nearest lies at -8 µm");
  }

  @Test
  void nothingCutOrOneTerraceAloneTellsNothing() {
    assertThat(notChecked(lanes(STEP, TOP, TOP, TOP, TOP, TOP)))
        .containsExactly("nothing of the part is cut");
    String beside = STEP + "}\n    - {name: other, x: [3 mm, 4 mm], y: [3 mm, 4 mm], " + STEP;
    assertThat(notChecked(lanes(beside, TOP, -4, -8, -12, -16)))
        .anyMatch(reason -> reason.contains("other"));
    assertThat(notChecked(lanes(STEP, -4, -4, -4, -4, -4)))
        .containsExactly("no two terraces of stairs are found");
  }

  @Test
  void aPlaceWhereTheToolCameDownIsNoTerrace() {
    String spot = "G0 X0. Y0.8 Z1.\nG1 Z-0.009 F10.\nG0 Z1.\n";
    String head = "%\nO1\nG21 G90 G17 G94\nG54\nT3 M6\nG43 H3\nS30000 M3\n";
    String lane = "G0 X-3. Y0. Z1.\nZ-0.004\nG1 X3. F100.\nG0 Z1.\n";
    assertSilent(check(STEP, head + lane + spot + "M5\nM30\n%\n"));
    assertSilent(check("levels: [-4 um], tolerance: ±0.5 um", head + lane + spot + "M5\nM30\n%\n"));
    String longer = spot.replace("G0 Z1.\n", "X1. F100.\nG0 Z1.\n");
    assertThat(messages(check(STEP, head + lane + longer + "M5\nM30\n%\n"))).hasSize(1);
  }

  private static ProgramResult twoSlots(String declared, String onePath, String otherPath) {
    return twoSlots(declared, onePath, otherPath, OptionalLong.empty());
  }

  private static ProgramResult twoSlots(
      String declared, String onePath, String otherPath, OptionalLong cellPm) {
    String head = "%\nO1\nG21 G90 G17 G94\nG54\nT3 M6\nG43 H3\nS30000 M3\n";
    return check(declared, head + onePath + otherPath + "M5\nM30\n%\n", cellPm);
  }

  /** A slot along X, 0.4 mm wide. */
  private static String slot(double yMm, double zMm) {
    return "G0 X-3. Y" + yMm + " Z1.\nZ" + zMm + "\nG1 X3. F100.\nG0 Z1.\n";
  }

  private static List<String> strips(ProgramResult result) {
    return messages(result).stream().filter(m -> m.startsWith("a strip")).toList();
  }

  @Test
  void aStripNarrowerThanHalfTheToolBetweenTwoPassesIsTold() {
    ProgramResult result = twoSlots(LEVELS, slot(-0.2, -0.004), slot(0.3, -0.008));
    assertThat(strips(result))
        .containsExactly(
            "a strip of stairs 100 µm wide, half of the tool is 200 µm, is left at 0 µm between"
                + " floors at -4 µm and -8 µm");
    Finding finding =
        result.findings().stream()
            .filter(f -> f.rule().equals("step-differs"))
            .findFirst()
            .orElseThrow();
    assertThat(Programs.figure(finding, "width")).as("0.5 - 0.4 mm").isCloseTo(100, within(8.0));
    assertThat(Programs.figure(finding, "halfTool")).isCloseTo(200, within(1e-9));
    assertThat(strips(twoSlots(LEVELS, slot(-0.2, -0.004), slot(0.2, -0.008)))).isEmpty();
    assertThat(strips(twoSlots(LEVELS, slot(-0.2, -0.004), slot(0.404, -0.008)))).isEmpty();
  }

  /** The field keeps what is alike in squares of 64 cells, here of 2 µm each: 0.128 mm. */
  @Test
  void aStripThatFillsASquareOfTheFieldIsToldToo() {
    for (double from : new double[] {0, 0.128, 0.1, -0.128}) {
      assertThat(
              strips(
                  twoSlots(
                      LEVELS,
                      slot(from - 0.2, -0.008),
                      slot(from + 0.128 + 0.2, -0.008),
                      OptionalLong.of(2_000_000))))
          .as("from %s", from)
          .singleElement()
          .asString()
          .contains("128 µm wide");
    }
  }

  @Test
  void aStripOfTheGroundThatWasMilledOffIsToldToo() {
    String ground = slot(-0.8, -0.002) + slot(-0.4, -0.002) + slot(0, -0.002) + slot(0.4, -0.002);
    String stairs = slot(-0.25, -0.004) + slot(0.25, -0.004);
    assertThat(strips(twoSlots(LEVELS, ground + slot(0.8, -0.002), stairs)))
        .singleElement()
        .asString()
        .contains("left at -2 µm between floors at -4 µm and -4 µm");
  }

  @Test
  void aStripAtADeclaredHeightOrInAFeatureOfItsOwnIsMeant() {
    String declared = "levels: [0 um, -4 um, -8 um], tolerance: ±0.5 um";
    assertThat(strips(twoSlots(declared, slot(-0.2, -0.004), slot(0.3, -0.008)))).isEmpty();
    String rib =
        LEVELS
            + "}\n    - {name: rib, x: [-2 mm, 2 mm], y: [0 mm, 0.1 mm], levels: [0 um],"
            + " tolerance: ±0.5 um";
    assertThat(strips(twoSlots(rib, slot(-0.2, -0.004), slot(0.3, -0.008)))).isEmpty();
  }
}

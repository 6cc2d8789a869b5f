package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code hairline compare}: what the demo and changed copies of it do otherwise. */
class CompareCommandTest {
  private static final Path DEMO = Path.of("../programs/mixer-insert");
  private static final String CLEAN = DEMO.resolve("mixer-insert.nc").toString();
  private static final String FAULTY = DEMO.resolve("mixer-insert-faulty.nc").toString();
  private static final String SHEET = "--setup=" + DEMO.resolve("setup.yaml");

  @TempDir private Path folder;

  private String changed(String from, String to) throws IOException {
    assertThat(terraces()).contains(from);
    return write(terraces().replace(from, to));
  }

  /** The demo without its basin, which is two thirds of it: what is run often should be short. */
  private static String terraces() throws IOException {
    String text = Files.readString(Path.of(CLEAN));
    int basin = text.indexOf("(tool 5: basin)");
    return text.substring(0, basin) + text.substring(text.indexOf("M9\nM5\n"));
  }

  private String before() throws IOException {
    return Files.writeString(folder.resolve("before.nc"), terraces()).toString();
  }

  private String write(String text) throws IOException {
    return Files.writeString(folder.resolve("changed.nc"), text).toString();
  }

  @Test
  void aProgramDiffersInNothingFromItself() {
    Ran ran = Ran.of("compare", CLEAN, CLEAN);
    assertThat(ran.status()).isZero();
    assertThat(ran.out())
        .contains("no difference in motion or state; the same surface; the same findings")
        .contains("replaces no prove-out");
  }

  @Test
  void thePlantedFaultsOfTheDemoAreTold() {
    Ran ran = Ran.of("compare", CLEAN, FAULTY);
    assertThat(ran.status()).isEqualTo(1);
    // The lines were read off the two files by hand.
    assertThat(ran.out())
        .contains("warm-up  gone: M71, at line 8:1 before")
        .contains("400 mm/min → 18 mm/min, 27 times, the first at line 97:9 (before: 98:9)")
        .contains("40000 rpm → 80000 rpm")
        .contains("by up to 0.1 µm at line 56:4 (before: 57:4)")
        .contains("H5 → H3")
        .contains("0.1 µm lower (-8 → -8.1 µm)")
        .contains("level  -8 µm → -8.1 µm, at line 56:4 (before: 57:4)")
        .contains("step  8 µm → 8.1 µm, at line 56:4 (before: 57:4)")
        .contains("4 µm → 3.9 µm, at line 56:4 (before: 57:4)")
        .contains("new  error warm-up-missing, line 43:1");
  }

  @Test
  void halfAMicronInOneWordIsPointedAt() throws IOException {
    String after = changed("X0.35 F400.\n", "X0.3505 F400.\n");
    Ran ran = Ran.of("compare", SHEET, before(), after);
    assertThat(ran.status()).isEqualTo(1);
    assertThat(ran.out())
        .contains("3 moves elsewhere, by up to 0.5 µm at line 72:4 (before: 72:4)")
        .contains("X0.3505 Y0.8 Z-0.012");
  }

  @Test
  void aChangedLevelShowsAsLevelStepAndSurface() throws IOException {
    String after = changed("G1 Z-0.016 F60.", "G1 Z-0.0165 F60.");
    Ran ran = Ran.of("compare", SHEET, before(), after);
    assertThat(ran.out())
        .contains("level  -16 µm → -16.5 µm, at line 83:4 (before: 83:4)")
        .contains("step  16 µm → 16.5 µm, at line 83:4 (before: 83:4)")
        .contains("4 µm → 4.5 µm, at line 83:4 (before: 83:4)")
        .contains("0.5 µm lower (-16 → -16.5 µm)");
  }

  /** Other steps of 4 µm stand before it: none of them has changed. */
  @Test
  void aStepThatGoesIsPointedAtWhereItWas() throws IOException {
    String after = changed("G1 Z-0.014 F60.", "G1 Z-0.01 F60.");
    Ran ran = Ran.of("compare", SHEET, before(), after);
    int line = (int) terraces().substring(0, terraces().indexOf("G1 Z-0.014 F60.")).lines().count();
    assertThat(ran.out())
        .contains("level  -14 µm → -10 µm, at line " + (line + 1) + ":4")
        .contains("6 µm → 2 µm, at line " + (line + 1) + ":4");
  }

  @Test
  void aStraightMoveInTwoIsNoOtherMotion() throws IOException {
    String along = "G1 X0.35 F400.\n";
    String down = "G1 Z-0.016 F60.\n";
    String after =
        write(
            terraces()
                .replace(along, "G1 X0.3 F400.\nG1 X0.35 F400.\n")
                .replace(down, "G1 Z-0.01 F60.\nG1 Z-0.016 F60.\n"));
    Ran ran = Ran.of("compare", SHEET, before(), after);
    assertThat(ran.out())
        .contains("no difference in motion or state; the same surface; the same findings");
    assertThat(ran.status()).isZero();
    String slower = changed(along, "G1 X0.3 F400.\nG1 X0.35 F300.\n");
    Ran told = Ran.of("compare", SHEET, before(), slower);
    assertThat(told.status()).isEqualTo(1);
    assertThat(told.out())
        .contains("feed  400 mm/min → 300 mm/min, at line 73:10 (before: 72:10)")
        .contains("1 difference of motion or state; the same surface")
        .containsPattern("time  moves of operation 2: [0-9.]+ s → [0-9.]+ s");
  }

  /** The points between are rounded to a tenth of a micron, and lie beside the circles. */
  @Test
  void anArcInPiecesIsNoOtherMotion() throws IOException {
    String begin = "G21 G90 G94 G17 G40 G49 G54\nT3 M6\nS50000 M3\nM8\nG0 G43 H3 Z1.\nX-1.5 Y0.\n";
    String end = "G0 Z1.\nM9\nM5\nM30\n";
    String whole =
        inFile(
            begin + "G1 Z-0.004 F60.\nG2 X1.5 Y0. I1.5 J0. F400.\nG3 X1.5 Y0. I-0.5 J0.\n" + end);
    // By hand: 1.5 mm at 130° from the centre X0 Y0, 0.5 mm at 100° and 200° from X1 Y0.
    String pieces =
        begin
            + "G1 Z-0.004 F60.\nG2 X-0.9642 Y1.1491 I1.5 J0. F400.\nX1.5 Y0. I0.9642 J-1.1491\n"
            + "G3 X0.9132 Y0.4924 I-0.5 J0.\nX0.5302 Y-0.171 I0.0868 J-0.4924\n"
            + "X1.5 Y0. I0.4698 J0.171\n"
            + end;
    Ran ran = Ran.of("compare", SHEET, whole, write(pieces));
    assertThat(ran.out()).contains("no difference in motion or state; the same surface");
    assertThat(ran.status()).isZero();
    Ran slower = Ran.of("compare", SHEET, whole, write(pieces.replace("J0.171", "J0.171 F350.")));
    assertThat(slower.out())
        .contains("feed  400 mm/min → 350 mm/min, at line 12:25 (before: 9:")
        .contains("2 differences of motion or state; the same surface");
    assertThat(slower.status()).isEqualTo(1);
    Ran aside = Ran.of("compare", SHEET, whole, write(pieces.replace("Y1.1491", "Y1.1496")));
    assertThat(aside.out()).contains("1 move elsewhere").contains("another surface");
  }

  @Test
  void aFindingOnAMoveInTwoIsNotNew() throws IOException {
    Files.writeString(
        folder.resolve("before.nc"), terraces().replace("X0.35 F400.\n", "X0.35 F18.\n"));
    String after =
        write(terraces().replace("X0.35 F400.\n", "X0.25 F18.\nG1 X0.3 F18.\nG1 X0.35 F18.\n"));
    Ran ran = Ran.of("compare", SHEET, folder.resolve("before.nc").toString(), after);
    assertThat(ran.out()).contains("the same findings").doesNotContain("nothing found");
    assertThat(ran.status()).isZero();
  }

  @Test
  void sheetsThatDifferAreToldFirst() throws IOException {
    Path one = Files.createDirectory(folder.resolve("one"));
    Path other = Files.createDirectory(folder.resolve("other"));
    String sheet = "machine: {resolution: 0.1 um}\ntools:\n- {number: 1, diameter: %s}\n";
    String program = "G21 G90 G17 G94 G54\nT1 M6\nG0 X0. Y0. Z1.\nM30\n";
    for (Path place : new Path[] {one, other}) {
      Files.writeString(place.resolve("a.nc"), program);
      Files.writeString(
          place.resolve("setup.yaml"), sheet.replace("%s", place.equals(one) ? "1 mm" : "2 mm"));
    }
    String[] programs = {one.resolve("a.nc").toString(), other.resolve("a.nc").toString()};
    Ran ran = Ran.of("compare", programs[0], programs[1]);
    assertThat(ran.out().lines().findFirst().orElseThrow())
        .contains("sheets  1 value of the setup sheets differs");
    assertThat(ran.out().replaceAll("\\s+", " "))
        .contains("before checked with " + one.resolve("setup.yaml"))
        .contains("after with " + other.resolve("setup.yaml"))
        .contains("tools.1.diameter: 1 mm → 2 mm")
        .contains("two setup sheets, 1 value apart; no difference in motion or state");
    assertThat(Ran.of("compare", "--format=html", programs[0], programs[1]).out())
        .contains("<td>1 mm</td>", "tools.1.diameter");
    Ran json = Ran.of("compare", "--format=json", programs[0], programs[1]);
    assertThat(json.out()).contains("\"key\" : \"tools.1.diameter\"");
    assertThat(schema().validate(json.out(), InputFormat.JSON)).isEmpty();
    Files.copy(
        one.resolve("setup.yaml"),
        other.resolve("setup.yaml"),
        StandardCopyOption.REPLACE_EXISTING);
    Ran alike = Ran.of("compare", programs[0], programs[1]);
    assertThat(alike.out()).contains("two files, all values the same");
    assertThat(Ran.of("compare", CLEAN, CLEAN).out()).doesNotContain("sheets");
  }

  @Test
  void onlyNewFindingsFailWhereAskedSo() throws IOException {
    String faster = changed("X0.35 F400.\n", "X0.35 F401.\n");
    assertThat(Ran.of("compare", SHEET, before(), faster).status()).isEqualTo(1);
    assertThat(Ran.of("compare", SHEET, "--fail-on=finding", before(), faster).status()).isZero();
    assertThat(Ran.of("compare", "--fail-on=finding", CLEAN, FAULTY).status()).isEqualTo(1);
    // The other way round the findings are gone.
    Ran mended = Ran.of("compare", "--fail-on=finding", FAULTY, CLEAN);
    assertThat(mended.status()).isZero();
    assertThat(mended.out()).contains("gone  error warm-up-missing");
  }

  @Test
  void theBlockDeleteSwitchCounts() throws IOException {
    String after = changed("\nM72\nM8\nG0 G43 H3", "\n/M72\nM8\nG0 G43 H3");
    Ran ran = Ran.of("compare", SHEET, before(), after);
    assertThat(ran.status()).isEqualTo(1);
    assertThat(ran.out())
        .contains("gone: M72, at line 39:1 before; only with block delete on")
        .contains("levels, steps and the surface left with the block delete switch on");
  }

  /** The demo's machine sheet lists M8 with its codes: one difference all the same. */
  @Test
  void anotherCoolantIsToldOnce() throws IOException {
    Ran ran = Ran.of("compare", SHEET, before(), changed("\nM8\n", "\nM7\n"));
    assertThat(ran.out()).contains("coolant  flood → mist, ").doesNotContain("M8 → M7");
    assertThat(ran.status()).isEqualTo(1);
  }

  @Test
  void whatIsNotReadIsComparedAsText() throws IOException {
    String before = write("G21 G90\nG54\n#100=[1\nIF [#1 EQ 2] GOTO 5\nM30\n");
    Path other = folder.resolve("other.nc");
    Files.writeString(other, "G21 G90\nG54\n#100=[1\nIF [#1 EQ 3] GOTO 5\nM30\n");
    Ran ran = Ran.of("compare", before, other.toString());
    assertThat(ran.status()).isEqualTo(3);
    assertThat(ran.out()).contains("IF[#1EQ2]GOTO5 → IF[#1EQ3]GOTO5");
  }

  private static Schema schema() throws IOException {
    try (InputStream in =
        Objects.requireNonNull(
            hairline.checks.report.ComparisonFormat.class.getResourceAsStream(
                "comparison.schema.json"))) {
      String id = "urn:hairline:comparison:2";
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      SchemaRegistry registry =
          SchemaRegistry.withDefaultDialect(
              SpecificationVersion.DRAFT_2020_12, b -> b.schemas(Map.of(id, text)));
      return registry.getSchema(SchemaLocation.of(id));
    }
  }

  @Test
  void theJsonHoldsToItsSchema() throws IOException {
    Schema schema = schema();
    for (String after : new String[] {CLEAN, FAULTY}) {
      Ran ran = Ran.of("compare", "--format=json", CLEAN, after);
      assertThat(schema.validate(ran.out(), InputFormat.JSON)).isEmpty();
      assertThat(ran.out()).contains("\"exitStatus\" : " + ran.status());
    }
    assertThat(schema.validate("{\"schemaVersion\": \"2.0\"}", InputFormat.JSON)).isNotEmpty();
  }

  @Test
  void thePageTellsTheSame() {
    Ran ran = Ran.of("compare", "--format=html", CLEAN, FAULTY);
    assertThat(ran.status()).isEqualTo(1);
    assertThat(ran.out())
        .startsWith("<!DOCTYPE html>")
        .contains("<th scope=\"row\">warm up</th>", "<td>M71</td>", "<td>8:1</td>")
        .contains("<td>400 mm/min</td>", "<td>18 mm/min</td>", "<td>27</td>", "<td>97:9</td>")
        .contains("0.1 µm lower (-8 → -8.1 µm)")
        .contains("new: Z-0.00805 is stored as -0.0081 mm")
        .doesNotContain("<script", "http:", "https:");
  }

  /** Before and after turned round: the same differences, the other way. */
  @Test
  void theWholeComparisonIsSymmetric() throws Exception {
    ObjectMapper json = new ObjectMapper();
    JsonNode there =
        json.readTree(Ran.of("compare", "--format=json", SHEET, before(), edited()).out());
    JsonNode back =
        json.readTree(Ran.of("compare", "--format=json", SHEET, edited(), before()).out());
    List<String> changes = new ArrayList<>();
    there.get("changes").forEach(c -> changes.add(line(c, "before", "after")));
    List<String> turned = new ArrayList<>();
    back.get("changes").forEach(c -> turned.add(line(c, "after", "before")));
    assertThat(changes).hasSizeGreaterThan(5);
    assertThat(turned).containsExactlyInAnyOrderElementsOf(changes);
    JsonNode surface = there.get("surfaces").get(0).get("largest");
    JsonNode surfaceBack = back.get("surfaces").get(0).get("largest");
    assertThat(surfaceBack.get("higherUm").asDouble())
        .isEqualTo(-surface.get("higherUm").asDouble());
    assertThat(surfaceBack.get("beforeUm")).isEqualTo(surface.get("afterUm"));
    assertThat(back.get("findings").get("new")).hasSameSizeAs(there.get("findings").get("gone"));
    assertThat(back.get("findings").get("gone")).hasSameSizeAs(there.get("findings").get("new"));
    assertThat(there.get("findings").get("new")).isNotEmpty();
    assertThat(hows(back))
        .containsExactlyInAnyOrderElementsOf(hows(there).stream().map(TURNED::get).toList());
  }

  private static final Map<String, String> TURNED =
      Map.of(
          "graver", "milder",
          "milder", "graver",
          "oftener", "rarer",
          "rarer", "oftener",
          "otherwise", "otherwise");

  private static List<String> hows(JsonNode comparison) {
    List<String> hows = new ArrayList<>();
    comparison.get("findings").get("changed").forEach(c -> hows.add(c.get("how").asText()));
    return hows;
  }

  /** All moves across the terraces at a feed too low; the first of them mended. */
  @Test
  void aFindingThatBecomesRarerIsNeitherGoneNorNew() throws IOException {
    String along = "G1 Y0.8 F400.\n";
    assertThat(terraces().indexOf(along)).isNotEqualTo(terraces().lastIndexOf(along));
    String twice = inFile(terraces().replace(along, "G1 Y0.8 F18.\n"));
    String once =
        write(
            terraces()
                .replace(along, "G1 Y0.8 F18.\n")
                .replaceFirst("Y0\\.8 F18\\.\n", "Y0.8 F400.\n"));
    Ran mended = Ran.of("compare", SHEET, "--fail-on=finding", twice, once);
    assertThat(mended.out().replaceAll("\\s+", " "))
        .containsPattern("less often, [0-9]+ → [0-9]+ times: error chip-below-minimum")
        .containsPattern("findings: 4 changed, 3 less often")
        .doesNotContain(" gone ", " new ", " more often");
    assertThat(mended.status()).isZero();
    Ran worse = Ran.of("compare", SHEET, "--fail-on=finding", once, twice);
    assertThat(worse.out().replaceAll("\\s+", " "))
        .containsPattern("more often, [0-9]+ → [0-9]+ times: error chip-below-minimum")
        .doesNotContain(" gone ", " new ", "less often,");
    assertThat(worse.status()).isEqualTo(1);
    assertThat(Ran.of("compare", SHEET, "--format=html", once, twice).out())
        .containsPattern("more often, [0-9]+ → [0-9]+ times: ");
    Ran json = Ran.of("compare", SHEET, "--format=json", once, twice);
    assertThat(json.out()).contains("\"how\" : \"oftener\"", "\"newFindings\" : true");
    assertThat(schema().validate(json.out(), InputFormat.JSON)).isEmpty();
  }

  private String edited() throws IOException {
    return inFile(
        terraces()
            .replace("G1 Z-0.008 F60.", "G1 Z-0.0083 F60.")
            .replace("X0.35 F400.\n", "X0.3505 F20.\n")
            .replace("S50000 M3\nM72\n", "S49000 M3\n")
            .replace("G1 Z-0.014 F60.", "G1 Z-0.0135 F60."));
  }

  private String inFile(String text) throws IOException {
    return Files.writeString(folder.resolve("edited.nc"), text).toString();
  }

  private static String line(JsonNode change, String first, String second) {
    return change.get("kind").asText()
        + " "
        + change.get(first).asText()
        + " > "
        + change.get(second).asText()
        + " x"
        + change.get("count").asInt()
        + " "
        + change.get("first").path(first).path("line").asText()
        + ":"
        + change.get("first").path(second).path("line").asText();
  }

  @Test
  void failuresAreSentences() {
    Ran folderGiven = Ran.of("compare", CLEAN, DEMO.toString());
    assertThat(folderGiven.status()).isEqualTo(2);
    assertThat(folderGiven.err()).contains("is a folder, and one program is due");
    Ran gone = Ran.of("compare", CLEAN, "gone.nc");
    assertThat(gone.status()).isEqualTo(3);
    assertThat(gone.err()).contains("`gone.nc` does not exist");
    Ran one = Ran.of("compare", CLEAN);
    assertThat(one.status()).isEqualTo(2);
    assertThat(one.err()).contains("`AFTER` is missing");
    assertThat(Ran.of("compare", CLEAN, CLEAN, "--setup").err())
        .contains("`FILE` behind `--setup` is missing");
    Ran twice = Ran.of("compare", "-", "-");
    assertThat(twice.status()).isEqualTo(2);
    assertThat(twice.err()).contains("- stands for standard input, which holds one program");
  }
}

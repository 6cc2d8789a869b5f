package hairline.checks.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import hairline.checks.rules.ProgramCheck;
import hairline.checks.rules.Selection;
import hairline.checks.setup.Setup;
import hairline.checks.setup.SheetReader;
import hairline.checks.stock.PartLeft;
import hairline.checks.stock.SectionLine;
import hairline.checks.stock.SurfaceShown;
import hairline.checks.stock.SurfaceWanted;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** What the formats make of the part left. */
class SurfaceReportsTest {
  private static final long MM = 1_000_000_000L;

  private static final String SHEET =
      """
      machine: {resolution: 0.1 um}
      stock: {x: [-2 mm, 2 mm], y: [-1 mm, 1 mm], top: 0 mm, bottom: -1 mm}
      tools:
        - {number: 1, shape: flat, diameter: 0.4 mm}
        - {number: 2, shape: ball, diameter: 0.6 mm}
      """;

  private static final String PROGRAM =
      """
      G21 G90 G17 G94
      G54
      T1 M6
      G0 G43 H1 X-1.5 Y-0.5 Z1.
      G1 Z-0.004 F100.
      Y0.5
      X-1.3
      Y-0.5
      G0 Z1.
      X-0.9
      G1 Z-0.0105
      Y0.5
      G0 Z1.
      T2 M6
      G0 G43 H2 X1. Y-0.5 Z1.
      G1 Z-0.02
      Y0.5
      G0 Z1.
      T1 M6
      G55
      G0 G43 H1 X0. Y0. Z1.
      Z0.
      G1 Z-0.006
      X0.5
      G0 Z1.
      M30
      """;

  @TempDir private Path folder;

  private CheckedProgram checked(SurfaceWanted wanted) throws IOException {
    return checked(PROGRAM, wanted);
  }

  private CheckedProgram checked(String program, SurfaceWanted wanted) throws IOException {
    Path file = Files.writeString(folder.resolve("part.nc"), program);
    List<PartLeft> parts = new ArrayList<>();
    Setup setup;
    try {
      setup = new SheetReader().parse(SHEET, "sheet");
    } catch (Exception e) {
      throw new AssertionError(e);
    }
    List<SurfaceShown> shown = new ArrayList<>();
    ProgramCheck.of(new Selection(Set.of("tool-unlisted"), Set.of()))
        .withCell(OptionalLong.of(10_000_000))
        .check(
            file,
            setup,
            event -> {
              if (event instanceof PartLeft part) {
                parts.add(part);
                shown.add(SurfaceShown.of(part, wanted, 10_000_000, 10_000));
              }
            });
    assertThat(parts).hasSize(1);
    return CheckedProgram.of(
            new hairline.checks.finding.ProgramResult(
                "=part, \"a\".nc",
                List.of("part.nc"),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                "sheet.yaml",
                false,
                java.util.Map.of(),
                false,
                false,
                false),
            Optional.empty())
        .withSurface(Optional.of(shown.get(0)));
  }

  private static SurfaceWanted all(boolean picture) {
    return new SurfaceWanted(
        true,
        List.of(
            new SectionLine(-2 * MM, 0, 5 * MM / 2, 0),
            new SectionLine(-3 * MM / 2, -MM, -MM / 2, MM)),
        picture);
  }

  private String report(ReportFormat format) throws IOException {
    return SampleRun.report(
        format, SampleRun.OPTIONS, List.of(SampleRun.gone(), checked(all(true))));
  }

  @ParameterizedTest
  // A program that was not watched for a brief has none to keep: that of the demo is tested by
  // itself.
  @EnumSource(
      value = ReportFormat.class,
      names = {"SARIF", "JUNIT", "HTML"},
      mode = EnumSource.Mode.EXCLUDE)
  void looksAsKept(ReportFormat format) throws IOException {
    Golden.check("surface." + format, report(format));
  }

  @Test
  void theJsonReportIsAsItsSchemaHasIt() throws Exception {
    String text = report(ReportFormat.JSON);
    var schema =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(
                SchemaLocation.of("urn:hairline:report:1"),
                new String(
                    JsonReport.class.getResourceAsStream("report.schema.json").readAllBytes(),
                    StandardCharsets.UTF_8),
                InputFormat.JSON);
    assertThat(schema.validate(text, InputFormat.JSON)).isEmpty();
    assertThat(schema.validate(text.replace("stepUm", "step"), InputFormat.JSON))
        .as("the schema can tell")
        .isNotEmpty();
    assertThat(schema.validate(text.replace("[-2, 0]", "[-2]"), InputFormat.JSON))
        .as("the schema can tell")
        .isNotEmpty();
  }

  @Test
  void theJsonReportSaysWhatWasProgrammed() throws Exception {
    JsonNode program =
        new ObjectMapper().readTree(report(ReportFormat.JSON)).get("programs").get(1);
    List<String> heights = new ArrayList<>();
    program
        .get("terraces")
        .forEach(t -> heights.add(t.get("offset").asText() + " " + t.get("heightUm").asText()));
    assertThat(heights).containsExactly("G54 0", "G54 -4", "G54 -10.5", "G55 -6");
    assertThat(program.get("terraces").get(3).get("beside").toString())
        .isEqualTo("[\"uncut, top not known\"]");
    assertThat(program.get("surface").get("offsets").get(1).has("stock")).isFalse();
    // Under G55 the top is not known: no height, never zero.
    JsonNode underG55 = program.get("sections").get(2);
    assertThat(underG55.get("points").get(0).toString()).isEqualTo("[0,null]");
    assertThat(underG55.get("gaps").get(0).get("why").asText()).isEqualTo("uncut, top not known");
  }

  /** Reads comma separated values by the grammar of RFC 4180, section 2. */
  private static List<List<String>> csv(String text) {
    List<List<String>> rows = new ArrayList<>();
    List<String> row = new ArrayList<>();
    int at = 0;
    while (at < text.length()) {
      StringBuilder field = new StringBuilder();
      if (text.charAt(at) == '"') {
        at++;
        while (text.charAt(at) != '"' || text.startsWith("\"\"", at)) {
          at += text.charAt(at) == '"' ? 1 : 0;
          field.append(text.charAt(at++));
        }
        at++;
      } else {
        while (text.charAt(at) != ',' && !text.startsWith("\r\n", at)) {
          assertThat(text.charAt(at)).isNotEqualTo('"');
          field.append(text.charAt(at++));
        }
      }
      row.add(field.toString());
      if (text.charAt(at) == ',') {
        at++;
      } else {
        assertThat(text.startsWith("\r\n", at)).isTrue();
        at += 2;
        rows.add(List.copyOf(row));
        row.clear();
      }
    }
    assertThat(row).isEmpty();
    return rows;
  }

  @Test
  void theTableReadsBackWithAllFieldsInEveryLine() throws IOException {
    List<List<String>> rows = csv(report(ReportFormat.CSV));
    List<String> heading = rows.get(0);
    assertThat(rows).allMatch(row -> row.size() == heading.size());
    assertThat(rows.get(1)).contains("not checked", "`gone.nc` does not exist");
    assertThat(rows.subList(2, rows.size()))
        .extracting(row -> row.get(0))
        .as("no formula, and the quotes as they were")
        .containsOnly("'=part, \"a\".nc");
    List<String> terraces =
        rows.stream()
            .filter(row -> row.get(1).equals("terrace"))
            .map(row -> row.get(2) + " " + row.get(heading.indexOf("height_um")))
            .toList();
    assertThat(terraces).containsExactly("G54 0", "G54 -4", "G54 -10.5", "G55 -6");
    long points =
        rows.stream()
            .filter(row -> row.get(1).equals("section") && row.get(2).equals("G54"))
            .filter(row -> row.get(heading.indexOf("section")).equals("1"))
            .count();
    SurfaceShown.Under under = checked(all(false)).surface().orElseThrow().offsets().get(0);
    assertThat(points).isEqualTo(under.sections().get(0).points().size());
  }

  private static Document xml(String text) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
    return factory
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
  }

  private static List<String> texts(Document drawing) {
    List<String> texts = new ArrayList<>();
    NodeList nodes = drawing.getElementsByTagName("text");
    for (int k = 0; k < nodes.getLength(); k++) {
      texts.add(nodes.item(k).getTextContent());
    }
    return texts;
  }

  @Test
  void theDrawingNamesTerracesStepsAndExaggeration() throws Exception {
    Document drawing = xml(report(ReportFormat.SVG));
    assertThat(texts(drawing))
        .contains("=part, \"a\".nc, G54", "`gone.nc` does not exist")
        // The named heights, the labels of terraces, the steps of a section.
        .contains("−10.5", "−4 µm", "−6.5 µm", "+10.5 µm", "uncut, top not known")
        .anyMatch(text -> text.matches("heights [0-9.]+ times exaggerated against distances"));
    assertThat(drawing.getElementsByTagName("image").getLength()).isEqualTo(2);
    assertThat(drawing.getElementsByTagName("script").getLength()).isZero();
  }

  @Test
  void thePictureHasTheColoursOfItsHeights() throws Exception {
    Document drawing = xml(report(ReportFormat.SVG));
    String data = ((Element) drawing.getElementsByTagName("image").item(0)).getAttribute("href");
    assertThat(data).startsWith("data:image/png;base64,");
    BufferedImage image =
        ImageIO.read(
            new ByteArrayInputStream(
                Base64.getDecoder().decode(data.substring(data.indexOf(',') + 1))));
    // Stock of 4 by 2 mm; the upper row of pixels is the highest Y.
    double perMm = image.getWidth() / 4.0;
    int uncut = image.getRGB((int) (3.8 * perMm), (int) (0.1 * perMm)) & 0xFFFFFF;
    int lowest = image.getRGB((int) (3 * perMm), (int) perMm) & 0xFFFFFF;
    int level = image.getRGB((int) (0.5 * perMm), (int) perMm) & 0xFFFFFF;
    int right = image.getRGB((int) (1.05 * perMm), (int) perMm) & 0xFFFFFF;
    assertThat(uncut).isEqualTo(0xFEE838);
    // The ball's ground at about -20 µm is the end of the scale, within a colour.
    assertThat(lowest & 0xFF00).isLessThan(0x2A00);
    assertThat(level).isNotEqualTo(uncut).isNotEqualTo(lowest).isNotEqualTo(right);
    assertThat(right).isNotEqualTo(lowest);
  }

  /** Twenty-eight lanes of a micron more each, side by side: more of everything than is shown. */
  private static String staircase() {
    StringBuilder program = new StringBuilder("G21 G90 G17 G94\nG54\nT1 M6\nG0 G43 H1 Z1.\n");
    for (int k = 0; k < 28; k++) {
      String x = String.format(Locale.ROOT, "%.2f", -1.9 + 0.12 * k);
      program.append("G0 X").append(x).append(" Y-0.9\n");
      program.append(String.format(Locale.ROOT, "G1 Z-%.4f F100.\n", 0.001 * (k + 1)));
      program.append(k % 3 == 0 ? "Y0.9\n" : "Y0.1\n").append("G0 Z1.\n");
    }
    return program.append("M30\n").toString();
  }

  /** Sections in all directions, some begin or end outside of the stock, one misses it. */
  private static SurfaceWanted crowded() {
    List<SectionLine> lines = new ArrayList<>();
    lines.add(new SectionLine(-3 * MM, -2 * MM, 3 * MM, 2 * MM));
    lines.add(new SectionLine(3 * MM, -2 * MM, -3 * MM, 2 * MM));
    lines.add(new SectionLine(0, -3 * MM, 0, 3 * MM));
    lines.add(new SectionLine(MM, MM / 2, -MM, MM / 2));
    lines.add(new SectionLine(3 * MM, 3 * MM, 4 * MM, 3 * MM));
    for (int k = 0; k < 10; k++) {
      lines.add(new SectionLine(-2 * MM, k * MM / 10, 2 * MM, (9 - k) * MM / 10));
    }
    return new SurfaceWanted(true, lines, true);
  }

  @ParameterizedTest
  @EnumSource(
      value = ReportFormat.class,
      names = {"TEXT", "SVG"})
  void aCrowdedPartLooksAsKept(ReportFormat format) throws IOException {
    CheckedProgram program = checked(staircase(), crowded());
    Golden.check(
        "crowded." + format, SampleRun.report(format, SampleRun.OPTIONS, List.of(program)));
  }

  @Test
  void theVerboseTextLeavesNothingOut() throws IOException {
    CheckedProgram program = checked(staircase(), crowded());
    ReportOptions whole =
        new ReportOptions(
            "1.2.3", Optional.empty(), false, false, true, 100, List.of(), Conditions.NONE);
    String text = SampleRun.report(ReportFormat.TEXT, whole, List.of(program));
    String brief = SampleRun.report(ReportFormat.TEXT, SampleRun.OPTIONS, List.of(program));
    assertThat(brief).contains("4: +3  5: +2  6: +1  … 2 more\n");
    assertThat(text).doesNotContain(" more;", " more\n").contains("6: +1  8: -1  10: -3\n");
    // Each depth of a lane is the height of a terrace.
    for (int um = 1; um <= 28; um++) {
      assertThat(text).containsPattern("\\s-" + um + "\\s");
    }
  }

  @Test
  void hostileNamesAndManyProgramsAreDrawnHarmlessly() throws Exception {
    CheckedProgram one = checked(all(true));
    CheckedProgram hostile =
        new CheckedProgram(
            SampleRun.HOSTILE,
            one.result(),
            one.summary(),
            one.surface(),
            one.depths(),
            one.timeline(),
            one.feeds(),
            one.brief(),
            one.budgets(),
            one.trouble());
    List<CheckedProgram> many = new ArrayList<>(java.util.Collections.nCopies(14, one));
    many.add(0, hostile);
    String text = SampleRun.report(ReportFormat.SVG, SampleRun.OPTIONS, many);
    text.codePoints()
        .filter(c -> c != '\n')
        .forEach(c -> assertThat(Visible.isHarmless(c)).as("U+%04X", c).isTrue());
    Document drawing = xml(text);
    assertThat(drawing.getElementsByTagName("b").getLength()).isZero();
    // Two surfaces each: 30, of which 24 are drawn.
    assertThat(drawing.getElementsByTagName("image").getLength()).isEqualTo(24);
    assertThat(texts(drawing)).anyMatch(t -> t.startsWith("6 more surfaces not drawn"));
  }

  @Test
  void nothingIsShownThatWasNotAskedFor() throws IOException {
    CheckedProgram plain =
        checked(new SurfaceWanted(false, List.of(new SectionLine(0, 0, MM, 0)), false));
    String json = SampleRun.report(ReportFormat.JSON, SampleRun.OPTIONS, List.of(plain));
    assertThat(json).contains("\"sections\"").doesNotContain("\"terraces\"");
    String text = SampleRun.report(ReportFormat.TEXT, SampleRun.OPTIONS, List.of(plain));
    assertThat(text).contains("section  1, G54").doesNotContain("terraces");
  }
}

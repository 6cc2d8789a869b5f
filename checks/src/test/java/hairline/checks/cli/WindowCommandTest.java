package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;

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
import java.util.Map;
import java.util.Objects;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;

/** {@code hairline window} on the terraces of the demo. */
class WindowCommandTest {
  private static final Path DEMO = Path.of("../programs/mixer-insert");
  private static final String SHEET = "--setup=" + DEMO.resolve("setup.yaml");

  @TempDir private Path folder;

  /** The demo without its basin, which takes long and has no levels. */
  private static String terraces() throws IOException {
    String text = Files.readString(DEMO.resolve("mixer-insert.nc"));
    return text.substring(0, text.indexOf("(tool 5: basin)"))
        + text.substring(text.indexOf("M9\nM5\n"));
  }

  private String program(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text).toString();
  }

  @Test
  void theDemoHasRoomAndTheCheckSaysTheSame() throws IOException {
    Ran ran = Ran.of("window", SHEET, program("part.nc", terraces()));
    assertThat(ran.status()).isZero();
    // By hand: 1.5 µm of edge radius and 12 µm of largest feed, × 2 teeth × 50000 rpm.
    assertThat(ran.out())
        .contains("operation 2: tool 3 at 50000 rpm, from line 44")
        .contains("feed  150 to 1200 mm/min; programmed 400 mm/min, 4 µm a tooth")
        .contains("≥ 150 mm/min = 1.5 µm  feed-below-edge-radius")
        .contains("≤ 1200 mm/min = 12 µm  chip-above-limit")
        .contains("≥ 0.45 µm  depth-below-minimum")
        .contains("≥ 23870 rpm  surface-speed-off")
        .contains("replaces no prove-out");
    String[][] feeds = {
      {"F150.", "F149.9", "feed-below-edge-radius"}, {"F1200.", "F1200.1", "chip-above-limit"}
    };
    for (String[] feed : feeds) {
      String only = "--only=" + feed[2];
      String inside = program("inside.nc", terraces().replace("F400.", feed[0]));
      String outside = program("outside.nc", terraces().replace("F400.", feed[1]));
      assertThat(Ran.of("check", SHEET, only, inside).status()).isZero();
      assertThat(Ran.of("check", SHEET, only, outside).status()).isEqualTo(1);
    }
  }

  @Test
  void aClosedWindowNamesWhatWouldOpenIt() throws IOException {
    String program = program("part.nc", terraces());
    Ran ran = Ran.of("window", SHEET, "--set=tools.3.max_feed_per_tooth=1.2 um", program);
    assertThat(ran.out().replaceAll("\\s+", " "))
        .contains("no feed will do: feed-below-edge-radius wants 150 mm/min or more,")
        .contains("chip-above-limit 120 mm/min or less")
        .contains("opens at tools.3.edge_radius 1.2 µm instead of 1.5 µm");
  }

  @Test
  void theDrawingIsWellFormedAndNamesItsLimits() throws Exception {
    Path svg = folder.resolve("window.svg");
    String hostile = program("<b>&\u202e\"'.nc", terraces());
    Ran ran = Ran.of("window", SHEET, "--svg=" + svg, hostile);
    assertThat(ran.status()).isZero();
    Document drawing =
        DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(svg.toFile());
    assertThat(drawing.getElementsByTagName("b").getLength()).isZero();
    assertThat(drawing.getElementsByTagName("path").getLength()).isGreaterThan(10);
    assertThat(drawing.getDocumentElement().getTextContent())
        .contains("chip-below-minimum: feed above", "flex-exceeds-wall: feed below")
        .containsPattern("acceleration: feed below 2[0-9]{3} mm/min")
        .contains("programmed: 400 mm/min", "likely at the line, for certain");
    // The bands of strength and flex, and the room between all limits.
    assertThat(Files.readString(svg)).contains("class=\"highband\"", "class=\"open\"");
    assertThat(Files.readString(svg)).doesNotContain("\u202e", "http://www.w3.org/1999/xlink");
  }

  @Test
  void theJsonHoldsToItsSchemaAndHostileTextStaysText() throws Exception {
    String text;
    try (InputStream in =
        Objects.requireNonNull(
            hairline.checks.report.WindowFormat.class.getResourceAsStream("window.schema.json"))) {
      text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
    String id = "urn:hairline:window:1";
    Schema schema =
        SchemaRegistry.withDefaultDialect(
                SpecificationVersion.DRAFT_2020_12, b -> b.schemas(Map.of(id, text)))
            .getSchema(SchemaLocation.of(id));
    String hostile = program("<b>&\u202e\u001b[31m\"'.nc", terraces());
    Ran ran = Ran.of("window", SHEET, "--format=json", hostile);
    assertThat(ran.status()).isZero();
    assertThat(schema.validate(ran.out(), InputFormat.JSON)).isEmpty();
    assertThat(ran.out())
        .doesNotContain("\u202e", "\u001b")
        .contains("\"by\" : \"acceleration\"", "\"isRule\" : false", "\"moves\" : \"down\"");
    Ran closed =
        Ran.of(
            "window",
            SHEET,
            "--set=tools.3.max_feed_per_tooth=1.2 um",
            "--format=json",
            program("part.nc", terraces()));
    assertThat(schema.validate(closed.out(), InputFormat.JSON)).isEmpty();
    assertThat(closed.out())
        .contains(
            "\"closed\" : true", "\"what\" : \"tools.3.edge_radius\"", "\"value\" : \"1.2 um\"");
    assertThat(schema.validate("{\"schemaVersion\": \"1.0\"}", InputFormat.JSON)).isNotEmpty();
    Ran nothing = Ran.of("window", "--format=json", program("none.nc", "G21 G90\nM30\n"));
    assertThat(schema.validate(nothing.out(), InputFormat.JSON)).isEmpty();
  }

  /** A straight program of contours: no level, and yet a window, in words and drawn. */
  @Test
  void contoursHaveAWindow() throws Exception {
    StringBuilder text = new StringBuilder("G21 G90 G17 G94 G54\nT3 M6\nS50000 M3\n");
    text.append("G0 G43 H3 X-3. Y0. Z1.\nZ-0.01\n");
    for (int k = 0; k < 20; k++) {
      text.append("G1 X").append(-2.8 + k * 0.3).append(k % 2 == 0 ? " Z-0.02" : " Z-0.01");
      text.append(" F300.\n");
    }
    String program = program("contour.nc", text.append("G0 Z1.\nM5\nM30\n").toString());
    Path svg = folder.resolve("contour.svg");
    Ran ran = Ran.of("window", SHEET, "--svg=" + svg, program);
    String said = ran.out().replaceAll("\\s+", " ");
    assertThat(said)
        .contains("all feed moves: along, Z varying")
        .contains("depth taken along, Z varying: ")
        .contains("largest as programmed 20 µm; all of them together");
    assertThat(Files.readString(svg))
        .contains(
            "limits of the feed at the depths programmed", "chip-above-limit: feed below 1200");
  }

  @Test
  void itSaysWhatAccelerationMeans() throws IOException {
    String means = "stays below";
    assertThat(Ran.of("window", "--help").out()).contains("acceleration is no rule", means);
    assertThat(
            Ran.of("window", SHEET, program("part.nc", terraces())).out().replaceAll("\\s+", " "))
        .contains("acceleration is no rule's limit", "more than half of the length that is cut");
  }

  @Test
  void whatItCouldNotReadIsSaid() throws IOException {
    Path program = Files.writeString(folder.resolve("part.nc"), "G21 G90 G54\nG1 X[\nM30\n");
    Ran ran = Ran.of("window", program.toString());
    assertThat(ran.status()).isEqualTo(3);
    assertThat(ran.out()).contains("unread  not all was understood", "hairline check tells where");
    Files.writeString(program, "O1\nG21 G90 G54\nM98 P2 L999\nM30\nO2\nX1.\nM99\n");
    Ran endless = Ran.of("window", "--set=machine.control.step_budget=100", program.toString());
    assertThat(endless.status()).isEqualTo(3);
    assertThat(endless.out()).contains("the budget of steps was used up");
  }

  @Test
  void aProgramThatCutsNothingHasNoWindow() throws IOException {
    Ran ran = Ran.of("window", program("part.nc", "G21 G90\nG54\nG0 X1.\nM30\n"));
    assertThat(ran.status()).isZero();
    assertThat(ran.out()).contains("no operation cuts with a tool of the sheet");
    assertThat(Ran.of("window", "gone.nc").status()).isEqualTo(3);
    assertThat(Ran.of("window", folder.toString()).status()).isEqualTo(2);
  }
}

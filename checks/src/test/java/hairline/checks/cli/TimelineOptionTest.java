package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** {@code check --timeline} on the demo. */
class TimelineOptionTest {
  private static final String DEMO = "../programs/mixer-insert/mixer-insert.nc";
  private static final String ONE_RULE = "--only=step-below-smallest";

  private static Ran ran(String format) {
    Ran ran = Ran.of("check", ONE_RULE, "--timeline", "--format=" + format, DEMO);
    assertThat(ran.err()).isEmpty();
    return ran;
  }

  private static JsonNode timeline() throws IOException {
    return new ObjectMapper().readTree(ran("json").out()).at("/programs/0/timeline");
  }

  @Test
  void quietReportsHoldWhatIsAskedFor() {
    Ran ran = Ran.of("check", "-q", ONE_RULE, "--timeline", "--terraces", DEMO);
    assertThat(ran.out()).contains("timeline", "spindle turns", "terraces");
    assertThat(Ran.of("check", "-q", ONE_RULE, DEMO).out()).doesNotContain("timeline", "terraces");
  }

  @Test
  void cutsAtTwoSpeedsAreTwoRows(@TempDir Path folder) throws IOException {
    Files.writeString(
        folder.resolve("setup.yaml"),
        """
        machine: {resolution: 0.1 um, rapid: 15 m/min, spindle: {run_up: 1.5 s}}
        tools: [{number: 3, shape: flat, diameter: 0.4 mm, flutes: 2}]
        stock: {x: [-2 mm, 2 mm], y: [-1 mm, 1 mm], top: 0 mm}
        """);
    Path program = folder.resolve("p.nc");
    Files.writeString(
        program,
        """
        G21 G90 G17 G94 G54
        T3 M6
        G43 H3
        S30000 M3
        G0 X-3. Y0. Z1.
        Z-0.004
        G1 X0. F100.
        S20000
        X1.
        X3.
        G0 Z1.
        M5
        M30
        """);
    assertThat(Ran.of("check", ONE_RULE, "--timeline", program.toString()).out())
        .contains("fine cuts T3, line 7", "fine cuts T3, lines 9 to 10");
  }

  /** A stop takes no time of its own; what is measured right before or behind it does. */
  @Test
  void aStopForTheOperatorIsSeenBesideMeasuring(@TempDir Path folder) throws IOException {
    Files.writeString(
        folder.resolve("setup.yaml"),
        """
        machine: {rapid: 15 m/min, spindle: {run_up: 1.5 s}, codes: {measure_tool: [M72]}}
        tools: [{number: 3, shape: flat, diameter: 0.4 mm, flutes: 2}]
        times: {tool_change: 4 s, measuring: 12 s}
        """);
    Path program = folder.resolve("p.nc");
    Files.writeString(
        program, "G21 G90 G17 G94 G54\nT3 M6\nG43 H3\nS30000 M3\nM72\nM0\nM72\nG4 P9\nM30\n");
    Path svg = folder.resolve("t.svg");
    Ran ran = Ran.of("check", ONE_RULE, "--timeline", "--report=svg=" + svg, program.toString());
    assertThat(ran.out()).containsPattern("\n +tool +[TM ]+\n +stops +S *\n +cuts");
    String drawing = Files.readString(svg);
    // What has a title is a mark of the lane; the legend has none.
    String marks = drawing.replaceAll("<rect class=\"(\\w+)\"[^<>/]*><title>", "[$1]");
    assertThat(marks.lastIndexOf("[measure]")).isPositive().isLessThan(marks.indexOf("[operator]"));
    assertThat(ran("text").out()).doesNotContainPattern("\n +stops ");
  }

  @Test
  void theWarmUpOfTheDemoGrowsTheSpindleAsItsSheetSays() throws IOException {
    JsonNode timeline = timeline();
    // Run-up 1.5 s, then 12 min at 30000 rpm; 9 µm at 50000 rpm, exponent 1.5, 6 min.
    double um = 9 * StrictMath.pow(0.6, 1.5) * (1 - StrictMath.exp(-721.5 / 360));
    List<Double> grown = new ArrayList<>();
    for (JsonNode point : timeline.get("points")) {
      if (Math.abs(point.get("seconds").asDouble() - 721.5) < 1e-6) {
        grown.add(point.get("growthUm").get("typical").asDouble());
      }
    }
    assertThat(grown).isNotEmpty().allSatisfy(g -> assertThat(g).isCloseTo(um, within(1e-9)));
    List<String> marks = new ArrayList<>();
    timeline
        .get("marks")
        .forEach(
            m ->
                marks.add(
                    m.get("kind").asText()
                        + " "
                        + m.get("at").get("line").asText()
                        + (m.has("tool") ? " T" + m.get("tool").asText() : "")));
    assertThat(marks)
        .containsExactly(
            "warm-up 8",
            "tool change 10 T1",
            "measuring 12 T1",
            "tool change 37 T3",
            "measuring 39 T3",
            "tool change 135 T5",
            "measuring 137 T5");
    assertThat(timeline.get("fineCuts").size()).isPositive();
    assertThat(timeline.get("notes")).isEmpty();
  }

  @Test
  void itIsAsTheSchemaHasIt() throws IOException {
    String text = ran("json").out();
    Schema schema =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(
                SchemaLocation.of("urn:hairline:report:1"),
                new String(
                    TimelineOptionTest.class
                        .getResourceAsStream("/hairline/checks/report/report.schema.json")
                        .readAllBytes(),
                    StandardCharsets.UTF_8),
                InputFormat.JSON);
    assertThat(schema.validate(text, InputFormat.JSON)).isEmpty();
    assertThat(schema.validate(text.replace("growthUm", "growth"), InputFormat.JSON))
        .as("the schema can tell")
        .isNotEmpty();
  }

  @Test
  void theTextHasLanesAndRows() {
    String text = ran("text").out();
    assertThat(text)
        .contains("timeline  at least 13.5 min")
        .contains("W warm-up  T tool change  M measuring")
        .containsPattern("0:01.5 +12:01.5 +30000 +0.01[0-9] +3.619 +warm-up, line 8")
        .containsPattern("12:41.3 +12:53.3 +50000 .*measuring T3, line 39")
        .containsPattern("fine cuts T3, lines [0-9]+ to 132\n")
        .contains("since measuring ");
    text.lines().forEach(line -> assertThat(line.codePointCount(0, line.length())).isLessThan(130));
  }

  @Test
  void theTableHasARowForEachPoint() throws IOException {
    String[] rows = ran("csv").out().split("\r\n");
    long spindle = List.of(rows).stream().filter(row -> row.contains(",spindle,")).count();
    assertThat(spindle).isEqualTo(timeline().get("points").size());
    assertThat(rows).anySatisfy(row -> assertThat(row).contains(",measuring,"));
    assertThat(rows).anySatisfy(row -> assertThat(row).contains(",fine cut,"));
  }

  /** Reads the growth after warming up off the drawing, by the grid and the letters beside it. */
  @Test
  void theDrawingCanBeReadOff() throws Exception {
    Document drawing =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new ByteArrayInputStream(ran("svg").out().getBytes(StandardCharsets.UTF_8)));
    Element path = withClass(drawing, "path", "grown").get(0);
    double[] last = new double[2];
    for (String point : path.getAttribute("d").substring(1).split("L", -1)) {
      String[] xy = point.split(" ", -1);
      double x = Double.parseDouble(xy[0]);
      // The end of the warm-up, after 721.5 s of the whole.
      double seconds = (x - 76) / 890 * timeline().get("seconds").asDouble();
      if (seconds <= 721.6) {
        last = new double[] {x, Double.parseDouble(xy[1])};
      }
    }
    double zero = gridAt(drawing, "0", last[1]);
    double three = gridAt(drawing, "3", last[1]);
    double um = 9 * StrictMath.pow(0.6, 1.5) * (1 - StrictMath.exp(-721.5 / 360));
    assertThat((zero - last[1]) / (zero - three) * 3).isCloseTo(um, within(0.02));
    // Twice, because the warm-up takes most of the time.
    assertThat(withClass(drawing, "circle", "measure")).hasSize(6);
    assertThat(drawing.getElementsByTagName("title").item(0).getTextContent())
        .isEqualTo("The part left, and the time on the way");
  }

  /** Where the first growth lane has this value. */
  private static double gridAt(Document drawing, String value, double near) {
    double best = Double.NaN;
    for (Element label : withClass(drawing, "text", "quiet")) {
      double y = Double.parseDouble(label.getAttribute("y")) - 4;
      boolean right = Double.parseDouble(label.getAttribute("x")) == 76 + 890 + 6;
      if (right && label.getTextContent().equals(value) && !(Math.abs(best - near) < 170)) {
        best = y;
      }
    }
    return best;
  }

  private static List<Element> withClass(Document drawing, String name, String style) {
    List<Element> found = new ArrayList<>();
    NodeList all = drawing.getElementsByTagName(name);
    for (int k = 0; k < all.getLength(); k++) {
      Element element = (Element) all.item(k);
      if (element.getAttribute("class").equals(style)) {
        found.add(element);
      }
    }
    return found;
  }

  @Test
  void aProgramWithoutKnownTimeHasNothingToDraw() {
    Ran ran = Ran.withInput("G21 G90\nM30\n", "check", "--timeline", "--format=svg", "-");
    assertThat(ran.out()).contains("nothing in it takes a time that is known").endsWith("</svg>\n");
    Ran text = Ran.withInput("G21 G90\nM30\n", "check", "--timeline", "-");
    assertThat(text.out()).contains("timeline  0 s; growth of the spindle not known");
  }

  @Test
  void withoutAskingItIsNotThere() throws IOException {
    Ran ran = Ran.of("check", ONE_RULE, "--format=json", DEMO);
    assertThat(new ObjectMapper().readTree(ran.out()).at("/programs/0").has("timeline")).isFalse();
    assertThat(Ran.of("check", ONE_RULE, DEMO).out()).doesNotContain("timeline");
  }
}

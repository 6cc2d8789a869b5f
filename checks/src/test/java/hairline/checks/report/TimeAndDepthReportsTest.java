package hairline.checks.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import hairline.checks.cutting.Band;
import hairline.checks.finding.ProgramResult;
import hairline.checks.stock.DepthStretch;
import hairline.checks.stock.DepthsShown;
import hairline.checks.timing.Cause;
import hairline.checks.timing.Gap;
import hairline.checks.timing.TimeTaken;
import hairline.checks.warmth.ProgramTimeline;
import hairline.checks.warmth.ProgramTimeline.Cutting;
import hairline.checks.warmth.ProgramTimeline.Kind;
import hairline.checks.warmth.ProgramTimeline.Mark;
import hairline.checks.warmth.ProgramTimeline.Point;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/**
 * What the formats make of the depths along moves and of the time on the way. Times, speeds and
 * depths are made up; where they must come out is done in the head.
 */
class TimeAndDepthReportsTest {
  private static final String SUB = "parts/O7777.nc";

  private static ProgramResult result() {
    return new ProgramResult(
        "parts/mixer.nc",
        List.of("parts/mixer.nc", SUB, SampleRun.HOSTILE + ".nc"),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        "parts/setup.yaml",
        false,
        Map.of(),
        false,
        false,
        false);
  }

  private static CheckedProgram plain() {
    return CheckedProgram.of(result(), Optional.empty());
  }

  private static DepthsShown depths(boolean complete) {
    return new DepthsShown(
        List.of(
            new DepthsShown.Taken(
                SampleRun.at(0, 20, 1, 5),
                List.of(
                    new DepthStretch(0, 0.25, OptionalLong.of(5_000_000)),
                    new DepthStretch(0.25, 0.5, OptionalLong.of(3_000_000)),
                    new DepthStretch(0.5, 0.75, OptionalLong.of(0)))),
            new DepthsShown.Taken(
                SampleRun.at(0, 21, 1, 5),
                List.of(new DepthStretch(0, 1.5, OptionalLong.of(4_000_000)))),
            new DepthsShown.Taken(
                SampleRun.at(1, 3, 1, 5),
                List.of(
                    new DepthStretch(0, 0.125, OptionalLong.empty()),
                    new DepthStretch(0.125, 2, OptionalLong.of(2_500_000))))),
        complete);
  }

  private static Optional<Band> um(double low, double typical, double high) {
    return Optional.of(new Band(low, typical, high));
  }

  private static Point point(double seconds, double rpm, double um, boolean known) {
    OptionalDouble speed = rpm < 0 ? OptionalDouble.empty() : OptionalDouble.of(rpm);
    return new Point(seconds, speed, um(um - 0.5, um, um + 0.5), known);
  }

  /** A hundred seconds: standing, warming up, a change and a measuring, cuts at two speeds. */
  private static ProgramTimeline timeline(boolean growthTold) {
    return new ProgramTimeline(
        TimeTaken.of(100),
        growthTold,
        List.of(
            point(0, 0, 0.5, true),
            point(10, 30_000, 0.5, true),
            point(50, 30_000, 4, true),
            point(50, -1, 4, false),
            point(60, 15_000, 4, false),
            point(100, 15_000, 2, false)),
        List.of(
            new Mark(
                Kind.WARM_UP,
                SampleRun.at(1, 2, 1, 4),
                10,
                50,
                true,
                OptionalInt.empty(),
                Optional.empty()),
            new Mark(
                Kind.TOOL_CHANGE,
                SampleRun.at(0, 9, 1, 6),
                50,
                60,
                false,
                OptionalInt.of(3),
                Optional.empty()),
            new Mark(
                Kind.MEASURING,
                SampleRun.at(2, 4, 1, 4),
                60,
                65,
                false,
                OptionalInt.of(3),
                um(3, 4, 5)),
            new Mark(
                Kind.OPERATOR,
                SampleRun.at(0, 11, 1, 3),
                67,
                67,
                true,
                OptionalInt.empty(),
                Optional.empty())),
        List.of(
            new Cutting(
                SampleRun.at(0, 12, 1, 4),
                SampleRun.at(1, 8, 1, 4),
                70,
                80,
                OptionalInt.of(3),
                um(-0.25, -0.25, -0.25),
                um(-1, -0.75, -0.5))),
        List.of(
            new Cutting(
                SampleRun.at(1, 5, 1, 4),
                SampleRun.at(1, 7, 1, 4),
                85,
                90,
                OptionalInt.empty(),
                Optional.empty(),
                Optional.empty())),
        List.of("3 marks are left out"));
  }

  private static String report(ReportFormat format, CheckedProgram program) {
    return SampleRun.report(format, SampleRun.OPTIONS, List.of(program));
  }

  private static String report(ReportFormat format, CheckedProgram program, boolean verbose) {
    return SampleRun.report(
        format,
        new ReportOptions(
            "1.2.3", Optional.empty(), false, false, verbose, 120, List.of(), Conditions.NONE),
        List.of(program));
  }

  // Depths.

  @Test
  void theTextShowsMovesOfSeveralDepthsAndNamesTheFile() {
    String text = report(ReportFormat.TEXT, plain().withDepths(Optional.of(depths(true))));
    assertThat(text)
        .contains("3 moves take material, 2 of them more than one depth along the path")
        .containsPattern("\n +line +from mm +to mm +depth µm\n")
        .containsPattern("\n +20 +0\\.0000 +0\\.2500 +5\n")
        .containsPattern("\n +20 +0\\.2500 +0\\.5000 +3\n")
        .containsPattern("\n +20 +0\\.5000 +0\\.7500 +0\n")
        .containsPattern("\n +3 of parts/O7777\\.nc +0\\.0000 +0\\.1250 +top not known\n")
        .containsPattern("\n +3 of parts/O7777\\.nc +0\\.1250 +2\\.0000 +2\\.5\n")
        .doesNotContainPattern("\n +21 ")
        .doesNotContain("left out");
    assertThat(report(ReportFormat.TEXT, plain().withDepths(Optional.of(depths(true))), true))
        .as("the whole report has the others too")
        .containsPattern("\n +21 +0\\.0000 +1\\.5000 +4\n");
  }

  @Test
  void theTextSaysWhereDepthsAreLeftOut() {
    assertThat(report(ReportFormat.TEXT, plain().withDepths(Optional.of(depths(false)))))
        .contains("left out  what lies beyond 200000 stretches");
    DepthsShown one = new DepthsShown(depths(true).moves().subList(1, 2), true);
    assertThat(report(ReportFormat.TEXT, plain().withDepths(Optional.of(one))))
        .contains("1 move takes material, 0 of them")
        .doesNotContain("from mm");
    DepthsShown.Taken two = depths(true).moves().get(0);
    DepthsShown many = new DepthsShown(Collections.nCopies(21, two), true);
    // 63 rows, of which 60 are shown.
    String text = report(ReportFormat.TEXT, plain().withDepths(Optional.of(many)));
    assertThat(text).contains("…  3 more; --verbose lists them all");
    assertThat(text.lines().filter(line -> line.matches(" +20 +0\\..*"))).hasSize(60);
    DepthsShown just = new DepthsShown(Collections.nCopies(20, two), true);
    assertThat(report(ReportFormat.TEXT, plain().withDepths(Optional.of(just))))
        .doesNotContain("more; --verbose");
    assertThat(report(ReportFormat.TEXT, plain().withDepths(Optional.of(many)), true))
        .doesNotContain("more; --verbose");
  }

  @Test
  void theTableOfDepthsKeepsTheFileBesideWhatIsNotKnown() {
    String[] rows =
        report(ReportFormat.CSV, plain().withDepths(Optional.of(depths(false)))).split("\r\n");
    assertThat(rows).hasSize(8);
    List<Map<String, String>> read = read(rows);
    assertThat(read.get(1))
        .containsEntry("kind", "depth")
        .containsEntry("line", "20")
        .containsEntry("distance_mm", "0.25")
        .containsEntry("distance_to_mm", "0.5")
        .containsEntry("depth_um", "3")
        .containsEntry("file", "")
        .containsEntry("note", "");
    assertThat(read.get(4))
        .containsEntry("line", "3")
        .containsEntry("depth_um", "")
        .containsEntry("file", SUB)
        .containsEntry("note", "top not known");
    assertThat(read.get(5)).containsEntry("depth_um", "2.5").containsEntry("file", SUB);
    assertThat(read.get(6)).containsEntry("note", "the rest is left out: too many stretches");
    assertThat(report(ReportFormat.CSV, plain().withDepths(Optional.of(depths(true)))))
        .doesNotContain("the rest is left out");
  }

  @Test
  void theJsonOfDepthsHasTheFileWhereItIsAnother() throws Exception {
    JsonNode program = json(plain().withDepths(Optional.of(depths(false))));
    assertThat(program.get("depthsComplete").asBoolean()).isFalse();
    assertThat(program.get("depths")).hasSize(6);
    assertThat(program.get("depths").get(1).toString())
        .isEqualTo("{\"line\":20,\"fromMm\":0.25,\"toMm\":0.5,\"depthUm\":3}");
    assertThat(program.get("depths").get(4).toString())
        .isEqualTo(
            "{\"file\":\"parts/O7777.nc\",\"line\":3,\"fromMm\":0,\"toMm\":0.125,"
                + "\"depthUm\":null}");
    assertThat(
            json(plain().withDepths(Optional.of(depths(true)))).get("depthsComplete").asBoolean())
        .isTrue();
  }

  // Time.

  @Test
  void theRowsOfTimeNameTheFileOfASubprogram() {
    String text =
        report(ReportFormat.TEXT, plain().withTimeline(Optional.of(timeline(true))), true);
    assertThat(text)
        .contains("timeline  1.67 min\n")
        .contains("3 marks are left out")
        .containsPattern("0:00.0 +0:10.0 +0 .*spindle stands\n")
        .containsPattern("0:10.0 +0:50.0 +30000 .*warm-up, line 2 of parts/O7777.nc\n")
        .containsPattern("0:50.0 +1:00.0 +\\? .*speed not known\n")
        .containsPattern("0:50.0 .*tool change T3, line 9, for a time that is not known\n")
        .containsPattern("1:00.0 +1:05.0 +15000 .*measuring T3, line 4 of ␛.*, for a time that")
        .containsPattern("1:07.0 +1:07.0 .*stop for the operator, line 11\n")
        .containsPattern("1:10.0 +1:20.0 .*fine cuts T3, line 12 to line 8 of parts/O7777.nc\n")
        .containsPattern("\n +since measuring -0.250 to -1.000…-0.500 µm\n")
        .containsPattern("1:25.0 +1:30.0 .*cuts, lines 5 to 7 of parts/O7777.nc\n");
  }

  /** A letter stands for the hundredth part of 96 in 100 s: 1.04 s. */
  @Test
  void theLanesStandUnderEachOther() {
    String text =
        report(ReportFormat.TEXT, plain().withTimeline(Optional.of(timeline(true))), true);
    String speed = lane(text, "speed");
    // Standing for 10 s, 30000 for 40 s, not known for 10 s, 15000 for 40 s.
    assertThat(speed).matches("·{9}█{39}\\?{10}▄{38}  up to 30000 rpm");
    String growth = lane(text, "growth");
    assertThat(growth).endsWith("  up to 4 µm");
    // 0.5 of 4 µm is an eighth, 4 of 4 the whole, and half of it is left at the end.
    assertThat(growth).startsWith("▁".repeat(9)).contains("█").matches(".{95}▅.*");
    String marks = lane(text, "tool");
    // From 10 s on, 9.6 letters; to 50 s, 48; the change to 60 s, 57.6; the measuring to 65 s,
    // 62.4;
    // the stop at 67 s stands at 64.3.
    assertThat(marks).isEqualTo(" ".repeat(9) + "W".repeat(39) + "T".repeat(9) + "M".repeat(6));
    assertThat(lane(text, "stops")).isEqualTo(" ".repeat(64) + "S");
    String cuts = lane(text, "cuts");
    assertThat(cuts).isEqualTo(" ".repeat(67) + "█".repeat(10) + " ".repeat(4) + "░".repeat(6));
    assertThat(text).containsPattern("\n +0 {87}1\\.67 min\n");
    assertThat(report(ReportFormat.TEXT, plain().withTimeline(Optional.of(timeline(false))), true))
        .contains("growth of the spindle not known")
        .doesNotContainPattern("\n +growth {2}");
  }

  private static String lane(String text, String name) {
    return text.lines()
        .filter(line -> line.strip().startsWith(name + " "))
        .map(line -> line.substring(line.indexOf(name) + 8))
        .map(String::stripTrailing)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void theTableOfTimeKeepsTheFileBesideAnUnknownDuration() {
    String csv = report(ReportFormat.CSV, plain().withTimeline(Optional.of(timeline(true))));
    List<Map<String, String>> rows = read(csv.split("\r\n"));
    assertThat(rows).hasSize(6 + 4 + 2 + 1);
    assertThat(rows.get(1))
        .containsEntry("kind", "spindle")
        .containsEntry("from_s", "10")
        .containsEntry("speed_rpm", "30000")
        .containsEntry("growth_low_um", "0")
        .containsEntry("growth_um", "0.5")
        .containsEntry("growth_high_um", "1")
        .containsEntry("note", "");
    assertThat(rows.get(3))
        .containsEntry("speed_rpm", "")
        .containsEntry("note", "growth within bounds");
    assertThat(rows.get(6))
        .containsEntry("kind", "warm-up")
        .containsEntry("from_s", "10")
        .containsEntry("to_s", "50")
        .containsEntry("tool", "")
        .containsEntry("line", "2")
        .containsEntry("growth_um", "")
        .containsEntry("file", SUB)
        .containsEntry("note", "");
    assertThat(rows.get(7)).containsEntry("tool", "3").containsEntry("note", "duration not known");
    assertThat(rows.get(8))
        .containsEntry("growth_um", "4")
        .containsEntry("note", "duration not known")
        .hasEntrySatisfying("file", file -> assertThat(file).contains("quoted"));
    assertThat(rows.get(10))
        .containsEntry("kind", "fine cut")
        .containsEntry("from_s", "70")
        .containsEntry("to_s", "80")
        .containsEntry("tool", "3")
        .containsEntry("line", "12")
        .containsEntry("drift_from_um", "-0.25")
        .containsEntry("drift_to_um", "-0.75");
    assertThat(rows.get(11))
        .containsEntry("kind", "other cut")
        .containsEntry("tool", "")
        .containsEntry("drift_from_um", "")
        .containsEntry("file", SUB);
    assertThat(rows.get(12))
        .containsEntry("kind", "timeline")
        .containsEntry("note", "3 marks are left out");
    assertThat(report(ReportFormat.CSV, plain().withTimeline(Optional.of(timeline(false)))))
        .as("where growth is not told at all it is no matter of bounds")
        .doesNotContain("growth within bounds");
  }

  private static List<Map<String, String>> read(String[] rows) {
    List<String> heading = List.of(rows[0].split(",", -1));
    List<Map<String, String>> read = new ArrayList<>();
    for (int k = 1; k < rows.length; k++) {
      // A quoted field holds the only commas that are no border; none is left in these but that
      // of hostile names.
      String[] fields = rows[k].replaceAll("\"[^\"]*\"", "quoted").split(",", -1);
      assertThat(fields).hasSize(heading.size());
      Map<String, String> row = new java.util.HashMap<>();
      for (int f = 0; f < fields.length; f++) {
        row.put(heading.get(f), fields[f]);
      }
      read.add(row);
    }
    return read;
  }

  @Test
  void theJsonOfTimeHasAllOfIt() throws Exception {
    JsonNode told = json(plain().withTimeline(Optional.of(timeline(true)))).get("timeline");
    assertThat(told.get("seconds").asDouble()).isEqualTo(100);
    assertThat(told.get("secondsKnown").asBoolean()).isTrue();
    assertThat(told.get("points")).hasSize(6);
    assertThat(told.get("points").get(1).toString())
        .isEqualTo(
            "{\"seconds\":10,\"rpm\":30000,"
                + "\"growthUm\":{\"low\":0,\"typical\":0.5,\"high\":1},\"known\":true}");
    assertThat(told.get("points").get(3).has("rpm")).isFalse();
    assertThat(told.get("points").get(3).get("known").asBoolean()).isFalse();
    assertThat(told.get("marks").get(0).toString())
        .isEqualTo(
            "{\"kind\":\"warm-up\",\"at\":{\"file\":\"parts/O7777.nc\",\"line\":2},"
                + "\"fromSeconds\":10,\"toSeconds\":50,\"known\":true}");
    assertThat(told.get("marks").get(2).get("tool").asInt()).isEqualTo(3);
    assertThat(told.get("marks").get(2).get("growthUm").get("high").asDouble()).isEqualTo(5);
    assertThat(told.get("fineCuts").get(0).toString())
        .isEqualTo(
            "{\"first\":{\"file\":\"parts/mixer.nc\",\"line\":12},"
                + "\"last\":{\"file\":\"parts/O7777.nc\",\"line\":8},"
                + "\"fromSeconds\":70,\"toSeconds\":80,\"tool\":3,"
                + "\"driftAtStartUm\":{\"low\":-0.25,\"typical\":-0.25,\"high\":-0.25},"
                + "\"driftAtEndUm\":{\"low\":-1,\"typical\":-0.75,\"high\":-0.5}}");
    assertThat(told.get("otherCuts").get(0).has("driftAtEndUm")).isFalse();
    assertThat(told.get("notes").get(0).asText()).isEqualTo("3 marks are left out");
  }

  private static JsonNode json(CheckedProgram program) throws Exception {
    String text = report(ReportFormat.JSON, program);
    String schema =
        new String(
            JsonReport.class.getResourceAsStream("report.schema.json").readAllBytes(),
            StandardCharsets.UTF_8);
    assertThat(
            SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(SchemaLocation.of("urn:hairline:report:1"), schema, InputFormat.JSON)
                .validate(text, InputFormat.JSON))
        .isEmpty();
    return new ObjectMapper().readTree(text).get("programs").get(0);
  }

  @Test
  void theDrawingOfTimeIsToScaleAndNamesTheFile() throws Exception {
    Document drawing = xml(plain().withTimeline(Optional.of(timeline(true))));
    List<Element> warm = boxes(drawing, "warm");
    // 890 pixels for 100 s from x = 76 on; the second box is that of the legend.
    assertThat(warm).hasSize(2);
    assertThat(number(warm.get(0), "x")).isEqualTo(76 + 89);
    assertThat(number(warm.get(0), "width")).isEqualTo(356);
    assertThat(title(warm.get(0))).isEqualTo("warm-up, line 2 of parts/O7777.nc, 0:10.0 to 0:50.0");
    Element fine = boxes(drawing, "fine").get(0);
    assertThat(number(fine, "x")).isEqualTo(76 + 623);
    assertThat(number(fine, "width")).isEqualTo(89);
    assertThat(title(fine))
        .isEqualTo(
            "fine cuts T3, line 12 to line 8 of parts/O7777.nc;"
                + " since measuring -0.250 to -1.000…-0.500 µm");
    assertThat(title(boxes(drawing, "other").get(0)))
        .isEqualTo("other cuts, lines 5 to 7 of parts/O7777.nc");
    // From the change's end to the end of the program.
    Element tool =
        boxes(drawing, "turns").stream()
            .filter(e -> title(e).equals("T3"))
            .findFirst()
            .orElseThrow();
    assertThat(number(tool, "x")).isEqualTo(76 + 534);
    assertThat(number(tool, "width")).isEqualTo(356);
    assertThat(texts(drawing))
        .contains("parts/mixer.nc, along its time", "sheet: parts/setup.yaml", "1.67 min")
        .contains("3 marks are left out", "growth, typical", "as measured")
        .contains("middle of the bounds, where times or speeds before are not known");
  }

  /**
   * A program whose first measuring comes late, so that the rest is drawn once more; with cuts that
   * are told as one, and others that are not, because of a stop, a speed or a tool.
   */
  private static ProgramTimeline late() {
    List<Point> points =
        List.of(
            point(0, 0, 0, true),
            point(2, 20_000, 0, true),
            point(902, 20_000, 5, true),
            point(910, 40_000, 5, true),
            point(1000, 40_000, 7.5, true),
            point(1000, -1, 7.5, false),
            point(1010, 30_000, 7.5, false),
            point(1200, 30_000, -1.5, false));
    List<Mark> marks =
        List.of(
            mark(Kind.WARM_UP, 6, 2, 902, 0),
            mark(Kind.TOOL_CHANGE, 7, 902, 906, 3),
            mark(Kind.MEASURING, 8, 906, 910, 3),
            mark(Kind.OPERATOR, 14, 950, 950, 0),
            mark(Kind.TOOL_CHANGE, 17, 1000, 1004, 5),
            mark(Kind.MEASURING, 18, 1004, 1010, 5));
    List<Cutting> fine =
        List.of(
            cutting(10, 912, 920, 3, 0.1),
            cutting(12, 920.5, 940, 3, 0.5),
            cutting(15, 951, 980, 3, 1.5),
            cutting(19, 1011, 1100, 5, -3),
            cutting(21, 1100, 1150, 5, -5),
            cutting(23, 1151, 1160, 3, 2));
    List<Cutting> other = List.of(cutting(9, 910.25, 911, 3, 0), cutting(20, 1170, 1200, 0, 0));
    return new ProgramTimeline(TimeTaken.of(1200), true, points, marks, fine, other, List.of());
  }

  private static Mark mark(Kind kind, int line, double from, double to, int tool) {
    return new Mark(
        kind,
        SampleRun.at(0, line, 1, 4),
        from,
        to,
        true,
        tool == 0 ? OptionalInt.empty() : OptionalInt.of(tool),
        kind == Kind.MEASURING ? um(4.5, 5, 5.5) : Optional.empty());
  }

  private static Cutting cutting(int line, double from, double to, int tool, double drift) {
    return new Cutting(
        SampleRun.at(0, line, 1, 4),
        SampleRun.at(0, line + 1, 1, 4),
        from,
        to,
        tool == 0 ? OptionalInt.empty() : OptionalInt.of(tool),
        um(drift - 0.25, drift, drift + 0.25),
        um(drift - 0.25, drift, drift + 0.25));
  }

  @ParameterizedTest
  @EnumSource(
      value = ReportFormat.class,
      names = {"TEXT", "SVG"})
  void looksAsKept(ReportFormat format) {
    CheckedProgram program =
        plain().withTimeline(Optional.of(late())).withDepths(Optional.of(depths(false)));
    Golden.check("time." + format, report(format, program));
  }

  @Test
  void cutsWithNothingBetweenAreOneRow() {
    assertThat(report(ReportFormat.TEXT, plain().withTimeline(Optional.of(late()))))
        .contains("fine cuts T3, lines 10 to 13\n")
        .contains("fine cuts T3, lines 15 to 16\n")
        .contains("fine cuts T5, lines 19 to 22\n")
        .contains("fine cuts T3, lines 23 to 24\n")
        .contains("since measuring -0.150…0.350 to 0.250…0.750 µm")
        .contains("cuts T3, lines 9 to 10\n", "cuts, lines 20 to 21\n");
  }

  @Test
  void onlySixtyRowsOfTimeAreShown() {
    List<Mark> marks = new ArrayList<>();
    for (int k = 0; k < 59; k++) {
      marks.add(mark(Kind.OPERATOR, k + 1, k, k, 0));
    }
    ProgramTimeline sixty =
        new ProgramTimeline(
            TimeTaken.of(100),
            false,
            List.of(point(0, 100, 0, true)),
            marks,
            List.of(),
            List.of(),
            List.of());
    assertThat(report(ReportFormat.TEXT, plain().withTimeline(Optional.of(sixty))))
        .contains("spindle turns", "operator, line 59")
        .doesNotContain("more; --verbose");
    marks.add(mark(Kind.OPERATOR, 60, 70, 70, 0));
    marks.add(mark(Kind.OPERATOR, 61, 71, 71, 0));
    ProgramTimeline more =
        new ProgramTimeline(
            TimeTaken.of(100), false, sixty.points(), marks, List.of(), List.of(), List.of());
    assertThat(report(ReportFormat.TEXT, plain().withTimeline(Optional.of(more))))
        .contains("…  2 more; --verbose lists them all")
        .doesNotContain("operator, line 60");
    assertThat(report(ReportFormat.TEXT, plain().withTimeline(Optional.of(more)), true))
        .contains("operator, line 61")
        .doesNotContain("more; --verbose");
  }

  @Test
  void manyTimesAreCountedAndNotDrawn() throws Exception {
    CheckedProgram one = plain().withTimeline(Optional.of(timeline(false)));
    // Two drawings each: "nothing to draw" for the part, and the time.
    String text =
        SampleRun.report(
            ReportFormat.SVG, SampleRun.OPTIONS, new ArrayList<>(Collections.nCopies(13, one)));
    Document drawing = parse(text);
    assertThat(texts(drawing).stream().filter(t -> t.endsWith(", along its time"))).hasSize(12);
    assertThat(texts(drawing)).anyMatch(t -> t.startsWith("2 more drawings not drawn. "));
    String twelve =
        SampleRun.report(
            ReportFormat.SVG, SampleRun.OPTIONS, new ArrayList<>(Collections.nCopies(12, one)));
    assertThat(twelve).doesNotContain("not drawn");
    // No drawing begins above the end of the one before it.
    double last = 0;
    for (String part : twelve.split("class=\"name\"", -1)) {
      java.util.regex.Matcher y =
          java.util.regex.Pattern.compile(" y=\"([0-9.]+)\"[^>]*$").matcher(part);
      if (y.find()) {
        double at = Double.parseDouble(y.group(1));
        assertThat(at).isGreaterThan(last);
        last = at;
      }
    }
    assertThat(Double.parseDouble(parse(twelve).getDocumentElement().getAttribute("height")))
        .isGreaterThan(last);
  }

  @Test
  void aTimeWithGapsIsAtLeastSoLong() {
    ProgramTimeline timeline = timeline(true);
    ProgramTimeline unknown =
        new ProgramTimeline(
            new TimeTaken(
                100,
                Double.POSITIVE_INFINITY,
                List.of(new Gap(SampleRun.at(0, 11, 1, 3), Cause.OPERATOR))),
            true,
            timeline.points(),
            timeline.marks(),
            List.of(),
            List.of(),
            List.of());
    assertThat(report(ReportFormat.TEXT, plain().withTimeline(Optional.of(unknown))))
        .contains("timeline  at least 1.67 min");
  }

  private static Document xml(CheckedProgram program) throws Exception {
    return parse(report(ReportFormat.SVG, program));
  }

  private static Document parse(String text) throws Exception {
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
  }

  private static List<Element> boxes(Document drawing, String style) {
    List<Element> found = new ArrayList<>();
    NodeList all = drawing.getElementsByTagName("rect");
    for (int k = 0; k < all.getLength(); k++) {
      Element element = (Element) all.item(k);
      if (element.getAttribute("class").equals(style)) {
        found.add(element);
      }
    }
    return found;
  }

  private static double number(Element element, String name) {
    return Double.parseDouble(element.getAttribute(name));
  }

  private static String title(Element element) {
    return element.getElementsByTagName("title").item(0).getTextContent();
  }

  private static List<String> texts(Document drawing) {
    List<String> texts = new ArrayList<>();
    NodeList nodes = drawing.getElementsByTagName("text");
    for (int k = 0; k < nodes.getLength(); k++) {
      texts.add(nodes.item(k).getTextContent());
    }
    return texts;
  }
}

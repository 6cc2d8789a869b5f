package hairline.checks.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import hairline.checks.finding.Finding;
import hairline.checks.finding.Level;
import hairline.checks.finding.Occurrence;
import hairline.checks.finding.ProgramResult;
import hairline.checks.finding.ProgramResult.SourceLine;
import hairline.checks.rules.RuleInfo;
import hairline.checks.rules.Rules;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** What every format makes of one run: kept copies, schemas, hostile text. */
class ReportsTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  private static String text(ReportFormat format) {
    return SampleRun.report(format, SampleRun.OPTIONS, SampleRun.all());
  }

  private static ReportOptions options(boolean colour, boolean quiet, List<String> rules) {
    return new ReportOptions(
        "1.2.3", Optional.of(Level.WARNING), colour, quiet, false, 100, rules, Conditions.NONE);
  }

  @ParameterizedTest
  @EnumSource(ReportFormat.class)
  void looksAsKept(ReportFormat format) {
    Golden.check("run." + format, text(format));
  }

  @Test
  void theTextReportHasAQuietAndAColouredForm() {
    Golden.check(
        "run.quiet",
        SampleRun.report(ReportFormat.TEXT, options(false, true, List.of()), SampleRun.all()));
    String coloured =
        SampleRun.report(ReportFormat.TEXT, options(true, false, List.of()), SampleRun.all());
    assertThat(coloured.replaceAll("\u001b\\[[0-9;]*m", ""))
        .as("colour adds nothing but colour")
        .isEqualTo(text(ReportFormat.TEXT));
  }

  @ParameterizedTest
  @EnumSource(ReportFormat.class)
  void letsNothingOutThatSteersOrHides(ReportFormat format) {
    // RFC 4180 ends lines by CR and LF.
    String text = text(format);
    (format == ReportFormat.CSV ? text.replace("\r\n", "\n") : text)
        .codePoints()
        .filter(c -> c != '\n')
        .forEach(c -> assertThat(Visible.isHarmless(c)).as("U+%04X", c).isTrue());
  }

  private static Schema schema(SpecificationVersion version, String id, InputStream text)
      throws Exception {
    return SchemaRegistry.withDefaultDialect(version)
        .getSchema(
            SchemaLocation.of(id),
            new String(text.readAllBytes(), StandardCharsets.UTF_8),
            InputFormat.JSON);
  }

  private static Schema reportSchema() throws Exception {
    return schema(
        SpecificationVersion.DRAFT_2020_12,
        "urn:hairline:report:1",
        JsonReport.class.getResourceAsStream("report.schema.json"));
  }

  private static Schema sarifSchema() throws Exception {
    return schema(
        SpecificationVersion.DRAFT_7,
        "urn:oasis:sarif:2.1.0",
        ReportsTest.class.getResourceAsStream("sarif-schema-2.1.0.json"));
  }

  @Test
  void theJsonReportIsAsItsSchemaHasIt() throws Exception {
    assertThat(reportSchema().validate(text(ReportFormat.JSON), InputFormat.JSON)).isEmpty();
    assertThat(
            reportSchema()
                .validate(text(ReportFormat.JSON).replace("\"line\"", "\"row\""), InputFormat.JSON))
        .as("the schema can tell")
        .isNotEmpty();
  }

  @Test
  void theJsonReportKeepsTextAsItWas() throws Exception {
    JsonNode program = JSON.readTree(text(ReportFormat.JSON)).get("programs").get(3);
    assertThat(program.get("name").asText()).isEqualTo(SampleRun.HOSTILE + ".nc");
  }

  @Test
  void theSarifReportIsAsOasisHasIt() throws Exception {
    List<String> rules = Rules.all().stream().map(rule -> rule.info().name()).toList();
    String whole =
        SampleRun.report(ReportFormat.SARIF, options(false, false, rules), SampleRun.all());
    assertThat(sarifSchema().validate(whole, InputFormat.JSON)).isEmpty();
    assertThat(sarifSchema().validate(whole.replace("\"ruleId\"", "\"rule\""), InputFormat.JSON))
        .as("the schema can tell")
        .isNotEmpty();
    JsonNode driver = JSON.readTree(whole).get("runs").get(0).get("tool").get("driver");
    assertThat(driver.get("rules")).hasSize(rules.size());
    for (JsonNode rule : driver.get("rules")) {
      assertThat(rule.get("help").get("markdown").asText())
          .startsWith("# " + rule.get("id").asText());
    }
  }

  /** SARIF 2.1.0, 3.49 (reportingDescriptor), 3.52.4 (ruleIndex). */
  @Test
  void sarifRulesAreDescribedAndResultsPointAtThem() throws Exception {
    List<String> rules = Rules.all().stream().map(rule -> rule.info().name()).toList();
    String whole =
        SampleRun.report(ReportFormat.SARIF, options(false, false, rules), SampleRun.all());
    JsonNode run = JSON.readTree(whole).get("runs").get(0);
    JsonNode described = run.get("tool").get("driver").get("rules");
    for (int k = 0; k < rules.size(); k++) {
      RuleInfo info = Rules.all().get(k).info();
      JsonNode rule = described.get(k);
      assertThat(rule.get("id").asText()).isEqualTo(info.name());
      assertThat(rule.get("shortDescription").get("text").asText()).isEqualTo(info.summary());
      assertThat(rule.get("fullDescription").get("text").asText()).isNotBlank();
      assertThat(rule.get("defaultConfiguration").get("level").asText())
          .isEqualTo(info.level().word());
      assertThat(rule.get("properties").get("tags").get(0).asText())
          .isEqualTo(info.group().name().toLowerCase(Locale.ROOT));
    }
    for (JsonNode result : run.get("results")) {
      assertThat(rules.get(result.get("ruleIndex").asInt()))
          .isEqualTo(result.get("ruleId").asText());
    }
    // Of rules that were not asked nothing is described.
    JsonNode one =
        JSON.readTree(
                SampleRun.report(
                    ReportFormat.SARIF, options(false, false, List.of("syntax")), SampleRun.all()))
            .get("runs")
            .get(0);
    assertThat(one.get("tool").get("driver").get("rules")).hasSize(1);
    assertThat(one.get("results").get(0).get("ruleId").asText()).isEqualTo("chip-below-minimum");
    assertThat(one.get("results").get(0).has("ruleIndex")).isFalse();
  }

  private static JsonNode sarif(List<CheckedProgram> programs, int exitStatus) throws Exception {
    java.io.ByteArrayOutputStream out = new java.io.ByteArrayOutputStream();
    ReportWriter writer = ReportFormat.SARIF.writer(out, SampleRun.OPTIONS);
    writer.begin();
    for (CheckedProgram program : programs) {
      writer.program(program);
    }
    writer.end(new Verdict(1, 0, 0, 0, 0, 0, 0, 0, exitStatus));
    return JSON.readTree(out.toByteArray()).get("runs").get(0).get("invocations").get(0);
  }

  /** SARIF 2.1.0, 3.20.14: false where the tool could not do its work. */
  @Test
  void sarifSaysWhetherTheRunWasAWholeOne() throws Exception {
    for (int status = 0; status <= 4; status++) {
      JsonNode invocation = sarif(List.of(), status);
      assertThat(invocation.get("exitCode").asInt()).isEqualTo(status);
      assertThat(invocation.get("executionSuccessful").asBoolean()).isEqualTo(status < 2);
    }
  }

  @Test
  void sarifCountsNotificationsThatItLeavesOut() throws Exception {
    List<CheckedProgram> many = java.util.Collections.nCopies(1000, SampleRun.gone());
    JsonNode just = sarif(many, 3).get("toolExecutionNotifications");
    assertThat(just).hasSize(1001);
    assertThat(just.get(0).get("message").get("text").asText())
        .isEqualTo("[input-missing] `gone.nc` does not exist; check the name");
    List<CheckedProgram> more = new ArrayList<>(many);
    more.addAll(many.subList(0, 2));
    JsonNode left = sarif(more, 3).get("toolExecutionNotifications");
    assertThat(left).hasSize(1002);
    assertThat(left.get(1000).get("message").get("text").asText())
        .isEqualTo("2 more notifications are left out");
  }

  @Test
  void junitHasACaseForEachRuleThatWasAsked() {
    String text =
        SampleRun.report(
            ReportFormat.JUNIT,
            options(false, false, List.of("end-missing", "chip-below-minimum")),
            List.of(SampleRun.embedded()));
    assertThat(text)
        .contains("<testcase classname=\"plain.nc\" name=\"read\"/>\n")
        .contains("<testcase classname=\"plain.nc\" name=\"end-missing\"/>\n")
        .contains("<testcase classname=\"plain.nc\" name=\"chip-below-minimum\"/>\n")
        .contains("tests=\"5\" failures=\"0\" errors=\"0\" skipped=\"2\"");
  }

  @Test
  void sarifPlacesAreCodePointsAndRelativeUris() throws Exception {
    JsonNode run = JSON.readTree(text(ReportFormat.SARIF)).get("runs").get(0);
    assertThat(run.get("columnKind").asText()).isEqualTo("unicodeCodePoints");
    JsonNode location = run.get("results").get(0).get("locations").get(0).get("physicalLocation");
    assertThat(location.get("artifactLocation").get("uri").asText())
        .isEqualTo("parts/mixer%20insert.nc");
    JsonNode region = location.get("region");
    assertThat(region.get("startColumn").asInt()).isEqualTo(14);
    assertThat(region.get("snippet").get("text").asText()).isEqualTo("Y3.14");
    assertThat(Uris.of("a:b?#é.nc")).isEqualTo("a%3Ab%3F%23%C3%A9.nc");
    assertThat(Uris.of("/tmp/a b.nc")).isEqualTo("file:///tmp/a%20b.nc");
  }

  @Test
  void sarifSuppressesWhatIsAcceptedAndSaysWhatIsOpen() throws Exception {
    JsonNode results = JSON.readTree(text(ReportFormat.SARIF)).get("runs").get(0).get("results");
    List<String> accepted = new ArrayList<>();
    List<String> open = new ArrayList<>();
    for (JsonNode result : results) {
      if (result.has("suppressions")) {
        accepted.add(result.get("suppressions").get(0).get("justification").asText());
      }
      if (result.has("kind")) {
        open.add(result.get("ruleId").asText());
        assertThat(result.get("level").asText()).isEqualTo("none");
      }
    }
    assertThat(accepted).containsExactly("burnishing pass");
    assertThat(open)
        .containsExactly(
            "runout-exceeds-feed",
            "chip-below-minimum",
            "outside-travel",
            "flex-exceeds-step",
            "step-below-smallest",
            "syntax");
  }

  private static Finding finding(int line, String cause) {
    Occurrence occurrence =
        Occurrence.of("syntax", Level.ERROR, SampleRun.at(0, line, 1, 2), "m").cause(cause).build();
    return new Finding(
        occurrence, occurrence, 1, occurrence.at(), Finding.BlockDelete.BOTH, Optional.empty());
  }

  private static ProgramResult result(List<Finding> findings, Map<SourceLine, String> excerpts) {
    return new ProgramResult(
        "a.nc",
        List.of("a.nc"),
        findings,
        List.of(),
        List.of(),
        List.of(),
        "s",
        false,
        excerpts,
        false,
        false,
        false);
  }

  @Test
  void aFingerprintOutlivesInsertedLinesAndNewNumbers() {
    String before =
        new Fingerprints(result(List.of(), Map.of(new SourceLine(0, 7), "N70 G1 X1.5")))
            .of(finding(7, "c"));
    String after =
        new Fingerprints(result(List.of(), Map.of(new SourceLine(0, 9), "N90  g1X1.5")))
            .of(finding(9, "c"));
    assertThat(after).isEqualTo(before).hasSize(32);
    String other =
        new Fingerprints(result(List.of(), Map.of(new SourceLine(0, 9), "N90 G1 X1.6")))
            .of(finding(9, "c"));
    assertThat(other).isNotEqualTo(before);
    Fingerprints twice = new Fingerprints(result(List.of(), Map.of()));
    assertThat(twice.of(finding(1, "c"))).isNotEqualTo(twice.of(finding(2, "c")));
  }

  @Test
  void sarifEndsAtTheNumberOfResultsThatReadersTake() throws Exception {
    List<Finding> many = new ArrayList<>();
    for (int line = 1; line <= SarifReport.MOST_RESULTS + 3; line++) {
      many.add(finding(line, ""));
    }
    CheckedProgram program = CheckedProgram.of(result(many, Map.of()), Optional.empty());
    JsonNode run =
        JSON.readTree(SampleRun.report(ReportFormat.SARIF, SampleRun.OPTIONS, List.of(program)))
            .get("runs")
            .get(0);
    assertThat(run.get("results")).hasSize(SarifReport.MOST_RESULTS);
    assertThat(run.get("invocations").toString()).contains("3 results are left out");
  }

  @Test
  void theJunitReportIsXmlAndCountsRight() throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
    Document document =
        factory
            .newDocumentBuilder()
            .parse(
                new ByteArrayInputStream(
                    text(ReportFormat.JUNIT).getBytes(StandardCharsets.UTF_8)));
    NodeList suites = document.getElementsByTagName("testsuite");
    assertThat(suites.getLength()).isEqualTo(4);
    for (int i = 0; i < suites.getLength(); i++) {
      Element suite = (Element) suites.item(i);
      assertThat(suite.getAttribute("tests"))
          .isEqualTo("" + suite.getElementsByTagName("testcase").getLength());
      assertThat(suite.getAttribute("errors"))
          .isEqualTo("" + suite.getElementsByTagName("error").getLength());
      assertThat(suite.getAttribute("skipped"))
          .isEqualTo("" + suite.getElementsByTagName("skipped").getLength());
    }
    assertThat(((Element) suites.item(1)).getAttribute("failures")).isEqualTo("2");
  }

  @Test
  void numbersAreTheSameOnEveryJava() throws Exception {
    // What Double.toString makes of some doubles changed with Java 19 (JDK-4511638).
    java.io.ByteArrayOutputStream out = new java.io.ByteArrayOutputStream();
    var json = JsonText.to(out);
    json.writeStartObject();
    JsonText.number(json, "a", 2.0E-3);
    JsonText.number(json, "b", Double.parseDouble("2.0E23"));
    JsonText.number(json, "c", 0.1 + 0.2);
    JsonText.number(json, "d", Double.NaN);
    json.writeEndObject();
    json.flush();
    assertThat(out.toString(StandardCharsets.UTF_8))
        .contains("0.002,", "200000000000000000000000,", "0.3,", "null");
  }
}

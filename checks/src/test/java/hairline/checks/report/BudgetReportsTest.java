package hairline.checks.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import hairline.checks.budget.BudgetedStep;
import hairline.checks.budget.Missing;
import hairline.checks.budget.Part;
import hairline.checks.budget.Source;
import hairline.checks.budget.StepBudget;
import hairline.checks.budget.Uncertainty.Contribution;
import hairline.checks.cutting.Band;
import hairline.checks.finding.Finding.BlockDelete;
import hairline.checks.finding.ProgramResult;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What the formats make of error budgets. */
class BudgetReportsTest {
  private static final double ROOT_2 = StrictMath.sqrt(2);

  private static StepBudget budget(
      String feature, int line, double settingUm, List<Missing> missing, OptionalDouble gaugeUm) {
    List<Part> parts =
        new ArrayList<>(
            List.of(
                new Part.Known(Source.ROUNDING, 0, "stored 4 µm, declared 4 µm"),
                new Part.Drift(
                    Source.GROWTH, new Band(-0.05, -0.04, -0.02), "between the levels " + feature),
                new Part.Drift(Source.TILT, Band.ofExact(0.125), "lower floor 0.225 µm too deep"),
                new Part.Random(
                    Source.REPEATABILITY, new Contribution(0.1, ROOT_2), "2 × 0.4 µm / 4 × √2"),
                new Part.Random(
                    Source.SETTING, new Contribution(settingUm, 1, 4), "2 × U / 2 (once)")));
    if (line > 90) {
      parts.add(new Part.DriftEitherWay(Source.REVERSAL, 0.5, "from above and from below"));
    }
    return new StepBudget(
        new BudgetedStep(
            feature.isEmpty() ? Optional.empty() : Optional.of(feature),
            SampleRun.at(line > 80 ? 1 : 0, line, 1, 8),
            line == 41 ? 0 : -4_000_000,
            line == 41 ? -4_000_000 : -8_000_000,
            line == 41,
            4_000_000,
            !feature.isEmpty()),
        parts,
        missing,
        OptionalDouble.of(0.8),
        gaugeUm);
  }

  private static CheckedProgram program() {
    OptionalDouble gauge = OptionalDouble.of(0.12);
    List<ProgramResult.Budget> budgets =
        List.of(
            new ProgramResult.Budget(
                budget("mixer cascade", 41, 0.1, List.of(), gauge), BlockDelete.BOTH),
            new ProgramResult.Budget(
                budget("mixer cascade", 43, 0, List.of(), gauge), BlockDelete.BOTH),
            new ProgramResult.Budget(
                budget("mixer cascade", 57, 0, List.of(), gauge), BlockDelete.BOTH),
            new ProgramResult.Budget(
                budget(
                    SampleRun.HOSTILE,
                    60,
                    0,
                    List.of(Missing.unknown(Source.ENVIRONMENT, SampleRun.HOSTILE)),
                    gauge),
                BlockDelete.ONLY_ON),
            new ProgramResult.Budget(
                budget(
                    "",
                    85,
                    0.2,
                    List.of(Missing.key(Source.GAUGE, "gauge.uncertainty")),
                    OptionalDouble.empty()),
                BlockDelete.BOTH),
            new ProgramResult.Budget(budget("", 95, 0.2, List.of(), gauge), BlockDelete.ONLY_OFF));
    return CheckedProgram.of(
            new ProgramResult(
                "parts/mixer insert.nc",
                List.of("parts/mixer insert.nc", "parts/O7777.nc"),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                "parts/setup.yaml",
                false,
                Map.of(),
                false,
                false,
                false,
                budgets,
                true),
            Optional.empty())
        .withBudgets(true);
  }

  private static String report(ReportFormat format, CheckedProgram program) {
    return SampleRun.report(format, SampleRun.OPTIONS, List.of(program));
  }

  @ParameterizedTest
  @EnumSource(
      value = ReportFormat.class,
      names = {"TEXT", "JSON", "CSV"})
  void looksAsKept(ReportFormat format) {
    Golden.check("budget." + format, report(format, program()).replace("\r\n", "\n"));
  }

  @ParameterizedTest
  @EnumSource(ReportFormat.class)
  void letsNothingOutThatSteersOrHides(ReportFormat format) {
    report(format, program())
        .codePoints()
        .filter(c -> c != '\n' && c != '\r')
        .forEach(c -> assertThat(Visible.isHarmless(c)).as("U+%04X", c).isTrue());
  }

  @Test
  void theBarsLookAsKept() {
    List<StepBudget> budgets =
        program().result().orElseThrow().budgets().stream()
            .map(ProgramResult.Budget::step)
            .toList();
    Golden.check("budget-bars.svg", BudgetBars.of(budgets));
    assertThat(BudgetBars.of(List.of())).isEmpty();
  }

  /**
   * A drift of 0.6 µm of which another undoes 0.5 µm: the bar must not reach beyond the error of
   * 0.1 µm, which the tolerance allows.
   */
  @Test
  void aBarEndsWhereTheErrorDoes() {
    StepBudget undone =
        new StepBudget(
            budget("", 41, 0, List.of(), OptionalDouble.of(0.12)).step(),
            List.of(
                new Part.Drift(Source.TILT, Band.ofExact(0.6), "one way"),
                new Part.Drift(Source.GROWTH, Band.ofExact(-0.5), "the other way")),
            List.of(),
            OptionalDouble.of(0.2),
            OptionalDouble.of(0.01));
    assertThat(undone.errorUm().typical()).isCloseTo(0.1, within(1e-12));
    String bars = BudgetBars.of(List.of(undone));
    Matcher bar =
        Pattern.compile("<rect class=\"part.\" x=\"([0-9.]+)\" y=\"8\" width=\"([0-9.]+)\"")
            .matcher(bars);
    double end = 0;
    while (bar.find()) {
      end = Double.parseDouble(bar.group(1)) + Double.parseDouble(bar.group(2));
    }
    Matcher limit = Pattern.compile("<line class=\"cut\" x1=\"([0-9.]+)\"").matcher(bars);
    assertThat(limit.find()).isTrue();
    assertThat(end - 210).isCloseTo((Double.parseDouble(limit.group(1)) - 210) / 2, within(0.02));
    assertThat(bars).contains("0.1 µm, less spindle growth");
  }

  @Test
  void theJsonIsAsItsSchemaHasItAndSharesAddUp() throws Exception {
    String json = report(ReportFormat.JSON, program());
    String schema =
        new String(
            JsonReport.class.getResourceAsStream("report.schema.json").readAllBytes(),
            StandardCharsets.UTF_8);
    assertThat(
            SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(SchemaLocation.of("urn:hairline:report:1"), schema, InputFormat.JSON)
                .validate(json, InputFormat.JSON))
        .isEmpty();
    JsonNode budgets = new ObjectMapper().readTree(json).get("programs").get(0).get("budgets");
    assertThat(budgets).hasSize(6);
    for (JsonNode budget : budgets) {
      double shares = 0;
      double last = Double.POSITIVE_INFINITY;
      for (JsonNode part : budget.get("parts")) {
        shares += part.get("share").asDouble();
        assertThat(Math.abs(part.get("share").asDouble())).isLessThanOrEqualTo(last);
        last = Math.abs(part.get("share").asDouble());
      }
      assertThat(shares).isCloseTo(1, within(1e-9));
    }
    assertThat(budgets.get(4).get("decision").asText()).isEqualTo("undecided");
  }

  @Test
  void nothingIsShownUnlessAsked() {
    CheckedProgram silent = program().withBudgets(false);
    assertThat(report(ReportFormat.TEXT, silent)).doesNotContain("budget");
    assertThat(report(ReportFormat.JSON, silent)).doesNotContain("\"budgets\"");
    assertThat(report(ReportFormat.CSV, silent)).doesNotContain("budget");
  }

  @Test
  void alikeBudgetsAreOneTableAndTheTightestComesFirst() {
    String text = report(ReportFormat.TEXT, program());
    assertThat(text)
        .contains("; 1 more alike")
        .containsOnlyOnce("line 43")
        .doesNotContain("line 57");
    assertThat(text.indexOf("line 95")).isLessThan(text.indexOf("line 43"));
  }
}

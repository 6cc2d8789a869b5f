package hairline.checks.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import hairline.checks.finding.Level;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A run that says less than a whole one says so, whatever the format. */
class ConditionsTest {
  private static final Conditions NARROW =
      new Conditions(
          List.of("end-missing", "syntax"),
          List.of("cuts-air"),
          List.of(
              new Conditions.WhatIf("tools.3.runout", "0.01 um"),
              new Conditions.WhatIf("job.cusp", SampleRun.HOSTILE)));

  private static String report(ReportFormat format, boolean quiet, Conditions conditions) {
    return SampleRun.report(
        format,
        new ReportOptions(
            "1.2.3",
            Optional.of(Level.WARNING),
            false,
            quiet,
            false,
            100,
            List.of("end-missing", "syntax"),
            conditions),
        SampleRun.all());
  }

  @ParameterizedTest
  @EnumSource(
      names = {"HTML"},
      mode = EnumSource.Mode.EXCLUDE)
  void everyFormatSaysThatRulesWereLeftOutAndValuesChanged(ReportFormat format) {
    String narrow = report(format, false, NARROW);
    assertThat(narrow).contains("cuts-air", "tools.3.runout", "0.01 um", "job.cusp");
    assertThat(narrow)
        .containsPattern("only end-missing, syntax|\"only\" : \\[\\s*\"end-missing\",\\s*\"syntax");
    assertThat(narrow).contains(format == ReportFormat.JSON ? "whatIf" : "what if");
    narrow
        .codePoints()
        .filter(c -> c != '\n' && !(c == '\r' && format == ReportFormat.CSV))
        .forEach(c -> assertThat(Visible.isHarmless(c)).as("U+%04X", c).isTrue());
    assertThat(report(format, false, Conditions.NONE)).doesNotContain("tools.3.runout = ");
  }

  @Test
  void theJsonHasKeysAndValuesApart() throws Exception {
    JsonNode conditions =
        new ObjectMapper().readTree(report(ReportFormat.JSON, false, NARROW)).get("conditions");
    assertThat(conditions.get("whatIf").get(0).toString())
        .isEqualTo("{\"key\":\"tools.3.runout\",\"value\":\"0.01 um\"}");
    assertThat(conditions.get("whatIf").get(1).get("value").asText()).isEqualTo(SampleRun.HOSTILE);
    JsonNode sarif =
        new ObjectMapper().readTree(report(ReportFormat.SARIF, false, NARROW)).get("runs").get(0);
    assertThat(sarif.get("properties").get("whatIf").get(0).asText())
        .isEqualTo("tools.3.runout = 0.01 um");
  }

  @Test
  void aTableHasThemBeforeThePrograms() {
    assertThat(report(ReportFormat.CSV, false, NARROW).split("\r\n", -1)[1])
        .startsWith(",asked,")
        .contains("\"only end-missing, syntax\"");
  }

  @Test
  void theQuietFormSaysItToo() {
    assertThat(report(ReportFormat.TEXT, true, NARROW))
        .contains("asked  only end-missing, syntax", "what if  tools.3.runout = 0.01 um")
        .containsPattern("verdict [^;]*;[^>]*; only 2 rules asked;\\s+with\\s+2 values that");
  }
}

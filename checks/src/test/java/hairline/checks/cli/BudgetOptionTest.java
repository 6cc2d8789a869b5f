package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The option of {@code check} that shows error budgets. */
class BudgetOptionTest {
  private static final String DEMO = "../programs/mixer-insert/mixer-insert.nc";
  private static final String ONE_RULE = "--only=budget-exceeds-tolerance";

  @Test
  void theDemoHasABudgetForEachStepOfItsFeatures() throws IOException {
    Ran ran = Ran.of("check", ONE_RULE, "--budget", "--format=json", DEMO);
    JsonNode budgets = new ObjectMapper().readTree(ran.out()).get("programs").get(0).get("budgets");
    List<String> steps = new ArrayList<>();
    for (JsonNode budget : budgets) {
      steps.add(
          budget.get("feature").asText()
              + (budget.get("upperUncut").asBoolean() ? ", top" : "")
              + ": "
              + budget.get("heightUm").asText()
              + " of "
              + budget.get("nominalUm").asText());
    }
    // As the sheet declares them: a flight of 4 µm; levels at -4, -8 and -14 µm.
    assertThat(steps)
        .containsExactly(
            "mixer cascade, top: 4 of 4",
            "mixer cascade: 4 of 4",
            "mixer cascade: 4 of 4",
            "mixer cascade: 4 of 4",
            "inlet ladder, top: 4 of 4",
            "inlet ladder: 4 of 4",
            "inlet ladder: 6 of 6");
  }

  @Test
  void theTableStandsInTheTextReportWhenAskedFor() {
    assertThat(Ran.of("check", ONE_RULE, "--budget", DEMO).out())
        .contains("budget  line ", "reckoned from", "if halved");
    assertThat(Ran.of("check", ONE_RULE, DEMO).out()).doesNotContain("reckoned from");
    assertThat(Ran.of("check", "--only=syntax", "--budget", DEMO).out())
        .contains("budget  none: no step is known");
  }
}

package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;

/**
 * One budget of the demo by hand: the step from -0.004 mm down to -0.008 mm of its mixer cascade.
 * Figures from its sheet: smallest step 0.1 µm, repeatability 0.2 µm, a room of ±0.2 K over 60 mm
 * of 11.5 µm/(m K), a spindle that grows 9 µm at 50000 rpm within a time constant of 6 min. Tool 3:
 * 0.4 mm, flutes as a cylinder of 0.32 mm to 0.6 mm from the tip, a neck of 0.37 mm to 1.2 mm, a
 * cone to 5.2 mm, a shank of 4 mm to 17.2 mm, carbide of 580 GPa, runout 0.8 µm. Both levels are
 * cut from the uncut top, F400 at 50000 rpm with two flutes, kc1.1 2800 N/mm², mc 0.25. Formulas of
 * the GUM, of ISO 230-2, of the beam and of Kienzle, with 1.6 times the force for so thin a chip.
 */
class DemoBudgetTest {
  private static final int UPPER_LINE = 45;
  private static final int LOWER_LINE = 58;

  /** Four digits. */
  private static void equal(double program, double byHand) {
    assertThat(program).isCloseTo(byHand, within(5e-5 * byHand));
  }

  private static double diameterMm(double x) {
    return x < 0.6 ? 0.32 : x < 1.2 ? 0.37 : x < 5.2 ? 0.37 + (4 - 0.37) * (x - 1.2) / 4 : 4;
  }

  /** How much too deep a floor comes out, in µm. */
  private static double floorUm(double depthMm) {
    double chipMm = 400.0 / (50_000 * 2) + 0.0008;
    double forceN = 1.6 * 2800 * depthMm * Math.pow(chipMm, 1 - 0.25);
    double slope = 0;
    double give = 0;
    int n = 1_000_000;
    double h = 17.2 / n;
    for (int i = 0; i < n; i++) {
      double x = (i + 0.5) * h;
      double d = diameterMm(x);
      slope += Math.max(0, x - depthMm / 2) * h / (Math.PI * Math.pow(d, 4) / 64) / 580_000;
      give += h / (Math.PI * d * d / 4) / 580_000;
    }
    return (slope * 0.2 - give * 0.3) * forceN * 1000;
  }

  @Test
  void oneBudgetByHandAndByProgram() throws IOException {
    Ran ran =
        Ran.of(
            "check",
            "--only=budget-exceeds-tolerance",
            "--budget",
            "--timeline",
            "--format=json",
            "../programs/mixer-insert/mixer-insert.nc");
    JsonNode program = new ObjectMapper().readTree(ran.out()).at("/programs/0");
    JsonNode budget =
        StreamSupport.stream(program.get("budgets").spliterator(), false)
            .filter(b -> b.at("/at/line").asInt() == LOWER_LINE)
            .findFirst()
            .orElseThrow();

    double smallest = 0.1 / 2 / Math.sqrt(3) * Math.sqrt(2);
    double repeatability = 0.2 / 4 * Math.sqrt(2);
    double room = 0.2 / Math.sqrt(2) * 11.5 * 0.06;
    double tilt = floorUm(0.008) - floorUm(0.004);
    double growth = growthUm(program.get("timeline"));
    equal(part(budget, "smallestStep"), 2 * smallest);
    equal(part(budget, "repeatability"), 2 * repeatability);
    equal(part(budget, "environment"), 2 * room);
    equal(part(budget, "tilt"), tilt);
    // How the corners of the way down are passed is worth some milliseconds of half a minute.
    assertThat(part(budget, "growth")).isCloseTo(growth, within(2e-4 * growth));
    assertThat(part(budget, "rounding")).isZero();
    assertThat(part(budget, "reversal")).isZero();
    assertThat(part(budget, "setting")).isZero();
    double random = Math.sqrt(smallest * smallest + repeatability * repeatability + room * room);
    equal(
        budget.get("errorUm").asDouble(),
        tilt + growth + part(budget, "growthBounds") + 2 * random);
    // Within ±0.8 µm less the gauge of 0.12 µm.
    assertThat(budget.get("decision").asText()).isEqualTo("holds");
  }

  /** Steel of 100 mm grows 3.45 µm over 3 K (ISO 1, α 11.5 µm/(m K)); u = a/√2, k = 2. */
  @Test
  void theRoomGrowsAlphaTimesLengthTimesDifference() throws IOException {
    Ran ran =
        Ran.of(
            "check",
            "--only=budget-exceeds-tolerance",
            "--budget",
            "--format=json",
            "--set=environment.loop=100 mm",
            "--set=environment.swing=3 K",
            "--set=environment.expansion=11.5 um/(m K)",
            "../programs/mixer-insert/mixer-insert.nc");
    JsonNode budgets = new ObjectMapper().readTree(ran.out()).at("/programs/0/budgets");
    assertThat(budgets).isNotEmpty();
    for (JsonNode budget : budgets) {
      equal(part(budget, "environment"), 2 * 3.45 / Math.sqrt(2));
      assertThat(budget.get("decision").asText()).isEqualTo("fails");
    }
  }

  /** From the first contact with the upper level to the last one with the lower. */
  private static double growthUm(JsonNode timeline) {
    double from = 0;
    double to = 0;
    for (JsonNode cut : timeline.get("fineCuts")) {
      if (cut.at("/first/line").asInt() <= UPPER_LINE
          && cut.at("/last/line").asInt() > UPPER_LINE) {
        // It begins with the way down: 0.104 mm at F60, and the corner below is passed at that.
        from = cut.get("fromSeconds").asDouble() + 0.104 / 60 * 60;
      } else if (cut.at("/first/line").asInt() < LOWER_LINE + 1
          && cut.at("/last/line").asInt() > LOWER_LINE) {
        to = cut.get("toSeconds").asDouble();
      }
    }
    assertThat(to).isGreaterThan(from);
    double before = 0;
    double at = 0;
    for (JsonNode point : timeline.get("points")) {
      if (point.get("seconds").asDouble() <= from) {
        before = point.at("/growthUm/typical").asDouble();
        at = point.get("seconds").asDouble();
      }
    }
    double grown = 9 + (before - 9) * Math.exp(-(from - at) / 360);
    return (9 - grown) * (1 - Math.exp(-(to - from) / 360));
  }

  private static double part(JsonNode budget, String source) {
    for (JsonNode part : budget.get("parts")) {
      if (part.get("source").asText().equals(source)) {
        return part.get("um").asDouble();
      }
    }
    throw new AssertionError("no part " + source);
  }
}

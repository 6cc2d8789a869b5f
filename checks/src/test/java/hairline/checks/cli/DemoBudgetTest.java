package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;

/**
 * One budget of the demo by hand: the step from -0.004 mm down to -0.008 mm of its mixer cascade.
 * Figures from its sheet: smallest step 0.1 µm, repeatability 0.2 µm, a room of ±0.2 K over 60 mm
 * of 11.5 µm/(m K), a spindle that grows 9 µm at 50000 rpm within a time constant of 6 min, axes of
 * 8 m/s² and 400 m/s³. Tool 3: 0.4 mm, flutes as a cylinder of 0.32 mm to 0.6 mm from the tip, a
 * neck of 0.37 mm to 1.2 mm, a cone to 5.2 mm, a shank of 4 mm to 17.2 mm, carbide of 580 GPa,
 * runout 0.8 µm. Both levels are cut from the uncut top, F400 at 50000 rpm with two flutes, kc1.1
 * 2800 N/mm², mc 0.25. Formulas of the GUM, of ISO 230-2, of the beam and of Kienzle, with 1.6
 * times the force for so thin a chip.
 */
class DemoBudgetTest {
  private static final int UPPER_LINE = 45;
  private static final int LOWER_LINE = 58;

  /** 60 mm/min in mm/s. */
  private static final double F60 = 1;

  private static final double JERK = 400_000;

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
    equal(part(budget, "growth"), growth);
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

  /**
   * The way down to the upper level, 0.104 mm at F60: at that speed, but for what it gives to the
   * faster moves beside it. Before it 9.9 mm of rapid end, from rest, with falling speed; behind it
   * the move of F400 begins with rising speed, for the corner of 90° could be passed at the 79
   * mm/min that a blend within 1 µm allows: r = d s/(1 − s), v³ = J r². How much acceleration the
   * borders have, the least time for both sides tells.
   */
  private static double waySeconds() {
    double fromRapid = least(a -> rapidSeconds(a) + lost(a));
    double toFeed =
        least(
            a -> {
              double[] up = up(F60, a, 400.0 / 60);
              return up[0] - up[1] / (400.0 / 60) + lost(a);
            });
    return 0.104 / F60 + lost(fromRapid) + lost(toFeed);
  }

  /** The rapid from rest over 9.9 mm to F60, where speed falls by this acceleration. */
  private static double rapidSeconds(double acceleration) {
    double low = F60;
    double high = 250;
    for (int k = 0; k < 100; k++) {
      double peak = (low + high) / 2;
      if (up(0, 0, peak)[1] + up(F60, acceleration, peak)[1] < 9.9) {
        low = peak;
      } else {
        high = peak;
      }
    }
    return up(0, 0, low)[0] + up(F60, acceleration, low)[0];
  }

  /** What it costs to fall below a steady F60 and be back at it with an acceleration, in s. */
  private static double lost(double acceleration) {
    double[] dip = up(F60, -acceleration, F60);
    return dip[0] - dip[1] / F60;
  }

  /**
   * Time and length of the way from a speed and an acceleration to a steady speed: jerk up, steady
   * acceleration, jerk down. Run backwards it ends there.
   */
  private static double[] up(double speed, double acceleration, double steady) {
    double square = JERK * (steady - speed) + acceleration * acceleration / 2;
    double most = Math.min(8000, Math.sqrt(Math.max(0, square)));
    double[] seconds = {
      (most - acceleration) / JERK, most > 0 ? (square / most - most) / JERK : 0, most / JERK
    };
    double[] jerks = {JERK, 0, -JERK};
    double time = 0;
    double length = 0;
    double v = speed;
    double a = acceleration;
    for (int k = 0; k < 3; k++) {
      double t = seconds[k];
      length += v * t + a * t * t / 2 + jerks[k] * t * t * t / 6;
      v += a * t + jerks[k] * t * t / 2;
      a += jerks[k] * t;
      time += t;
    }
    return new double[] {time, length};
  }

  /** Where a function of an acceleration of up to 800 mm/s² is least. */
  private static double least(DoubleUnaryOperator function) {
    double low = 0;
    double high = 800;
    for (int k = 0; k < 100; k++) {
      double third = (high - low) / 3;
      if (function.applyAsDouble(low + third) < function.applyAsDouble(high - third)) {
        high -= third;
      } else {
        low += third;
      }
    }
    return low;
  }

  /** From the first contact with the upper level to the last one with the lower. */
  private static double growthUm(JsonNode timeline) {
    double from = 0;
    double to = 0;
    for (JsonNode cut : timeline.get("fineCuts")) {
      if (cut.at("/first/line").asInt() <= UPPER_LINE
          && cut.at("/last/line").asInt() > UPPER_LINE) {
        from = cut.get("fromSeconds").asDouble() + waySeconds();
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

package hairline.checks.setup;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Values that contradict each other; for tools by ISO 13399: DN < DC, RE ≤ DC/2, LU ≥ APMX. */
class CrossChecksTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '~',
      value = {
        "diameter: 0.4 mm, corner_radius: 0.2000001 mm ~ 54 ~ corner_radius`: 0.2000001 mm with a diameter of 0.4 mm; at most half the diameter, RE ≤ DC/2",
        "shape: ball, diameter: 0.4 mm, corner_radius: 0.19 mm ~ 67 ~ corner_radius`: 0.19 mm with a diameter of 0.4 mm; a ball tool has half its diameter, RE = DC/2",
        "shape: ball, diameter: 0.4 mm, corner_radius: 0.21 mm ~ 67 ~ corner_radius`: 0.21 mm with a diameter of 0.4 mm; a ball tool has half its diameter, RE = DC/2",
        "shape: bull, corner_radius: 0 mm ~ 49 ~ corner_radius`: 0 mm on a bull tool; a bull tool has one; else it is flat",
        "diameter: 0.4 mm, neck: {diameter: 0.4 mm} ~ 56 ~ neck.diameter`: 0.4 mm with a cutting diameter of 0.4 mm; a neck is thinner than the cutting diameter, DN < DC; a tool without one has no neck",
        "cutting_length: 2 mm, neck: {length: 1.999 mm} ~ 58 ~ neck.length`: 1.999 mm with a cutting length of 2 mm; it counts from the tip, flutes included, LU ≥ APMX",
        "diameter: 0.4 mm, edge_radius: [1 um, 2 um, 201 um] ~ 52 ~ edge_radius`: 0.201 mm with a diameter of 0.4 mm; this is the rounding of the cutting edge, a few micrometres, not the corner",
      })
  void toolsThatCannotBe(String tool, int column, String problem) {
    String start = "tools: [{number: 7, ";
    assertThat(Sheets.problems(start + tool + "}]"))
        .containsExactly("setup.yaml:1:" + column + ": `tools.7." + problem);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "diameter: 0.4 mm, corner_radius: 0.2 mm",
        "shape: bull, diameter: 0.4 mm, corner_radius: 0.2 mm",
        "shape: ball, diameter: 0.4 mm, corner_radius: 0.2 mm",
        "shape: ball, corner_radius: 0.2 mm",
        "shape: flat, corner_radius: 0 mm",
        "diameter: 0.4 mm, neck: {diameter: 0.3999 mm}",
        "neck: {diameter: 0.4 mm}",
        "cutting_length: 2 mm, neck: {length: 2 mm}",
        "diameter: 0.4 mm, edge_radius: 200 um"
      })
  void toolsThatCanBe(String tool) {
    assertThat(Sheets.read("tools: [{number: 7, " + tool + "}]").tools()).hasSize(1);
  }

  @Test
  void spindleSpeeds() {
    assertThat(Sheets.problems("machine: {spindle: {min_speed: 5000 rpm, max_speed: 4000 rpm}}"))
        .containsExactly(
            "setup.yaml:1:32: `machine.spindle.min_speed` (5000 rpm) is above"
                + " `machine.spindle.max_speed` (4000 rpm); one of the two is to change");
    assertThat(
            Sheets.problems(
                """
                machine:
                  spindle:
                    max_speed: 10000 rpm
                    warm_up: {min_speed: 30000 rpm, speed: 20000 rpm}
                """))
        .containsExactly(
            "setup.yaml:4:26: `machine.spindle.warm_up.min_speed` (30000 rpm) is above"
                + " `machine.spindle.max_speed` (10000 rpm); one of the two is to change",
            "setup.yaml:4:26: `machine.spindle.warm_up.min_speed` (30000 rpm) is above"
                + " `machine.spindle.warm_up.speed` (20000 rpm); one of the two is to change",
            "setup.yaml:4:44: `machine.spindle.warm_up.speed` (20000 rpm) is above"
                + " `machine.spindle.max_speed` (10000 rpm); one of the two is to change");
    assertThat(
            Sheets.read(
                    "machine: {spindle: {min_speed: 1 rpm, max_speed: 1 rpm, warm_up: {min_speed: 1"
                        + " rpm, speed: 1 rpm}}}")
                .get(SpindleKeys.MAX_SPEED_RPM))
        .contains(1.0);
  }

  @Test
  void theStockHasItsTopAboveItsBottom() {
    assertThat(Sheets.problems("stock: {top: 0 mm, bottom: 0 mm}"))
        .containsExactly(
            "setup.yaml:1:28: `stock.bottom` (0 mm) is not below `stock.top` (0 mm); Z points up,"
                + " out of the part");
    assertThat(Sheets.read("stock: {top: 0 mm, bottom: -1 nm}").get(StockKeys.BOTTOM))
        .contains(new Length(-1000));
  }

  @Test
  void stepAndLevelsOfAFeature() {
    assertThat(
            Sheets.problems(
                "job: {features: [{name: a, step: 4 um, levels: [-8 um, 0 um, -4 um, -13 um]}]}"))
        .containsExactly(
            "setup.yaml:1:34: `job.features.a.step` (4 um) differs from a step of its `levels`"
                + " (5 um); one of the two is to go");
    assertThat(
            Sheets.read("job: {features: [{name: a, step: 4 um, levels: [-8 um, 0 um, -4 um]}]}")
                .features())
        .hasSize(1);
    assertThat(Sheets.read("job: {features: [{name: a, step: 4 um, levels: [-5 um]}]}").features())
        .hasSize(1);
  }
}

package hairline.checks.setup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What a user sees who typed something wrong: place, sentence and cure. */
class SheetProblemsTest {
  private static final String LENGTH_UNITS = "mm, um, nm, cm, m, in";
  private static final String A_LENGTH =
      "the key takes a length with its unit (" + LENGTH_UNITS + ")";

  private static void says(String sheet, String place, String sentence, String cure) {
    assertThat(Sheets.problems(sheet))
        .containsExactly("setup.yaml:" + place + ": " + sentence + "; " + cure);
  }

  private static void resolutionSays(String value, String sentence, String cure) {
    says("machine: {resolution: " + value + "}", "1:23", "`machine.resolution`: " + sentence, cure);
  }

  @Test
  void aNumberWithoutItsUnit() {
    resolutionSays("0.1", "`0.1` has no unit", "units that fit: " + LENGTH_UNITS);
    says(
        "job:\n  cusp: 2", "2:9", "`job.cusp`: `2` has no unit", "units that fit: " + LENGTH_UNITS);
  }

  @Test
  void aUnitThatDoesNotFit() {
    resolutionSays("3 s", "`3 s` is a time, not a length", "units that fit: " + LENGTH_UNITS);
    resolutionSays(
        "1 mm/min", "`1 mm/min` is a feed, not a length", "units that fit: " + LENGTH_UNITS);
    resolutionSays(
        "0.1 uum",
        "`uum` is no unit that is known here",
        "nearest is `um`; units that fit: " + LENGTH_UNITS);
    resolutionSays(
        "0.1 furlongs",
        "`furlongs` is no unit that is known here",
        "units that fit: " + LENGTH_UNITS);
    says(
        "limits: {step_margin: 2 mm}",
        "1:23",
        "`limits.step_margin`: `2 mm` has a unit",
        "the key takes a plain number: `2`");
  }

  @Test
  void noQuantityAtAll() {
    resolutionSays("fine", "`fine` is not a length", A_LENGTH);
    resolutionSays("um", "`um` is not a length", A_LENGTH);
    resolutionSays(
        "1.2.3 um", "`.3 um` is no unit that is known here", "units that fit: " + LENGTH_UNITS);
    resolutionSays(
        "1e-300 um",
        "`1e-300 um` has an exponent of more than two digits",
        "no quantity of a sheet is that large or that small");
    resolutionSays("''", "no value", A_LENGTH + "; without a value, leave it out");
    says(
        "machine: {resolution: }",
        "1:22",
        "`machine.resolution`: no value",
        A_LENGTH + "; without a value, leave it out");
    resolutionSays("~", "no value", A_LENGTH + "; without a value, leave it out");
    resolutionSays(
        "'0,1 um'", "`0,1 um` has a decimal comma", "the decimal sign is a point: `0.1 um`");
    resolutionSays("{a: b}", "a mapping or a list stands where one value is due", A_LENGTH);
    resolutionSays("[1 um]", "a mapping or a list stands where one value is due", A_LENGTH);
  }

  @Test
  void outOfRange() {
    resolutionSays("0 um", "`0 um` is out of range", "the range is above 0 mm to 0.1 mm");
    resolutionSays("0.1001 mm", "`0.1001 mm` is out of range", "the range is above 0 mm to 0.1 mm");
    resolutionSays("1e30 m", "`1e30 m` is out of range", "the range is above 0 mm to 0.1 mm");
    says(
        "machine: {repeatability: -0.1 um}",
        "1:26",
        "`machine.repeatability`: `-0.1 um` is out of range",
        "the range is from 0 mm to 1 mm");
    assertThat(Sheets.read("machine: {repeatability: 0 um, resolution: 0.1 mm}").name())
        .isEqualTo("setup.yaml");
  }

  @Test
  void moreDigitsThanAnybodyMeasures() {
    resolutionSays(
        "0.0000001 um",
        "the length has digits below a picometre",
        "at most 12 digits below a metre");
    String million = "1".repeat(1_000_000);
    resolutionSays(
        million + " um", "a quantity of 1000003 characters", "at most 40 characters are read");
    says(
        "tools: [{number: " + million + "}]",
        "1:18",
        "`tools." + "1".repeat(60) + "….number`: a text of 1000000 characters is no whole number",
        "the key takes a whole number from 0 to 99999999");
  }

  @Test
  void bandsAndRanges() {
    says(
        "tools: [{number: 1, runout: [3 um, 2 um, 4 um]}]",
        "1:29",
        "`tools.1.runout`: the three values of a band fall",
        "a band rises: [low, typical, high]");
    says(
        "tools: [{number: 1, runout: [3 um, 4 um, 2 um]}]",
        "1:29",
        "`tools.1.runout`: the three values of a band fall",
        "a band rises: [low, typical, high]");
    says(
        "tools: [{number: 1, runout: [3 um, 4 um]}]",
        "1:29",
        "`tools.1.runout`: a list of 2 values",
        "the key takes [low, typical, high]");
    says(
        "material: {force_exponent: [0.3, 0.2, 0.1]}",
        "1:28",
        "`material.force_exponent`: the three values of a band fall",
        "a band rises: [low, typical, high]");
    says(
        "stock: {x: [1 mm, 1 mm]}",
        "1:12",
        "`stock.x`: the second value is not above the first",
        "a range rises: [from, to]");
    says(
        "stock: {x: [1 mm]}",
        "1:12",
        "`stock.x`: a list of 1 value",
        "the key takes two lengths [from, to]");
    says(
        "stock: {x: 1 mm}",
        "1:12",
        "`stock.x`: no list stands where one is due",
        "the key takes two lengths [from, to]");
    says(
        "stock: {x: [1 mm, 2 s]}",
        "1:19",
        "`stock.x`: `2 s` is a time, not a length",
        "units that fit: " + LENGTH_UNITS);
    says(
        "tools: [{number: 1, surface_speed: [50 m/min, 40 m/min]}]",
        "1:36",
        "`tools.1.surface_speed`: the second value is not above the first",
        "a range rises: [from, to]");
  }

  @Test
  void tolerances() {
    says(
        "job: {tolerance: 1 um}",
        "1:18",
        "`job.tolerance`: `1 um` does not say to which side",
        "the key takes `±1 um` or [from, to]");
    says(
        "job: {tolerance: ±1}",
        "1:18",
        "`job.tolerance`: `1` has no unit",
        "units that fit: " + LENGTH_UNITS);
    says(
        "job: {tolerance: ±0 um}",
        "1:18",
        "`job.tolerance`: `0 um` is out of range",
        "the range is above 0 mm to 10 mm");
    says(
        "job: {tolerance: [1 um, -1 um]}",
        "1:18",
        "`job.tolerance`: the second value is not above the first",
        "a range rises: [from, to]");
  }

  @Test
  void wordsThatAreNoneOfAFew() {
    says(
        "machine: {rounding: nearst}",
        "1:21",
        "`machine.rounding`: `nearst` is not one of the words that fit",
        "nearest is `nearest`; the key takes nearest | truncate");
    says(
        "machine: {spindle: {waits: 1}}",
        "1:28",
        "`machine.spindle.waits`: `1` is not one of the words that fit",
        "the key takes true | false");
    says(
        "material: {group: h}",
        "1:19",
        "`material.group`: `h` is not one of the words that fit",
        "nearest is `H`; the key takes P | M | K | N | S | H");
  }

  @Test
  void wholeNumbers() {
    says(
        "machine: {control: {look_ahead: 1.5}}",
        "1:33",
        "`machine.control.look_ahead`: `1.5` is no whole number",
        "the key takes a whole number from 0 to 1000000");
    says(
        "machine: {control: {look_ahead: -1}}",
        "1:33",
        "`machine.control.look_ahead`: `-1` is out of range",
        "the range is from 0 to 1000000");
    says(
        "machine: {control: {look_ahead: 1000001}}",
        "1:33",
        "`machine.control.look_ahead`: `1000001` is out of range",
        "the range is from 0 to 1000000");
  }

  @Test
  void unknownKeys() {
    says("machne: {}", "1:1", "unknown key `machne`", "nearest is `machine`");
    says(
        "machine:\n  resolutoin: 1 um",
        "2:3",
        "unknown key `machine.resolutoin`",
        "nearest is `resolution`");
    says(
        "tools:\n- number: 4\n  edge radius: 1 um",
        "3:3",
        "unknown key `tools.4.edge radius`",
        "nearest is `edge_radius`");
    says("spindle: {}", "1:1", "unknown key `spindle`", "`spindle` belongs under `machine`");
    says(
        "machine: {flutes: 2}",
        "1:11",
        "unknown key `machine.flutes`",
        "`flutes` belongs under `tools`");
    says(
        "machine: {limits: {}}",
        "1:11",
        "unknown key `machine.limits`",
        "`limits` belongs at the top of the sheet");
    says(
        "gauge: {qqqqqqqqqqqq: 1}",
        "1:9",
        "unknown key `gauge.qqqqqqqqqqqq`",
        "the keys here are uncertainty");
    says(
        "gauge: {<<: {uncertainty: 1 um}}",
        "1:9",
        "unknown key `gauge.<<`",
        "merge keys are not read: write the keys out");
    says("gauge: {? [a] : 1}", "1:11", "unknown key `gauge.`", "the keys here are uncertainty");
    says(
        "gauge: {" + "k".repeat(100) + ": 1}",
        "1:9",
        "unknown key `gauge." + "k".repeat(60) + "…`",
        "the keys here are uncertainty");
  }

  @Test
  void keysThatStandTwice() {
    says(
        "gauge:\n  uncertainty: 1 um\n  uncertainty: 2 um",
        "3:3",
        "`gauge.uncertainty` stands twice, first in line 2",
        "one of the two is to go");
    says(
        "tools:\n- number: 4\n- number: 04",
        "3:3",
        "`tools.4` is listed twice, first in line 2",
        "each has its own `number`");
    says(
        "job:\n  features:\n  - name: a\n  - name: a",
        "4:5",
        "`job.features.a` is listed twice, first in line 3",
        "each has its own `name`");
    says(
        "offsets:\n  G54: {X: 1 mm}\n  g54: {X: 2 mm}",
        "3:3",
        "`offsets.G54` is listed twice, first in line 2",
        "each has its own `name`");
    says(
        "machine: {acceleration: {X: 1 m/s^2, X: 2 m/s^2}}",
        "1:38",
        "`machine.acceleration`: `X` stands twice",
        "one of the two is to go");
    says(
        "rules: {level: {cusp-above-limit: note, cusp-above-limit: error}}",
        "1:41",
        "`rules.level`: `cusp-above-limit` stands twice",
        "one of the two is to go");
  }

  @Test
  void mappingsAndListsInTheWrongPlace() {
    says(
        "limits: 3",
        "1:9",
        "`limits`: a text where a mapping is due",
        "the keys here are flex_share, growth_share, step_margin, idle_time, measure_every, air_share");
    says(
        "gauge: [1 um]",
        "1:8",
        "`gauge`: a list where a mapping is due",
        "the keys here are uncertainty");
    assertThat(Sheets.problems("- 1"))
        .hasSize(1)
        .first()
        .asString()
        .startsWith(
            "setup.yaml:1:1: a list where a mapping is due; the keys here are machine, tools,");
    says("tools: {number: 3}", "1:8", "`tools`: no list", "a list is due: one `- ` each");
    says("job: {features: 3}", "1:17", "`job.features`: no list", "a list is due: one `- ` each");
    says(
        "offsets: [G54]",
        "1:10",
        "`offsets`: no mapping",
        "a mapping is due, such as {G54: {X: -20 mm, Y: 5 mm, Z: -60 mm}}");
    says(
        "offsets: {G53: {X: 1 mm}}",
        "1:11",
        "`offsets`: `G53` is no work offset",
        "the key takes G54 to G59 or G59.1 to G59.3");
    says(
        "tools: [{diameter: 1 mm}]",
        "1:9",
        "`tools`: item 1 has no `number`",
        "give it one, such as `number: 3`");
    says(
        "job: {features: [{name: a}, {step: 1 um}]}",
        "1:29",
        "`job.features`: item 2 has no `name`",
        "give it one, such as `name: mixer cascade`");
    says(
        "machine: {acceleration: {A: 1 m/s^2}}",
        "1:26",
        "`machine.acceleration`: `A` is no axis here",
        "the axes are X, Y and Z");
    says(
        "machine: {acceleration: {}}",
        "1:25",
        "`machine.acceleration`: no axis",
        "the key takes one per axis ({X: …, Y: …, Z: …})");
    says(
        "machine: {acceleration: [1 m/s^2]}",
        "1:25",
        "`machine.acceleration`: a list stands where one value or a mapping is due",
        "the key takes one per axis ({X: …, Y: …, Z: …})");
    says(
        "rules: {level: [a]}",
        "1:16",
        "`rules.level`: no mapping stands where one is due",
        "the key takes a mapping of rule names to error | warning | note");
  }

  @Test
  void codes() {
    says(
        "machine: {codes: {warm_up: [X71]}}",
        "1:29",
        "`machine.codes.warm_up`: `X71` is no code",
        "the key takes a word such as M71 or a call such as P9001");
    says(
        "machine: {codes: {warm_up: []}}",
        "1:28",
        "`machine.codes.warm_up`: a list of 0 values",
        "the key takes a list of at most 100: a word such as M71 or a call such as P9001");
    says(
        "machine: {codes: {warm_up: [M71], ignore: [m071]}}",
        "1:43",
        "`machine.codes.ignore`: M71 stands under `machine.codes.warm_up` already",
        "a code has one meaning");
  }

  @Test
  void rules() {
    says(
        "rules: {skip: [Inch]}",
        "1:16",
        "`rules.skip`: this is no name of a rule",
        "the key takes names of rules such as chip-below-minimum");
    SheetReader reader = new SheetReader(Set.of("inch-rounding", "cusp-above-limit"));
    SheetException thrown =
        catchThrowableOfType(
            SheetException.class,
            () ->
                reader.parse(
                    "rules:\n  skip: [inch-rounding, inch-roundin]\n  level: {zzz: note}", "s"));
    assertThat(thrown.problems())
        .extracting(SheetProblem::toString)
        .containsExactly(
            "s:2:25: `rules.skip`: there is no rule `inch-roundin`; nearest is `inch-rounding`",
            "s:3:11: `rules.level`: there is no rule `zzz`; `hairline rules` lists them");
  }

  @Test
  void allProblemsAtOnceInTheOrderOfTheSheet() {
    assertThat(
            Sheets.problems(
                "tools:\n- number: 1\n  runout: 1\n  flutes: x\nmachine: {a: b}\nlimits: 3"))
        .extracting(problem -> problem.substring(0, 14))
        .containsExactly("setup.yaml:3:1", "setup.yaml:4:1", "setup.yaml:5:1", "setup.yaml:6:9");
  }

  @Test
  void notMoreProblemsThanAnybodyReads() {
    StringBuilder sheet = new StringBuilder();
    for (int i = 0; i < 150; i++) {
      sheet.append("unknown").append(i).append(": 1\n");
    }
    List<String> problems = Sheets.problems(sheet.toString());
    assertThat(problems).hasSize(101);
    assertThat(problems.get(99)).startsWith("setup.yaml:100:1: unknown key `unknown99`");
    assertThat(problems.get(100))
        .isEqualTo(
            "setup.yaml:100:1: more than 100 problems; the others are not listed; these first, then"
                + " the rest shows");
  }

  @Test
  void exactlyAHundredProblemsHaveNoMore() {
    StringBuilder sheet = new StringBuilder();
    for (int i = 0; i < 100; i++) {
      sheet.append("unknown").append(i).append(": 1\n");
    }
    assertThat(Sheets.problems(sheet.toString())).hasSize(100);
  }

  @Test
  void theSeriesExponentOfGermanTables() {
    says(
        "material: {force_exponent: 0.74}",
        "1:28",
        "`material.force_exponent`: `0.74` is too large for the exponent mc",
        "German tables often print 1 − mc; then mc is 0.26");
    assertThat(Sheets.read("material: {force_exponent: 0.5}").get(MaterialKeys.FORCE_EXPONENT))
        .isPresent();
    says(
        "material: {force_exponent: [0.2, 0.3, 0.51]}",
        "1:39",
        "`material.force_exponent`: `0.51` is too large for the exponent mc",
        "German tables often print 1 − mc; then mc is 0.49");
  }

  @Test
  void longTextsAreCutAndLineEndsShown() {
    assertThat(Sheets.read("machine: {name: " + "n".repeat(200) + "}").get(MachineKeys.NAME))
        .contains("n".repeat(200));
    says(
        "machine: {name: " + "n".repeat(201) + "}",
        "1:17",
        "`machine.name`: a text of 201 characters",
        "at most 200 are read");
    says(
        "machine: {rounding: " + "n".repeat(61) + "}",
        "1:21",
        "`machine.rounding`: `" + "n".repeat(60) + "…` is not one of the words that fit",
        "the key takes nearest | truncate");
    says(
        "machine: {rounding: \"up\\n\\e[31mdown\"}",
        "1:21",
        "`machine.rounding`: `up\u240A\u241B[31mdown` is not one of the words that fit",
        "the key takes nearest | truncate");
    assertThat(Shown.cut("\uD83D\uDE00".repeat(60))).isEqualTo("\uD83D\uDE00".repeat(60));
    assertThat(Shown.cut("\uD83D\uDE00".repeat(61))).isEqualTo("\uD83D\uDE00".repeat(60) + "…");
  }

  @Test
  void itemsThatAreNoMappings() {
    says(
        "job: {features: [3]}",
        "1:18",
        "`job.features.[1]`: a text where a mapping is due",
        "the keys here are name, x, y, step, levels, tolerance");
    says(
        "tools:\n- \n- number: 1\n",
        "2:2",
        "`tools`: item 1 has no `number`",
        "give it one, such as `number: 3`");
    says("job: {tolerance: ±}", "1:18", "`job.tolerance`: no value", A_LENGTH);
    says(
        "machine: {codes: {ignore: [" + "M1, ".repeat(101) + "]}}",
        "1:27",
        "`machine.codes.ignore`: a list of 101 values",
        "the key takes a list of at most 100: a word such as M71 or a call such as P9001");
  }

  @Test
  void anEmptySheetSaysNothing() {
    for (String sheet :
        List.of("", "\n", "# nothing\n", "machine:\ntools:\nlimits: # none\n", "---\n")) {
      assertThat(Sheets.read(sheet).tools()).isEmpty();
    }
  }
}

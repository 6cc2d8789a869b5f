package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The options of {@code check} that show the part left. */
class SurfaceOptionsTest {
  private static final String DEMO = "../programs/mixer-insert/mixer-insert.nc";
  private static final String ONE_RULE = "--only=step-below-smallest";

  @TempDir private Path folder;

  private static JsonNode demo(String... options) throws IOException {
    List<String> args = new ArrayList<>(List.of("check", ONE_RULE, "--format=json"));
    args.addAll(List.of(options));
    args.add(DEMO);
    Ran ran = Ran.of(args.toArray(String[]::new));
    assertThat(ran.err()).isEmpty();
    return new ObjectMapper().readTree(ran.out());
  }

  /** The plan may be as wide as its room, and the legend beside it as tall. */
  @Test
  void theNameOfTheAxisDoesNotTouchTheLegend() throws IOException {
    Path program = folder.resolve("p.nc");
    Files.writeString(
        program, "G21 G90 G17 G94 G54\nT3 M6\nG43 H3\nG0 X-2. Y0. Z1.\nG1 Z-0.1 F9.\nX2.\nM30\n");
    for (String stock : List.of("x: [-6 mm, 6 mm]", "x: [-1 mm, 1 mm]")) {
      Files.writeString(
          folder.resolve("setup.yaml"),
          "tools: [{number: 3, shape: flat, diameter: 0.4 mm, flutes: 2}]\n"
              + ("stock: {" + stock + ", y: [-4 mm, 4 mm], top: 0 mm}\n"));
      String svg = Ran.of("check", "--terraces", "--format=svg", program.toString()).out();
      Matcher axis =
          Pattern.compile("<text class=\"quiet( end)?\" x=\"([0-9.]+)\" y=\"[0-9.]+\">X mm<")
              .matcher(svg);
      Matcher legend =
          Pattern.compile("<text class=\"head\" x=\"([0-9.]+)\" y=\"[0-9.]+\">height µm<")
              .matcher(svg);
      assertThat(axis.find()).isTrue();
      assertThat(legend.find()).isTrue();
      // Letters of 11 are seldom wider than 9.
      double end = Double.parseDouble(axis.group(2)) + (axis.group(1) == null ? 4 * 9 : 0);
      assertThat(end).as(stock).isLessThan(Double.parseDouble(legend.group(1)));
    }
  }

  @Test
  void theDemoHasTheTerracesOfItsZWords() throws IOException {
    JsonNode program = demo("--terraces").get("programs").get(0);
    List<Double> heights = new ArrayList<>();
    program.get("terraces").forEach(t -> heights.add(t.get("heightUm").asDouble()));
    // The frame, the uncut top, the mixer cascade, the inlet ladder, the frame.
    assertThat(heights)
        .containsExactly(-400.0, 0.0, -4.0, -8.0, -12.0, -16.0, -4.0, -8.0, -14.0, -400.0);
    List<String> steps = new ArrayList<>();
    for (JsonNode terrace : program.get("terraces")) {
      for (JsonNode neighbour : terrace.get("neighbours")) {
        int id = terrace.get("id").asInt();
        int other = neighbour.get("id").asInt();
        if (id > 2 && other > id) {
          steps.add(id + "-" + other + " " + neighbour.get("stepUm").asText());
        }
      }
    }
    assertThat(steps).containsExactly("3-4 -4", "4-5 -4", "5-6 -4", "7-8 -4", "8-9 -6");
  }

  @Test
  void aSectionOfTheDemoHasItsWallsWhereTheProgramPutsThem() throws IOException {
    // Tool centres at X 0.2 to 0.8 and 1.2 to 1.8 mm, radius 0.2 mm: walls at X 1 and X 2.
    JsonNode points =
        demo("--section", "0.5,0,2.25mm,0")
            .get("programs")
            .get(0)
            .get("sections")
            .get(0)
            .get("points");
    assertThat(points.toString())
        .isEqualTo("[[0,-12],[0.5,-12],[0.5,-16],[1.5,-16],[1.5,0],[1.75,0]]");
  }

  @Test
  void theDepthsOfAMoveAreListed() throws IOException {
    JsonNode program = demo("--depths").get("programs").get(0);
    assertThat(program.get("depthsComplete").asBoolean()).isTrue();
    double deepest = 0;
    for (JsonNode stretch : program.get("depths")) {
      assertThat(stretch.get("toMm").asDouble()).isGreaterThan(stretch.get("fromMm").asDouble());
      deepest = Math.max(deepest, stretch.get("depthUm").asDouble());
    }
    // The frame is roughed in two levels of 0.2 mm.
    assertThat(deepest).isEqualTo(200);
  }

  @Test
  void theCellInUseIsStatedAndAnotherIsACondition() throws IOException {
    // A hundredth of the smallest tool, 0.4 mm.
    JsonNode usual = demo("--terraces");
    assertThat(usual.get("programs").get(0).get("surface").get("cellUm").asDouble()).isEqualTo(4);
    assertThat(usual.get("conditions").get("whatIf")).isEmpty();
    JsonNode coarse = demo("--terraces", "--cell=20 um");
    assertThat(coarse.get("programs").get(0).get("surface").get("cellUm").asDouble()).isEqualTo(20);
    assertThat(coarse.get("conditions").get("whatIf").get(0).get("value").asText())
        .isEqualTo("20 um");
    assertThat(coarse.get("programs").get(0).get("terraces")).hasSize(10);
  }

  @Test
  void withoutAskingNothingIsShown() throws IOException {
    JsonNode program = demo().get("programs").get(0);
    assertThat(program.has("surface")).isFalse();
    assertThat(Ran.of("check", ONE_RULE, DEMO).out()).doesNotContain("surface");
  }

  @Test
  void aTableIsWrittenBesideTheReport() throws IOException {
    Path table = folder.resolve("part.csv");
    Ran ran = Ran.of("check", ONE_RULE, "--terraces", "--report", "csv=" + table, DEMO);
    assertThat(ran.status()).isZero();
    assertThat(ran.out()).contains("terraces  10, 9 of them cut");
    assertThat(Files.readString(table)).startsWith("program,kind,offset,").endsWith("\r\n");
  }

  @Test
  void aDrawingIsWrittenWithoutAskingForMore() throws IOException {
    Path drawing = folder.resolve("part.svg");
    Ran ran = Ran.of("check", ONE_RULE, "--report", "svg=" + drawing, DEMO);
    assertThat(ran.status()).isZero();
    assertThat(ran.out()).doesNotContain("terraces");
    String text = Files.readString(drawing);
    assertThat(text).startsWith("<svg ").endsWith("</svg>\n").contains("−400 µm", "−14 µm");
    // A picture of half a million pixels, most of them flat.
    assertThat(text).hasSizeLessThan(200_000);
  }

  @Test
  void aTableOfNothingIsRefused() {
    for (String option : List.of("--format=csv", "--report=csv=" + folder.resolve("a.csv"))) {
      Ran ran = Ran.of("check", option, DEMO);
      assertThat(ran.status()).isEqualTo(2);
      assertThat(ran.out()).isEmpty();
      assertThat(ran.err()).contains("none was asked for").contains("--terraces");
    }
    assertThat(folder.resolve("a.csv")).doesNotExist();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "--section=1,2,3; four lengths are due, and there are 3",
        "--section=0,0,0,0,1; there are 5",
        "--section=; there are 1",
        "--section=1,2,1.0,2mm; both ends are one point",
        "--section=1,2,x,2; `x` is not a length",
        "--section=1,2,3deg,2; `3deg` is an angle, not a length",
        "--section=1,2,300m,2; lies beyond 100 m",
        "--section=1,2,0.0000000001,2; finer than a picometre",
        "--section=1,,2,2; no value",
        "--cell=2; `2` has no unit",
        "--cell=99nm; out of range",
        "--cell=1.001mm; out of range",
        "--cell=0.100001um; no even number of picometres",
      })
  void wrongInputIsToldWithACure(String option, String says) {
    Ran ran = Ran.of("check", "--terraces", option, DEMO);
    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.err()).contains(says).contains("such as --").doesNotContain("Exception");
  }
}

package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.finding.Finding;
import hairline.checks.setup.Setup;
import hairline.checks.setup.SheetException;
import hairline.checks.setup.SheetReader;
import hairline.parser.PartPrograms;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The figures that cures name beside feeds and speeds of chips (see {@code CureTest}), applied to
 * the annotated programs: the finding goes.
 */
class CureAppliedTest {
  private static final Path PROGRAMS = Path.of("../programs/rules");

  /**
   * @param rule the rule
   * @param file its program
   * @param word what to change: a word of the program, or a key of the sheet
   * @param cure the cure up to its figure
   * @param becomes the changed word or value; V stands for the figure in its own unit, D for the
   *     next depth of whole tenths of a micron above it, in mm
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "blocks-starve | speaks-again.nc | F450. | feed of | FV",
        "compensation-lead-in-short | speaks.nc | X0.1999 | straight move of | XV",
        "cusp-above-limit | speaks-bull.nc | Y0.52 | passes | YV",
        "depth-beyond-cutting-length | speaks.nc | Z-0.6001 | passes of | Z-V",
        "step-below-smallest | speaks-beside.nc | Z-0.0205 | step-down of | Z-0.02D",
        "depth-below-minimum | speaks.nc | Z-0.0004 | depth above | Z-N",
        "gauge-too-coarse | speaks.nc | gauge.uncertainty | gauge of | V um",
        "flex-exceeds-wall | speaks-typical.nc | tools.3.neck.length | neck of | V mm",
        "flex-exceeds-step | speaks-typical.nc | tools.3.neck.length | neck of | V mm",
        "tool-overstressed | speaks-typical.nc | tools.3.neck.length | neck of | V mm",
      })
  void itsFigureMakesTheFindingGo(
      String rule, String file, String word, String cure, String becomes) throws Exception {
    Path program = PROGRAMS.resolve(rule).resolve(file);
    String text = Files.readString(program);
    Setup sheet = sheet(program);
    List<Finding> before = findings(rule, text, sheet);
    assertThat(before).isNotEmpty();
    String said = before.get(0).worst().cure().orElseThrow();
    Matcher figure = Pattern.compile(Pattern.quote(cure) + " ([0-9.]+)").matcher(said);
    assertThat(figure.find()).as(said).isTrue();
    String value =
        becomes
            .replace("D", tenth(figure.group(1)).substring(4))
            .replace("N", tenth(figure.group(1)))
            .replace("V", figure.group(1));
    if (word.contains(".") && !Character.isUpperCase(word.charAt(0))) {
      assertThat(findings(rule, text, sheet.withOverride(word, value))).as(said).isEmpty();
    } else {
      assertThat(text).contains(word);
      assertThat(findings(rule, text.replace(word, value), sheet)).as(said).isEmpty();
    }
  }

  @Test
  void aFeedPerToothAboveTheRunoutLetsEveryToothCut() throws Exception {
    Path program = PROGRAMS.resolve("runout-exceeds-feed").resolve("speaks.nc");
    String text = Files.readString(program);
    String cure =
        findings("runout-exceeds-feed", text, sheet(program)).get(0).worst().cure().orElseThrow();
    Matcher figure = Pattern.compile("feed per tooth above ([0-9.]+) µm").matcher(cure);
    assertThat(figure.find()).as(cure).isTrue();
    // Two teeth at 30000 rpm.
    double feed = Double.parseDouble(figure.group(1)) * 30_000 * 2 / 1000;
    assertThat(findings("runout-exceeds-feed", with(text, feed), sheet(program))).isNotEmpty();
    assertThat(findings("runout-exceeds-feed", with(text, feed + 0.01), sheet(program))).isEmpty();
  }

  private static String with(String text, double feed) {
    assertThat(text).contains("F48.");
    return text.replace("F48.", "F" + new BigDecimal(feed).setScale(3, RoundingMode.HALF_UP));
  }

  @Test
  void theSpeedsOfTheSpindleThatCuresNameAreInItsRange() throws Exception {
    Path program = PROGRAMS.resolve("speed-out-of-range").resolve("speaks.nc");
    String text = Files.readString(program);
    String cured = text;
    for (Finding finding : findings("speed-out-of-range", text, sheet(program))) {
      Matcher asked = Pattern.compile("^(S[0-9]+) asks").matcher(finding.first().message());
      Matcher named = Pattern.compile("^(S[0-9]+),").matcher(finding.first().cure().orElseThrow());
      assertThat(asked.find() && named.find()).isTrue();
      cured = cured.replace(asked.group(1), named.group(1));
    }
    assertThat(cured).isNotEqualTo(text);
    assertThat(findings("speed-out-of-range", cured, sheet(program))).isEmpty();
  }

  /** The next depth of whole tenths of a micron at or above this one in µm; in mm. */
  private static String tenth(String um) {
    return new BigDecimal(um)
        .setScale(1, RoundingMode.CEILING)
        .movePointLeft(3)
        .setScale(4, RoundingMode.UNNECESSARY)
        .toPlainString();
  }

  private static Setup sheet(Path program) throws IOException, SheetException {
    String own = program.getFileName().toString().replace(".nc", ".setup.yaml");
    Path sheet = program.resolveSibling(own);
    return new SheetReader()
        .read(Files.exists(sheet) ? sheet : program.resolveSibling("setup.yaml"));
  }

  private static List<Finding> findings(String rule, String program, Setup sheet)
      throws IOException {
    return ProgramCheck.of(new Selection(Set.of(rule), Set.of()))
        .check(PartPrograms.of("cure.nc", program.getBytes(StandardCharsets.UTF_8)), sheet)
        .findings();
  }
}

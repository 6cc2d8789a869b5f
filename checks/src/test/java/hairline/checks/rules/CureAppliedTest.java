package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.finding.Finding;
import hairline.checks.finding.Occurrence;
import hairline.checks.finding.ProgramResult;
import hairline.checks.setup.Setup;
import hairline.checks.setup.SheetException;
import hairline.checks.setup.SheetFinder;
import hairline.checks.setup.SheetReader;
import hairline.parser.PartPrograms;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

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
        "blocks-starve | speaks.nc | F450. | feed of | FV",
        "blocks-starve | speaks-again.nc | F450. | feed of | FV",
        "blocks-starve | speaks-none-ahead.nc | F450. | feed of | FV",
        "compensation-lead-in-short | speaks.nc | X0.1999 | straight move of | XV",
        "cusp-above-limit | speaks-bull.nc | Y0.52 | passes | YV",
        "depth-beyond-cutting-length | speaks.nc | Z-0.6001 | passes of | Z-V",
        "step-below-smallest | speaks-beside.nc | Z-0.0205 | step-down of | Z-0.02D",
        "depth-below-minimum | speaks.nc | Z-0.0004 | depth above | Z-N",
        "gauge-too-coarse | speaks.nc | gauge.uncertainty | gauge of | V um",
        "flex-exceeds-wall | speaks-typical.nc | tools.3.neck.length | a neck | V mm",
        "flex-exceeds-step | speaks-typical.nc | tools.3.neck.length | a neck | V mm",
        "flex-exceeds-step | speaks-two-tools.nc | tools.3.neck.length | a neck | V mm",
        "tool-overstressed | speaks-typical.nc | tools.3.neck.length | a neck | V mm",
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

  /** Where feeds differ, all of them change alike. */
  @Test
  void allFeedsTimesThatFactorLetTheControlKeepUp() throws Exception {
    Path program = PROGRAMS.resolve("blocks-starve").resolve("speaks.nc");
    String text = Files.readString(program);
    String two = text.replaceFirst("X0\\.0045\n", "X0.0045 F600.\n");
    assertThat(two).isNotEqualTo(text);
    Matcher named =
        Pattern.compile("all feeds of the operation times (0\\.[0-9]+)")
            .matcher(
                findings("blocks-starve", two, sheet(program)).get(0).worst().cure().orElseThrow());
    assertThat(named.find()).isTrue();
    assertThat(findings("blocks-starve", times(two, named.group(1)), sheet(program))).isEmpty();
    String more = new BigDecimal(named.group(1)).add(new BigDecimal("0.001")).toPlainString();
    assertThat(findings("blocks-starve", times(two, more), sheet(program))).isNotEmpty();
  }

  private static String times(String text, String factor) {
    return Pattern.compile("F([0-9]+)\\.")
        .matcher(text)
        .replaceAll(
            f -> "F" + new BigDecimal(f.group(1)).multiply(new BigDecimal(factor)).toPlainString());
  }

  /** A figure with its unit, or a word for feed or speed. */
  private static final Pattern FIGURE =
      Pattern.compile("[0-9.]+ (?:µm|mm|s|min|rpm|mm/min|°|%)(?![\\p{Alpha}/])|\\b[FS][0-9.]+");

  /** Whose figures {@code CureTest} applies. */
  private static final Set<String> CHIPS =
      Set.of(
          "chip-above-limit", "chip-below-minimum", "feed-below-edge-radius", "surface-speed-off");

  /** Whose figures are applied here. */
  private static final Set<String> HERE =
      Set.of(
          "blocks-starve",
          "compensation-lead-in-short",
          "cusp-above-limit",
          "depth-beyond-cutting-length",
          "step-below-smallest",
          "depth-below-minimum",
          "gauge-too-coarse",
          "flex-exceeds-wall",
          "flex-exceeds-step",
          "tool-overstressed",
          "runout-exceeds-feed",
          "speed-out-of-range",
          "growth-exceeds-share",
          "warm-up-short",
          "spindle-not-up-to-speed",
          "speed-changed-since-measuring",
          "digits-below-resolution",
          "drift-in-incremental");

  /** Whose figures tell what a change gains, and are no change by themselves. */
  private static final Set<String> GAINS = Set.of("budget-exceeds-tolerance");

  /** A rule that names a figure in a cure has to be applied: no other names one. */
  @Test
  void noOtherRuleNamesAFigure() throws Exception {
    Set<String> name = new TreeSet<>();
    try (Stream<Path> programs = Files.walk(PROGRAMS)) {
      for (Path program : programs.filter(p -> p.toString().endsWith(".nc")).sorted().toList()) {
        String rule = PROGRAMS.relativize(program).getName(0).toString();
        if (Rules.named(rule).isEmpty() || !program.toString().contains("speaks")) {
          continue;
        }
        ProgramResult result =
            ProgramCheck.of(new Selection(Set.of(rule), Set.of())).check(program, sheet(program));
        for (Finding finding : result.findings()) {
          for (Occurrence told : List.of(finding.first(), finding.worst())) {
            if (told.cure().filter(cure -> FIGURE.matcher(cure).find()).isPresent()) {
              name.add(rule);
            }
          }
        }
      }
    }
    Set<String> known = new TreeSet<>(CHIPS);
    known.addAll(HERE);
    known.addAll(GAINS);
    assertThat(name).isEqualTo(known);
  }

  /**
   * @param cure the cure with its figure in brackets
   * @param from before which words the program gets a dwell of that time, or where they start the
   *     spindle or dwell, behind them; AT for the line of the finding
   * @param shorter by how much less would not do, in seconds, so that the rule speaks or can't
   *     tell; 0 where less may do: a ladder has a shorter cure
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "growth-exceeds-share | speaks.nc | ([0-9.]+) min more of warm-up | M72 | 6",
        "growth-exceeds-share | speaks-since-measuring.nc | ([0-9.]+) min more of warm-up | M72 |"
            + " 6",
        "growth-exceeds-share | speaks-band.nc | ([0-9.]+) min more of warm-up | M72 | 6",
        "warm-up-short | speaks.nc | ([0-9.]+) s more | S20000 M3 | 0.01",
        "warm-up-short | speaks-attempt.nc | ([0-9.]+) s more | S20000 M3 | 0.01",
        "warm-up-short | speaks-ladder.nc | ^([0-9.]+) s more | G4 P143.7 | 0",
        "warm-up-short | speaks-ladder.nc | as a ladder ([0-9.]+) s more | G4 P143.7 | 0.09",
        "spindle-not-up-to-speed | speaks.nc | dwell of ([0-9.]+) s | AT | 0.001",
      })
  void itsTimeMakesTheFindingGo(String rule, String file, String cure, String from, double shorter)
      throws Exception {
    Path program = PROGRAMS.resolve(rule).resolve(file);
    String text = Files.readString(program);
    Setup sheet = sheet(program);
    Finding finding = findings(rule, text, sheet).get(0);
    String said = finding.worst().cure().orElseThrow();
    Matcher figure = Pattern.compile(cure).matcher(said);
    assertThat(figure.find()).as(said).isTrue();
    double unit = cure.contains(" min ") ? 60 : 1;
    double seconds = Double.parseDouble(figure.group(1)) * unit;
    List<String> lines = new ArrayList<>(text.lines().toList());
    int at =
        from.equals("AT")
            ? finding.worst().at().line() - 1
            : text.substring(0, text.indexOf(from)).split("\n", -1).length - 1;
    for (boolean enough : new boolean[] {true, false}) {
      String dwell =
          "G4 P"
              + new BigDecimal(enough ? seconds : seconds - shorter)
                  .setScale(3, RoundingMode.HALF_UP);
      List<String> cured = new ArrayList<>(lines);
      // Ahead of the line, or where the spindle has just been started behind it.
      cured.add(from.startsWith("S") || from.startsWith("G4") ? at + 1 : at, dwell);
      String with = String.join("\n", cured) + "\n";
      if (enough) {
        ProgramResult result = result(rule, with, sheet);
        assertThat(result.findings()).as(said).isEmpty();
        assertThat(result.notChecked()).as(said).isEmpty();
      } else if (shorter > 0) {
        ProgramResult result = result(rule, with, sheet);
        assertThat(result.findings().isEmpty() && result.notChecked().isEmpty())
            .as("less than %s", said)
            .isFalse();
      }
    }
  }

  @Test
  void theOtherCuresOfGrowthMakeTheFindingGo() throws Exception {
    String rule = "growth-exceeds-share";
    Path program = PROGRAMS.resolve(rule).resolve("speaks.nc");
    String text = Files.readString(program);
    String said = findings(rule, text, sheet(program)).get(0).worst().cure().orElseThrow();
    assertThat(said)
        .contains("a warm-up of 12 min at the working speed of 50000 rpm")
        .contains("measuring tool 3 again before line 23");
    String working = text.replaceFirst("S20000", "S50000");
    assertThat(findings(rule, working, sheet(program))).isEmpty();
    List<String> lines = new ArrayList<>(text.lines().toList());
    lines.add(22, "M72");
    assertThat(findings(rule, String.join("\n", lines), sheet(program))).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"speaks-slow.nc", "speaks-code.nc"})
  void theSpeedOfAWarmUpMakesTheFindingGo(String file) throws Exception {
    String rule = "warm-up-short";
    Path program = PROGRAMS.resolve(rule).resolve(file);
    String text = Files.readString(program);
    String said = findings(rule, text, sheet(program)).get(0).worst().cure().orElseThrow();
    assertThat(said).startsWith("S20000 or more");
    assertThat(text).contains("S19999");
    assertThat(findings(rule, text.replace("S19999", "S20000"), sheet(program))).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "digits-below-resolution, no digit finer than 0.1 µm",
    "drift-in-incremental, increments of whole 0.1 µm"
  })
  void wordsWithoutFinerDigitsAreStoredAsWritten(String rule, String cure) throws Exception {
    Path program = PROGRAMS.resolve(rule).resolve("speaks.nc");
    String text = Files.readString(program);
    List<Finding> before = findings(rule, text, sheet(program));
    assertThat(before.get(0).worst().cure().orElseThrow()).contains(cure);
    // Of words in mm all digits behind the fourth go, outside of comments.
    StringBuilder cured = new StringBuilder();
    text.lines()
        .map(line -> line.replaceAll("[(;].*", "").replaceAll("(\\.[0-9]{4})[0-9]+", "$1"))
        .forEach(line -> cured.append(line).append('\n'));
    assertThat(findings(rule, cured.toString(), sheet(program))).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"speaks.nc", "speaks-standing.nc", "speaks-instant.nc"})
  void measuringAgainAtTheSpeedNamedMakesTheFindingGo(String file) throws Exception {
    String rule = "speed-changed-since-measuring";
    Path program = PROGRAMS.resolve(rule).resolve(file);
    String text = Files.readString(program);
    String said = findings(rule, text, sheet(program)).get(0).worst().cure().orElseThrow();
    Matcher named =
        Pattern.compile("measuring tool 3 again at ([0-9]+) rpm before line ([0-9]+)")
            .matcher(said);
    assertThat(named.find()).as(said).isTrue();
    List<String> lines = new ArrayList<>(text.lines().toList());
    int line = Integer.parseInt(named.group(2));
    lines.addAll(line - 1, List.of("S" + named.group(1), "M72"));
    assertThat(findings(rule, String.join("\n", lines), sheet(program))).isEmpty();
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
    Optional<Path> file = SheetFinder.find(program);
    return file.isPresent() ? new SheetReader().read(file.get()) : new SheetReader().embedded();
  }

  private static List<Finding> findings(String rule, String program, Setup sheet)
      throws IOException {
    return result(rule, program, sheet).findings();
  }

  private static ProgramResult result(String rule, String program, Setup sheet) throws IOException {
    return ProgramCheck.of(new Selection(Set.of(rule), Set.of()))
        .check(PartPrograms.of("cure.nc", program.getBytes(StandardCharsets.UTF_8)), sheet);
  }
}

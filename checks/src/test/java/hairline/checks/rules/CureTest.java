package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.finding.Finding;
import hairline.checks.finding.ProgramResult;
import hairline.checks.setup.SheetException;
import hairline.checks.setup.SheetReader;
import hairline.parser.PartPrograms;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A cure that names a number cures: with it in the program, the finding is gone. */
class CureTest {
  private static final Pattern WORD = Pattern.compile("^([FS])([0-9.]+)");

  /** Odd figures, so that no division comes out even. */
  private static final String SHEET =
      """
      machine: {resolution: 0.1 um}
      material: {minimum_chip_ratio: 0.37}
      tools:
        - {number: 3, shape: flat, diameter: 0.37 mm, flutes: 3, edge_radius: 1.7 um, runout: 0.3 um,
           max_feed_per_tooth: 11.3 um, surface_speed: [17.3 m/min, 52.9 m/min]}
        - {number: 4, shape: ball, diameter: 0.61 mm, flutes: 2, edge_radius: [1.1 um, 1.7 um, 2.9 um],
           max_feed_per_tooth: 7.7 um, surface_speed: [17.3 m/min, 28.9 m/min]}
      stock: {x: [-2 mm, 2 mm], y: [-1 mm, 1 mm], top: 0 mm, bottom: -1 mm}
      """;

  private static String program(int tool, String moves, double feed, double speed) {
    return String.format(
        Locale.ROOT,
        """
        G21 G90 G17 G94 G54
        T%d M6
        S%s M3
        G0 G43 H%d X-3. Y0. Z1.
        %s
        G80 G0 Z1.
        M5
        M30
        """,
        tool,
        speed,
        tool,
        moves.replace(";", "\n").replace("FEED", "F" + feed));
  }

  private static List<Finding> findings(String rule, String program)
      throws IOException, SheetException {
    byte[] bytes = program.getBytes(StandardCharsets.UTF_8);
    ProgramResult result =
        ProgramCheck.of(Selection.ALL)
            .check(
                PartPrograms.of("cure.nc", bytes),
                new SheetReader().parse(SHEET, "the sheet of the test"));
    return result.findings().stream().filter(f -> f.rule().equals(rule)).toList();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "chip-above-limit   | 3 | Z-0.02;G1 X3. FEED            | 1017.1 | 29999",
        "chip-above-limit   | 3 | X0.;G1 Z-0.013 FEED           | 4000   | 29989",
        "chip-above-limit   | 3 | X0.;G81 X0. Y0. Z-0.1 R1. FEED | 4000  | 20011",
        "chip-above-limit   | 4 | Z-0.02;G1 X3. FEED            | 463    | 29999",
        "feed-below-edge-radius | 3 | Z-0.02;G1 X3. FEED        | 152.9  | 29999",
        "feed-below-edge-radius | 4 | Z-0.02;G1 X3. FEED        | 31     | 29999",
        "chip-below-minimum | 3 | Z-0.02;G1 X3. FEED            | 20     | 29999",
        "chip-below-minimum | 3 | Z-0.02;G1 X3. FEED;G0 Y0.31 X-3.;G1 X3. FEED | 13.7 | 28657",
        "chip-below-minimum | 4 | Z-0.02;G1 X3. FEED            | 31     | 27449",
        "surface-speed-off  | 3 | Z-0.02;G1 X3. FEED            | 500    | 14882",
        "surface-speed-off  | 3 | Z-0.02;G1 X3. FEED            | 500    | 45511",
        "surface-speed-off  | 4 | Z-0.02;G1 X3. FEED            | 200    | 20011",
        "surface-speed-off  | 4 | Z-0.07;G1 X3. FEED            | 200    | 60000",
      })
  void itsNumberMakesTheFindingGo(String rule, int tool, String moves, double feed, double speed)
      throws IOException, SheetException {
    List<Finding> before = findings(rule, program(tool, moves, feed, speed));
    assertThat(before).isNotEmpty();
    for (Finding finding : before) {
      Matcher word = WORD.matcher(finding.worst().cure().orElseThrow());
      assertThat(word.find()).as(finding.worst().cure().orElseThrow()).isTrue();
      double number = Double.parseDouble(word.group(2));
      assertThat(
              "F".equals(word.group(1))
                  ? findings(rule, program(tool, moves, number, speed))
                  : findings(rule, program(tool, moves, feed, number)))
          .as("with %s", word.group())
          .isEmpty();
      // The next whole number on the other side would not do: nothing is given away.
      double short1 = before.get(0).worst().cure().orElseThrow().contains("less") ? 1 : -1;
      assertThat(
              "F".equals(word.group(1))
                  ? findings(rule, program(tool, moves, number + short1, speed))
                  : findings(rule, program(tool, moves, feed, number + short1)))
          .as("one beyond %s", word.group())
          .isNotEmpty();
    }
  }
}

package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * {@code check --summary}: what the modes at the end are, by the table of modal groups of NISTIR
 * 6556 (3.4, table 4), and the counts and ways, done in the head.
 */
class SummaryOptionTest {

  private static JsonNode summary(String program) throws IOException {
    Ran ran = Ran.withInput(program, "check", "--only=syntax", "--summary", "--format=json", "-");
    return new ObjectMapper().readTree(ran.out()).get("programs").get(0).get("summary");
  }

  private static Map<String, String> modes(String program) throws IOException {
    Map<String, String> modes = new LinkedHashMap<>();
    summary(program)
        .get("end")
        .get("modes")
        .properties()
        .forEach(e -> modes.put(e.getKey(), e.getValue().asText()));
    return modes;
  }

  @ParameterizedTest
  @CsvSource({
    "G20, units",
    "G21, units",
    "G90, distance",
    "G91, distance",
    "G17, plane",
    "G18, plane",
    "G19, plane",
    "G93, feedMode",
    "G94, feedMode",
    "G95, feedMode",
    "G61, pathMode",
    "G61.1, pathMode",
    "G64, pathMode",
    "G54, workOffset",
    "G59.3, workOffset",
    "G40, compensation",
    "M3, spindle",
    "M4, spindle",
    "M5, spindle",
    "M7, coolant",
    "M8, coolant",
    "M9, coolant",
    "G49, lengthOffset"
  })
  void aStatedCodeIsTheStateAtTheEnd(String code, String item) throws IOException {
    assertThat(modes("S900\n" + code + "\nM0\n")).containsEntry(item, code);
  }

  @Test
  void theStateWithNumbersIsThatOfTheWords() throws IOException {
    String program =
        """
        G21 G90 G17 G94 G54
        T4 M6
        G43 H7
        G41 D2
        S12500 M3
        M7
        M8
        G1 X1. F32.5
        M0
        """;
    assertThat(modes(program))
        .containsEntry("tool", "T4")
        .containsEntry("lengthOffset", "H7")
        .containsEntry("compensation", "G41")
        .containsEntry("speed", "S12500")
        .containsEntry("feed", "F32.5")
        .containsEntry("coolant", "M7M8");
    assertThat(modes("G21 G42 D2\nM0\n"))
        .containsEntry("compensation", "G42")
        .containsEntry("tool", "not set")
        .containsEntry("feed", "not set");
    assertThat(modes("G21\nF100.\nG94\nG93\nM0\n"))
        .as("a feed of another mode is none (NISTIR 6556, 3.5.20)")
        .containsEntry("feed", "not set");
    assertThat(modes("G21\nIF [#1 EQ 2] GOTO 5\nM0\n").values())
        .as("behind a statement that is not read, what it may skip is not known")
        .anyMatch(value -> value.startsWith("unknown since line 2"));
  }

  private static final String PROGRAM =
      """
      G20 G90 G17 G93 G61.1 G59.3 G40 G49
      T4 M6
      G43 H7
      S1000 M4
      M7
      M8
      G1 X1. Y0. F2.
      G4 P1.
      G2 X2. Y0. I0.5 J0. F2.
      G3 X3. R1. F4.
      G94
      G81 X4. Z-1. R1. F10.
      G80
      M0
      G91 G18 G64
      M30
      """;

  @Test
  void movesAndWaysAreCounted() throws IOException {
    JsonNode summary = summary(PROGRAM);
    assertThat(summary.get("blocks").asInt()).isEqualTo(16);
    assertThat(summary.get("moves").asInt()).isEqualTo(7);
    assertThat(summary.get("arcsClockwise").asInt()).isEqualTo(1);
    assertThat(summary.get("arcsCounterClockwise").asInt()).isEqualTo(1);
    // Of the cycle: to the place, down to R, the hole, back.
    assertThat(summary.get("inCycles").asInt()).isEqualTo(4);
    assertThat(summary.get("rapids").asInt()).isEqualTo(3);
    assertThat(summary.get("lines").asInt()).isEqualTo(2);
    assertThat(summary.get("dwells").asInt()).isEqualTo(1);
    // G59.3 at feed. The second arc is a chord of 1 on a radius of 1 inch: its lowest point lies
    // 1 - √3/2 inch below the chord.
    JsonNode reach = summary.get("reach").get(0);
    assertThat(reach.get("workOffset").asText()).isEqualTo("G59.3");
    JsonNode y = reach.get("feed").get("Y");
    assertThat(y.get("lowest").asDouble())
        .isCloseTo(
            -25.4 * (1 - StrictMath.sqrt(3) / 2), org.assertj.core.api.Assertions.within(1e-5));
    assertThat(y.get("highest").asDouble())
        .as("the first arc, of half an inch, goes clockwise over its chord")
        .isCloseTo(12.7, org.assertj.core.api.Assertions.within(1e-5));
    JsonNode z = reach.get("feed").get("Z");
    assertThat(z.get("lowest").asDouble()).isEqualTo(-25.4);
    assertThat(z.get("highest").asDouble()).isEqualTo(25.4);
    assertThat(reach.get("rapid").get("X").get("highest").asDouble()).isEqualTo(101.6);
    assertThat(summary.get("end").get("code").asText()).isEqualTo("M30");
    assertThat(summary.get("tools").get(0).get("number").asInt()).isEqualTo(4);
    assertThat(summary.get("tools").get(0).get("speedsRpm").get(0).asInt()).isEqualTo(1000);
    assertThat(summary.get("time").get("unknown").toString())
        .contains("tool change", "run-up", "operator");
  }

  @Test
  void theTextSaysTheSame() {
    Ran ran = Ran.withInput(PROGRAM, "check", "--only=syntax", "--summary", "-");
    assertThat(ran.out().replaceAll("\\s+", " "))
        .contains(
            "moves 7 in 16 blocks: 3 rapid, 2 straight, 2 arcs (1 clockwise); 4 of them in cycles")
        .contains("in cycles; 1 dwell path")
        .contains("G59.3 at feed: X 25.4 to 101.6 mm, Y -3.40295 to 12.7 mm, Z -25.4 to 25.4 mm")
        .contains("not in it: how long the operator stops is not known; line 14")
        .contains("tools T4 from line 2, 1000 rpm, feed")
        .contains("end line 16, M30")
        .contains("state G20, G91, G18, G94, G64, G59.3, G40, H7, T4, M4, S1000, F254, M7M8");
    assertThat(Ran.withInput("G21\nX1.\n", "check", "--only=syntax", "--summary", "-").out())
        .contains("1 in 2 blocks: 0 rapid, 1 straight, 0 arcs\n")
        .contains("end  line 2, no end code")
        .contains("tool not set");
  }
}
